"""Fullness across and along, scallops, poufs and loops of balloon and gathered shades."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.core.layouts import HABITS, answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Severity

BALLOON = Choices(
    style=StyleName.BALLOON,
    head_allowance=inches("3"),
    skirt=inches("1"),
    width_fullness=2.5,
    pouf=inches("14"),
    shrinkage=0.0,
)
GATHERED = Choices(
    style=StyleName.GATHERED,
    head_allowance=inches("3"),
    skirt=inches("1"),
    fullness=1.5,
    width_fullness=2.0,
    shrinkage=0.0,
)
SIZE = sized("40", "60")


def test_the_face_is_so_many_times_as_wide_as_the_shade() -> None:
    layout = laid_out(BALLOON, SIZE)
    assert layout.widths.cloth_width is not None
    assert layout.widths.cloth_width.value == inches("100")
    seams = HABITS.seam_allowance.value * 2 * len(layout.widths.seams)
    assert layout.cuts[0].width.value == inches("103") + seams


def test_columns_stand_evenly_on_the_flat_cloth_and_on_the_shade() -> None:
    """Own arithmetic: 2 in from each edge and three poufs, 12 in wide, from 32 in of cloth."""
    columns = laid_out(BALLOON, SIZE).columns
    assert [mark.value for mark in columns.marks] == [inches(x) for x in ("2", "14", "26", "38")]
    assert [mark.value for mark in columns.cloth_marks] == [
        inches(x) for x in ("2", "34", "66", "98")
    ]


@pytest.mark.parametrize(("width", "poufs"), [("46", 3), ("46 1/16", 4)])
def test_a_pouf_is_at_most_fourteen_inches_wide(width: str, poufs: int) -> None:
    assert laid_out(BALLOON, sized(width, "60")).columns.count.value == poufs + 1


def test_the_pouf_hangs_half_its_cloth_below_the_tied_rows() -> None:
    """Half of 14 in is 7 in; 60 - 3 - 7 - 1/8 in are left to the free rows."""
    layout = laid_out(replace(BALLOON, row_count=8), SIZE)
    rows = layout.rows
    assert rows.tied_rows.value == 1
    assert rows.first_row.value == inches("7")
    assert float(rows.spacing.value.in_inches) == pytest.approx(49.875 / 7, abs=1e-4)
    body = layout.cuts[0].body
    assert body is not None
    assert body.value == inches("68")  # 60 - 7 in above the lowest row, 1 in of skirt, 14 of pouf


def test_raised_the_pouf_hangs_lowest() -> None:
    stack = laid_out(replace(BALLOON, row_count=8), SIZE).stack
    assert stack.raised_size.value == inches("3") + inches("1/8") * 7 + inches("7")


def test_a_scallop_is_no_deeper_than_its_fold_its_cloth_and_the_house_allow() -> None:
    """Two fifths of the 12 in between rings are 4 4/5 in; cloth as wide as the shade has none."""
    deep = laid_out(BALLOON, SIZE).swag
    flat = laid_out(replace(BALLOON, width_fullness=1.0), SIZE).swag
    scant = laid_out(replace(BALLOON, width_fullness=1.05), SIZE).swag
    assert deep is not None
    assert flat is not None
    assert scant is not None
    assert deep.pinched
    assert deep.dip.value == inches("12") * 2 / 5
    assert flat.dip.value == Length(0)
    assert Length(0) < scant.dip.value < deep.dip.value
    assert deep.edge_length.value == inches("32")


def test_a_shallow_fold_makes_a_shallow_scallop() -> None:
    shallow = replace(GATHERED, largest_row_spacing=inches("2"), fullness=1.0, skirt=inches("1"))
    layout = laid_out(shallow, SIZE)
    assert layout.swag is not None
    assert layout.swag.dip.value == layout.rows.first_row.value


def test_gathered_rows_take_more_cloth_than_drop_above_the_lowest() -> None:
    layout = laid_out(GATHERED, SIZE)
    rows, body = layout.rows, layout.cuts[0].body
    assert rows.tied_rows.value == 0
    assert body is not None
    first = rows.first_row.value
    assert abs(body.value - first - (inches("60") - first) * 3 / 2) <= Length(20)
    flat = [mark.value for mark in rows.cloth_marks]
    assert flat[0] == first
    for lower, upper in pairwise(flat):
        assert abs(upper - lower - rows.spacing.value * 3 / 2) <= Length(2)


def test_the_raised_hem_of_a_gathered_shade_hangs_a_skirt_below_its_loops() -> None:
    rows = laid_out(GATHERED, SIZE).rows
    assert abs(rows.first_row.value - rows.fold_depth.value - inches("1")) <= Length(1)


def test_loops_of_a_gathered_shade_keep_to_the_rule_of_the_loop() -> None:
    """16.9 in over 1 + 1.5 is 6.76 in of row spacing at most."""
    assert laid_out(GATHERED, SIZE).rows.spacing.value <= inches("6 3/4") + inches("1/100")
    found = answer(replace(GATHERED, row_count=7), SIZE).findings
    stop = finding(found, "design.loop-too-long")
    assert stop.severity is Severity.STOP
    texts = {change.text for way in stop.remedies for change in way.changes}
    assert "8" in texts


def test_a_tied_gathered_shade_keeps_loops_and_a_pouf() -> None:
    """Half of (14 + 1/8) x 1.5 in, less half of the 1/8 in between the tied rows."""
    rows = laid_out(replace(GATHERED, tied_rows=1, pouf=inches("14")), SIZE).rows
    deep = (14.125 * 1.5 - 0.125) / 2
    assert float(rows.first_row.value.in_inches) == pytest.approx(deep, abs=1e-6)
    on_the_cloth = rows.cloth_marks[1].value - rows.cloth_marks[0].value
    assert float(on_the_cloth.in_inches) == pytest.approx(14.125 * 1.5, abs=1e-6)


@pytest.mark.parametrize("design", [BALLOON, GATHERED])
def test_less_cloth_than_width_is_refused(design: Choices) -> None:
    found = answer(replace(design, width_fullness=0.9), SIZE)
    assert found.result is None
    stop = finding(found.findings, "design.width-fullness-under-one")
    assert [change.text for way in stop.remedies for change in way.changes] == [""]
    assert laid_out(replace(design, width_fullness=1.0), SIZE)


def test_rods_are_left_out_of_a_face_that_hangs_free_and_a_bar_is_not() -> None:
    found = answer(replace(BALLOON, rods=RodPlace.ROWS), SIZE).findings
    assert "design.rods-in-a-swag" in ids(found)
    assert "design.bar-in-a-swag" not in ids(found)


def test_the_stack_is_as_many_times_as_thick_as_it_is_gathered() -> None:
    felt = Chosen(face=cloth("118", thickness=Length.mm(6)))
    thick, thin = (
        laid_out(replace(BALLOON, width_fullness=full), SIZE, felt).stack.depth.value
        for full in (2.0, 1.0)
    )
    ring = Length.mm(4)
    assert abs(thick - ring - (thin - ring) * 2) <= Length(2)


def test_the_head_is_gathered_last_and_the_turns_are_checked_on_the_flat_cloth() -> None:
    steps = {step.title: step for step in laid_out(BALLOON, SIZE).sewing}
    titles = list(steps)
    assert titles.index("Sew the rings") < titles.index("Tie the pouf")
    assert titles.index("Tie the pouf") < titles.index("Gather the head")
    assert titles.index("Gather the head") < titles.index("Fix the top")
    assert steps["Turn the sides"].figures[1].value == inches("100")
    assert [figure.value for figure in steps["Gather the head"].figures] == [
        inches("100"),
        inches("40"),
    ]
    loops = [step.title for step in laid_out(GATHERED, SIZE).sewing]
    assert "Tie the pouf" not in loops
    assert loops.index("Hold the loops") < loops.index("Gather the head")


@pytest.mark.parametrize("style", [StyleName.BALLOON, StyleName.GATHERED, StyleName.AUSTRIAN])
def test_folds_that_hang_free_are_not_asked_to_hang_level(style: StyleName) -> None:
    """Their columns stand farther apart than a flat shade's, and no cloth need be stiff for it."""
    found = answer(Choices(style=style), SIZE, Chosen(face=cloth("118"))).findings
    assert not {"design.stiffness-unknown", "design.folds-sag"} & ids(found)


@pytest.mark.parametrize(
    ("style", "across"), [(StyleName.BALLOON, "100"), (StyleName.GATHERED, "80")]
)
def test_the_house_gathers_a_balloon_more_richly(style: StyleName, across: str) -> None:
    """Two and a half widths of 40 in, or twice."""
    width = laid_out(Choices(style=style), SIZE).widths.cloth_width
    assert width is not None
    assert width.value == inches(across)


def test_a_loop_that_hangs_lower_than_its_pouf_is_the_lowest_edge() -> None:
    """A quarter of the largest spacing, 6.76 in, where the pouf hangs 0.78 in and the skirt 1."""
    rows = laid_out(replace(GATHERED, tied_rows=1, pouf=inches("1")), SIZE).rows
    assert float(rows.first_row.value.in_inches) == pytest.approx(6.76 / 4, abs=1e-6)
