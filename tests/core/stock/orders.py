"""Orders of linear stock for tests, in whole millimetres."""

from __future__ import annotations

from hypothesis import strategies as st

from foldwright.core.quantity.length import Length
from foldwright.core.stock.order import CutOrder, Need, Offcut, Saw, StockLength, StockPlan
from foldwright.core.stock.planning import plan_stock

LONGEST = 1500
SAW = Saw(kerf=Length.mm(3), trim=Length.mm(10))


def order_of(
    lengths: list[int],
    *,
    bars: tuple[int, ...] = (2000,),
    rack: tuple[int, ...] = (),
    saw: Saw = SAW,
) -> CutOrder:
    """Ask for pieces from bars that cost as much as they are long."""
    return CutOrder(
        needs=tuple(Need(name=f"p{n}", length=Length.mm(mm)) for n, mm in enumerate(lengths)),
        stock=tuple(StockLength(name=f"bar {mm}", length=Length.mm(mm), cost=mm) for mm in bars),
        rack=tuple(Offcut(name=f"rack {n}", length=Length.mm(mm)) for n, mm in enumerate(rack)),
        saw=saw,
    )


def planned(order: CutOrder) -> StockPlan:
    """Plan with time enough for a small order."""
    return plan_stock(order, lambda: 5.0)


lengths = st.lists(st.integers(100, LONGEST), min_size=1, max_size=9)
racks = st.lists(st.integers(200, 1800), max_size=3).map(tuple)
bars = st.sampled_from(((2000,), (2000, 3000), (1700, 2500)))


@st.composite
def orders(draw: st.DrawFn) -> CutOrder:
    """Draw a small order with kerf, trim and a rack."""
    return order_of(draw(lengths), bars=draw(bars), rack=draw(racks))
