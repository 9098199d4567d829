"""What a job cuts from stock lengths, as its page shows it."""

from __future__ import annotations

import time
from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.stock.order import Bar, Cut
from foldwright.web.opened import OpenJob
from foldwright.work.job import Job, JobPlan
from foldwright.work.stock import MaterialCut, cut_stock
from foldwright.work.stock_answer import bought_in

SECONDS = 1.0


@dataclass(frozen=True, kw_only=True, slots=True)
class MaterialView:
    """One material: what to buy, each bar with its marks from one end, and the proof."""

    cut: MaterialCut
    system: System

    @property
    def title(self) -> str:
        """Name it, and count its pieces."""
        count = len(self.cut.parts)
        return f"{self.cut.material}: {'1 piece' if count == 1 else f'{count} pieces'}"

    @property
    def buy(self) -> str:
        """Say what to buy."""
        bought = bought_in(self.cut.plan) if self.cut.plan else ()
        words = ", ".join(f"{each.count} of “{each.bar}”" for each in bought)
        return f"Buy {words}." if words else "Buy nothing: the rack has it."

    @property
    def proof(self) -> str:
        """Say what it costs, and what is proven impossible to beat."""
        return self.cut.said

    @property
    def bars(self) -> Iterator[tuple[str, list[str], str]]:
        """Give each bar: its name and place, its cuts in order with their marks, what is left."""
        for bar in self.cut.plan.bars if self.cut.plan else ():
            yield self._bar(bar), [self._cut(cut) for cut in bar.cuts], self._print(bar.remainder)

    def _bar(self, bar: Bar) -> str:
        return f"{bar.name}, {'from the rack' if bar.from_rack else 'new'}"

    def _cut(self, cut: Cut) -> str:
        end = self._print(cut.start + cut.length)
        return f"{cut.need}: {self._print(cut.length)}, from {self._print(cut.start)} to {end}"

    def _print(self, length: Length) -> str:
        return print_length(length, self.system)


def material_views(job: OpenJob, read: Job) -> list[MaterialView]:
    """Plan what a job cuts from stock lengths, in the order in which it first asks for them."""
    plans = [job.view(number).plan for number in range(1, len(job.shades) + 1)]
    plan = JobPlan(job=read, shades=tuple(each for each in plans if each is not None))
    cuts = cut_stock(plan, time_given_s=SECONDS, clock=time.monotonic)
    return [MaterialView(cut=cut, system=job.system) for cut in cuts]
