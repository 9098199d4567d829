"""A layer that is wider than its cloth, cut as strips: full widths in the middle, equal sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from foldwright.core.pieces.piece import PieceSeam, PieceToCut
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Strip:
    """One strip of a layer: its cut width, and where it begins on the layer laid flat."""

    word: str
    width: L
    begins: L


@dataclass(frozen=True, kw_only=True, slots=True)
class Joins:
    """The seams of a layer: the side pieces as cut, what shows between seams, the allowance."""

    side_cut: L
    middles: tuple[L, ...]  # showing, left to right
    allowance: L


def strips_of(joins: Joins) -> tuple[Strip, ...]:
    """Tell the strips of a joined layer, from left to right.

    Takes: its side pieces as cut, what shows of its middle pieces, the seam allowance.

    Gives: the strips; each begins where its left edge lies once the seams are sewn.

    Source: derived here.

    >>> from foldwright.core.why.making import chosen
    >>> def inches(name, value): return chosen(name, Length.inches(value), Unit.LENGTH)
    >>> joins = Joins(side_cut=inches("side", "11.5"), middles=(inches("centre", 53),),
    ...               allowance=inches("seam", "0.5"))
    >>> [float(strip.width.value.in_inches) for strip in strips_of(joins)]
    [11.5, 54.0, 11.5]
    >>> [float(strip.begins.value.in_inches) for strip in strips_of(joins)]
    [0.0, 10.5, 63.5]
    """
    middles = [_middle(shown, joins.allowance) for shown in joins.middles]
    words = ["left", *_middle_words(len(middles)), "right"]
    widths = [joins.side_cut, *middles, joins.side_cut]
    return tuple(
        Strip(word=word, width=width, begins=begins)
        for word, width, begins in zip(words, widths, _begins(widths, joins), strict=True)
    )


def _middle(shown: L, allowance: L) -> L:
    value = shown.value + allowance.value * 2
    because = "{0} that shows, and {1} for the seam at each side."
    rounding = Rounding.CUT_OVERSIZE
    return derived(
        "middle piece as cut", value, Unit.LENGTH, because, shown, allowance, rounding=rounding
    )


def _middle_words(count: int) -> list[str]:
    return ["middle"] if count == 1 else [f"middle {number}" for number in range(1, count + 1)]


def _begins(widths: list[L], joins: Joins) -> Iterator[L]:
    """Give where each strip begins: where the one before ends, less both seam allowances."""
    at, two = ZERO, joins.allowance.value * 2
    yield derived("strip begins", at, Unit.LENGTH, "At the left edge of the layer.")
    for width in widths[:-1]:
        at += width.value - two
        because = "Where the strip before it, {0} wide, ends, less {1} for the seam twice."
        yield derived("strip begins", at, Unit.LENGTH, because, width, joins.allowance)


def cut_strips(whole: PieceToCut, strips: tuple[Strip, ...]) -> tuple[PieceToCut, ...]:
    """Cut a piece into its strips, so that its pattern runs on over the seams.

    Takes: the piece as if cut in one; its strips.

    Gives: one piece for each strip, with the phase of the whole carried on across.

    Source: derived here.
    """
    pieces = [replace(whole, name=f"{whole.name} {s.word}", width=s.width) for s in strips]
    first, last = pieces[0].name, pieces[-1].name
    partners = {first: last, last: first}
    return tuple(
        replace(
            piece,
            phase_across=_carried_on(whole.phase_across, strip),
            side_partner=partners.get(piece.name),
        )
        for piece, strip in zip(pieces, strips, strict=True)
    )


def _carried_on(phase: L | None, strip: Strip) -> L | None:
    if phase is None:
        return None
    because = "{0} at the left edge of the layer, and this strip begins {1} from it."
    value = phase.value + strip.begins.value
    name = "left edge behind a motif"
    return derived(name, value, Unit.LENGTH, because, phase, strip.begins)


def seams_between(pieces: tuple[PieceToCut, ...], strips: tuple[Strip, ...]) -> Iterator[PieceSeam]:
    """Give the seam between each strip and the next.

    Takes: the pieces; their strips, in the same order.

    Gives: how far each begins to the right of the one before.

    Source: derived here.
    """
    for (left, right), (before, after) in zip(pairwise(pieces), pairwise(strips), strict=True):
        value = after.begins.value - before.begins.value
        because = "It begins at {0}, the strip before it at {1}."
        across = derived("seam to seam", value, Unit.LENGTH, because, after.begins, before.begins)
        yield PieceSeam(left=left.name, right=right.name, across=across)
