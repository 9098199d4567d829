"""One way to lay a cloth on which some rooms may start anywhere in the repeat.

Rooms are moved to where their cut lengths follow one another; what is proven holds wherever
they start.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from foldwright.core.cloth.choosing.bounding import bound_alone, bound_without_repeat
from foldwright.core.cloth.dividing import Starts, divisions
from foldwright.core.cloth.keeping import Keeper
from foldwright.core.cloth.laying.laying_out import lay_out
from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.rooms.free_rooms import (
    room_alone,
    rooms_to_settle,
    settle,
    starts_to_try,
)
from foldwright.core.cloth.rooms.gathering import rooms_of
from foldwright.core.cloth.rooms.narrowing import narrowed
from foldwright.core.cloth.rooms.starting import CutTogether, better_starts, cut_lengths
from foldwright.core.cloth.rooms.without_repeat import (
    Beside,
    PlainSearch,
    beside_of,
    without_repeat,
)
from foldwright.core.cloth.way import FIRST_TRIES, Way, at_once
from foldwright.core.cloth.whole import units_in_a_nanometre
from foldwright.core.cloth.writing_out import Part
from foldwright.core.quantity.length import Length

FEW_DIVISIONS = 4
"""Ways to divide the job that are looked at, each time that a room is moved."""
PLAIN = 0.25
"""Part of the time for the job without its repeat, where rooms may start anywhere."""
SETTLING = 0.3
"""Part of the time for settling where free rooms start."""
NARROWING = 0.6
"""Part of the time left for proving how little they take wherever rooms start."""
BEYOND = 0.05  # mm above what is worth finding: what is proven if there is nothing
AGAIN = 0.25
"""Part of the time left for settling them again, and as much for searching with these starts."""


class FreeRooms(Way):
    """One way to lay the cloth, upright, with rooms to settle."""

    def __init__(
        self, order: ClothOrder, keeper: Keeper, *, turned: bool, tell: Callable[[], None]
    ) -> None:
        super().__init__(order, keeper, turned=turned, tell=tell)
        self.rooms = rooms_to_settle(order)
        self.beside: list[Beside] = []

    @property
    def alone(self) -> bool:
        """Tell that no single cloth to search proves what holds for all starts."""
        return False

    @property
    def grain(self) -> int:
        """Give the step of which the least for this cloth is a multiple.

        Rooms tie rolls and flaws together, so with several, or with flaws, it may be anything.
        """
        bolts = self.whole.bolts
        if self._most_rolls > 1 or any(bolt.flaws for bolt in bolts):
            return 1
        return self.whole.grain

    def start(self) -> None:
        """Make plans at once, with rooms that start alike or one behind the other."""
        for starts in starts_to_try(self.order):
            self._cost_of(starts)

    def _cost_of(self, starts: Starts) -> int:
        return self.start_with(starts, FEW_DIVISIONS)

    def prepare(self, until: float) -> None:
        """Prove what can be, and find where rooms start best."""
        self._prove(until)
        self._settle_rooms(until)
        self._narrow(self.after(NARROWING, until))

    def _prove(self, until: float) -> None:
        """Prove what holds wherever rooms start, and for all lots and widths."""

        def go_on() -> bool:
            return self.seconds_left(until) > 0

        self.proved(bound_without_repeat(self.whole, go_on))
        stop = self.after(PLAIN, until)
        plain = PlainSearch(
            without_repeat(self.whole), self.proved, lambda: self.seconds_left(stop)
        )
        plain.run()
        self.beside = plain.beside(self.order)
        for room in self.rooms:
            if go_on():
                self.proved(bound_alone(room_alone(self.order, room), go_on))

    def _settle_rooms(self, until: float) -> None:
        """Move free rooms to better starts for a part of the time."""
        stop = self.after(SETTLING, until)
        if self.undivided:
            self._settle_for(self.beside, stop)
            return
        for _, starts, _ in list(self.started):
            for _ in settle(self.order, starts, self._cost_of, lambda: self.seconds_left(stop) > 0):
                pass

    def _settle_for(self, beside: Sequence[Beside], until: float) -> None:
        """Move free rooms to where given cut lengths take least, and cut these."""
        together = CutTogether(self.order, self.whole, beside)
        starts = self.started[0][1] if self.started else {}
        better = better_starts(together, starts, self.chance, lambda: self.seconds_left(until) > 0)
        for found, _ in better:
            (cloth,) = next(divisions(self.order, found, turned=self.turned))
            layout = lay_out(cloth, cut_lengths(cloth, beside), FIRST_TRIES)
            if layout is not None:
                self.started_with(found, [Part(cloth, layout)])

    def _narrow(self, until: float) -> None:
        """Prove how little the job takes wherever rooms start, and search with such starts."""
        rooms = rooms_of(self.order, self.whole)
        if rooms is None or self.keeper.plan is None or self.seconds_left(until) <= 0:
            return
        narrowing = narrowed(
            rooms, self._most_rolls, self._worth, lambda: self.seconds_left(until) > 0
        )
        if narrowing is None:
            return
        found = narrowing.run(lambda: self.seconds_left(until))
        self.proved(narrowing.bound)
        for starts in found[-1:]:
            parts = at_once(next(divisions(self.order, starts, turned=self.turned)))
            if parts is not None:
                self.keeper.offer(parts)
                self.search_parts(parts, self.after(AGAIN, until))

    @property
    def _most_rolls(self) -> int:
        """Give how many rolls there may be at most."""
        if self.order.buying is None:
            return len(self.order.rolls)
        return 1 if self.order.buying.whole_roll is None else len(self.order.pieces)

    @property
    def _worth(self) -> float:
        """Give a length (mm) so little above any that is worth finding that it proves the plan."""
        assert self.keeper.plan is not None  # noqa: S101 - asked only once there is a plan
        bought, buying = self.keeper.plan.bought, self.order.buying
        if buying is None:
            less = bought.in_millimetres - self.grain / self.whole.per_mm
            return min(less + BEYOND, bought.in_millimetres)
        step = (buying.whole_roll or buying.increment).nanometres
        return Length((bought.nanometres - 1) // step * step).in_millimetres + BEYOND

    def prepare_again(self, until: float) -> None:
        """Settle rooms for the best cut lengths so far, and search with these starts."""
        plan = self.keeper.plan
        if not self.undivided or plan is None or plan.railroaded:
            return
        units = units_in_a_nanometre(self.order)
        self._settle_for(beside_of(plan, units), self.after(AGAIN, until))
        self.search_parts(self.started[0][2], self.after(AGAIN, until))
