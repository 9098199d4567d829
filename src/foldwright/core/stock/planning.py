"""The plan: a valid one at once, then better until it is proven or the time is used."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from foldwright.core.quantity.length import Length
from foldwright.core.stock.bounding import (
    HAIR,
    Column,
    Pool,
    bound_by_columns,
    bound_by_length,
)
from foldwright.core.stock.filling import Filled, cost_of, longest_first
from foldwright.core.stock.meeting import met
from foldwright.core.stock.order import Bar, Cut, CutOrder, StockPlan
from foldwright.core.stock.proving import best_of
from foldwright.core.stock.refusing import faults_of
from foldwright.core.stock.tight import every_column, tight_columns
from foldwright.core.stock.whole import Whole, in_whole_units
from foldwright.core.why.fault import Fault

MOST_SIZES_SEARCHED = 400  # above this the longest-first plan is within a hair of the bound


class CannotCut(Exception):  # noqa: N818 - the order's fault, told in its sentences
    """The order cannot be cut from this stock; `faults` say why and what would work."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__(" ".join(fault.sentence for fault in faults))
        self.faults = faults


def plan_stock(order: CutOrder, seconds_left: Callable[[], float]) -> StockPlan:
    """Plan the cuts of one material from stock lengths and the offcut rack.

    Takes: the order; a clock that gives the seconds left, read between the steps.

    Gives: a valid plan, its cost, and the least cost that is proven possible.

    Raises: `CannotCut` with every fault of the order.

    Holds for: up to tens of thousands of pieces; above a few hundred different sizes the
    plan is longest-first only.

    Source: derived here.

    >>> from foldwright.core.stock.order import Need, StockLength
    >>> need = Need(name="tube", length=Length.mm(900), count=7)
    >>> bar = StockLength(name="3 m", length=Length.mm(3000), cost=8.0)
    >>> plan_stock(CutOrder(needs=(need,), stock=(bar,)), lambda: 1.0).cost
    24.0
    """
    if faults := faults_of(order):
        raise CannotCut(faults)
    whole = in_whole_units(order)
    bars = longest_first(whole)
    if bars is None:
        raise CannotCut((_too_little_stock(order),))
    least = bound_by_length(whole)
    if cost_of(whole, bars) > least + HAIR and len(whole.sizes) <= MOST_SIZES_SEARCHED:
        bars, least = _improve(whole, bars, least, seconds_left)
    return _laid_out(order, whole, bars, least)


def _improve(
    whole: Whole, bars: list[Filled], least: float, seconds_left: Callable[[], float]
) -> tuple[list[Filled], float]:
    pool = Pool(least_cost=least)
    for bar in bars:
        pool.add(_column(whole, bar))
    steps = (_meet_tightly, _bound, _meet_tightly, _meet, _choose)
    for step in steps:
        if cost_of(whole, bars) > pool.least_cost + HAIR:
            bars = _better(whole, bars, step(whole, pool, seconds_left))
    return bars, pool.least_cost


def _meet_tightly(
    whole: Whole, pool: Pool, seconds_left: Callable[[], float]
) -> list[Filled] | None:
    """Try to meet the bound with bars so full that a plan as cheap as it could use them."""
    if len(whole.sources) > 1 or pool.tried_at == pool.least_cost:
        return None
    pool.tried_at = pool.least_cost
    columns = tight_columns(whole, round(pool.least_cost / whole.sources[0].cost))
    return met(whole, columns, pool.least_cost, _half_of(seconds_left)) if columns else None


def _bound(whole: Whole, pool: Pool, seconds_left: Callable[[], float]) -> None:
    bound_by_columns(whole, pool, seconds_left)


def _meet(whole: Whole, pool: Pool, seconds_left: Callable[[], float]) -> list[Filled] | None:
    return met(whole, pool.columns, pool.least_cost, _half_of(seconds_left))


def _choose(whole: Whole, pool: Pool, seconds_left: Callable[[], float]) -> list[Filled] | None:
    """Choose among all ways to fill a bar where they can be listed: that proves it, too."""
    columns = every_column(whole)
    choice = best_of(whole, columns or pool.columns, seconds_left)
    if columns:
        pool.least_cost = max(pool.least_cost, choice.least_cost)
    return choice.bars


def _half_of(seconds_left: Callable[[], float]) -> Callable[[], float]:
    """Give a clock that stops when half of the time that is left now is used."""
    kept = seconds_left() / 2
    return lambda: seconds_left() - kept


def _column(whole: Whole, bar: Filled) -> Column:
    held = dict(bar.counts)
    return bar.source, tuple(held.get(number, 0) for number in range(len(whole.sizes)))


def _better(whole: Whole, bars: list[Filled], tried: list[Filled] | None) -> list[Filled]:
    if tried is None or cost_of(whole, tried) >= cost_of(whole, bars) - HAIR:
        return bars
    return tried


def _laid_out(order: CutOrder, whole: Whole, bars: list[Filled], least: float) -> StockPlan:
    waiting = [list(names) for names in whole.names]
    bought = sorted(bars, key=lambda bar: (not whole.sources[bar.source].from_rack, bar.source))
    cost = cost_of(whole, bars)
    return StockPlan(
        bars=tuple(_bar(order, whole, bar, waiting) for bar in bought),
        cost=cost,
        least_cost=least,
        proven=cost <= least + HAIR,
    )


def _bar(order: CutOrder, whole: Whole, bar: Filled, waiting: list[list[str]]) -> Bar:
    source, kerf = whole.sources[bar.source], order.saw.kerf
    trim = Length(0) if source.from_rack else order.saw.trim
    start, cuts = trim, []
    for number, count in bar.counts:
        length = Length(whole.sizes[number]) - kerf
        for _ in range(count):
            cuts.append(Cut(need=waiting[number].pop(0), start=start, length=length))
            start += length + kerf
    full = Length(source.room) - kerf + trim
    left = max(full - start, Length(0))
    return Bar(
        name=source.name, from_rack=source.from_rack, length=full, cuts=tuple(cuts), remainder=left
    )


def _too_little_stock(order: CutOrder) -> Fault:
    short = Counter({need.name: need.count for need in order.needs})
    return Fault(
        where="stock",
        what=f"it does not hold all {short.total()} pieces, however they are cut",
        remedy="Raise the quantity of a stock length, or allow one more length.",
    )
