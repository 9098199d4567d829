"""One way to lay the cloth, upright or turned: divided, planned at once, searched, laid again."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from itertools import islice

import numpy as np

from foldwright.core.cloth.choosing.bounding import bound_of, finder_of
from foldwright.core.cloth.choosing.searching import search
from foldwright.core.cloth.comparing import on_one_roll, shade_by_shade
from foldwright.core.cloth.dividing import Division, Starts, divisions, whole_cloth
from foldwright.core.cloth.keeping import SLACK_MM, Keeper
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.laying.laying_out import lay_out
from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.watching import PartWatch
from foldwright.core.cloth.whole import length_of
from foldwright.core.cloth.writing_out import Part, to_buy
from foldwright.core.quantity.length import ZERO

FIRST_TRIES = 5
MOST_DIVISIONS = 64
"""Ways to divide the job among lots and widths that are looked at quickly."""
SEARCHED = 2
"""Of these, how many are searched."""
LAID_IN_VAIN = 12
REGROUPED = 40
NEVER = 2**62


class Way:
    """One way to lay the cloth."""

    def __init__(
        self, order: ClothOrder, keeper: Keeper, *, turned: bool, tell: Callable[[], None]
    ) -> None:
        self.order, self.keeper, self.turned, self._tell = order, keeper, turned, tell
        self.least = self.shade_by_shade = self.first_fit = ZERO
        self.started: list[tuple[int, Starts, list[Part]]] = []
        self.whole = whole_cloth(order, {}, turned=turned)
        self.chance = np.random.default_rng(len(order.pieces))

    @property
    def can_be_cut(self) -> bool:
        """Tell whether every piece is narrow enough."""
        return all(kind.width <= self.whole.width for kind in self.whole.kinds)

    @property
    def alone(self) -> bool:
        """Tell whether there is but one cloth to search, so that what it proves holds for all."""
        return self.undivided

    @property
    def undivided(self) -> bool:
        """Tell whether all pieces are cut from all the cloth, with no lots or widths to choose."""
        return len({(r.lot, r.usable_width) for r in self.order.rolls}) <= 1

    def compare(self) -> None:
        """Find what simpler ways of planning would take."""
        self.first_fit = on_one_roll(self.order, self.whole, first_fit(self.whole))
        self.shade_by_shade = shade_by_shade(self.order, self.whole)

    def start(self) -> None:
        """Make plans at once: the longest first."""
        self.start_with({}, MOST_DIVISIONS)

    def start_with(self, starts: Starts, most: int) -> int:
        """Plan at once with given starts of the free rooms; give what that takes."""
        least = NEVER
        for cloths in islice(divisions(self.order, starts, turned=self.turned), most):
            if (parts := at_once(cloths)) is not None:
                least = min(least, self.started_with(starts, parts))
        return least

    def started_with(self, starts: Starts, parts: list[Part]) -> int:
        """Keep parts of a plan if they are among the best; give what they take."""
        used = self.keeper.used(parts)
        self.started.append((used, starts, parts))
        self.started.sort(key=lambda each: each[0])
        del self.started[SEARCHED:]
        self.keeper.offer(parts)
        return used

    def search(self, until: float) -> None:
        """Search the most promising divisions."""
        self.prepare(until)
        for _, _, parts in self.started:
            self.search_parts(parts, until)
        again, vain = 0, 0
        while vain < LAID_IN_VAIN and self.seconds_left(until) > 0:
            again += 1
            before = self.keeper.rank
            for _, _, parts in self.started:
                self._lay_again(parts, again, until)
            self.prepare_again(until)
            vain = 0 if self.keeper.rank != before else vain + 1

    def prepare(self, until: float) -> None:
        """Prove what holds for all divisions, where no single one can."""
        if not self.alone:
            self.proved(bound_of(self.whole, lambda: self.seconds_left(until) > 0))

    def prepare_again(self, until: float) -> None:
        """Do what can only be done once there are good plans: here nothing."""

    def _lay_again(self, parts: list[Part], again: int, until: float) -> None:
        """Look for better places where there are several rolls, or flaws."""
        for number, part in enumerate(parts):
            hard = len(part.cloth.bolts) > 1 or part.cloth.bolts[0].flaws
            watch = self._watch(parts, number, until)
            if hard and watch.seconds_left() > 0:
                watch.lay_again(again)
                for _ in range(REGROUPED):
                    if watch.seconds_left() > 0:
                        watch.regroup(self.chance)

    def search_parts(self, parts: list[Part], until: float) -> None:
        """Search the parts of a plan."""
        for number in range(len(parts)):
            watch = self._watch(parts, number, until)
            if watch.seconds_left() > 0:
                search(finder_of(parts[number].cloth), watch.levels, watch)

    def _watch(self, parts: list[Part], number: int, until: float) -> PartWatch:
        proved = self.proved if self.alone else None
        left = partial(self.seconds_left, until)
        return PartWatch(self.keeper, parts, number, proved, left)

    def after(self, share: float, until: float) -> float:
        """Give when so much of the time left will be used."""
        return self.keeper.clock() + share * self.seconds_left(until)

    def seconds_left(self, until: float) -> float:
        """Give the seconds left until a time; none once the best this way is proven."""
        if self.order.railroaded is not None and self._proven:
            return 0.0
        return min(self.keeper.seconds_left(), until - self.keeper.clock())

    @property
    def _proven(self) -> bool:
        """Tell whether no plan laid this way takes less than the best, or than any other way."""
        used = min((self.keeper.used(parts) for _, _, parts in self.started), default=NEVER)
        least = to_buy(self.order, self.least)
        return self.least > ZERO and least >= to_buy(self.order, length_of(self.whole, used))

    @property
    def grain(self) -> int:
        """Give the step of which the least for this cloth is a multiple."""
        return self.whole.grain

    def proved(self, least: float) -> None:
        """Take a bound in mm, and round it up to the grain of all positions."""
        grain, per_mm = self.grain, self.whole.per_mm
        steps = -(-(least - SLACK_MM - 1e-7 * least) * per_mm // grain)
        self.least = max(self.least, length_of(self.whole, int(steps) * grain))
        self._tell()


def at_once(cloths: Division) -> list[Part] | None:
    """Lay out the first fit of each part; None if one does not fit its rolls."""
    parts = []
    for cloth in cloths:
        if any(kind.width > cloth.width for kind in cloth.kinds):
            return None
        layout = lay_out(cloth, first_fit(cloth), FIRST_TRIES)
        if layout is None:
            return None
        parts.append(Part(cloth, layout))
    return parts
