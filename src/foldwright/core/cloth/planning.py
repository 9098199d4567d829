"""The plan of one cloth: a sound one at once, then better until it is proven or time ends."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import islice

import numpy as np

from foldwright.core.cloth.comparing import on_one_roll, shade_by_shade
from foldwright.core.cloth.dividing import Division, Starts, divisions, whole_cloth
from foldwright.core.cloth.first_fit import first_fit
from foldwright.core.cloth.free_rooms import (
    room_alone,
    rooms_to_settle,
    settle,
    starts_to_try,
)
from foldwright.core.cloth.gathering import rooms_of
from foldwright.core.cloth.keeping import SLACK_MM, Keeper
from foldwright.core.cloth.laying_out import lay_out
from foldwright.core.cloth.narrowing import narrowed
from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.cloth.refusing import faults_of
from foldwright.core.cloth.searching import (
    bound_alone,
    bound_of,
    bound_without_repeat,
    finder_of,
    search,
)
from foldwright.core.cloth.starting import CutTogether, better_starts, cut_lengths
from foldwright.core.cloth.watching import PartWatch
from foldwright.core.cloth.whole import length_of, units_in_a_nanometre
from foldwright.core.cloth.without_repeat import (
    Beside,
    PlainSearch,
    beside_of,
    without_repeat,
)
from foldwright.core.cloth.writing_out import Part
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.answer import Answer
from foldwright.core.why.fault import Fault
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

FIRST_TRIES = 5
TRIES = 300
MOST_DIVISIONS = 64
"""Ways to divide the job among lots and widths that are looked at quickly."""
FEW_DIVISIONS = 4
"""The same, each time that a free room is moved."""
SEARCHED = 2
"""Of these, how many are searched."""
LAID_IN_VAIN = 12
REGROUPED = 40
NEVER = 2**62
PLAIN = 0.25
"""Part of the time for the job without its repeat, where rooms may start anywhere."""
SETTLING = 0.3
"""Part of the time for settling where free rooms start."""
NARROWING = 0.6
"""Part of the time left for proving how little they take wherever rooms start."""
BEYOND = 0.05  # mm above what is worth finding: what is proven if there is nothing
AGAIN = 0.25
"""Part of the time left for settling them again, and as much for searching with these starts."""
FOR_THE_FIRST = 0.6
"""Part of the time left for the more promising way to lay the cloth."""


def plan_cloth(
    order: ClothOrder,
    *,
    time_given_s: float,
    clock: Callable[[], float],
    watch: Callable[[ClothPlan], bool] | None = None,
    system: System = System.METRIC,
) -> Answer[ClothPlan]:
    """Plan where every piece of one cloth is cut.

    Takes: the order; the seconds to use at most; a clock that gives seconds; who looks at each
    better plan and says whether to go on; the system of the reader.

    Gives: a plan that passed the checker, with its bound and comparison; or the faults of the
    order, each with what would work.

    Holds for: 1 to 2,000 shades; time only ends the search, so the same steps give the same
    plan.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Buying, ClothPiece
    >>> from foldwright.core.quantity.length import Length
    >>> piece = ClothPiece(name="1", shade="A", room="", layer="face",
    ...                    width=Length.mm(900), length=Length.mm(1500))
    >>> buying = Buying(usable_width=Length.mm(1400), increment=Length.mm(100))
    >>> order = ClothOrder(pieces=(piece,), buying=buying)
    >>> plan_cloth(order, time_given_s=1.0, clock=lambda: 0.0).result.bought.in_millimetres
    1500.0
    """
    if faults := faults_of(order, system):
        return Answer(result=None, findings=tuple(_stop(fault) for fault in faults))
    keeper = Keeper(order, time_given_s, clock, watch)
    job = _Job(order, keeper)
    job.plan()
    plan = keeper.result()
    if plan is None:
        faults = keeper.faults or (_not_enough(order, job.ways, system),)
        return Answer(result=None, findings=tuple(_stop(fault) for fault in faults))
    return Answer(result=plan, findings=(_cut_short(),) if plan.cut_short else ())


class _Job:
    """The ways to lay one cloth, upright or turned, and what is proven of each."""

    def __init__(self, order: ClothOrder, keeper: Keeper) -> None:
        self.order, self.keeper = order, keeper
        self.ways = [_Way(order, keeper, turned=False, proved=self._proved)]
        if order.railroaded is not None:
            self.ways.append(_Way(order, keeper, turned=True, proved=self._proved))
        self.ways = [way for way in self.ways if way.can_be_cut]

    def _proved(self) -> None:
        """Take what is proven: the job can do no better than the better of its ways."""
        self.keeper.prove(min(way.least for way in self.ways))

    def plan(self) -> None:
        """Plan each way at once, then search the more promising first."""
        for way in self.ways:
            way.compare()
        self.keeper.shade_by_shade = min(way.shade_by_shade for way in self.ways)
        self.keeper.first_fit = min(way.first_fit for way in self.ways)
        for way in self.ways:
            way.start()
        ways = sorted(self.ways, key=lambda way: way.first_fit)
        for number, way in enumerate(ways):
            share = 1.0 if number == len(ways) - 1 else FOR_THE_FIRST
            way.search(self.keeper.clock() + share * self.keeper.seconds_left())


class _Way:
    """One way to lay the cloth."""

    def __init__(
        self, order: ClothOrder, keeper: Keeper, *, turned: bool, proved: Callable[[], None]
    ) -> None:
        self.order, self.keeper, self.turned, self._tell = order, keeper, turned, proved
        self.least = self.shade_by_shade = self.first_fit = ZERO
        self.rooms = () if turned else rooms_to_settle(order)
        self.started: list[tuple[int, Starts, list[Part]]] = []
        self.whole = whole_cloth(order, {}, turned=turned)
        self.beside: list[Beside] = []
        self.chance = np.random.default_rng(len(order.pieces))

    @property
    def can_be_cut(self) -> bool:
        """Tell whether every piece is narrow enough."""
        return all(kind.width <= self.whole.width for kind in self.whole.kinds)

    @property
    def alone(self) -> bool:
        """Tell whether there is but one cloth to search, so that what it proves holds for all."""
        return not self.rooms and self.undivided

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
        for starts in starts_to_try(self.order) if self.rooms else ({},):
            self._start_with(starts)

    def _start_with(self, starts: Starts) -> int:
        """Plan at once with given starts of the free rooms; give what that takes."""
        least = NEVER
        divided = divisions(self.order, starts, turned=self.turned)
        for cloths in islice(divided, FEW_DIVISIONS if self.rooms else MOST_DIVISIONS):
            if (parts := _at_once(cloths)) is not None:
                least = min(least, self._started_with(starts, parts))
        return least

    def _started_with(self, starts: Starts, parts: list[Part]) -> int:
        """Keep parts of a plan if they are among the best; give what they take."""
        used = self.keeper.used(parts)
        self.started.append((used, starts, parts))
        self.started.sort(key=lambda each: each[0])
        del self.started[SEARCHED:]
        self.keeper.offer(parts)
        return used

    def search(self, until: float) -> None:
        """Search the most promising divisions."""
        if not self.alone:
            self._prove_whole(until)
        self._settle_rooms(until)
        self._narrow(self._after(NARROWING, until))
        for _, _, parts in self.started:
            self._search_parts(parts, until)
        again, vain = 0, 0
        while vain < LAID_IN_VAIN and self._seconds_left(until) > 0:
            again += 1
            before = self.keeper.rank
            for _, _, parts in self.started:
                self._lay_again(parts, again, until)
            self._settle_again(until)
            vain = 0 if self.keeper.rank != before else vain + 1

    def _lay_again(self, parts: list[Part], again: int, until: float) -> None:
        """Look for better places where there are several rolls, or flaws."""
        for number, part in enumerate(parts):
            hard = len(part.cloth.bolts) > 1 or part.cloth.bolts[0].flaws
            watch = PartWatch(self.keeper, parts, number, None, until)
            if hard and watch.seconds_left() > 0:
                watch.lay_again(again)
                for _ in range(REGROUPED):
                    if watch.seconds_left() > 0:
                        watch.regroup(self.chance)

    def _search_parts(self, parts: list[Part], until: float) -> None:
        for number in range(len(parts)):
            proved = self._proved if self.alone else None
            watch = PartWatch(self.keeper, parts, number, proved, until)
            if watch.seconds_left() > 0:
                search(finder_of(parts[number].cloth), watch.levels, watch)

    def _settle_rooms(self, until: float) -> None:
        """Move free rooms to better starts for a part of the time."""
        stop = self._after(SETTLING, until)
        if self.rooms and self.undivided:
            self._settle_for(self.beside, stop)
            return
        for _, starts, _ in list(self.started) if self.rooms else ():
            for _ in settle(
                self.order, starts, self._start_with, lambda: self._seconds_left(stop) > 0
            ):
                pass

    def _settle_for(self, beside: Sequence[Beside], until: float) -> None:
        """Move free rooms to where given cut lengths take least, and cut these."""
        together = CutTogether(self.order, self.whole, beside)
        starts = self.started[0][1] if self.started else {}
        better = better_starts(together, starts, self.chance, lambda: self._seconds_left(until) > 0)
        for found, _ in better:
            (cloth,) = next(divisions(self.order, found, turned=self.turned))
            layout = lay_out(cloth, cut_lengths(cloth, beside), FIRST_TRIES)
            if layout is not None:
                self._started_with(found, [Part(cloth, layout)])

    def _narrow(self, until: float) -> None:
        """Prove how little the job takes wherever rooms start, and search with such starts."""
        rooms = rooms_of(self.order, self.whole) if self.rooms else None
        if rooms is None or self.keeper.plan is None or self._seconds_left(until) <= 0:
            return
        narrowing = narrowed(
            rooms, self._most_rolls, self._worth, lambda: self._seconds_left(until) > 0
        )
        if narrowing is None:
            return
        found = narrowing.run(lambda: self._seconds_left(until))
        self._proved(narrowing.bound)
        for starts in found[-1:]:
            parts = _at_once(next(divisions(self.order, starts, turned=self.turned)))
            if parts is not None:
                self.keeper.offer(parts)
                self._search_parts(parts, self._after(AGAIN, until))

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
            less = bought.in_millimetres - self._grain / self.whole.per_mm
            return min(less + BEYOND, bought.in_millimetres)
        step = (buying.whole_roll or buying.increment).nanometres
        return Length((bought.nanometres - 1) // step * step).in_millimetres + BEYOND

    def _settle_again(self, until: float) -> None:
        """Settle rooms for the best cut lengths so far, and search with these starts."""
        plan = self.keeper.plan
        if not self.rooms or not self.undivided or plan is None or plan.railroaded:
            return
        units = units_in_a_nanometre(self.order)
        self._settle_for(beside_of(plan, units), self._after(AGAIN, until))
        self._search_parts(self.started[0][2], self._after(AGAIN, until))

    def _after(self, share: float, until: float) -> float:
        """Give when so much of the time left will be used."""
        return self.keeper.clock() + share * self._seconds_left(until)

    def _seconds_left(self, until: float) -> float:
        return min(self.keeper.seconds_left(), until - self.keeper.clock())

    def _prove_whole(self, until: float) -> None:
        """Prove what holds for all divisions: rooms wherever they start, lots and widths alike."""

        def go_on() -> bool:
            return self._seconds_left(until) > 0

        if not self.rooms:
            self._proved(bound_of(self.whole, go_on))
            return
        self._proved(bound_without_repeat(self.whole, go_on))
        stop = self._after(PLAIN, until)
        plain = PlainSearch(
            without_repeat(self.whole), self._proved, lambda: self._seconds_left(stop)
        )
        plain.run()
        self.beside = plain.beside(self.order)
        for room in self.rooms:
            if go_on():
                self._proved(bound_alone(room_alone(self.order, room), go_on))

    @property
    def _grain(self) -> int:
        """Give the step of which the least for this cloth is a multiple.

        Rooms tie rolls and flaws together, so with several, or with flaws, it may be anything.
        """
        bolts = self.whole.bolts
        if self.rooms and (self._most_rolls > 1 or any(bolt.flaws for bolt in bolts)):
            return 1
        return self.whole.grain

    def _proved(self, least: float) -> None:
        """Take a bound in mm, and round it up to the grain of all positions."""
        grain, per_mm = self._grain, self.whole.per_mm
        steps = -(-(least - SLACK_MM - 1e-7 * least) * per_mm // grain)
        self.least = max(self.least, length_of(self.whole, int(steps) * grain))
        self._tell()


def _at_once(cloths: Division) -> list[Part] | None:
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


def _stop(fault: Fault) -> Finding:
    return Finding(
        id="cloth.order",
        severity=Severity.STOP,
        stage=Stage.TABLE,
        sentence=f"The cloth cannot be cut as it is asked: {fault.where}: {fault.what}.",
        remedies=(Remedy(sentence=fault.remedy),),
    )


def _cut_short() -> Finding:
    return Finding(
        id="cloth.cut-short",
        severity=Severity.NOTE,
        stage=Stage.TABLE,
        sentence="The search was ended early: this is the best plan so far.",
        remedies=(Remedy(sentence="Give it more time, or cut from this plan as it is."),),
    )


def _not_enough(order: ClothOrder, ways: Sequence[_Way], system: System) -> Fault:
    """Say how much more cloth is wanted where no way was found to cut all pieces."""
    held = sum((roll.length - roll.head_loss for roll in order.rolls), ZERO)
    wanted = min((way.first_fit for way in ways), default=ZERO)
    more = max(wanted - held, max((piece.length for piece in order.pieces), default=ZERO))
    lots = len({roll.lot for roll in order.rolls}) > 1
    return Fault(
        where="rolls",
        what=f"no way was found to cut all pieces from them{' by dye lots' if lots else ''}; on "
        f"one roll without flaws they take {print_length(wanted, system)}",
        remedy=f"Add a roll of {print_length(more, system)} or more"
        f"{' of one lot' if lots else ''}, or leave a shade for later.",
    )
