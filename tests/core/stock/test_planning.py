"""What holds of every plan of linear stock, whatever is asked for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.core.stock.orders import lengths, order_of, orders, planned

from foldwright.core.quantity.length import Length
from foldwright.core.stock.checking import faults_in
from foldwright.core.stock.filling import Filled
from foldwright.core.stock.order import CutOrder, Need, Saw, StockLength, StockPlan
from foldwright.core.stock.planning import CannotCut, plan_stock
from foldwright.core.stock.racking import rack_first
from foldwright.core.stock.whole import in_whole_units

ONE_SECOND_LOOK = settings(max_examples=40, deadline=None)


@ONE_SECOND_LOOK
@given(orders())
def test_a_plan_passes_the_second_look_and_never_costs_less_than_its_bound(order: CutOrder) -> None:
    plan = planned(order)
    assert faults_in(plan, order) == ()
    assert plan.least_cost <= plan.cost + 1e-6
    assert plan.proven == (plan.cost <= plan.least_cost + 1e-6)


@ONE_SECOND_LOOK
@given(lengths, st.integers(100, 1500))
def test_one_more_piece_is_never_cheaper(asked: list[int], more: int) -> None:
    before, after = planned(order_of(asked)), planned(order_of([*asked, more]))
    assert after.cost >= before.least_cost - 1e-6
    if before.proven:
        assert after.cost >= before.cost - 1e-6


@ONE_SECOND_LOOK
@given(lengths, st.integers(2, 7))
def test_everything_so_many_times_as_long_is_cut_alike(asked: list[int], times: int) -> None:
    small = order_of(asked, saw=Saw())
    large = order_of([each * times for each in asked], bars=(2000 * times,), saw=Saw())
    assert len(planned(small).bars) == len(planned(large).bars)


@ONE_SECOND_LOOK
@given(orders())
def test_the_same_order_gives_the_same_plan(order: CutOrder) -> None:
    assert planned(order) == planned(order)


@ONE_SECOND_LOOK
@given(orders())
def test_a_piece_on_the_rack_never_makes_it_dearer(order: CutOrder) -> None:
    without, with_rack = planned(replace(order, rack=())), planned(order)
    assert with_rack.least_cost <= without.cost + 1e-6
    if with_rack.proven:
        assert with_rack.cost <= without.cost + 1e-6


def test_the_rack_is_used_before_a_bar_is_bought() -> None:
    plan = planned(order_of([900, 900], rack=(1000,)))
    assert [(bar.name, bar.from_rack) for bar in plan.bars] == [
        ("rack 0", True),
        ("bar 2000", False),
    ]
    alone = planned(order_of([900], rack=(1000,)))
    assert alone.cost == 0.0
    assert alone.proven


def test_the_blade_takes_its_kerf_between_pieces_but_not_off_the_end() -> None:
    kerf = Saw(kerf=Length.mm(3))
    assert len(planned(order_of([998, 999], saw=kerf)).bars) == 1
    assert len(planned(order_of([999, 999], saw=kerf)).bars) == 2


def test_a_fresh_bar_is_trimmed_and_a_piece_from_the_rack_is_not() -> None:
    trim = Saw(trim=Length.mm(10))
    (bought,) = planned(order_of([990, 1000], saw=trim)).bars
    assert bought.cuts[0].start == Length.mm(10)
    assert len(planned(order_of([1000, 1000], saw=trim)).bars) == 2
    (racked,) = planned(order_of([900], rack=(900,), saw=trim)).bars
    assert racked.cuts[0].start == Length.mm(0)


def test_what_is_left_goes_back_to_the_rack_to_the_millimetre() -> None:
    (bar,) = planned(order_of([600, 700])).bars
    assert bar.remainder == Length.mm(2000 - 10 - 600 - 3 - 700 - 3)


def test_two_stock_lengths_are_bought_as_they_cost_least() -> None:
    order = order_of([1400, 500], bars=(2000, 1500))
    assert planned(order).cost == 2000.0
    alone = order_of([1400], bars=(2000, 1500))
    assert planned(alone).cost == 1500.0


def test_limited_bars_are_never_overdrawn() -> None:
    scarce = StockLength(name="scarce", length=Length.mm(3000), cost=1.0, quantity=1)
    dear = StockLength(name="dear", length=Length.mm(3000), cost=9.0)
    needs = tuple(Need(name=f"p{n}", length=Length.mm(1400)) for n in range(6))
    plan = planned(CutOrder(needs=needs, stock=(scarce, dear)))
    assert sorted(bar.name for bar in plan.bars) == ["dear", "dear", "scarce"]
    assert plan.cost == 19.0


def test_too_few_bars_are_refused_with_a_remedy() -> None:
    scarce = StockLength(name="scarce", length=Length.mm(3000), cost=1.0, quantity=1)
    needs = tuple(Need(name=f"p{n}", length=Length.mm(1400)) for n in range(6))
    with pytest.raises(CannotCut, match="does not hold all 6 pieces, however cut") as refused:
        planned(CutOrder(needs=needs, stock=(scarce,)))
    assert "With 2 more of “scarce”" in refused.value.faults[0].remedy


def test_limited_bars_that_longest_first_would_overdraw_are_filled_otherwise() -> None:
    scarce = StockLength(name="scarce", length=Length.mm(1000), cost=1.0, quantity=2)
    needs = tuple(
        Need(name=f"p{n}", length=Length.mm(mm))
        for n, mm in enumerate((500, 480, 260, 260, 250, 250))
    )
    plan = planned(CutOrder(needs=needs, stock=(scarce,)))
    assert len(plan.bars) == 2


def test_what_fits_an_unused_offcut_is_moved_there_from_the_emptiest_bar() -> None:
    whole = in_whole_units(order_of([900, 800, 400, 390], rack=(450, 300), saw=Saw()))
    fullest, emptiest = ((0, 1), (1, 1)), ((2, 1), (3, 1))
    bars = [Filled(source=2, counts=counts) for counts in (fullest, emptiest)]
    assert rack_first(whole, bars) == [
        Filled(source=1, counts=((2, 1),)),
        Filled(source=2, counts=((3, 1),)),
        Filled(source=2, counts=fullest),
    ]


def test_whoever_watches_sees_sound_plans_getting_cheaper_and_may_end_the_search() -> None:
    order = order_of([1210, 985, 1190, 878, 1050, 760, 640], bars=(2400, 3000))
    seen: list[StockPlan] = []

    def watch(plan: StockPlan) -> bool:
        seen.append(plan)
        return True

    best = plan_stock(order, lambda: 5.0, watch)
    costs = [plan.cost for plan in seen]
    assert all(faults_in(plan, order) == () for plan in seen)
    assert costs == sorted(set(costs), reverse=True)
    assert len(costs) > 1
    assert costs[-1] == best.cost
    ended = plan_stock(order, lambda: 5.0, lambda _plan: False)
    assert ended.cost == costs[0]
    assert ended.cut_short


def test_without_time_the_first_plan_is_still_whole() -> None:
    order = order_of([700, 650, 640, 600, 590, 580, 570, 560], saw=Saw())
    plan = plan_stock(order, lambda: 0.0)
    assert faults_in(plan, order) == ()


def test_a_small_order_of_two_lengths_is_proved_by_every_way_to_fill_a_bar() -> None:
    order = order_of([1210, 985, 1190, 878, 1050], bars=(2400, 3000), rack=(960,))
    plan = planned(order)
    assert faults_in(plan, order) == ()
    assert plan.proven
