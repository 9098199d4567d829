"""From filled bars to a plan: which piece is cut where, bar by bar."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.stock.filling import Filled, cost_of
from foldwright.core.stock.order import Bar, Cut, CutOrder, StockPlan
from foldwright.core.stock.whole import HAIR, Whole


def written_out(order: CutOrder, whole: Whole, bars: list[Filled], least: float) -> StockPlan:
    """Write out filled bars as a plan, the rack first.

    Takes: an order and the same in whole units; bars that hold every piece; the least cost
    that is proven.

    Gives: the plan, pieces of one length in the order in which they were asked for.

    Source: derived here.

    >>> from foldwright.core.stock.order import Need, StockLength
    >>> from foldwright.core.stock.whole import in_whole_units
    >>> need = Need(name="tube", length=Length.mm(900), count=2)
    >>> bar = StockLength(name="3 m", length=Length.mm(3000), cost=8.0)
    >>> order = CutOrder(needs=(need,), stock=(bar,))
    >>> filled = [Filled(source=0, counts=((0, 2),))]
    >>> written_out(order, in_whole_units(order), filled, 8.0).bars[0].remainder.in_millimetres
    1200.0
    """
    waiting = [list(names) for names in whole.names]
    in_order = sorted(bars, key=lambda b: (not whole.sources[b.source].from_rack, b.source))
    cost = cost_of(whole, bars)
    return StockPlan(
        bars=tuple(_bar(order, whole, bar, waiting) for bar in in_order),
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
