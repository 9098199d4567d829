"""Offer a remedy only after it has been tried.

A room drafts its findings with every way out that it can think of. Each way that changes
a field is then worked through as if the person had taken it; it is offered only if the
finding falls silent and no new stop appears.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from enum import Enum
from typing import Any, Generic, TypeVar

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import USUAL_MARK, print_length, round_length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Change, Finding, Remedy, Severity

Inputs = TypeVar("Inputs")


@dataclass(frozen=True, kw_only=True, slots=True)
class Way(Generic[Inputs]):
    """A remedy, and the inputs as they would be once it is taken."""

    remedy: Remedy
    inputs: Inputs | None = None  # None: done by hand, nothing to try


@dataclass(frozen=True, kw_only=True, slots=True)
class Draft(Generic[Inputs]):
    """A finding with the ways out of it, not yet tried.

    The ways may be a generator: they are looked at once, and only if the finding is to be
    shown, since every trial drafts findings of its own whose ways nobody needs.
    """

    finding: Finding
    ways: Iterable[Way[Inputs]] = ()


def by_hand(sentence: str, *figures: Figure[Any]) -> Way[Any]:
    """Make a way out that only hands can take.

    Takes: the sentence; the figures that its {0}, {1} … stand for.

    Gives: a way without changes.

    Source: derived here.

    >>> by_hand("Measure again.").remedy.sentence
    'Measure again.'
    """
    return Way(remedy=Remedy(sentence=sentence, figures=figures))


def by_change(
    inputs: Inputs, system: System, sentence: str, *figures: Figure[Any], **fields: object
) -> Way[Inputs]:
    """Make a way out that changes fields, and the inputs as they would then be.

    Takes: the inputs (a dataclass of dataclasses); the system that lengths are written in;
    the sentence and its figures; the fields as `room__field=value`, None clearing a field.

    Gives: a way whose changes say in text what its inputs hold.

    Holds for: lengths that lie on the system's usual mark (see `on_mark`).

    Source: derived here.

    >>> from dataclasses import make_dataclass
    >>> design = make_dataclass("Design", ["row_count"])(row_count=5)
    >>> inputs = make_dataclass("Inputs", ["design"])(design=design)
    >>> way = by_change(inputs, System.INCH, "Use 8 rows.", design__row_count=8)
    >>> way.remedy.changes[0].path, way.remedy.changes[0].text, way.inputs.design.row_count
    ('design.row_count', '8', 8)
    """
    changes = []
    for name, value in fields.items():
        part, _, field = name.partition("__")
        room = replace(getattr(inputs, part), **{field: value})
        inputs = replace(inputs, **{part: room})  # type: ignore[type-var]
        changes.append(Change(path=f"{part}.{field}", text=as_typed(value, system)))
    remedy = Remedy(sentence=sentence, figures=figures, changes=tuple(changes))
    return Way(remedy=remedy, inputs=inputs)


def as_typed(value: object, system: System) -> str:
    """Write a value the way a person types it into the job file.

    Takes: a length, a word, a count, a number, yes or no, or None for a cleared field;
    the system that lengths are written in.

    Gives: the text, a length always with its unit.

    Source: derived here.

    >>> as_typed(Length.inches("7.375"), System.INCH), as_typed(8, System.INCH)
    ('7 3/8 in', '8')
    >>> as_typed(value=True, system=System.INCH)
    'true'
    """
    if isinstance(value, Length):
        return print_length(value, system)
    if isinstance(value, Enum):
        return str(value.value)
    if isinstance(value, bool):
        return str(value).lower()
    return "" if value is None else str(value)


def on_mark(length: Length, system: System, rounding: Rounding) -> Length:
    """Move a length to the system's usual mark, so that what is typed is what is meant.

    Takes: the exact length; the system; the rounding its use asks for.

    Gives: a whole number of sixteenths of an inch, or of millimetres.

    Source: common practice.

    >>> on_mark(Length.mm("10.6"), System.METRIC, Rounding.CUT_OVERSIZE) == Length.mm(11)
    True
    """
    return round_length(length, USUAL_MARK[system], rounding)


def system_of(lengths: Iterable[Length]) -> System:
    """Tell in which system lengths were typed, from the marks that they lie on.

    Takes: the lengths as typed.

    Gives: metric where more of them are whole millimetres than sixty-fourths of an inch.

    Source: derived here.

    >>> system_of([Length.mm(894), Length.mm(1525)]).value
    'metric'
    """
    given = list(lengths)
    millimetres = sum(length.nanometres % Length.mm(1).nanometres == 0 for length in given)
    sixty_fourth = Length.inches(1).nanometres // 64
    inches = sum(length.nanometres % sixty_fourth == 0 for length in given)
    return System.METRIC if millimetres > inches else System.INCH


def settle(
    drafts: Iterable[Draft[Inputs]], judge: Callable[[Inputs], Iterable[Finding]]
) -> tuple[Finding, ...]:
    """Try every way out, and keep the ones that lead out.

    Takes: the drafted findings; what finds fault with given inputs.

    Gives: the findings, each with its hand remedies and the tried ones that silence it
    without raising a stop that was not there.

    Source: derived here.

    >>> from foldwright.core.why.finding import Stage
    >>> few = Finding(
    ...     id="design.few", severity=Severity.STOP, stage=Stage.ORDER, sentence="Too few rows.")
    >>> ways = tuple(
    ...     Way(remedy=Remedy(sentence=f"Use {rows}."), inputs=rows) for rows in (6, 7))
    >>> judge = lambda rows: [few] if rows < 7 else []
    >>> [remedy.sentence for remedy in settle([Draft(finding=few, ways=ways)], judge)[0].remedies]
    ['Use 7.']
    """
    waiting = list(drafts)
    stops = {draft.finding.id for draft in waiting if draft.finding.severity is Severity.STOP}
    return tuple(_settled(draft, stops, judge) for draft in waiting)


def _settled(
    draft: Draft[Inputs], stops: set[str], judge: Callable[[Inputs], Iterable[Finding]]
) -> Finding:
    kept = [
        way.remedy
        for way in draft.ways
        if way.inputs is None or _leads_out(draft.finding.id, stops, judge(way.inputs))
    ]
    return replace(draft.finding, remedies=tuple(kept))


def _leads_out(silenced: str, stops: set[str], after: Iterable[Finding]) -> bool:
    return all(
        finding.id != silenced and (finding.severity is not Severity.STOP or finding.id in stops)
        for finding in after
    )
