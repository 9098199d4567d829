"""Orders of cloth by steps, least orders, whole rolls and lots."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import Cloth
from foldwright.core.pieces.yardage import WidthsToCut, in_whole_repeats, order_cloth
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen

CLOTH = Cloth(name="cloth", areal_mass_kg_m2=0.2, usable_width=Length.inches(54))


def widths(count: int, millimetres: int) -> tuple[WidthsToCut, ...]:
    length = chosen("cut length", Length.mm(millimetres), Unit.LENGTH)
    width = chosen("cut width", Length.mm(1000), Unit.LENGTH)
    counted = chosen("widths", count, Unit.COUNT)
    return (WidthsToCut(name="cuts", widths=counted, length=length, width=width),)


def ordered(cloth: Cloth) -> Length:
    return order_cloth(widths(4, 2900), cloth, house_habits()).ordered.value


def test_an_order_goes_up_to_the_house_s_quarter_yard() -> None:
    assert ordered(CLOTH) == Length.inches(468)  # 11.6 m and four times an inch are 12.8 yd


def test_the_sheet_s_own_step_least_order_and_rolls_go_before_the_house_s() -> None:
    assert ordered(replace(CLOTH, sold_by=Length.mm(500))) == Length.mm(12_000)
    assert ordered(
        replace(CLOTH, sold_by=Length.mm(500), least_order=Length.mm(20_000))
    ) == Length.mm(20_000)
    assert ordered(replace(CLOTH, whole_rolls=Length.mm(10_000))) == Length.mm(20_000)


def test_a_lot_that_cannot_be_had_again_is_ordered_with_a_spare() -> None:
    assert ordered(replace(CLOTH, lot_returns=False)) == Length.inches(504)


@given(st.integers(50, 4000), st.integers(100, 900), st.integers(1, 9))
def test_whole_repeats_hold_the_cut_and_never_a_repeat_too_many(
    cut: int, repeat: int, count: int
) -> None:
    length = chosen("cut", Length.mm(cut), Unit.LENGTH)
    whole = in_whole_repeats(length, chosen("repeat", Length.mm(repeat), Unit.LENGTH)).value
    assert Length.mm(cut) <= whole < Length.mm(cut + repeat)
    assert whole.nanometres % Length.mm(repeat).nanometres == 0
    plain = order_cloth(widths(count, cut), CLOTH, house_habits())
    assert plain.cuts.value == Length.mm(cut * count)
