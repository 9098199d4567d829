"""Which cut lengths are worth having, where the motif leaves each piece a few places across.

For each piece as the one that reaches farthest, what may lie to its left and to its right is
first looked at as if a piece could lie there twice: one pass over all places gives the best
of that for every farthest piece at once. Only where this promises a gain are true sets of
pieces searched, and what was promised cuts the search short.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf

import numpy as np

from foldwright.core.cloth.columns import place_in
from foldwright.core.cloth.finding.rounds import Rounds
from foldwright.core.cloth.finding.side_by_side import Prices, Start
from foldwright.core.cloth.finding.worth import HAIR, Reals
from foldwright.core.cloth.laying.first_fit import may_join
from foldwright.core.cloth.level import Level, Strip, distance, level_of
from foldwright.core.cloth.whole import Cloth

SPOTS_SEARCHED = 40  # from one place of the repeat at a time
STEPS = 150  # of one search, until what was promised must do
MOST_STEPS = 40_000
HARDER = 6
STEPS_TO_LIST = 300_000


@dataclass(frozen=True, slots=True)
class Promise:
    """For each spot as the farthest reaching: the best worth left of and right of every edge."""

    left: Reals
    right: Reals


class InPlaces:
    """Finds cut lengths for given prices; every piece has a rule across."""

    def __init__(self, cloth: Cloth) -> None:
        self.cloth = cloth
        spots = [
            (left, number, drop)
            for number, kind in enumerate(cloth.kinds)
            for left, drop in cloth.places(kind)
        ]
        self.spots = sorted(spots)
        self.kinds = np.array([number for _, number, _ in self.spots])
        lefts = np.array([left for left, _, _ in self.spots])
        widths = np.array([cloth.kinds[number].width for _, number, _ in self.spots])
        edges = np.unique(np.concatenate([lefts, lefts + widths]))
        self.lefts = np.searchsorted(edges, lefts)
        self.rights = np.searchsorted(edges, lefts + widths)
        self.edges = len(edges)
        self.starts = tuple(self._start(place) for place in range(len(cloth.phases)))
        self._rounds = Rounds(self.starts)
        self.steps = STEPS

    def _start(self, place: int) -> Start:
        """Give how far each spot reaches behind a place in the repeat."""
        cloth = self.cloth
        phase = cloth.phases[place]
        behind = [self._behind(phase, number, drop) for _, number, drop in self.spots]
        reach = [
            each + cloth.kinds[number].length
            for each, (_, number, _) in zip(behind, self.spots, strict=True)
        ]
        far = [distance(cloth, phase, each) for each in reach]
        return Start(
            place=place,
            kinds=tuple(range(len(self.spots))),
            behind=tuple(behind),
            lengths=np.array(reach) / cloth.per_mm,
            far=np.array(far) / cloth.per_mm,
            ends=tuple(place_in(cloth, phase + each) for each in far),
        )

    def _behind(self, phase: int, number: int, drop: int) -> int:
        kind = self.cloth.kinds[number]
        if kind.along is None:
            return 0
        return (kind.along + drop * self.cloth.shift - phase) % self.cloth.repeat

    def worth_having(self, prices: Prices, enough: float = inf) -> tuple[list[Level], float | None]:
        """Find cut lengths that are worth more than they cost at these prices.

        Takes: prices; how many cut lengths are enough to stop at, before all places in the
        repeat are looked at.

        Gives: cut lengths; and the factor by which the prices must be divided so that none
        in the whole world is worth more than it costs, None if not all were looked at.

        Source: cutting-stock-1961; column-bound-1990 for the factor.
        """
        return self._rounds.look(lambda start: self._from(start, prices), enough)

    def harder(self) -> bool:
        """Search longer from now on; tell whether that can be."""
        self.steps *= HARDER
        return self.steps <= MOST_STEPS

    def _from(self, start: Start, prices: Prices) -> tuple[list[Level], float]:
        """Give the best cut lengths for the most promising spots, and the greatest worth per cost.

        Where a spot is not searched to the end, what was promised stands for its gain: it is
        never less.
        """
        promise = self._promise(start, prices.pieces)
        cost = np.minimum(*prices.thresholds(start))
        gains = self._promised(promise, prices.pieces) - cost
        order = np.argsort(-gains, kind="stable")
        order = order[gains[order] > HAIR]
        found: list[Level] = []
        for spot in order[:SPOTS_SEARCHED]:
            search = _Search(self, start, prices.pieces, promise, int(spot), float(cost[spot]))
            if search.run():
                gains[spot] = search.gain
            if search.best is not None:
                found.append(self._level(start, search.best))
        ratios = gains[order] / np.minimum(start.far, start.lengths)[order]
        return found, 1.0 + float(max(ratios, default=0.0))

    def _promise(self, start: Start, worth: Reals) -> Promise:
        """Look at all places once, with a column for each spot as the one reaching farthest."""
        spots = len(self.spots)
        worths = worth[self.kinds]
        reach = start.lengths
        left, right = np.zeros((self.edges, spots)), np.zeros((self.edges, spots))
        ends: list[list[int]] = [[] for _ in range(self.edges)]
        begins: list[list[int]] = [[] for _ in range(self.edges)]
        for spot in np.nonzero(worths > HAIR)[0].tolist():
            ends[self.rights[spot]].append(spot)
            begins[self.lefts[spot]].append(spot)
        allowed = {
            spot: np.where(reach[spot] <= reach, worths[spot], -np.inf)
            for row in ends
            for spot in row
        }
        for edge in range(1, self.edges):
            left[edge] = left[edge - 1]
            for spot in ends[edge]:
                np.maximum(left[edge], left[self.lefts[spot]] + allowed[spot], out=left[edge])
        for edge in range(self.edges - 2, -1, -1):
            right[edge] = right[edge + 1]
            for spot in begins[edge]:
                np.maximum(right[edge], right[self.rights[spot]] + allowed[spot], out=right[edge])
        return Promise(left, right)

    def _promised(self, promise: Promise, worth: Reals) -> Reals:
        spots = np.arange(len(self.spots))
        beside = promise.left[self.lefts, spots] + promise.right[self.rights, spots]
        total: Reals = beside + worth[self.kinds]
        return total

    def _level(self, start: Start, spots: Sequence[int]) -> Level:
        strips = [Strip(self.spots[n][1], self.spots[n][0], start.behind[n]) for n in spots]
        return level_of(self.cloth, self.cloth.phases[start.place], strips)

    def all_within(self, prices: Prices, gap: float, most: int) -> list[Level] | None:
        """List every cut length that a plan within `gap` (mm) of the bound could use.

        Takes: prices that no cut length is worth more than; the gap between plan and bound;
        how many at most.

        Gives: the cut lengths, or None if too many.

        Source: derived here.
        """
        found: list[Level] = []
        steps = STEPS_TO_LIST
        for start in self.starts:
            promise = self._promise(start, prices.pieces)
            cost = np.minimum(*prices.thresholds(start)) - gap
            promised = self._promised(promise, prices.pieces)
            for spot in np.nonzero(promised >= cost - HAIR)[0]:
                need = float(cost[spot]) - HAIR
                search = _Search(
                    self, start, prices.pieces, promise, int(spot), need, most - len(found), steps
                )
                if not search.run():
                    return None
                steps = search.steps
                found += [self._level(start, each) for each in search.all]
        return found


class _Search:
    """All true sets with one spot reaching farthest that are worth more than a cost.

    With `most` all are listed, else the best is sought.
    """

    def __init__(  # noqa: PLR0913, PLR0917 - a search and what it looks up
        self,
        finder: InPlaces,
        start: Start,
        worth: Reals,
        promise: Promise,
        spot: int,
        cost: float,
        most: int = 0,
        steps: int = 0,
    ) -> None:
        self.finder, self.spot, self.cost, self.most = finder, spot, cost, most
        self.worths = worth[finder.kinds]
        self.right = promise.right[:, spot]
        allowed = (start.lengths <= start.lengths[spot]) & (self.worths > HAIR)
        self.allowed = np.nonzero(allowed)[0]
        self.gain, self.steps = HAIR, steps or finder.steps
        self.best: tuple[int, ...] | None = None
        self.all: list[tuple[int, ...]] = []
        self._seen: dict[tuple[bool, tuple[int, ...]], int] = {}

    def run(self) -> bool:
        """Search; tell whether the end was reached."""
        return self._grow((), 0, 0.0, passed=False)

    def _grow(self, chosen: tuple[int, ...], edge: int, worth: float, *, passed: bool) -> bool:
        """Add a spot to the right of what is chosen, in each way that can still pay."""
        self.steps -= 1
        if self.steps <= 0:
            return False
        if self._known(chosen, edge, passed=passed):
            return True
        if passed and not self._take(chosen, worth):
            return False
        finder = self.finder
        for spot in self._next(edge, worth, passed=passed):
            if not self._may_join(chosen, spot, passed=passed):
                continue
            more = worth + float(self.worths[spot])
            if not self._grow((*chosen, spot), finder.rights[spot], more, passed=passed):
                return False
        if passed or finder.lefts[self.spot] < edge:
            return True
        more = worth + float(self.worths[self.spot])
        return self._grow((*chosen, self.spot), finder.rights[self.spot], more, passed=True)

    def _known(self, chosen: tuple[int, ...], edge: int, *, passed: bool) -> bool:
        """Tell whether the same pieces were met before and reached no farther right."""
        spots = self.finder.spots
        key = (
            passed,
            tuple(sorted(spots[n][1] * self.finder.cloth.drops + spots[n][2] for n in chosen)),
        )
        if self._seen.get(key, edge + 1) <= edge:
            return True
        self._seen[key] = edge
        return False

    def _next(self, edge: int, worth: float, *, passed: bool) -> list[int]:
        """Give spots behind an edge that can still lead to a gain, the most promising first.

        Of a piece on one drop only the leftmost spot matters: what follows has most room.
        """
        finder, some = self.finder, self.allowed
        need = self.cost + (-HAIR if self.most else self.gain)
        lefts, rights = finder.lefts[some], finder.rights[some]
        ahead = self.right[rights] + self.worths[some] + worth
        fits = (lefts >= edge) & (ahead > need)
        if not passed:
            fits &= rights <= finder.lefts[self.spot]
        leftmost: dict[tuple[int, int], tuple[float, int]] = {}
        for spot, hope in zip(some[fits].tolist(), ahead[fits].tolist(), strict=True):
            leftmost.setdefault(finder.spots[spot][1:], (-hope, spot))
        return [spot for _, spot in sorted(leftmost.values())]

    def _may_join(self, chosen: tuple[int, ...], spot: int, *, passed: bool) -> bool:
        """Tell whether a spot's piece is not used up, nor its shade's other side there."""
        spots, cloth = self.finder.spots, self.finder.cloth
        others = [spots[n][1] for n in chosen] + ([] if passed else [spots[self.spot][1]])
        number = spots[spot][1]
        return others.count(number) < cloth.kinds[number].count and may_join(cloth, number, others)

    def _take(self, chosen: tuple[int, ...], worth: float) -> bool:
        """Take a set if it pays; tell whether to go on."""
        if self.most:
            if worth >= self.cost:
                self.all.append(chosen)
            return len(self.all) < self.most
        if worth - self.cost > self.gain:
            self.gain, self.best = worth - self.cost, chosen
        return True
