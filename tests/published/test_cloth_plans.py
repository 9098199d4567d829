"""Worked examples of cutting patterned and plain cloth, planned as whole jobs."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    ClothPlan,
    Pattern,
)
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO, Length

INCH = Length.inches(1)
YARD = INCH * 36


def widths(count: int, cut: Length, across: Length | None = None) -> tuple[ClothPiece, ...]:
    """Give full widths of cloth, one after another across the window."""
    return tuple(
        ClothPiece(
            name=str(number),
            shade=str(number),
            room="",
            layer="face",
            width=INCH * 54,
            length=cut,
            phase_along=ZERO,
            phase_across=across,
        )
        for number in range(1, count + 1)
    )


def planned(pieces: tuple[ClothPiece, ...], pattern: Pattern, step: Length = INCH / 2) -> ClothPlan:
    buying = Buying(usable_width=INCH * 54, increment=step)
    order = ClothOrder(pieces=pieces, buying=buying, pattern=pattern)
    plan = plan_cloth(order, time_given_s=10.0, clock=lambda: 0.0).result
    assert plan is not None
    assert plan.proven
    return plan


@pytest.mark.parametrize(
    ("cut", "repeat", "adjusted"),
    [
        (116, 25, 125),  # repeat-newsletter: 116 in is cut as 5 repeats of 25
        (118, 13, 130),  # repeat-adjusting-page: 10 repeats of 13
    ],
)
def test_a_cut_length_is_rounded_up_to_whole_repeats(cut: int, repeat: int, adjusted: int) -> None:
    """By hand each cut takes whole repeats; the plan spares what the last one does not need."""
    pattern = Pattern(vertical_repeat=INCH * repeat)
    plan = planned(widths(3, INCH * cut), pattern, INCH)
    assert plan.comparison is not None
    assert plan.comparison.shade_by_shade == INCH * 3 * adjusted
    starts = sorted(each.along for each in plan.placements)
    assert [start - starts[0] for start in starts] == [ZERO, INCH * adjusted, INCH * 2 * adjusted]
    assert plan.bought == INCH * (2 * adjusted + cut)


def test_four_plain_widths_of_114_inches_take_456_inches() -> None:
    """unlined-widths-page: 12.6 yd as it prints, 12.667 yd before it drops the rest."""
    plan = planned(widths(4, INCH * 114), Pattern())
    assert plan.bought == INCH * 456
    assert float(plan.bought / YARD) == pytest.approx(12.6, abs=0.07)


def test_four_widths_of_114_inches_on_a_repeat_of_11_take_eleven_repeats_each() -> None:
    """unlined-widths-page names the eleven repeats; the yards are own arithmetic from them."""
    plan = planned(widths(4, INCH * 114), Pattern(vertical_repeat=INCH * 11))
    assert plan.comparison is not None
    assert plan.comparison.shade_by_shade == INCH * 4 * 121
    assert float(plan.comparison.shade_by_shade / YARD) == pytest.approx(13.444, abs=0.0005)


def test_a_half_drop_cut_odd_widths_first_loses_half_a_repeat_once() -> None:
    """half-drop-rule-page: odd widths in a run, on by half a repeat, even widths.

    With its rule four widths of 116 in on 25 in take 512 1/2 in with whole repeats to the
    last; the plan takes no more, and the last cut needs only its own length.
    """
    repeat = INCH * 25
    odd = widths(2, INCH * 116)
    even = tuple(replace(each, name=f"{each.name} even", phase_along=repeat / 2) for each in odd)
    plan = planned((*odd, *even), Pattern(vertical_repeat=repeat))
    whole_repeats = INCH * Fraction(1025, 2)
    assert plan.bought == whole_repeats - (INCH * 125 - INCH * 116)


def test_the_retail_rule_for_a_half_drop_buys_one_repeat_for_the_placement() -> None:
    """half-drop-retail-page: 5.85 m of cuts on a half drop of 0.65 m, buy 6.50 m."""
    repeat = Length.mm(650)
    pieces = tuple(replace(each, length=repeat * 3) for each in widths(3, INCH))
    buying = Buying(usable_width=INCH * 54, increment=Length.mm(50), start_allowance=repeat)
    order = ClothOrder(pieces=pieces, buying=buying, pattern=Pattern(vertical_repeat=repeat))
    plan = plan_cloth(order, time_given_s=10.0, clock=lambda: 0.0).result
    assert plan is not None
    assert plan.bought == Length.mm(6500)
