"""The best plan so far: shown as soon as it is found, and what is proven of the least cost."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from dataclasses import replace

from foldwright.core.stock.filling import Filled, cost_of
from foldwright.core.stock.order import CutOrder, StockPlan
from foldwright.core.stock.racking import rack_first
from foldwright.core.stock.whole import HAIR, Whole
from foldwright.core.stock.writing_out import written_out

Watch = Callable[[StockPlan], bool]


class Keeper:
    """Keeps the cheapest bars and the best bound, and tells when to stop."""

    def __init__(
        self,
        order: CutOrder,
        whole: Whole,
        bars: list[Filled],
        *,
        clock: Callable[[], float],
        watch: Watch,
    ) -> None:
        self.order, self.whole, self.bars = order, whole, rack_first(whole, bars)
        self.least_cost = 0.0
        self._clock, self._watch = clock, watch
        self._cancelled = False

    @property
    def cost(self) -> float:
        """Give what the best bars cost."""
        return cost_of(self.whole, self.bars)

    @property
    def proven(self) -> bool:
        """Tell whether nothing can cost less."""
        return self.cost <= self.least_cost + HAIR

    @property
    def missing(self) -> Counter[str]:
        """Count the bars that nobody has and these cuts want."""
        sources = (self.whole.sources[bar.source] for bar in self.bars)
        return Counter(source.name for source in sources if source.missing)

    def seconds_left(self) -> float:
        """Give the seconds left; none once the plan is proven or somebody cancelled."""
        return 0.0 if self._cancelled or self.proven else max(0.0, self._clock())

    def prove(self, least_cost: float) -> None:
        """Raise the least cost to what is proven."""
        self.least_cost = max(self.least_cost, least_cost)

    def offer(self, bars: list[Filled] | None) -> None:
        """Keep bars that cost less."""
        if bars is not None and cost_of(self.whole, bars) < self.cost - HAIR:
            self.bars = rack_first(self.whole, bars)
            self.show()

    def show(self) -> None:
        """Show the plan as it stands, if it can be cut; whoever looks may end the search."""
        if not self.missing:
            self._cancelled = not self._watch(self._plan()) or self._cancelled

    def result(self) -> StockPlan:
        """Give the best plan, marked where the search for a better one was ended."""
        return replace(self._plan(), cut_short=not self.proven and self.seconds_left() <= 0)

    def _plan(self) -> StockPlan:
        return written_out(self.order, self.whole, self.bars, self.least_cost)
