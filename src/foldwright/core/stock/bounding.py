"""The least that could be paid: ways to fill a bar are priced until none is worth adding."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog
from scipy.sparse import csc_array, vstack

from foldwright.core.stock.whole import HAIR, Whole, coarse, cost_step
from foldwright.core.stock.worth import Loading, Reals

Column = tuple[int, tuple[int, ...]]  # source number, pieces of each size


@dataclass(kw_only=True, slots=True)
class Pool:
    """Ways to fill one bar, each once, and what is proven about the least cost."""

    columns: list[Column] = field(default_factory=list)
    least_cost: float = 0.0

    def add(self, column: Column) -> bool:
        """Keep a column; tell whether it is new."""
        fresh = column not in self._known
        if fresh:
            self._known.add(column)
            self.columns.append(column)
        return fresh

    _known: set[Column] = field(default_factory=set)


def bound_by_columns(
    whole: Whole, pool: Pool, seconds_left: Callable[[], float], *, settle: bool
) -> None:
    """Find the ways to fill a bar that matter, and the least that could be paid.

    Takes: an order in whole units; a pool that holds columns enough for one plan; a clock
    that gives the seconds left; whether to stop once these ways show that the bound cannot
    be raised.

    Gives: more columns in the pool, and its least cost raised to what is proven.

    Holds for: up to a few hundred different sizes; stops early without time, and the bound
    holds all the same, because the prices are scaled until no bar is worth more than it costs.

    Source: cutting-stock-1961; column-bound-1990 for the bound of an early stop.
    """
    (up, down, rooms), step = coarse(whole), cost_step(whole)
    while seconds_left() > 0:
        prices, held_back, parts_cost = _prices(whole, pool)
        loading = Loading(up, whole.counts, max(rooms), prices)
        loose = loading if up == down else Loading(down, whole.counts, max(rooms), prices)
        pool.least_cost = max(pool.least_cost, _proven(whole, prices, loose.best[list(rooms)]))
        found = [
            pool.add((number, tuple(loading.pieces(room).tolist())))
            for number, room in enumerate(rooms)
            if loading.best[room] > whole.sources[number].cost + held_back[number] + HAIR
        ]
        if not any(found) or (settle and round_up(parts_cost, step) <= pool.least_cost + HAIR):
            return


@dataclass(frozen=True, kw_only=True, slots=True)
class Covering:
    """The covering model: each column's cost, its pieces, its bar; limits on some bars."""

    costs: Reals
    pieces: csc_array  # size by column
    bars: csc_array  # limited source by column
    limits: Reals
    limited: list[int]


def covering(whole: Whole, columns: list[Column]) -> Covering:
    """Put columns into the covering model."""
    owner = np.array([source for source, _ in columns])
    limited = [n for n, source in enumerate(whole.sources) if source.limit is not None]
    return Covering(
        costs=np.array([whole.sources[source].cost for source, _ in columns]),
        pieces=csc_array(np.array([filling for _, filling in columns], dtype=float).T),
        bars=csc_array(np.equal.outer(np.array(limited, dtype=int), owner).astype(float)),
        limits=np.array([whole.sources[n].limit for n in limited], dtype=float),
        limited=limited,
    )


def _prices(whole: Whole, pool: Pool) -> tuple[Reals, Reals, float]:
    """Solve the covering model in parts of bars: prices of pieces and of sources, the cost."""
    model = covering(whole, pool.columns)
    rows = vstack([-model.pieces, model.bars])
    sides = np.concatenate([-np.array(whole.counts, dtype=float), model.limits])
    solved = linprog(  # type: ignore[call-overload]  # its stubs know no sparse matrices
        model.costs, A_ub=rows, b_ub=sides, method="highs"
    )
    marginals = -np.asarray(solved.ineqlin.marginals)
    held_back = np.zeros(len(whole.sources))
    held_back[model.limited] = marginals[len(whole.counts) :]
    return np.maximum(marginals[: len(whole.counts)], 0.0), held_back, float(solved.fun)


def _proven(whole: Whole, prices: Reals, best: NDArray[np.float64]) -> float:
    """Scale the prices until no bar holds more worth than it costs; their sum is then a bound."""
    endless = [n for n, source in enumerate(whole.sources) if source.limit is None]
    scale = max([1.0, *(float(best[n]) / whole.sources[n].cost for n in endless)])
    value = float(prices @ np.array(whole.counts)) / scale
    for number, source in enumerate(whole.sources):
        if source.limit is not None:
            value -= source.limit * max(0.0, float(best[number]) / scale - source.cost)
    return round_up(value, cost_step(whole))


def round_up(value: float, step: Fraction) -> float:
    """Raise a bound to the next cost that is possible.

    >>> round_up(11.2, Fraction(5, 2)), round_up(12.5000000001, Fraction(5, 2))
    (12.5, 12.5)
    """
    if not step:
        return 0.0
    return float(math.ceil(value / float(step) - HAIR) * step)


def bound_by_length(whole: Whole) -> float:
    """Give the least that could be paid if pieces could be split at will.

    Takes: an order in whole units.

    Gives: a cost; the rack is used up first.

    Source: derived here.

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> bound_by_length(Whole(sizes=(6,), counts=(2,), names=(("a", "a"),), sources=(bar,)))
    2.0
    """
    left = sum(size * count for size, count in zip(whole.sizes, whole.counts, strict=True))
    value = 0.0
    for source in sorted(whole.sources, key=lambda source: source.cost / source.room):
        limit = left if source.limit is None else min(left, source.limit * source.room)
        value += limit / source.room * source.cost
        left -= limit
    return round_up(value, cost_step(whole))
