"""The plan of one cloth: a sound one at once, then better until it is proven or time ends."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from foldwright.core.cloth.keeping import Keeper
from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.cloth.refusing.slips import faults_of
from foldwright.core.cloth.rooms.free_rooms import rooms_to_settle
from foldwright.core.cloth.rooms.settling import FreeRooms
from foldwright.core.cloth.way import Way
from foldwright.core.quantity.length import ZERO
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.answer import Answer
from foldwright.core.why.fault import Fault
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

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
        upright = FreeRooms if rooms_to_settle(order) else Way
        self.ways = [upright(order, keeper, turned=False, tell=self._proved)]
        if order.railroaded is not None:
            self.ways.append(Way(order, keeper, turned=True, tell=self._proved))
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


def _not_enough(order: ClothOrder, ways: Sequence[Way], system: System) -> Fault:
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
