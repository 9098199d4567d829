"""The best plan so far: every plan is checked before it is kept, and shown as soon as it is."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import ClothOrder, ClothPlan, Comparison
from foldwright.core.cloth.writing_out import Part, to_buy, written_out
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.fault import Fault

Rank = tuple[int, int, int]
SLACK_MM = 0.01  # by which a solver's bound may err; sums of lengths are far coarser


class Keeper:
    """Keeps the best sound plan and the best bound, and tells when to stop."""

    def __init__(
        self,
        order: ClothOrder,
        time_given_s: float,
        clock: Callable[[], float],
        watch: Callable[[ClothPlan], bool] | None,
    ) -> None:
        self.order, self.clock, self.watch = order, clock, watch
        self.ends_at = clock() + time_given_s
        self.plan: ClothPlan | None = None
        self.faults: tuple[Fault, ...] = ()
        self.shade_by_shade = self.first_fit = ZERO
        self.least: Length = ZERO
        self.cancelled = False
        self.rank: Rank | None = None

    def seconds_left(self) -> float:
        """Give the seconds left; none once the plan is proven or somebody cancelled."""
        if self.cancelled or self.proven:
            return 0.0
        return self.ends_at - self.clock()

    @property
    def proven(self) -> bool:
        """Tell whether the plan takes no more than is proven possible."""
        return self.plan is not None and self.bound >= self.plan.bought

    @property
    def bound(self) -> Length:
        """Give the least that can be bought or used, whatever the plan."""
        return to_buy(self.order, self.least)

    def used(self, parts: Sequence[Part]) -> int:
        """Give what parts of a job take, in whole units."""
        return sum(part.layout.rank[0] for part in parts)

    def offer(self, parts: Sequence[Part]) -> bool:
        """Keep a plan if it is sound and better; tell whether it was."""
        plan = written_out(self.order, parts, ZERO)
        if plan is None or (self.rank is not None and _rank(plan) >= self.rank):
            return False
        known = self._with_what_is_known(plan)
        if faults := faults_of(known, self.order):
            self.faults = faults
            return False
        self.rank, self.plan = _rank(plan), plan
        if self.watch is not None and not self.watch(known):
            self.cancelled = True
        return True

    def prove(self, least: Length) -> None:
        """Raise the bound on what is used."""
        self.least = max(self.least, least)

    def result(self) -> ClothPlan | None:
        """Give the best plan, if with all that is proven by now it is sound still.

        A plan below what is said to be possible means that the bound is wrong; what else was
        taken for proven is then in doubt too, so no plan is given.
        """
        if self.plan is None:
            return None
        short = self.cancelled or self.clock() >= self.ends_at
        known = self._with_what_is_known(self.plan, cut_short=short)
        if faults := faults_of(known, self.order):
            self.faults = faults
            return None
        return known

    def _with_what_is_known(self, plan: ClothPlan, *, cut_short: bool = False) -> ClothPlan:
        bought, bound = plan.bought, self.bound
        return replace(
            plan,
            bound=bound,
            proven=bound == bought,
            cut_short=cut_short and bound < bought,
            comparison=Comparison(
                plan=bought,
                shade_by_shade=self.shade_by_shade,
                first_fit=self.first_fit,
                bound=bound,
            ),
        )


def _rank(plan: ClothPlan) -> Rank:
    """Put least bought first, then fewest cuts, then the longest end of a roll left whole."""
    left = max((use.length - use.used for use in plan.rolls), default=ZERO)
    return plan.bought.nanometres, plan.cuts, -left.nanometres
