"""Which cut lengths are worth having, where the motif leaves each piece a few places across.

So few pieces lie side by side then that every set of them can be listed once, each as far
left as it goes; what is asked at given prices is a look along the list.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from math import inf

import numpy as np
from scipy.sparse import csr_array

from foldwright.core.cloth.columns import NOWHERE, place_in
from foldwright.core.cloth.finding.side_by_side import Prices
from foldwright.core.cloth.finding.worth import HAIR, Reals
from foldwright.core.cloth.laying.first_fit import may_join
from foldwright.core.cloth.level import Level, Strip, distance, level_of
from foldwright.core.cloth.whole import Cloth

MOST_SETS = 60_000
MOST_LEVELS = 150_000
LOOKED_AT = 400
TAKEN = 60
OF_A_KIND = 4

Stood = tuple[int, int]  # a kind, and the drop that it stands on
Row = tuple[int, tuple[Strip, ...]]  # how far right it reaches, and the strips


class Listed:
    """All cut lengths of a cloth; `complete` tells whether there were not too many to list."""

    def __init__(self, cloth: Cloth) -> None:
        self.cloth = cloth
        sets, listed = _sets(cloth)
        self.levels = [level for row in sets for level in _levels(cloth, row)]
        self.complete = listed and len(self.levels) <= MOST_LEVELS
        self.levels = self.levels[:MOST_LEVELS]
        self._measure()

    def _measure(self) -> None:
        cloth, levels = self.cloth, self.levels
        on = [distance(cloth, level.start, level.length) for level in levels]
        loose = bool(cloth.repeat)
        self._start = np.array(
            [
                NOWHERE if level.start is None and loose else place_in(cloth, level.start or 0)
                for level in levels
            ]
        )
        ends = [place_in(cloth, (v.start or 0) + each) for v, each in zip(levels, on, strict=True)]
        self._end = np.where(self._start == NOWHERE, NOWHERE, ends)
        self._far = np.array(on) / cloth.per_mm
        self._length = np.array([level.length for level in levels]) / cloth.per_mm
        cells = [
            (row, kind, float(count))
            for row, level in enumerate(levels)
            for kind, count in level.counts.items()
        ]
        rows, kinds, counts = zip(*cells, strict=True)
        self._counts = csr_array((counts, (rows, kinds)), shape=(len(levels), len(cloth.kinds)))

    def _costs(self, prices: Prices) -> tuple[Reals, Reals]:
        """Give what each cut length takes among others and as a last, less what its places pay."""
        credit = prices.credit(self._length)
        free = self._start == NOWHERE
        here = np.where(free, 0.0, prices.places[self._start])
        there = np.where(free, 0.0, prices.places[self._end])
        last = np.where(free, np.inf, self._length - credit + here)
        onward: Reals = self._far - credit + here - there
        return onward, last

    def worth_having(self, prices: Prices, enough: float = inf) -> tuple[list[Level], float | None]:
        """Find cut lengths that are worth more than they cost at these prices.

        Takes: prices; how many are enough (the look along the list is one, so it is not used).

        Gives: cut lengths; and the factor by which the prices must be divided so that none
        in the whole world is worth more than it costs.

        Source: cutting-stock-1961; column-bound-1990 for the factor.
        """
        del enough
        worth = self._counts @ prices.pieces
        onward, last = self._costs(prices)
        gains = worth - np.minimum(onward, last)
        ratio = float(
            np.max(np.maximum((worth - onward) / self._far, (worth - last) / self._length))
        )
        return self._spread(gains), max(1.0, 1.0 + ratio)

    def _spread(self, gains: Reals) -> list[Level]:
        """Give cut lengths of great gain, of each kind a few only."""
        few = min(LOOKED_AT, len(gains) - 1)
        best = np.argpartition(-gains, few)[: few + 1]
        best = best[np.lexsort((best, -gains[best]))]
        seen: dict[int, int] = {}
        taken: list[Level] = []
        for number in best[gains[best] > HAIR]:
            level = self.levels[number]
            if all(seen.get(kind, 0) < OF_A_KIND for kind in level.counts):
                taken.append(level)
                for kind in level.counts:
                    seen[kind] = seen.get(kind, 0) + 1
            if len(taken) >= TAKEN:
                break
        return taken

    def harder(self) -> bool:
        """Tell that there is nothing left to search: every cut length is looked at."""
        return False

    def all_within(self, prices: Prices, gap: float, most: int) -> list[Level] | None:
        """List every cut length that a plan within `gap` (mm) of the bound could use.

        Takes: prices that no cut length is worth more than; the gap between plan and bound;
        how many at most.

        Gives: the cut lengths, or None if too many.

        Source: derived here.
        """
        worth = self._counts @ prices.pieces
        near = np.nonzero(np.minimum(*self._costs(prices)) - worth <= gap + HAIR)[0]
        if not self.complete or len(near) > most:
            return None
        return [self.levels[number] for number in near]


def _sets(cloth: Cloth) -> tuple[list[tuple[Strip, ...]], bool]:
    """List each set of pieces once, packed as far left as it goes; tell whether that is all.

    What can still join a set depends only on how far right it reaches, so of all orders of
    one set the one that reaches least far is enough.
    """
    spots = [_spots(cloth, number) for number in range(len(cloth.kinds))]
    found: list[tuple[Strip, ...]] = []
    layer: dict[tuple[Stood, ...], Row] = {(): (0, ())}
    while layer:
        grown: dict[tuple[Stood, ...], Row] = {}
        for stood, row in layer.items():
            for key, longer in _grown(cloth, spots, stood, row):
                if key not in grown or longer[0] < grown[key][0]:
                    grown[key] = longer
            if len(found) + len(grown) > MOST_SETS:
                return [*found, *(strips for _, strips in grown.values())], False
        found += [strips for _, strips in grown.values()]
        layer = grown
    return found, True


def _spots(cloth: Cloth, number: int) -> list[tuple[int, list[int]]] | None:
    """Give the places of a kind, by drop; None for a kind without a rule across."""
    kind = cloth.kinds[number]
    if kind.across is None:
        return None
    by_drop: dict[int, list[int]] = {}
    for left, drop in cloth.places(kind):
        by_drop.setdefault(drop, []).append(left)
    return list(by_drop.items())


def _grown(
    cloth: Cloth,
    spots: Sequence[list[tuple[int, list[int]]] | None],
    stood: tuple[Stood, ...],
    row: Row,
) -> Iterator[tuple[tuple[Stood, ...], Row]]:
    """Add one more piece to the right of a set, in each way that fits."""
    edge, strips = row
    for number, by_drop in enumerate(spots):
        kind = cloth.kinds[number]
        if edge + kind.width > cloth.width:
            continue
        if not may_join(cloth, number, (strip.kind for strip in strips)):
            continue
        for drop, lefts in [(0, [edge])] if by_drop is None else by_drop:
            at = bisect_left(lefts, edge)
            if at < len(lefts):
                strip = Strip(number, lefts[at], drop)
                key = tuple(sorted((*stood, (number, drop))))
                yield key, (lefts[at] + kind.width, (*strips, strip))


def _levels(cloth: Cloth, strips: tuple[Strip, ...]) -> Iterator[Level]:
    """Give a set as a cut length, once for each piece whose head may come first.

    Here `behind` of a strip still holds its drop.
    """
    starts = sorted({start for strip in strips for start in _phases(cloth, strip)})
    if not starts:
        yield level_of(cloth, 0, (Strip(s.kind, s.left, 0) for s in strips))
        return
    seen: set[tuple[int | None, int]] = set()
    for start in starts:
        moved = [
            Strip(
                s.kind,
                s.left,
                min(((p - start) % cloth.repeat for p in _phases(cloth, s)), default=0),
            )
            for s in strips
        ]
        level = level_of(cloth, start, moved)
        if (level.start, level.length) not in seen:
            seen.add((level.start, level.length))
            yield level


def _phases(cloth: Cloth, strip: Strip) -> tuple[int, ...]:
    """Give where in the repeat a strip may start on the drop it stands on."""
    kind = cloth.kinds[strip.kind]
    if kind.along is None:
        return ()
    if kind.across is None:
        return cloth.starts(kind)
    return ((kind.along + strip.behind * cloth.shift) % cloth.repeat,)
