"""What a shade gives up to match its neighbours, in the words of the trade."""

from __future__ import annotations

from typing import Any

from foldwright.core.check.groups.hung import Hung
from foldwright.core.check.groups.levelling import Meeting
from foldwright.core.check.layouts.trading import Saying, more_or_fewer
from foldwright.core.facts.layout_taste import TOLD_APART
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


def tell_match(now: Hung, then: Hung, meeting: Meeting) -> tuple[str, tuple[Figure[Any], ...]]:
    """Tell how a shade would hang, and what it gives up.

    Takes: the shade as it hangs; as it would hang; how it meets the row lines.

    Gives: the text, in which {0}, {1} … stand for the figures.

    Source: derived here.
    """
    plain, lost = Saying(), Saying()
    rows = then.layout.rows
    plain.add("{} rows at {} over a skirt of {}", rows.count, rows.spacing, rows.skirt)
    lost.figures = plain.figures
    _count(lost, now, then)
    _drop(lost, now, then)
    _head(lost, now, then)
    _raised(lost, now, then, meeting)
    sentences = [plain.told(", "), *([lost.told("; ")] if lost.parts else ["It gives nothing up."])]
    return " ".join(sentences), tuple(plain.figures)


def _count(said: Saying, now: Hung, then: Hung) -> None:
    apart = then.layout.rows.count.value - now.layout.rows.count.value
    if apart:
        said.add(f"{''.join(more_or_fewer(apart, 'row'))} than now")


def _drop(said: Saying, now: Hung, then: Hung) -> None:
    if now.drop.value != then.drop.value:
        shorter = then.drop.value < now.drop.value
        word = "shorter, and its hem so much higher" if shorter else "longer"
        said.add(f"it is {{}} {word}", _difference("drop given up", now.drop, then.drop))


def _head(said: Saying, now: Hung, then: Hung) -> None:
    rows, before = then.layout.rows, now.layout.rows
    if _seen(rows.head_allowance, before.head_allowance):
        said.add("its head takes {} instead of {}", rows.head_allowance, before.head_allowance)
    if rows.skirt.value != before.skirt.value:
        said.add("its skirt was {}", before.skirt)


def _raised(said: Saying, now: Hung, then: Hung, meeting: Meeting) -> None:
    ours, theirs = then.layout.stack.raised_size, now.layout.stack.raised_size
    if _seen(ours, theirs):
        mark = meeting.member.review.marked(abs(ours.value - theirs.value), Rounding.MARK)
        because = "{0} against {1}, to a mark."
        apart = derived("raised sizes apart", mark, Unit.LENGTH, because, ours, theirs)
        said.add(
            f"raised it hangs {{}} {'lower' if ours.value > theirs.value else 'higher'}", apart
        )


def _seen(one: L, other: L) -> bool:
    return abs(one.value - other.value) >= TOLD_APART.value


def _difference(name: str, one: L, other: L) -> L:
    value = abs(one.value - other.value)
    return derived(name, value, Unit.LENGTH, "{0} against {1}.", one, other)
