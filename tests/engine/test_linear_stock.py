"""A second model of the same cuts, solved by a general-purpose optimiser, agrees.

The planner chooses among ways to fill a bar; here each piece chooses its bar instead.
"""

from __future__ import annotations

import random

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from tests.core.stock.orders import order_of, planned

from foldwright.core.stock.order import CutOrder


def least_cost_by_assignment(order: CutOrder) -> float:
    """Give the least cost when every piece chooses one of as many bars as there are pieces."""
    kerf, trim = order.saw.kerf.nanometres, order.saw.trim.nanometres
    pieces = [need.length.nanometres + kerf for need in order.needs]
    bars = [(0.0, piece.length.nanometres + kerf) for piece in order.rack]
    bars += [(s.cost, s.length.nanometres - trim + kerf) for s in order.stock for _ in pieces]
    count, width = len(pieces), len(pieces) * len(bars)
    each_once = np.zeros((count, width + len(bars)))
    holds = np.zeros((len(bars), width + len(bars)))
    for bar, (_, room) in enumerate(bars):
        each_once[np.arange(count), np.arange(count) * len(bars) + bar] = 1
        holds[bar, np.arange(count) * len(bars) + bar] = [size / room for size in pieces]
        holds[bar, width + bar] = -1
    costs = np.concatenate([np.zeros(width), [cost for cost, _ in bars]])
    rules = [LinearConstraint(each_once, 1, 1), LinearConstraint(holds, ub=1e-9)]
    whole = np.ones(costs.size, dtype=np.int64)
    solved = milp(costs, constraints=rules, integrality=whole, bounds=Bounds(0, 1))
    assert solved.status == 0
    return float(solved.fun)


@pytest.mark.parametrize("seed", range(12))
def test_each_piece_choosing_its_bar_costs_the_same(seed: int) -> None:
    dice = random.Random(seed)  # noqa: S311 - a seeded job
    lengths = [dice.randint(350, 1500) for _ in range(4 + seed % 4)]
    rack = tuple(dice.randint(400, 1500) for _ in range(seed % 3))
    order = order_of(lengths, bars=((2000,), (2000, 3100))[seed % 2], rack=rack)
    plan, least = planned(order), least_cost_by_assignment(order)
    assert plan.cost == pytest.approx(least, rel=1e-6)
    assert plan.least_cost <= least * (1 + 1e-6)
