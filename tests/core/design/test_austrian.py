"""Scallops, tapes and the cloth drawn up on them, of Austrian shades."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.core.layouts import answer, cloth, finding, inches, laid_out, sized

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.hanging import HangingEdge
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length

AUSTRIAN = Choices(
    style=StyleName.AUSTRIAN,
    head_allowance=inches("3"),
    skirt=inches("1"),
    scallop=inches("4"),
    fullness=3.0,
    shrinkage=0.0,
)
SIZE = sized("48", "60")


def test_a_scallop_hangs_as_deep_as_its_cloth_lets_it() -> None:
    """Four scallops of 11 in, each 15 in long at the hem."""
    swag = laid_out(AUSTRIAN, SIZE).swag
    assert swag is not None
    assert (swag.chord.value, swag.edge_length.value) == (inches("11"), inches("15"))
    edge = HangingEdge.of_length(11.0, 15.0)
    assert float(swag.dip.value.in_inches) == pytest.approx(edge.sag_m, abs=1e-6)
    assert not swag.pinched


def test_the_lowest_row_lies_a_skirt_and_a_dip_above_the_lowest_point() -> None:
    layout = laid_out(AUSTRIAN, SIZE)
    assert layout.swag is not None
    assert layout.rows.first_row.value == inches("1") + layout.swag.dip.value


def test_rows_are_spread_over_the_cloth_before_it_is_drawn_up() -> None:
    """Three drops of cloth lie on tapes that end over the dip, so each row takes its share."""
    layout = laid_out(AUSTRIAN, SIZE)
    assert layout.swag is not None
    tape = inches("60") - layout.swag.dip.value
    full = float(inches("180") / tape)
    assert layout.rows.fullness.value == pytest.approx(full)
    flat = [mark.value for mark in layout.rows.cloth_marks]
    assert float(flat[0].in_inches) == pytest.approx(full, abs=1e-5)
    for lower, upper in pairwise(flat):
        spacing = float(layout.rows.spacing.value.in_inches)
        assert float((upper - lower).in_inches) == pytest.approx(spacing * full, abs=1e-5)


def test_shirred_cloth_folds_as_long_as_it_hangs() -> None:
    rows = laid_out(AUSTRIAN, SIZE).rows
    assert rows.shirred
    assert rows.fold_depth.value == Length(round(rows.spacing.value.nanometres / 2))


def test_twice_the_cloth_is_twice_the_stack() -> None:
    thick = Chosen(face=cloth("118", thickness=Length.mm(3)))
    three, two = (
        laid_out(replace(AUSTRIAN, fullness=full), SIZE, thick).stack.depth for full in (3.0, 1.5)
    )
    ring = Length.mm(4)
    assert abs(three.value - ring - (two.value - ring) * 2) <= Length(4)


def test_a_thin_stack_billows_all_the_same() -> None:
    thin = Chosen(face=cloth("118", thickness=Length.mm("0.1")))
    depth = laid_out(AUSTRIAN, SIZE, thin).stack.depth
    assert (depth.low, depth.value, depth.high) == (inches("4"), inches("11/2"), inches("7"))


def test_raised_the_lowest_scallop_hangs_lowest() -> None:
    layout = laid_out(replace(AUSTRIAN, row_count=7), SIZE)
    assert layout.swag is not None
    fold = layout.rows.fold_depth.value
    lowest = max(fold, inches("1")) + layout.swag.dip.value
    stacked = inches("3") + inches("1/8") * 6
    assert abs(layout.stack.raised_size.value - stacked - lowest) <= Length(2)


def test_scallops_that_leave_no_row_are_refused_with_a_way_out() -> None:
    found = answer(replace(AUSTRIAN, scallop=inches("30")), sized("48", "18"))
    assert found.result is None
    stop = finding(found.findings, "design.scallops-too-deep")
    assert [change.path for way in stop.remedies for change in way.changes] == ["design.scallop"]


@pytest.mark.parametrize(("width", "scallops"), [("52", 4), ("52 1/16", 5)])
def test_a_scallop_is_at_most_twelve_inches_wide(width: str, scallops: int) -> None:
    assert laid_out(AUSTRIAN, sized(width, "60")).columns.count.value == scallops + 1


def test_the_tapes_are_drawn_up_once_the_rings_are_on() -> None:
    titles = [step.title for step in laid_out(AUSTRIAN, SIZE).sewing]
    assert titles.index("Sew the rings") < titles.index("Draw up the tapes")
    assert titles.index("Draw up the tapes") < titles.index("Fix the top")
