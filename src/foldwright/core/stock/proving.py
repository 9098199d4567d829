"""Whole bars at last: choose among the ways to fill one."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from foldwright.core.stock.bounding import Column, covering
from foldwright.core.stock.filling import Filled
from foldwright.core.stock.whole import Whole


def best_of(
    whole: Whole, columns: list[Column], seconds_left: Callable[[], float]
) -> list[Filled] | None:
    """Choose whole bars among the given ways to fill one, at least cost.

    Takes: an order in whole units; ways to fill a bar; a clock that gives the seconds left.

    Gives: the best choice found in the time, without surplus pieces; None if none was found.

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
        options={"time_limit": max(seconds_left(), 0.01), "mip_rel_gap": 0.0},
    )
    if solved.x is None:
        return None
    return without_surplus(whole, columns, np.rint(solved.x).astype(int).tolist())


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
