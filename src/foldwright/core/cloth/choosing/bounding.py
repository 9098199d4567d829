"""Lengths that no plan can be under, by leaving out rules or pieces where the model cannot tell."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from foldwright.core.cloth.choosing.model import Finder, Frame
from foldwright.core.cloth.choosing.pricing import Priced, price
from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.finding.in_places import InPlaces
from foldwright.core.cloth.finding.listed import Listed
from foldwright.core.cloth.finding.side_by_side import SideBySide
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.level import distance
from foldwright.core.cloth.whole import Cloth, Kind


@dataclass(frozen=True, slots=True)
class Found:
    """Where a search begins: a cloth, its model, and cut lengths that hold every piece."""

    cloth: Cloth
    finder: Finder
    exact: bool  # the model's bound holds for the cloth


def finder_of(cloth: Cloth) -> Found:
    """Give what finds cut lengths for a cloth, and whether what it proves holds.

    Takes: the cloth.

    Gives: a finder; not exact where some pieces lie in the gaps of others, or where too many
    cut lengths would have to be listed.

    Source: derived here.
    """
    if not cloth.in_places:
        return Found(cloth, SideBySide(cloth), exact=not cloth.loose)
    if all(kind.across is not None for kind in cloth.kinds):
        return Found(cloth, InPlaces(cloth), exact=not cloth.loose)
    listed = Listed(cloth)
    return Found(cloth, listed, exact=listed.complete and not cloth.loose)


def bound_of(cloth: Cloth, go_on: Callable[[], bool]) -> float:
    """Give a length (mm) that no plan can be under, where the model itself cannot tell.

    Takes: the cloth; whether to go on.

    Gives: the best of two bounds: of the pieces that follow the repeat alone, anywhere across,
    and of all pieces without any repeat. Each leaves out a rule or pieces, so each holds.

    Source: derived here.
    """
    least = bound_without_repeat(cloth, go_on)
    ruled = tuple(kind for kind in cloth.kinds if kind.along is not None)
    if not cloth.repeat or not ruled:
        return least
    return max(least, _priced(replace(cloth, kinds=_anywhere(ruled, along=True)), go_on).least)


def bound_without_repeat(cloth: Cloth, go_on: Callable[[], bool]) -> float:
    """Give a length (mm) that no plan can be under, even if no piece had to follow the pattern.

    Takes: the cloth; whether to go on.

    Gives: the length.

    Source: derived here.
    """
    kinds = _anywhere(cloth.kinds, along=False)
    return _priced(replace(cloth, kinds=kinds, repeat=0, shift=0, drops=1), go_on).least


def bound_by_next_starts(cloth: Cloth, go_on: Callable[[], bool]) -> float:
    """Give a length (mm) that no plan can be under, if every piece takes all up to the next start.

    Takes: a cloth whose pieces all follow the repeat; whether to go on.

    Gives: the length. After a cut length with this piece the next begins where some piece may
    start, so the piece takes at least all from its own start to there; only the last cut
    length of each roll is spared that. What is left is a cloth without a repeat.

    Source: derived here.
    """
    taken = [
        min(distance(cloth, start, kind.length) for start in cloth.starts(kind))
        for kind in cloth.kinds
    ]
    spared = max(
        each - kind.length - cloth.spare for each, kind in zip(taken, cloth.kinds, strict=True)
    )
    kinds = tuple(
        replace(kind, length=each - cloth.spare)
        for kind, each in zip(_anywhere(cloth.kinds, along=False), taken, strict=True)
    )
    plain = replace(cloth, kinds=kinds, repeat=0, shift=0, drops=1)
    return _priced(plain, go_on).least - spared * len(cloth.bolts) / cloth.per_mm


def bound_alone(cloth: Cloth, go_on: Callable[[], bool]) -> float:
    """Give a length (mm) that no plan of these pieces, or of more, can be under.

    Takes: the cloth, with some of the pieces of a job; whether to go on.

    Gives: the length that the model proves where it is exact, else the bound by leaving out.

    Source: derived here.
    """
    found = finder_of(cloth)
    if not found.exact:
        return bound_of(cloth, go_on)
    return price(Frame(cloth), Pool(cloth, first_fit(cloth)), found.finder, go_on).least


def _anywhere(kinds: Sequence[Kind], *, along: bool) -> tuple[Kind, ...]:
    """Forget the rules across, and along if asked."""
    return tuple(
        replace(
            kind, across=None, along=kind.along if along else None, partner=None, most=kind.count
        )
        for kind in kinds
    )


def _priced(cloth: Cloth, go_on: Callable[[], bool]) -> Priced:
    return price(Frame(cloth), Pool(cloth, first_fit(cloth)), SideBySide(cloth), go_on)
