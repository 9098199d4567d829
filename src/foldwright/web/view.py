"""Everything that the page of a shade shows, gathered for its templates."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

from markupsafe import Markup

from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.records import ShopList
from foldwright.core.lift.balance import Verdict
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.headrail import Step
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity
from foldwright.web.drawings import Picture, picture
from foldwright.web.fields import GROUPS, Field, Group, Kind
from foldwright.web.figures import FigureIndex
from foldwright.web.forms import Filled, Table, faults_elsewhere, filled_fields
from foldwright.web.tables import Table as NumberTable
from foldwright.web.tables import tables
from foldwright.web.wording import Wording

STRENGTH = tuple(Severity)
COUNT_WORDS = {
    Severity.STOP: ("stop", "stops"),
    Severity.ASK: ("question", "questions"),
    Severity.NOTE: ("note", "notes"),
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Shift:
    """A figure that an edit moved, in words."""

    name: str
    old: str
    new: str | Markup

    @property
    def new_text(self) -> str:
        """Give the new value without its link."""
        return Markup(self.new).striptags()  # noqa: S704 - a link made here, or words of ours


MOVED_IN_A_LINE = 2
MOVED_AT_A_GLANCE = 6


@dataclass(frozen=True, kw_only=True)
class ShadeView:
    """One shade, as typed and as planned, for one reader."""

    url: str
    number: int
    count: int
    version: int
    shade: Table
    plan: ShadePlan | None
    figures: FigureIndex
    wording: Wording
    shop: ShopList
    system: System
    job_system: System
    raise_share: float
    faults: tuple[Fault, ...] = ()
    typed: bool = False  # the form holds what is not saved
    moved: tuple[Shift, ...] = ()
    newly_known: int = 0  # figures that were not known before
    moved_title: str = ""
    groups: tuple[Group, ...] = field(default=GROUPS)
    search: Callable[[], Offers | None] = field(default=lambda: None)  # of the layouts
    searched: bool = True  # False while somebody types: the search is asked for

    def link(self, figure: Figure[Any]) -> Markup:
        """Show a figure as a link to its why."""
        return self.wording.link(figure)

    def linked(self, sentence: str, figures: Sequence[Figure[Any]]) -> Markup:
        """Fill a sentence, each of its figures a link."""
        return self.wording.linked(sentence, figures)

    def other(self, figure: Figure[Any]) -> str:
        """Show a figure in the other units."""
        return self.wording.other(figure)

    @cached_property
    def offers(self) -> Offers | None:
        """Search the layouts that what is typed leaves open."""
        return self.search()

    @property
    def layouts_gist(self) -> str:
        """Say in a line what the best layout would bring."""
        if self.offers is None:
            return ""
        best = self.offers.best
        if best.stands:
            return "As it stands is the best that was tried."
        return self.wording.filled(best.way.sentence, best.way.figures)

    @property
    def tag(self) -> str:
        """Give the tag as typed."""
        return str(self.shade.get("tag", "")) or "no tag yet"

    @property
    def room(self) -> str:
        """Give the room as typed."""
        return str(self.shade.get("room", ""))

    @property
    def width(self) -> Figure[Length] | None:
        """Give the finished width."""
        return self.plan.size.width if self.plan and self.plan.size else None

    @property
    def drop(self) -> Figure[Length] | None:
        """Give the finished drop."""
        return self.plan.size.drop if self.plan and self.plan.size else None

    @property
    def mount(self) -> str:
        """Give where the shade hangs."""
        return _typed_word(self.shade, "mount", "place")

    @property
    def face(self) -> str:
        """Give the face cloth."""
        return _typed_word(self.shade, "materials", "face")

    @property
    def verdict(self) -> str:
        """Give what can be promised of the lift."""
        return verdict_of(self.plan)

    @property
    def turns(self) -> Figure[float] | None:
        """Give the turns to wind in."""
        window = self.plan.balance.window if self.plan and self.plan.balance else None
        return window.recommended_turns if window else None

    @property
    def moved_words(self) -> str:
        """Name the first that moved, in a line beside the button that saves."""
        if not self.moved:
            return self.newly_known_words or "No figure moves."
        first = [
            f"{shift.name} {shift.old} → {shift.new_text}" for shift in self.moved[:MOVED_IN_A_LINE]
        ]
        others = len(self.moved) - len(first)
        return ", ".join(first) + (f", and {others} more." if others else ".")

    @property
    def newly_known_words(self) -> str:
        """Count the figures that were not known before, in one sentence."""
        if not self.newly_known:
            return ""
        if self.newly_known == 1:
            return "1 figure is newly known."
        return f"{self.newly_known} figures are newly known."

    @property
    def moved_first(self) -> tuple[Shift, ...]:
        """Give the few that moved nearest to the beginning of the work."""
        return self.moved[:MOVED_AT_A_GLANCE]

    @property
    def moved_further(self) -> tuple[Shift, ...]:
        """Give the others."""
        return self.moved[MOVED_AT_A_GLANCE:]

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Give all that the plan has to say."""
        return self.plan.findings if self.plan else ()

    @property
    def pressing(self) -> tuple[tuple[int, Finding], ...]:
        """Give what stops or asks, the strongest first, each with its place in the plan."""
        placed = [one for one in enumerate(self.findings) if one[1].severity is not Severity.NOTE]
        return tuple(sorted(placed, key=lambda one: _pressing(one[1])))

    @property
    def notes(self) -> tuple[tuple[int, Finding], ...]:
        """Give the notes, each with its place in the plan."""
        placed = enumerate(self.findings)
        return tuple(one for one in placed if one[1].severity is Severity.NOTE)

    @property
    def findings_title(self) -> str:
        """Count the findings by severity."""
        if self.plan is None:
            return "Waiting for the fields that cannot be read"
        return self.pressing_count or "Nothing stands against this shade"

    @property
    def pressing_count(self) -> str:
        """Count what stops or asks."""
        return count_findings([finding for _, finding in self.pressing])

    @property
    def stops(self) -> tuple[Finding, ...]:
        """Give what stops the work and nobody answers for."""
        return tuple(one for _, one in self.pressing if one.forbids)

    @property
    def notes_title(self) -> str:
        """Count the notes."""
        return count_findings([finding for _, finding in self.notes])

    @cached_property
    def fields(self) -> dict[str, Filled]:
        """Give every field as the form shows it."""
        return filled_fields(self.shade, self.faults, f"shades.{self.number}", self.job_system)

    def wants(self, group: Group) -> bool:
        """Tell whether a group is to be open: it has faults, or is empty in an unfinished shade."""
        shown = [self.fields[one.path] for one in group.every()]
        finished = self.plan is not None and self.plan.headrail is not None
        untouched = not finished and not any(filled.typed for filled in shown)
        return untouched or any(filled.faults for filled in shown)

    def gist(self, group: Group) -> str:
        """Give what is typed in a group, in one line."""
        shown = (self.fields[one.path] for one in group.fields if one.kind is not Kind.TICK)
        return ", ".join(filled.text for filled in shown if filled.typed)

    def is_used(self, group: Group) -> bool:
        """Tell whether anything is typed in, or wrong with, the lesser fields of a group."""
        lesser = [self.fields[one.path] for one in group.more]
        return any(filled.typed or filled.faults for filled in lesser)

    @property
    def other_faults(self) -> tuple[Fault, ...]:
        """Give the faults that stand beside no field of this form."""
        return tuple(faults_elsewhere(self.faults, f"shades.{self.number}"))

    def stand_in(self, one: Field) -> Markup | str:
        """Give the figure that a house rule put where nothing is typed."""
        figure = self.figures.at(one.answered_by) if one.answered_by else None
        return self.link(figure) if figure else ""

    def options(self, filled: Filled) -> list[tuple[str, str]]:
        """Give the choices of a field, with what is saved among them even if it is not listed."""
        listed = self._listed(filled.field)
        known = {word for word, _ in listed}
        extra = (
            [(filled.text, f"{filled.text} (not in the list)")] if filled.text not in known else []
        )
        return [*listed, *extra]

    def _listed(self, one: Field) -> list[tuple[str, str]]:
        if one.kind is Kind.RECORD:
            names = getattr(self.shop, one.shop_list)
            return [("", "not chosen yet"), *((name, name) for name in names)]
        return [(option.word, option.label) for option in one.options]

    @cached_property
    def picture(self) -> Picture | None:
        """Draw the shade at its raise."""
        if self.plan is None:
            return None
        return picture(self.plan, self.raise_share, self.system, f"{self.url}/why")

    @property
    def raise_text(self) -> str:
        """Say how far the shade is shown raised."""
        return f"raised {self.raise_share:.0%}"

    @property
    def raise_steps(self) -> tuple[tuple[str, str], ...]:
        """Give the steps by which the shade can be raised without a pull: one fold each."""
        layout = self.plan.layout if self.plan else None
        if layout is None:
            return ()
        fold = 1 / layout.rows.count.value
        steps = (
            ("Fully down", 0.0),
            ("Lower one fold", self.raise_share - fold),
            ("Raise one fold", self.raise_share + fold),
            ("Fully up", 1.0),
        )
        return tuple((label, f"{min(1.0, max(0.0, share)):.3f}") for label, share in steps)

    @cached_property
    def tables(self) -> tuple[NumberTable, ...]:
        """Give the numbers in the order of the work."""
        return tables(self.plan, self.figures, self.wording) if self.plan else ()

    @property
    def bench_steps(self) -> tuple[Step, ...]:
        """Give the bench steps."""
        return self.plan.headrail.steps if self.plan and self.plan.headrail else ()


def verdict_of(plan: ShadePlan | None) -> str:
    """Give in words what can be promised of the lift."""
    balance = plan.balance if plan else None
    return (balance.verdict if balance else Verdict.ASK).value


def _pressing(finding: Finding) -> tuple[bool, int]:
    """Put first what presses most; what somebody answers for comes last."""
    return finding.override is not None, STRENGTH.index(finding.severity)


def count_findings(findings: Sequence[Finding]) -> str:
    """Count findings in words, the strongest first.

    >>> count_findings(())
    ''
    """
    return ", ".join(_counted(findings))


def _counted(findings: Sequence[Finding]) -> Iterator[str]:
    standing = [finding for finding in findings if finding.override is None]
    for severity, words in COUNT_WORDS.items():
        number = sum(finding.severity is severity for finding in standing)
        if number:
            yield f"{number} {words[number > 1]}"
    if len(standing) < len(findings):
        yield f"{len(findings) - len(standing)} overridden"


def _typed_word(shade: Table, room: str, key: str) -> str:
    part = shade.get(room)
    return str(part.get(key, "")) if isinstance(part, dict) else ""
