"""Everything that the bench page of a shade shows, gathered for its templates."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from secrets import token_hex
from typing import Any

from markupsafe import Markup

from foldwright.core.prove.card_running import CRANK
from foldwright.core.prove.card_step import Ask, CardStep, Judged, Reads
from foldwright.core.quantity.rounding import System
from foldwright.core.rig.cautions import WOUND_SPRING
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.telling import show_value
from foldwright.web.desk import moment
from foldwright.web.figures import FigureIndex
from foldwright.web.forms import echo_of
from foldwright.web.view import ShadeView
from foldwright.web.wording import Wording
from foldwright.work.bench import UNDO, Entry, Kind, Record
from foldwright.work.bench_advice import CONFIRM, Told
from foldwright.work.bench_reading import unit_words
from foldwright.work.bench_session import Session

Tell = Callable[[Session, bool], Told | None]
KEY_BYTES = 8
KIND_WORDS = {Kind.BENCH: "bench test", Kind.VISIT: "visit", Kind.SPRING: "test of a spring"}
COUNTED = ("stop", "ask", "pass")


@dataclass(frozen=True, kw_only=True, slots=True)
class FieldView:
    """One field of a step, as it is shown."""

    ask: Ask
    id: str
    text: str
    echo: str = ""
    unit: str = ""
    faults: tuple[Fault, ...] = ()

    @property
    def is_choice(self) -> bool:
        """Tell whether one of a few answers is taken."""
        return self.ask.reads is Reads.CHOICE

    @property
    def keyboard(self) -> str:
        """Give the keyboard that a tablet is to show; the decimal one has no minus."""
        by_letters = self.ask.reads in {Reads.LENGTH, Reads.TEXT} or self.ask.signed
        return "text" if by_letters else "decimal"

    @property
    def is_length(self) -> bool:
        """Tell whether the key pad with fractions serves it."""
        return self.ask.reads is Reads.LENGTH


@dataclass(frozen=True, kw_only=True, slots=True)
class NotedLine:
    """One entry of the record, in words."""

    entry: Entry
    title: str
    words: str
    undone: bool


@dataclass(frozen=True, kw_only=True)
class StepView:
    """One step as it stands."""

    step: CardStep
    number: int
    state: str
    judged: Judged
    fields: tuple[FieldView, ...]
    noted: tuple[NotedLine, ...]
    faults: tuple[Fault, ...] = ()  # that belong to no field
    key: str = field(default_factory=lambda: token_hex(KEY_BYTES))

    @property
    def groups(self) -> list[tuple[str, list[FieldView]]]:
        """Give the fields under their headings, in order."""
        groups: dict[str, list[FieldView]] = {}
        for one in self.fields:
            groups.setdefault(one.ask.group, []).append(one)
        return list(groups.items())

    @property
    def has_lengths(self) -> bool:
        """Tell whether the key pad serves any of its fields."""
        return any(one.is_length for one in self.fields)

    @property
    def one_tap(self) -> FieldView | None:
        """Give the only field, where it is a choice: then each answer is a button."""
        only = self.fields[0] if len(self.fields) == 1 else None
        return only if only and only.is_choice else None


@dataclass(frozen=True, kw_only=True)
class Refused:
    """What was typed and could not be read: its step, the text, and what is wrong."""

    step: str
    typed: Mapping[str, str]
    faults: tuple[Fault, ...]


@dataclass(frozen=True, kw_only=True)
class BenchView:
    """The bench card of one shade, for one reader."""

    shade: ShadeView
    session: Session
    sessions: Sequence[Record]
    system: System
    job_system: System
    asked: str = ""  # the step that the address names
    refused: Refused | None = None
    by: str = ""
    last: str = ""  # the step that was saved just now
    tell: Tell  # works the advice out, or has it at hand
    whole: bool = True  # the advice with causes and next steps; no: they are asked for later

    @property
    def url(self) -> str:
        """Give the address of the page."""
        return f"{self.shade.url}/bench"

    @property
    def record(self) -> Record | None:
        """Give the record of the session, where anything was noted."""
        return self.session.record

    @property
    def session_id(self) -> str:
        """Give the number of the session for a form; nothing where it is not begun."""
        return str(self.record.id) if self.record else ""

    @property
    def kind(self) -> str:
        """Say what the session is."""
        return KIND_WORDS[self.record.kind] if self.record else KIND_WORDS[Kind.BENCH]

    @property
    def is_visit(self) -> bool:
        """Tell whether a shade that has hung for years is looked at again."""
        return self.session.is_visit

    @cached_property
    def figures(self) -> FigureIndex:
        """Give every figure of the page under its name."""
        return FigureIndex(
            self.shade.plan, {**self.session.everything, "told": self.told, "amount": self.amount}
        )

    @cached_property
    def told(self) -> Told | None:
        """Give what to turn, and what is doubtful."""
        return self.tell(self.session, self.whole)

    @cached_property
    def amount(self) -> Figure[float] | None:
        """Give how many turns to wind in or let out."""
        moves = self.told is not None and self.told.way != "leave" and self.session.is_wound
        return self.told.amount if self.told and moves else None

    @property
    def turn_caution(self) -> str:
        """Say what can hurt when turns are wound in or let out."""
        return f"{WOUND_SPRING} {CRANK}"

    @property
    def fresh_key(self) -> str:
        """Make a key for one more tap."""
        return token_hex(KEY_BYTES)

    @property
    def turn_sentence(self) -> Markup:
        """Say in one sentence what to turn, which way and how far."""
        told = self.told
        if told is None:
            return Markup()
        if not self.session.is_wound:
            return self.linked("Wind {0}, as the card says.", (told.advice.turns,))
        if self.amount is None:
            return self.linked("Leave the {0} that are in the spring.", (told.advice.turns,))
        word = "Wind in" if told.way == "wind" else "Let out"
        return self.linked(f"{word} {{0}}{self._which_way}.", (self.amount, *self._way_figures))

    @property
    def _way_figures(self) -> tuple[Figure[str], ...]:
        advice = self.told.advice if self.told else None
        both = (advice.direction, advice.end) if advice else ()
        return tuple(one for one in both if one is not None)

    @property
    def _which_way(self) -> str:
        count = 2  # the way and the end are known together or not at all
        known = len(self._way_figures) == count
        return ", the fixed shaft {1} as seen at the {2} end" if known else ""

    @property
    def known(self) -> tuple[Figure[float], ...]:
        """Give what is now known of the shade, each with its range."""
        if self.told is None:
            return ()
        advice = self.told.advice
        return (
            advice.rate,
            advice.load_raised,
            advice.load_friction,
            advice.constant_friction,
            advice.spring_hysteresis,
            advice.lost_turns,
        )

    @cached_property
    def wording(self) -> Wording:
        """Give what shows the figures."""
        session = f"session={self.session_id}&amp;" if self.session_id else ""
        return Wording(self.figures, self.system, f"{self.url}/why", session)

    def linked(self, sentence: str, figures: Sequence[Figure[Any]]) -> Markup:
        """Fill a sentence, each of its figures a link to its why."""
        return self.wording.linked(sentence, figures)

    def link(self, figure: Figure[Any]) -> Markup:
        """Show a figure, as a link to its why."""
        return self.wording.link(figure)

    def ranged(self, figure: Figure[Any]) -> Markup:
        """Show a figure with its range, as a link to its why."""
        return self.wording.link(figure, ranged=True)

    @cached_property
    def steps(self) -> tuple[StepView, ...]:
        """Give every step of the card as it stands."""
        numbered = enumerate(self.session.steps, start=1)
        return tuple(self._step(number, step) for number, step in numbered)

    @property
    def current(self) -> str:
        """Give the step to show: the one that cannot be read, the one asked for, or the next."""
        ids = [step.id for step in self.session.steps]
        if self.refused:
            return self.refused.step
        return self.asked if self.asked in ids else self.session.resume

    @property
    def after(self) -> str:
        """Give the step that follows the one shown, or nothing after the last."""
        return self.session.after(self.current)

    @property
    def summary(self) -> str:
        """Count the steps by what they came to."""
        states = [one.state for one in self.steps]
        done = sum(state in COUNTED for state in states)
        counts = [f"{states.count(word)} {word}" for word in COUNTED if word in states]
        return f"{done} of {len(states)} done" + (f": {', '.join(counts)}" if counts else "")

    @property
    def last_step(self) -> StepView | None:
        """Give the step that was saved just now."""
        return next((one for one in self.steps if one.step.id == self.last), None)

    @property
    def noted(self) -> tuple[NotedLine, ...]:
        """Give the whole record, the newest first."""
        entries = self.record.entries if self.record else ()
        told = [one for one in entries if one.step not in {UNDO, CONFIRM}]
        return tuple(self._line(one) for one in reversed(told))

    @property
    def last_entry(self) -> Entry | None:
        """Give the entry that one undo takes back."""
        standing = self.record.standing if self.record else ()
        return next((one for one in reversed(standing) if one.step != CONFIRM), None)

    def words_of(self, other: Record) -> str:
        """Name a session by what it is and when it began."""
        return f"{KIND_WORDS[other.kind]}, begun {moment(other.begun_at)}"

    def title_of(self, step: str) -> str:
        """Give the title of a step by its id."""
        return next((one.title for one in self.session.steps if one.id == step), step)

    def _step(self, number: int, step: CardStep) -> StepView:
        refused = self.refused if self.refused and self.refused.step == step.id else None
        faults = refused.faults if refused else ()
        names = {ask.name for ask in step.asks}
        return StepView(
            step=step,
            number=number,
            state=self.session.state(step),
            judged=self.session.judged(step),
            fields=tuple(self._field(step, ask, refused) for ask in step.asks),
            noted=tuple(one for one in reversed(self.noted) if one.entry.step == step.id),
            faults=tuple(fault for fault in faults if fault.where not in names),
        )

    def _field(self, step: CardStep, ask: Ask, refused: Refused | None) -> FieldView:
        text = refused.typed.get(ask.name, "") if refused else self._shown(step, ask)
        faults = refused.faults if refused else ()
        own = tuple(fault for fault in faults if fault.where == ask.name)
        reads_length = ask.reads is Reads.LENGTH and not own
        return FieldView(
            ask=ask,
            id=f"{step.id}-{ask.name}",
            text=text,
            echo=echo_of(text, self.job_system) if reads_length and text else "",
            unit=unit_words(ask, self.job_system),
            faults=own,
        )

    def _shown(self, step: CardStep, ask: Ask) -> str:
        """Give what stands in a field: what was typed last, or what is usual."""
        if ask.now and self.session.turns_now is not None:
            return f"{self.session.turns_now:g}"
        typed = "" if step.repeats else self.session.typed(step).get(ask.name, "")
        return typed or (_plain(ask.usual, self.job_system) if ask.usual else "")

    def _line(self, entry: Entry) -> NotedLine:
        undone = self.record.undone if self.record else frozenset()
        return NotedLine(
            entry=entry,
            title=self.title_of(entry.step),
            words=self.session.words(entry),
            undone=entry.key in undone,
        )


def _plain(figure: Figure[Any], system: System) -> str:
    """Give a figure as a person would type it."""
    return show_value(figure, system) if figure.unit is Unit.LENGTH else f"{figure.value:g}"
