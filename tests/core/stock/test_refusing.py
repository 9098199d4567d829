"""Every order that cannot be cut is refused with its place and a remedy."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.stock.orders import order_of, planned

from foldwright.core.quantity.length import Length
from foldwright.core.stock.order import CutOrder, Need, Saw
from foldwright.core.stock.planning import CannotCut
from foldwright.core.stock.refusing import faults_of

GOOD = order_of([900])
NEED, STOCK = GOOD.needs[0], GOOD.stock[0]

WRONG: dict[str, tuple[CutOrder, str]] = {
    "nothing asked": (replace(GOOD, needs=()), "needs"),
    "nothing to cut from": (replace(GOOD, stock=()), "stock"),
    "zero length": (order_of([0]), "needs.1.length"),
    "negative length": (order_of([900, -5]), "needs.2.length"),
    "no piece": (replace(GOOD, needs=(replace(NEED, count=0),)), "needs.1.count"),
    "longer than any bar": (order_of([2500]), "needs.1.length"),
    "longer than a trimmed bar": (order_of([1995]), "needs.1.length"),
    "all trim": (replace(GOOD, stock=(replace(STOCK, length=Length.mm(10)),)), "stock.1.length"),
    "free of charge": (replace(GOOD, stock=(replace(STOCK, cost=0.0),)), "stock.1.cost"),
    "negative kerf": (replace(GOOD, saw=Saw(kerf=Length.mm(-1))), "saw.kerf"),
    "negative trim": (replace(GOOD, saw=Saw(trim=Length.mm(-1))), "saw.trim"),
}


@pytest.mark.parametrize("name", WRONG)
def test_a_wrong_order_is_refused_where_it_is_wrong(name: str) -> None:
    order, where = WRONG[name]
    faults = faults_of(order)
    assert where in {fault.where for fault in faults}
    assert all(fault.what and fault.remedy.endswith(".") for fault in faults)
    with pytest.raises(CannotCut):
        planned(order)


def test_a_sound_order_has_no_fault() -> None:
    assert faults_of(GOOD) == ()


def test_all_faults_are_told_at_once_with_the_longest_that_can_be_cut() -> None:
    needs = (Need(name="a", length=Length.mm(2500)), Need(name="b", length=Length.mm(2600)))
    faults = faults_of(replace(GOOD, needs=needs))
    assert len(faults) == 2
    assert "1990 mm" in faults[0].remedy
