"""Whole bars at last: choose among the ways to fill one, and try to meet the bound."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp

from foldwright.core.stock.bounding import Column, covering
from foldwright.core.stock.filling import Filled
from foldwright.core.stock.whole import Whole

MOST_TIGHT_COLUMNS = 300_000


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


def tight_columns(whole: Whole, least_bars: int) -> list[Column] | None:
    """List every filling that a plan with the least number of bars could use.

    In such a plan no bar may waste more than all bars together can.

    Takes: an order on bars of one length only; the proven least number of bars.

    Gives: the fillings, or None where there are too many to list.

    Holds for: bars that hold few pieces each.

    Source: derived here.

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> whole = Whole(sizes=(6, 4), counts=(1, 1), names=(("a",), ("b",)), sources=(bar,))
    >>> tight_columns(whole, 1)
    [(0, (1, 1))]
    """
    room = whole.sources[0].room
    needed = sum(size * count for size, count in zip(whole.sizes, whole.counts, strict=True))
    waste = room * least_bars - needed
    found: list[Column] = []
    for filling in _fillings(whole.sizes, whole.counts, room, waste):
        found.append((0, filling))
        if len(found) > MOST_TIGHT_COLUMNS:
            return None
    return found


def _fillings(
    sizes: tuple[int, ...], counts: tuple[int, ...], room: int, waste: int
) -> Iterator[tuple[int, ...]]:
    """Give every filling that wastes no more than `waste`, deepest first."""
    stack: list[tuple[tuple[int, ...], int]] = [((), room)]
    rest = [0] * (len(sizes) + 1)
    for number in range(len(sizes) - 1, -1, -1):
        rest[number] = rest[number + 1] + sizes[number] * counts[number]
    while stack:
        filling, left = stack.pop()
        number = len(filling)
        if left <= waste and (number == len(sizes) or left < sizes[-1]):
            yield (*filling, *([0] * (len(sizes) - number)))
        elif number < len(sizes) and left - rest[number] <= waste:
            most = min(counts[number], left // sizes[number])
            stack.extend(((*filling, n), left - n * sizes[number]) for n in range(most + 1))
