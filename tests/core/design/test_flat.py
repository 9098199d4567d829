"""Rows, folds and skirt of flat shades: worked by hand, one formula."""

from __future__ import annotations

import pytest
from tests.core.layouts import (
    BRACKET,
    ROD,
    answer,
    cloth,
    figure,
    finding,
    habit,
    ids,
    inches,
    laid_out,
    sized,
)

from foldwright.core.design.choices import Choices, RodPlace
from foldwright.core.facts.markets import Market, row_spacing_cap
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length

CAP = figure("largest row spacing", "8")
BENCH = Choices(head_allowance=inches("3"), skirt=inches("1 1/2"))


def in_inches(lengths: list[Length]) -> list[float]:
    return [round(float(length.in_inches), 4) for length in lengths]


@pytest.mark.parametrize(
    ("drop", "count", "spacing", "first", "top", "marks"),
    [
        ("60", 7, 7.4, 5.2, 10.4, [5.2, 12.6, 20.0, 27.4, 34.8, 42.2, 49.6]),
        ("42", 5, 6.8182, 4.9091, 9.8182, [4.9091, 11.7273, 18.5455, 25.3636, 32.1818]),
        (
            "84",
            10,
            7.5714,
            5.2857,
            10.5714,
            [5.2857, 12.8571, 20.4286, 28, 35.5714, 43.1429, 50.7143, 58.2857, 65.8571, 73.4286],
        ),
    ],
)
def test_three_drops_by_hand(  # noqa: PLR0913, PLR0917 - one line of the table
    drop: str, count: int, spacing: float, first: float, top: float, marks: list[float]
) -> None:
    """Own arithmetic; head 3 in, skirt 1 1/2 in, cap 8 in; tolerance 0.0001 in."""
    rows = laid_out(BENCH, sized("48", drop), cap=CAP).rows
    assert rows.count.value == count
    assert in_inches([rows.spacing.value, rows.first_row.value, rows.top_panel.value]) == [
        spacing,
        first,
        top,
    ]
    assert in_inches([mark.value for mark in rows.marks]) == marks
    assert rows.fold_depth.value * 2 == rows.spacing.value


def test_a_metric_drop_by_hand() -> None:
    """Own arithmetic: 1524 mm, head 76, skirt 38, cap 200: 7 rows of 188 mm from 132; exact."""
    design = Choices(
        head_allowance=Length.mm(76), skirt=Length.mm(38), largest_row_spacing=Length.mm(200)
    )
    rows = laid_out(design, sized(Length.mm(1200), Length.mm(1524))).rows
    assert rows.spacing.value == Length.mm(188)
    assert [mark.value for mark in rows.marks] == [Length.mm(132 + 188 * n) for n in range(7)]
    assert rows.top_panel.value == Length.mm(264)


def test_the_rule_of_odd_folds_is_the_same_formula() -> None:
    """Own arithmetic: 1200 mm, head 65, no skirt, 3 rods: 162.1, 486.4, 810.7 mm; 0.05 mm.

    Rods 324 mm apart break a rule of 200 mm, and the tool says so.
    """
    design = Choices(
        head_allowance=Length.mm(65), skirt=Length.mm(0), row_count=3, rods=RodPlace.ROWS
    )
    found = answer(design, sized(Length.mm(900), Length.mm(1200)), Chosen(rod=ROD, face=cloth()))
    assert found.result is not None
    rows = found.result.rows
    marks = [mark.value.in_millimetres for mark in rows.rod_marks]
    assert marks == pytest.approx([162.1, 486.4, 810.7], abs=0.05)
    assert rows.top_panel.value.in_millimetres == pytest.approx(389.3, abs=0.05)
    stop = finding(found.findings, "design.rows-too-far-apart")
    assert stop.remedies[0].changes[0].text == "6"


def test_rods_at_mid_fold_lie_half_a_spacing_over_each_row() -> None:
    design = Choices(head_allowance=inches("3"), rods=RodPlace.MID_FOLD)
    rows = laid_out(design, sized("48", "60"), Chosen(rod=ROD, face=cloth()), cap=CAP).rows
    halves = [rod.value - mark.value for rod, mark in zip(rows.rod_marks, rows.marks, strict=True)]
    assert all(abs(half - rows.fold_depth.value) <= Length(1) for half in halves)
    assert rows.rod_marks[-1].value < inches("60")


def test_a_typed_number_of_rows_is_kept_and_the_cap_speaks() -> None:
    """60 in in 5 rows is (60 - 4 1/2)/5.5 = 10.09 in apart; 7 rows at 7 3/8 mend it."""
    design = Choices(head_allowance=inches("3"), row_count=5)
    found = answer(design, sized("48", "60"), cap=CAP)
    stop = finding(found.findings, "design.rows-too-far-apart")
    assert [round(float(f.value.in_inches), 2) for f in stop.figures] == [10.09, 8.0]
    assert stop.remedies[0].sentence == "Use {0} rows at {1}."
    assert [change.text for change in stop.remedies[0].changes] == ["7"]


def test_a_typed_spacing_under_the_cap_governs_and_one_over_it_does_not() -> None:
    small = answer(Choices(largest_row_spacing=inches("6")), sized("48", "60"), cap=CAP)
    assert small.result is not None
    assert small.result.rows.count.value == 9
    large = answer(Choices(largest_row_spacing=inches("12")), sized("48", "60"), cap=CAP)
    assert large.result is not None
    assert large.result.rows.spacing.value <= inches("8")
    assert "design.asked-over-cap" in ids(large.findings)
    both = Choices(largest_row_spacing=inches("6"), row_count=7)
    assert "design.rows-over-asked" in ids(answer(both, sized("48", "60"), cap=CAP).findings)


def test_the_head_is_what_the_headrail_needs_but_never_under_the_floor() -> None:
    """A headrail of 2 in and 1 in under it; the floor is 65 mm."""
    with_rail = laid_out(Choices(), sized("48", "60"), Chosen(bracket=BRACKET, face=cloth()))
    assert with_rail.rows.head_allowance.value == inches("3")
    assert laid_out(Choices(), sized("48", "60")).rows.head_allowance.value == Length.mm(65)


@pytest.mark.parametrize(("typed", "found"), [("2 15/16", True), ("3", False)])
def test_a_head_too_short_for_its_rail_is_a_stop(typed: str, found: bool) -> None:  # noqa: FBT001
    materials = Chosen(bracket=BRACKET, face=cloth())
    said = answer(Choices(head_allowance=inches(typed)), sized("48", "60"), materials).findings
    assert ("design.head-too-short" in ids(said)) is found


@pytest.mark.parametrize(("spacing", "name"), [("4 7/8", True), ("5 3/8", False)])
def test_shallow_folds_are_noted(spacing: str, name: bool) -> None:  # noqa: FBT001
    said = answer(Choices(largest_row_spacing=inches(spacing)), sized("48", "60")).findings
    assert ("design.fold-depth" in ids(said)) is name


def test_a_fullness_means_nothing_on_a_flat_shade() -> None:
    said = finding(
        answer(Choices(fullness=2.0), sized("48", "60")).findings, "design.fullness-on-flat"
    )
    assert [way.changes[0].text for way in said.remedies] == ["", "looped"]


def test_rods_without_a_rod_are_asked_about() -> None:
    assert "design.rod-missing" in ids(
        answer(Choices(rods=RodPlace.ROWS), sized("48", "60")).findings
    )


def test_thick_rods_at_the_rows_stack_by_their_own_thickness() -> None:
    plain = laid_out(Choices(), sized("48", "60"))
    rods = laid_out(Choices(rods=RodPlace.ROWS), sized("48", "60"), Chosen(rod=ROD, face=cloth()))
    pitches = [each.rows.stacked_pitch for each in (plain, rods)]
    assert [pitch.value for pitch in pitches if pitch] == [inches("1/8"), inches("3/16")]


def test_a_habit_of_the_shop_goes_before_the_house_s() -> None:
    rows = laid_out(Choices(), sized("48", "60"), habits=habit("skirt", inches("2"))).rows
    assert rows.skirt.value == inches("2")


EUROPE_CAP = row_spacing_cap((Market.EUROPE_AND_UK,))
RAILED = Chosen(face=cloth(), bracket=BRACKET)


@pytest.mark.parametrize("drop", ["42", "60", "84", "100"])
def test_the_cord_above_the_top_row_is_as_short_as_the_market_asks(drop: str) -> None:
    """uk-inner-cord-page: 200 mm between contact points, the tube being one; exact."""
    size, below = sized("36", drop), BRACKET.tube_centre_below_board
    rows = laid_out(Choices(), size, RAILED, cap=EUROPE_CAP).rows
    assert rows.top_panel.value - below <= Length.mm(200)
    fewer = Choices(row_count=rows.count.value - 1)
    typed = laid_out(fewer, size, RAILED, cap=EUROPE_CAP).rows
    assert typed.count.value == rows.count.value - 1
    assert typed.top_panel.value - below > Length.mm(200)


def test_a_rule_that_speaks_of_rings_alone_adds_no_rows() -> None:
    bare, railed = (laid_out(BENCH, sized("36", "60"), each).rows for each in (None, RAILED))
    assert bare.count.value == railed.count.value
    assert railed.top_panel.value > bare.spacing.value


def test_a_head_that_alone_is_too_long_adds_no_rows() -> None:
    design = Choices(head_allowance=inches("12"))
    counts = {
        laid_out(design, sized("36", "60"), each, cap=EUROPE_CAP).rows.count.value
        for each in (None, RAILED)
    }
    assert len(counts) == 1
