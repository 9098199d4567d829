"""Plan where every piece of a job is cut, cloth by cloth, within the time that is given."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from itertools import count

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import ClothOrder, ClothPlan, RollUse
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.facts.order_limits import ROLL_MARGIN
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.answer import Answer
from foldwright.core.why.finding import Finding
from foldwright.work.cut_orders import ClothToCut, cloths_to_cut
from foldwright.work.job import Job, JobPlan
from foldwright.work.measured import as_measured
from foldwright.work.planning import rooms_of
from foldwright.work.stock import PlanAtFault

CUT_SHORT = "cloth.cut-short"
Clock = Callable[[], float]
Watch = Callable[[ClothToCut, ClothPlan], bool]


@dataclass(frozen=True, kw_only=True, slots=True)
class ClothCut:
    """One cloth of a job, and its plan; without one the findings say why."""

    to_cut: ClothToCut
    answer: Answer[ClothPlan]

    @property
    def plan(self) -> ClothPlan | None:
        """Give the plan, if there is one."""
        return self.answer.result

    @property
    def to_settle(self) -> tuple[Finding, ...]:
        """Give what stands in the way; that a search was ended early is said with the gap."""
        return tuple(each for each in self.answer.findings if each.id != CUT_SHORT)

    @property
    def short_rolls(self) -> tuple[RollUse, ...]:
        """Give the rolls in hand that a crooked end would leave too short."""
        if self.plan is None or not self.to_cut.in_hand:
            return ()
        used = (use for use in self.plan.rolls if use.used)
        return tuple(use for use in used if use.length - use.used < ROLL_MARGIN.value)

    def remarks(self, system: System) -> tuple[str, ...]:
        """Say what was taken for granted, and which roll has next to nothing to spare."""
        margin = print_length(ROLL_MARGIN.value, system)
        short = (
            f"Roll “{use.name}” has only {print_length(use.length - use.used, system)} to spare,"
            f" under {margin}: one crooked end leaves the last piece short."
            for use in self.short_rolls
        )
        return (*self.to_cut.remarks, *self._along(), *short)

    def _along(self) -> Iterator[str]:
        """Name the shades that were to be turned, where the plan lies along the roll."""
        if self.plan is not None and not self.plan.railroaded and self.to_cut.asked_turned:
            tags = ", ".join(self.to_cut.asked_turned)
            yield (
                "To be cut across the roll, but along it here, since turned it takes more or does"
                f" not fit: {tags}."
            )


def cloths_of(job: Job) -> tuple[ClothToCut, ...]:
    """Give every cloth of a job with its pieces, its order and the estimate, in an instant."""
    measured = as_measured(job)
    through = rooms_of(measured)  # what a last look would say moves no piece
    return cloths_to_cut(
        JobPlan(job=measured, shades=tuple(through(spec) for spec in measured.shades))
    )


def cut_cloths(
    cloths: tuple[ClothToCut, ...],
    *,
    time_given_s: float,
    clock: Clock,
    watch: Watch = lambda _cloth, _plan: True,
) -> tuple[ClothCut, ...]:
    """Plan the cuts of every cloth, sharing the time that is given.

    Takes: the cloths; the seconds for all of them; a clock in seconds; what looks at each
    better plan and gives False to take the best so far of this cloth and those after it.

    Gives: a plan for each cloth that can be cut, looked at a second time before anyone sees it.
    """
    return tuple(cut_in_turn(cloths, time_given_s=time_given_s, clock=clock, watch=watch))


def cut_in_turn(
    cloths: tuple[ClothToCut, ...], *, time_given_s: float, clock: Clock, watch: Watch
) -> Iterator[ClothCut]:
    """Plan the cuts of one cloth after another, as `cut_cloths`, and give each when it is done."""
    end = clock() + time_given_s
    for left, cloth in zip(count(len(cloths), -1), cloths, strict=False):
        better = _better_way(cloth, clock)
        share_s = max(0.0, end - clock()) / left
        yield cut_one(better, better.order, time_given_s=share_s, clock=clock, watch=watch)


def _better_way(cloth: ClothToCut, clock: Clock) -> ClothToCut:
    """Lay the board covers along the roll where the first plan shows that this takes less."""
    if not cloth.otherwise:
        return cloth
    ways = (cloth, *cloth.otherwise)
    return min(ways, key=lambda way: _first_length(way.order, clock))  # the first of equals


def _first_length(order: ClothOrder, clock: Clock) -> float:
    first = plan_cloth(order, time_given_s=0.0, clock=clock).result
    return math.inf if first is None else float(first.bought.nanometres)


def cut_one(
    cloth: ClothToCut, order: ClothOrder, *, time_given_s: float, clock: Clock, watch: Watch
) -> ClothCut:
    """Plan one cloth by an order, its own or one that asks what if.

    Raises: PlanAtFault where the second look finds a plan unsound.
    """
    answer = plan_cloth(
        order,
        time_given_s=time_given_s,
        clock=clock,
        watch=lambda plan: watch(cloth, plan),
        system=cloth.system,
    )
    if answer.result is not None and (wrong := faults_of(answer.result, order)):
        raise PlanAtFault(" ".join(fault.sentence for fault in wrong))
    return ClothCut(to_cut=replace(cloth, order=order), answer=answer)
