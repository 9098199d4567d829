"""The order in whole units: the same problem, with sizes that add up without rounding.

A piece takes its length and one kerf; a bar offers its length less trim and plus one kerf,
because the last cut may fall off the end. A remainder thinner than the blade is sawdust.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from fractions import Fraction

from foldwright.core.stock.order import CutOrder

HAIR = 1e-7  # by which a cost worked out in floating point may err
FINEST_STATES = 60_000  # more steps along a bar than this make the search slow for no gain


@dataclass(frozen=True, kw_only=True, slots=True)
class Source:
    """Bars of one length; `limit` None is as many as wanted."""

    name: str
    room: int
    cost: float
    limit: int | None
    from_rack: bool
    missing: bool = False  # nobody has it: it shows what is wanted besides


@dataclass(frozen=True, kw_only=True, slots=True)
class Whole:
    """The order in whole nanometres, pieces of one length together, longest first."""

    sizes: tuple[int, ...]
    counts: tuple[int, ...]
    names: tuple[tuple[str, ...], ...]  # for each size, one name a piece
    sources: tuple[Source, ...]


def in_whole_units(order: CutOrder) -> Whole:
    """Put an order into whole nanometres.

    Takes: an order whose pieces each fit at least one bar.

    Gives: sizes with the kerf in, longest first; bars from the rack first, shortest first.

    Source: derived here.

    >>> from foldwright.core.quantity.length import Length
    >>> from foldwright.core.stock.order import Need, StockLength
    >>> need = Need(name="tube", length=Length.mm(900), count=2)
    >>> bar = StockLength(name="6 m", length=Length.mm(6000), cost=1.0)
    >>> in_whole_units(CutOrder(needs=(need,), stock=(bar,))).counts
    (2,)
    """
    kerf = order.saw.kerf.nanometres
    named: dict[int, list[str]] = {}
    for need in order.needs:
        named.setdefault(need.length.nanometres + kerf, []).extend([need.name] * need.count)
    sizes = tuple(sorted(named, reverse=True))
    return Whole(
        sizes=sizes,
        counts=tuple(len(named[size]) for size in sizes),
        names=tuple(tuple(named[size]) for size in sizes),
        sources=tuple(_sources(order)),
    )


def _sources(order: CutOrder) -> Iterable[Source]:
    kerf, saw = order.saw.kerf.nanometres, order.saw
    for piece in sorted(order.rack, key=lambda offcut: offcut.length):
        yield Source(
            name=piece.name, room=piece.length.nanometres + kerf, cost=0.0, limit=1, from_rack=True
        )
    for bar in sorted(order.stock, key=lambda stock: stock.cost / stock.length.nanometres):
        yield Source(
            name=bar.name,
            room=(bar.length - saw.trim).nanometres + kerf,
            cost=bar.cost,
            limit=bar.quantity,
            from_rack=False,
        )


def with_more(whole: Whole) -> Whole:
    """Give an order with as many more of each limited bar as are wanted, at a price above all.

    Takes: an order in whole units.

    Gives: the same with bars that are missing; a plan without them is one of the order.

    Source: derived here.

    >>> bar = Source(name="b", room=10, cost=2.0, limit=1, from_rack=False)
    >>> order = Whole(sizes=(4,), counts=(3,), names=(("a", "b", "c"),), sources=(bar,))
    >>> [(source.cost, source.limit) for source in with_more(order).sources]
    [(2.0, 1), (10.0, None)]
    """
    dear = math.ceil(sum(s.cost * (s.limit or 0) for s in whole.sources)) + 1
    dear = 10 ** len(str(dear))
    missing = [
        replace(source, cost=float(dear), limit=None, from_rack=False, missing=True)
        for source in whole.sources
        if source.limit is not None
    ]
    return replace(whole, sources=(*whole.sources, *missing))


def coarse(whole: Whole) -> tuple[tuple[int, ...], tuple[int, ...], tuple[int, ...]]:
    """Give sizes rounded up, sizes rounded down, and rooms rounded down, in a shared step.

    Takes: an order in whole nanometres.

    Gives: steps; exact where the shared measure of all is not too fine. A filling that fits
    with sizes rounded up always fits, one that does not fit rounded down never does.

    Source: derived here.

    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> coarse(Whole(sizes=(4, 2), counts=(1, 1), names=(("a",), ("b",)), sources=(bar,)))
    ((2, 1), (2, 1), (5,))
    """
    rooms = [source.room for source in whole.sources]
    step = math.gcd(*whole.sizes, *rooms)
    if max(rooms) // step > FINEST_STATES:
        step = -(-max(rooms) // FINEST_STATES)
    up = tuple(-(-size // step) for size in whole.sizes)
    down = tuple(size // step for size in whole.sizes)
    return up, down, tuple(room // step for room in rooms)


def cost_step(whole: Whole) -> Fraction:
    """Give the measure that every possible cost is a whole multiple of.

    Takes: an order in whole units.

    Gives: the greatest common measure of the costs, 0 where nothing is bought.

    Source: derived here.

    >>> bar = Source(name="b", room=10, cost=12.5, limit=None, from_rack=False)
    >>> cost_step(Whole(sizes=(4,), counts=(1,), names=(("a",),), sources=(bar,)))
    Fraction(25, 2)
    """
    costs = [Fraction(str(source.cost)) for source in whole.sources if source.cost]
    if not costs:
        return Fraction(0)
    shared = math.lcm(*(cost.denominator for cost in costs))
    return Fraction(math.gcd(*(int(cost * shared) for cost in costs)), shared)
