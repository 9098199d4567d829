"""Try to meet the bound: keep the bars that a plan in parts takes whole, then cover the rest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csc_array, vstack

from foldwright.core.stock.bounding import Column, covering
from foldwright.core.stock.filling import Filled
from foldwright.core.stock.proving import without_surplus
from foldwright.core.stock.whole import HAIR, Whole
from foldwright.core.stock.worth import Reals

MOST_TRIES = 24
FEW_PIECES = 90  # so few are soon chosen whole at once
SECONDS_FOR_FEW = 3.0  # what is not found by then is sooner found in another try
GOLDEN = (5**0.5 - 1) / 2  # its multiples never bunch up


def met(
    whole: Whole, columns: list[Column], least_cost: float, seconds_left: Callable[[], float]
) -> list[Filled] | None:
    """Look for a plan that costs just what is proven to be the least.

    In parts of bars such a plan is quickly found, and the bars it takes whole can be kept:
    what it takes in parts still covers the rest. Each try leans towards other bars.

    Takes: an order in whole units; ways to fill a bar; the least cost; a clock that gives the
    seconds left.

    Gives: the bars, or None where no try came through.

    Holds for: what these columns can do.

    Source: derived here.
    """
    rows = _rows(whole, columns)
    asked = np.array([-count for count in whole.counts], dtype=float)
    sides = np.concatenate([asked, rows.limits, [least_cost + HAIR]])
    if _in_parts(rows, sides, np.zeros(len(columns))) is None:
        return None
    few = sum(whole.counts) <= FEW_PIECES  # chosen at once, so every try is the same
    for number in range(1, 2 if few else MOST_TRIES + 1):
        if seconds_left() <= 0:
            return None
        times = _dive(rows, sides, _leaning(len(columns), number), seconds_left)
        if times is not None:
            return without_surplus(whole, columns, np.rint(times).astype(int).tolist())
    return None


@dataclass(frozen=True, kw_only=True, slots=True)
class _Rows:
    """What a choice of columns must keep, each row at most its side.

    The pieces come first, counted below zero; then the limited bars; last the cost.
    """

    matrix: csc_array
    sizes: int
    limits: Reals


def _rows(whole: Whole, columns: list[Column]) -> _Rows:
    model = covering(whole, columns)
    matrix = vstack([-model.pieces, model.bars, csc_array(model.costs[np.newaxis, :])]).tocsc()
    return _Rows(matrix=matrix, sizes=len(whole.sizes), limits=model.limits)


def _leaning(count: int, number: int) -> Reals:
    """Give each column a weight that is another in each try, and the same in each run."""
    weights: Reals = np.modf(np.arange(1, count + 1) * GOLDEN * number)[0]
    return weights


def _dive(
    rows: _Rows, sides: Reals, weights: Reals, seconds_left: Callable[[], float]
) -> Reals | None:
    times = np.zeros(weights.size)
    while (wanted := -sides[: rows.sizes]).any():
        if wanted.sum() <= FEW_PIECES:
            rest = _whole_at_once(rows, sides, seconds_left)
            return None if rest is None else times + rest
        shares = _in_parts(rows, sides, weights)
        if shares is None:
            return None
        kept = _kept(shares)
        times += kept
        sides = sides - rows.matrix @ kept
        sides[: rows.sizes] = np.minimum(sides[: rows.sizes], 0.0)
    return times


def _in_parts(rows: _Rows, sides: Reals, weights: Reals) -> Reals | None:
    """Find a plan in parts of bars, the one that leans most to the small weights."""
    solved = linprog(  # type: ignore[call-overload]  # its stubs know no sparse matrices
        weights, A_ub=rows.matrix, b_ub=sides, method="highs-ds"
    )
    return None if solved.x is None else np.asarray(solved.x)


def _kept(shares: Reals) -> Reals:
    """Keep the bars taken whole; where there are none, make the largest part whole."""
    kept: Reals = np.floor(shares + HAIR)
    if not kept.any():
        kept[np.argmax(shares)] = 1.0
    return kept


def _whole_at_once(rows: _Rows, sides: Reals, seconds_left: Callable[[], float]) -> Reals | None:
    count = rows.matrix.shape[1]
    solved = milp(
        np.zeros(count),
        constraints=[LinearConstraint(rows.matrix, ub=sides)],
        integrality=np.ones(count, dtype=np.int64),
        bounds=Bounds(lb=0),
        options={"time_limit": min(max(seconds_left(), 0.01), SECONDS_FOR_FEW)},
    )
    return None if solved.x is None else np.rint(solved.x)
