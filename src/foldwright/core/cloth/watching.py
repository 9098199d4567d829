"""One part of a job while it is searched: what is found is laid out and kept if it is better."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from foldwright.core.cloth.choosing.model import Choice
from foldwright.core.cloth.columns import columns_of
from foldwright.core.cloth.keeping import Keeper
from foldwright.core.cloth.laying.laying_out import Layout, lay_out
from foldwright.core.cloth.laying.regrouping import as_wide_as_any, regrouped
from foldwright.core.cloth.level import Level, each_piece_once
from foldwright.core.cloth.writing_out import Part
from foldwright.core.quantity.length import Length

TRIES = 300
FEW_TRIES = 8


class PartWatch:
    """Takes what a search finds for one part of a job."""

    def __init__(
        self,
        keeper: Keeper,
        parts: list[Part],
        number: int,
        proved: Callable[[float], None] | None,
        seconds_left: Callable[[], float],
    ) -> None:
        self.keeper, self.parts, self.number = keeper, parts, number
        self.proved, self.seconds_left = proved, seconds_left

    @property
    def part(self) -> Part:
        """Give the part as it is laid out best so far."""
        return self.parts[self.number]

    @property
    def levels(self) -> list[Level]:
        """Give its cut lengths."""
        return [each.level for each in self.part.layout.laid]

    def offer(self, levels: Sequence[Level]) -> None:
        """Lay cut lengths out, each piece once, and keep the layout if it is better."""
        exact = each_piece_once(self.part.cloth, levels)
        self._keep(lay_out(self.part.cloth, exact, TRIES))

    def _keep(self, layout: Layout | None) -> None:
        if layout is not None and layout.rank < self.part.layout.rank:
            tried = list(self.parts)
            tried[self.number] = Part(self.part.cloth, layout)
            if self.keeper.offer(tried) or layout.rank[0] < self.part.layout.rank[0]:
                self.parts[self.number] = tried[self.number]

    def lay_again(self, again: int) -> None:
        """Look for a better layout of the same cut lengths."""
        self._keep(lay_out(self.part.cloth, self.levels, TRIES, again))

    def regroup(self, chance: np.random.Generator) -> None:
        """Look for better cut lengths where rolls are not all alike."""
        cloth = as_wide_as_any(self.part.cloth)
        levels = regrouped(cloth, self.levels, chance)
        layout = lay_out(cloth, levels, FEW_TRIES, int(chance.integers(1, 2**31)))
        if layout is not None and layout.rank <= self.part.layout.rank:
            tried = list(self.parts)
            tried[self.number] = Part(cloth, layout)
            self.keeper.offer(tried)
            self.parts[self.number] = tried[self.number]

    def prove(self, least: float) -> None:
        """Pass a bound on where it holds for the job."""
        if self.proved is not None:
            self.proved(least)

    def choice(self) -> Choice:
        """Give the best layout as a choice of the model: each roll ends with its last length."""
        cloth, columns = self.part.cloth, []
        laid = self.part.layout.laid
        for each, after in zip(laid, [*laid[1:], None], strict=True):
            ways = columns_of(cloth, each.level)
            columns.append(ways[0] if after and after.bolt == each.bolt else ways[-1])
        return Choice(columns, [], self.part.layout.rank[0] / cloth.per_mm)

    def worth(self) -> float:
        """Give the greatest length (mm) that would still be worth finding for this part."""
        cloth, used = self.part.cloth, self.part.layout.rank[0]
        plan = self.keeper.plan
        if self.keeper.order.buying is None or plan is None:
            return (used - cloth.grain) / cloth.per_mm
        less = Length(plan.bought.nanometres - 1)
        step = self.keeper.order.buying
        sold = step.whole_roll or step.increment
        return (less.nanometres // sold.nanometres * sold.nanometres) / 1_000_000
