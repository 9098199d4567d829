"""How many cut lengths must be long: a piece longer than a step needs one that is longer too.

Pieces above each step must lie side by side in some number of cut lengths, and that number is
whole. Rounding it up at every step is most of what a relaxed model misses on small jobs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from math import ceil

import numpy as np

from foldwright.core.cloth.choosing.improving import over_price
from foldwright.core.cloth.choosing.model import Frame, Needed
from foldwright.core.cloth.choosing.pricing import pricing
from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.finding.side_by_side import SideBySide
from foldwright.core.cloth.finding.worth import Reals
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.level import Level, distance
from foldwright.core.cloth.whole import Cloth, Kind

FINEST_PARTS = 12  # parts of a width that the rounding functions try
CLOSE = 1e-6
KEPT = 4  # cut lengths kept for each kind from one step to the next


class LongOnes:
    """How many cut lengths must be longer than each step, proven as far as it is asked."""

    def __init__(self, cloth: Cloth) -> None:
        self.cloth = replace(cloth, kinds=tuple(sorted(cloth.kinds, key=lambda k: -k.length)))
        self._least: dict[int, int] = {}
        self._known: list[Level] = []

    def missing(self, there: Callable[[int], float], go_on: Callable[[], bool]) -> list[Needed]:
        """Give the steps for which a relaxed choice has too few cut lengths that are longer.

        Takes: how many cut lengths are longer than a step in the choice, parts of them counted
        too; whether to go on, read as often as pieces are priced.

        Gives: steps, falling; of steps that need the same number the longest only.

        Source: derived here.
        """
        found: list[Needed] = []
        lengths = _lengths(self.cloth)
        for length, step in zip(lengths, [*lengths[1:], 0], strict=True):
            if not go_on():
                break
            known = there(step)
            if ceil(known - CLOSE) <= known + CLOSE:
                continue  # a whole number, which no rounding could raise
            least = self._of_those_from(length, go_on)
            if least > max(known + CLOSE, found[-1].count if found else 0):
                found.append(Needed(step, least))
        return found

    def _of_those_from(self, length: int, go_on: Callable[[], bool]) -> int:
        """Give a proven least number; priced only where quicker ways disagree."""
        if length not in self._least:
            tall = sum(kind.length >= length for kind in self.cloth.kinds)
            cloth = _side_by_side_only(self.cloth, self.cloth.kinds[:tall])
            levels = first_fit(cloth)
            longer = (least for long, least in self._least.items() if long > length)
            least = max(ceil(by_rounding(cloth) - CLOSE), *longer, 0)
            if len(levels) > least:
                least = self._priced(cloth, levels, least, go_on)
            self._least[length] = least
        return self._least[length]

    def _priced(
        self, cloth: Cloth, levels: list[Level], least: int, go_on: Callable[[], bool]
    ) -> int:
        """Price until the whole number is known, from what was found for the longer pieces."""
        pool, frame = Pool(cloth, [*levels, *self._known]), Frame(cloth)
        for found in pricing(frame, pool, SideBySide(cloth)):
            least = max(least, ceil(found.least - CLOSE))
            if least >= ceil(found.last.length - CLOSE) or not go_on():
                break
        near = sorted(pool.columns, key=lambda c: over_price(frame, c, found.prices))
        self._known = list({id(c.level): c.level for c in near[: KEPT * len(cloth.kinds)]}.values())
        return least


def _lengths(cloth: Cloth) -> list[int]:
    """Give lengths that differ in what they take, falling; of those that do not the shortest."""
    lengths = {kind.length for kind in cloth.kinds}
    if not cloth.repeat or len(cloth.phases) > 1:
        return sorted(lengths, reverse=True)
    start = cloth.phases[0]
    shortest = {distance(cloth, start, length): length for length in sorted(lengths, reverse=True)}
    return sorted(shortest.values(), reverse=True)


def _side_by_side_only(cloth: Cloth, kinds: tuple[Kind, ...]) -> Cloth:
    """Forget lengths and repeats: what is left is how many pieces lie side by side."""
    flat = tuple(replace(k, length=cloth.per_mm, along=None, partner=None) for k in kinds)
    bolt = replace(cloth.bolts[0], begin=0, origin=None, end=None, flaws=())
    return replace(cloth, kinds=flat, bolts=(bolt,), repeat=0, shift=0, drops=1, spare=0)


def by_rounding(cloth: Cloth) -> float:
    """Give a least number of cut lengths by widths alone, rounded in many ways.

    Takes: the cloth.

    Gives: the greatest of the bounds by area, by leaving out the small, and by rounding.

    Source: dual-feasible-2001.
    """
    widths = np.array([kind.width / cloth.width for kind in cloth.kinds])
    counts = np.array([float(kind.count) for kind in cloth.kinds])
    return max(float(worth @ counts) for worth in rounded_widths(widths))


def rounded_widths(widths: Reals) -> Iterator[Reals]:
    """Give widths (parts of the cloth's) rounded so that what fits still sums to at most 1.

    Takes: widths as parts of the cloth's width.

    Gives: the widths themselves, and by step and rounding functions.

    Source: dual-feasible-2001.
    """
    yield widths
    for parts in range(1, FINEST_PARTS):
        scaled = widths * (parts + 1)
        whole = np.abs(scaled - np.round(scaled)) < CLOSE
        yield np.where(whole, widths, np.floor(scaled + CLOSE) / parts)
    for small in np.unique(widths[widths <= 1 / 2]):
        yield np.where(widths > 1 - small + CLOSE, 1.0, np.where(widths < small - CLOSE, 0, widths))
        whole = np.floor(1 / small + CLOSE)
        high = 1 - np.floor((1 - widths) / small + CLOSE) / whole
        low = np.floor(widths / small + CLOSE) / whole
        half = np.abs(widths - 1 / 2) < CLOSE
        yield np.where(half, 0.5, np.where(widths > 1 / 2, high, low))
