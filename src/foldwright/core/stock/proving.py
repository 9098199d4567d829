"""Whole bars at last: choose among the ways to fill one."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from foldwright.core.stock.bounding import Column, covering, round_up
from foldwright.core.stock.filling import Filled
from foldwright.core.stock.whole import Whole, cost_step

OUT_OF_TIME = 1  # as the solver says it


@dataclass(frozen=True, kw_only=True, slots=True)
class Choice:
    """The best choice found among columns, and the least that any choice among them costs."""

    bars: list[Filled] | None
    least_cost: float
    settled: bool  # no more time would find a better one


def best_of(whole: Whole, columns: list[Column], seconds: float) -> Choice:
    """Choose whole bars among the given ways to fill one, at least cost.

    Takes: an order in whole units; ways to fill a bar; the seconds to use at most.

    Gives: the best choice found in the time, without surplus pieces, and what is proven of
    any choice.

    Holds for: what these columns can do; other columns may do better.

    Source: derived here.
    """
    model, counts = covering(whole, columns), np.array(whole.counts, dtype=float)
    rules = [LinearConstraint(model.pieces, lb=counts)]
    if model.limited:
        rules.append(LinearConstraint(model.bars, ub=model.limits))
    solved = milp(
        model.costs,
        constraints=rules,
        integrality=np.ones(len(columns), dtype=np.int64),
        bounds=Bounds(lb=0),
        options={"time_limit": max(seconds, 0.01), "mip_rel_gap": 0.0},
    )
    least = round_up(float(solved.mip_dual_bound or 0.0), cost_step(whole))
    settled = solved.status != OUT_OF_TIME
    if solved.x is None:
        return Choice(bars=None, least_cost=least, settled=settled)
    bars = without_surplus(whole, columns, np.rint(solved.x).astype(int).tolist())
    return Choice(bars=bars, least_cost=least, settled=settled)


def without_surplus(whole: Whole, columns: list[Column], times: list[int]) -> list[Filled]:
    """Take each column as often as chosen, leaving out pieces that are already cut."""
    left, bars = list(whole.counts), []
    for (source, filling), often in zip(columns, times, strict=True):
        for _ in range(often):
            counts = tuple(
                (number, min(count, left[number]))
                for number, count in enumerate(filling)
                if min(count, left[number])
            )
            for number, count in counts:
                left[number] -= count
            bars.append(Filled(source=source, counts=counts))
    return [bar for bar in bars if bar.counts]
