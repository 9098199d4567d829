"""Cut lengths and orders of cloth against worked examples that were printed."""

from __future__ import annotations

from fractions import Fraction

import pytest

from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import Cloth
from foldwright.core.pieces.matching import before_shrinking
from foldwright.core.pieces.yardage import (
    WidthsToCut,
    in_whole_repeats,
    order_cloth,
    widths_in_a_run,
    with_one_repeat,
)
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen

YARD = Length.inches(36)


def inches(value: int | str) -> Figure[Length]:
    return chosen("length", Length.inches(value), Unit.LENGTH)


def count(value: int) -> Figure[int]:
    return chosen("count", value, Unit.COUNT)


def cloth_54(repeat: int | None = None) -> Cloth:
    return Cloth(
        name="cloth",
        areal_mass_kg_m2=0.2,
        usable_width=Length.inches(54),
        vertical_repeat=Length.inches(repeat) if repeat else None,
    )


def four_widths(length: int) -> tuple[WidthsToCut, ...]:
    return (WidthsToCut(name="cuts", widths=count(4), length=inches(length), width=inches(54)),)


def test_cut_of_116_on_a_repeat_of_25() -> None:
    """repeat-newsletter: 125 in, five repeats, 9 in waste."""
    adjusted = in_whole_repeats(inches(116), inches(25))
    assert adjusted.value == Length.inches(125)
    assert adjusted.value - Length.inches(116) == Length.inches(9)


def test_cut_of_118_on_a_repeat_of_13() -> None:
    """repeat-adjusting-blog: 9.077 repeats, so ten of them, 130 in."""
    assert in_whole_repeats(inches(118), inches(13)).value == Length.inches(130)
    assert float(Fraction(118, 13)) == pytest.approx(9.077, abs=5e-4)


def test_four_plain_widths_of_114() -> None:
    """unlined-drapery-guide: 456 in; it prints 12.6 yd for 12.667, cut off after one place."""
    yardage = order_cloth(four_widths(114), cloth_54(), house_habits())
    assert yardage.cuts.value == Length.inches(456)
    assert float(yardage.cuts.value / YARD) == pytest.approx(12.6, abs=0.07)


def test_four_widths_of_114_on_a_repeat_of_11() -> None:
    """unlined-drapery-guide names eleven repeats of 11 in; 13.444 yd is its arithmetic done."""
    yardage = order_cloth(four_widths(114), cloth_54(11), house_habits())
    assert yardage.lengths[0].value == Length.inches(121)
    assert float(yardage.cuts.value / YARD) == pytest.approx(13.444, abs=5e-4)
    assert yardage.needed.value == Length.inches(484 + 11) + yardage.squaring.value


def test_half_drop_as_a_retailer_orders_it() -> None:
    """half-drop-retailer: 5.85 m with a repeat of 0.65 m are bought as 6.50 m."""
    cuts = chosen("cuts", Length.mm(5850), Unit.LENGTH)
    repeat = chosen("repeat", Length.mm(650), Unit.LENGTH)
    assert with_one_repeat(cuts, repeat).value == Length.mm(6500)


def test_half_drop_cut_in_two_runs() -> None:
    """half-drop-page: odd widths in a run, half a repeat once, even widths; the sizes are ours."""
    run = widths_in_a_run(count(4), inches(125), inches(25), 2)
    assert run.value == Length.inches("512.5")
    each_width_by_itself = 125 + 3 * (125 + 25)
    assert each_width_by_itself == 575
    assert run.value < Length.inches(each_width_by_itself)


def test_a_third_drop_is_cut_in_three_runs() -> None:
    """half-drop-page for the rule, worked out here for thirds: two thirds of a repeat lost."""
    run = widths_in_a_run(count(6), inches(120), inches(24), 3)
    assert run.value == Length.inches(6 * 120 + 16)


def test_cut_length_with_shrinkage() -> None:
    """astm-d3691-09, Table 1 lets curtain cloth lose 3 %: 67 in are cut 69.072 in long."""
    cut = before_shrinking(Length.inches(60 + 3 + 4), chosen("shrinkage", 0.03, Unit.SHARE))
    assert float(cut.in_inches) == pytest.approx(69.0722, abs=5e-4)
