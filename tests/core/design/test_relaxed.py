"""Hems that dip between two columns: what it takes sideways, and what the tool says of it."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest
from tests.core.layouts import BAR, answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge
from foldwright.core.design.layout import SwagPlan
from foldwright.core.facts.panel_limits import MOST_DRAW_IN
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Severity

RELAXED = Choices(style=StyleName.RELAXED, dip=inches("4"), edge_distance=inches("2"))
SIZE = sized("34", "60")  # 30 in between the columns


def swag(design: Choices = RELAXED, width: str = "34") -> SwagPlan:
    plan = laid_out(design, sized(width, "60")).swag
    assert plan is not None
    return plan


def in_inches(length: Length) -> float:
    return float(length.in_inches)


def test_an_inch_of_slack_over_thirty_dips_by_three_and_a_third() -> None:
    """Own arithmetic: the root of 3/8 x 30 x 1 is 3.354 in; good to 1.5 % at such a sag."""
    for kind in (HangingEdge, EvenlyHungEdge):
        assert kind.of_length(30, 31).sag_m == pytest.approx(sqrt(3 / 8 * 30), rel=0.015)


def test_a_dip_of_four_inches_draws_each_side_in_by_seven_tenths() -> None:
    """Own arithmetic: 8/3 x 4 x 4/30 is 1.42 in of take-up, 0.71 a side; good to 5 %.

    The series takes the 30 in as what is left between the columns; here they are the hem.
    """
    plan = swag()
    assert plan.draw_in is not None
    assert in_inches(plan.draw_in.value) == pytest.approx(0.71, rel=0.05)
    assert in_inches(plan.edge_length.value) == 30
    assert in_inches(plan.chord.value) == pytest.approx(30 - 2 * in_inches(plan.draw_in.value))


def test_catenary_and_parabola_are_the_ends_of_the_range() -> None:
    chord = swag().chord
    assert chord.low is not None
    assert chord.high is not None
    assert chord.low == chord.value < chord.high
    assert chord.high - chord.low < inches("1/16")
    hem = swag(replace(RELAXED, widened_hem=True)).edge_length
    assert hem.low is not None
    assert hem.low < hem.value == hem.high


def test_a_hem_cut_wider_hangs_plumb() -> None:
    """The cut grows by what the hem is longer than the space between its columns."""
    plain, wide = laid_out(RELAXED, SIZE), laid_out(replace(RELAXED, widened_hem=True), SIZE)
    assert wide.swag is not None
    assert wide.swag.flare is not None
    assert (wide.swag.draw_in, wide.swag.tapered_gap) == (None, None)
    grown = wide.cuts[0].width.value - plain.cuts[0].width.value
    assert grown == wide.swag.flare.value
    assert in_inches(grown) == pytest.approx(8 / 3 * 16 / 30, rel=0.05)
    assert wide.swag.chord.value == inches("30")


def test_a_joined_face_takes_half_of_the_wider_hem_at_each_side() -> None:
    materials, size = Chosen(face=cloth("36")), sized("44", "60")
    design = replace(RELAXED, widened_hem=True)
    pieces = [laid_out(each, size, materials).widths.side_cut for each in (RELAXED, design)]
    flare = laid_out(design, size, materials).swag
    assert flare is not None
    assert flare.flare is not None
    assert pieces[0] is not None
    assert pieces[1] is not None
    assert abs(pieces[1].value - pieces[0].value - flare.flare.value / 2) <= Length(1)


def test_both_sides_of_a_wide_hem_come_out_of_the_width_that_is_theirs() -> None:
    """Fifteen swags over 107 in take 37 in: half of it makes each side piece over 22 1/2 in."""
    wide = replace(Choices(style=StyleName.RELAXED, column_count=16), widened_hem=True)
    layout = laid_out(wide, sized(Length.mm(2833), inches("60")), Chosen(face=cloth("45")))
    assert layout.widths.side_cut is not None
    assert layout.widths.side_cut.value > inches("22 1/2")
    assert layout.widths.widths.value == 5


def test_the_gap_is_two_slits_that_taper() -> None:
    plan = swag()
    assert plan.draw_in is not None
    assert plan.tapered_gap is not None
    area = plan.draw_in.value.in_metres * (inches("60") - inches("4")).in_metres
    assert plan.tapered_gap.value == pytest.approx(area)
    note = finding(answer(RELAXED, SIZE).findings, "design.tapered-gap")
    assert note.severity is Severity.NOTE
    assert [change.path for change in note.remedies[0].changes] == ["design.widened_hem"]


def test_sides_that_draw_in_too_far_ask_for_a_shallower_dip() -> None:
    design = replace(RELAXED, dip=inches("6"))
    found = answer(design, SIZE).findings
    ask = finding(found, "design.sides-draw-in")
    texts = {change.path: change.text for way in ask.remedies for change in way.changes}
    assert texts["design.widened_hem"] == "true"
    shallower = inches(texts["design.dip"].removesuffix(" in"))
    drawn = [
        swag(replace(RELAXED, dip=each)).draw_in for each in (shallower, shallower + inches("1/16"))
    ]
    assert drawn[0] is not None
    assert drawn[1] is not None
    assert drawn[0].value <= MOST_DRAW_IN.value < drawn[1].value
    assert "design.tapered-gap" not in ids(found)


@pytest.mark.parametrize(("width", "columns"), [("52", 2), ("52 1/8", 3), ("100", 3), ("101", 4)])
def test_a_wide_hem_hangs_in_two_swags(width: str, columns: int) -> None:
    """At most 48 in between columns that stand 2 in from the edges."""
    assert laid_out(RELAXED, sized(width, "60")).columns.count.value == columns


def test_two_swags_draw_in_twice_as_much() -> None:
    one, two = swag(width="34"), swag(replace(RELAXED, column_count=3), width="64")
    assert one.draw_in is not None
    assert two.draw_in is not None
    assert abs(two.draw_in.value - one.draw_in.value * 2) <= Length(2)


def test_no_seam_moves_the_columns_of_a_swag() -> None:
    """A centre of 40 in puts the seams upon the columns; a flat shade would move them."""
    narrow = Chosen(face=cloth("41"))
    found = answer(replace(RELAXED, edge_distance=None), sized("44", "60"), narrow)
    assert found.result is not None
    assert [mark.value for mark in found.result.columns.marks] == [inches("2"), inches("42")]
    assert "design.seam-on-column" in ids(found.findings)
    flat = laid_out(Choices(largest_pitch=inches("48")), sized("44", "60"), narrow)
    assert flat.columns.marks[0].value > inches("2")


def test_a_dip_too_deep_for_its_columns_is_refused() -> None:
    found = answer(replace(RELAXED, dip=inches("13")), SIZE)
    assert found.result is None
    stop = finding(found.findings, "design.dip-too-deep")
    assert stop.figures[1].value == inches("12")
    assert stop.remedies[0].changes[0].text == "12 in"
    assert answer(replace(RELAXED, dip=inches("12")), SIZE).result is not None


def test_between_close_columns_the_house_dips_less() -> None:
    plan = swag(Choices(style=StyleName.RELAXED, edge_distance=inches("2")), width="9")
    assert plan.dip.value == inches("2")


def test_no_dip_at_all_draws_nothing_in() -> None:
    plan = swag(replace(RELAXED, dip=inches("0")))
    assert plan.draw_in is not None
    assert plan.draw_in.value == Length(0)
    found = ids(answer(replace(RELAXED, dip=inches("0")), SIZE).findings)
    assert not {"design.tapered-gap", "design.sides-draw-in"} & found


def test_bars_and_rods_would_hold_the_hem_straight() -> None:
    materials = Chosen(face=cloth(), bar=BAR)
    found = answer(replace(RELAXED, rods=RodPlace.ROWS), SIZE, materials).findings
    assert finding(found, "design.bar-in-a-swag").severity is Severity.ASK
    rods = finding(found, "design.rods-in-a-swag")
    assert rods.remedies[0].changes[0].text == "none"
    plain = ids(answer(Choices(rods=RodPlace.ROWS), SIZE, materials).findings)
    assert not {"design.bar-in-a-swag", "design.rods-in-a-swag"} & plain


def test_the_raised_shade_hangs_lower_by_the_dip() -> None:
    flat = Choices(column_count=2, largest_pitch=inches("40"), edge_distance=inches("2"))
    stacks = [laid_out(each, SIZE).stack.raised_size.value for each in (flat, RELAXED)]
    assert stacks[1] - stacks[0] == inches("4")


def test_the_middle_is_left_free_once_the_rings_are_on() -> None:
    titles = [step.title for step in laid_out(RELAXED, SIZE).sewing]
    assert titles.index("Sew the rings") < titles.index("Leave the middle free")
