"""Rows and ridges of tucked shades."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest
from tests.core.layouts import answer, cloth, finding, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.design.layout import Sewn
from foldwright.core.facts.records import Chosen

TUCKED = Choices(
    style=StyleName.TUCKED, skirt=inches("1"), head_allowance=inches("3"), shrinkage=0.0
)


def test_the_head_closes_the_rows_up_where_it_needs_more_than_half_a_spacing() -> None:
    """Own arithmetic: 60 - 1 - 5 in shared by 9 1/2 spacings, against 60/10; exact to 1e-4 in."""
    design = replace(TUCKED, row_count=10, head_allowance=inches("5"))
    rows = laid_out(design, sized("36", "60")).rows
    assert float(rows.spacing.value.in_inches) == pytest.approx(54 / 9.5, abs=1e-4)
    assert float(rows.top_panel.value.in_inches) == pytest.approx(5, abs=1e-4)


def test_on_the_flat_cloth_every_tuck_pushes_the_next_one_up() -> None:
    """Own arithmetic: the third tuck hangs at 1 + 3 + 6 in and is marked 2 1/2 tucks higher."""
    design = replace(TUCKED, row_count=10, tuck=inches("1"), skirt=inches("0"))
    layout = laid_out(design, sized("36", "60"))
    assert layout.rows.spacing.value == inches("6")
    ridges = [ridge.value for ridge in layout.rows.ridges]
    assert ridges[:3] == [inches("3"), inches("6"), inches("9")]
    marks = [line.at.value for line in layout.sewn]
    assert marks[:3] == [inches("3 1/2"), inches("7 1/2"), inches("11 1/2")]
    assert {line.kind for line in layout.sewn} == {Sewn.TUCK}
    assert [mark.value for mark in layout.rows.cloth_marks] == marks[::2]


def test_every_tuck_takes_its_cloth_from_face_and_lining_alike() -> None:
    materials = Chosen(face=cloth(), lining=cloth())
    design = replace(
        TUCKED,
        row_count=10,
        hem_allowance=inches("4"),
        top_allowance=inches("3"),
        skirt=inches("0"),
    )
    layout = laid_out(design, sized("36", "60"), materials)
    assert len(layout.rows.ridges) == 20
    assert [cut.length.value for cut in layout.cuts] == [inches("77"), inches("73")]


def test_the_ridges_are_half_a_spacing_apart() -> None:
    rows = laid_out(TUCKED, sized("36", "60")).rows
    for lower, upper in pairwise(rows.ridges):
        assert abs((upper.value - lower.value) * 2 - rows.spacing.value).nanometres <= 2


def test_a_tuck_beyond_the_top_line_is_left_out() -> None:
    """With a skirt the rows stand higher, and the last tuck would lie on the board."""
    design = replace(TUCKED, row_count=10, head_allowance=inches("2 9/16"))
    rows = laid_out(design, sized("36", "63")).rows
    assert len(rows.ridges) == 19
    assert rows.ridges[-1] is rows.marks[-1]


def test_a_rod_between_the_rows_finds_a_tuck_there() -> None:
    found = answer(replace(TUCKED, rods=RodPlace.MID_FOLD), sized("36", "60")).findings
    ways = finding(found, "design.rods-in-loops").remedies
    assert [way.changes[0].text for way in ways] == ["at rows", "none"]


def test_the_tucks_are_sewn_before_anything_is_turned() -> None:
    steps = laid_out(TUCKED, sized("36", "60")).sewing
    titles = [step.title for step in steps]
    assert titles.index("Sew the tucks") < titles.index("Turn the sides")
    tucks = steps[titles.index("Sew the tucks")]
    assert tucks.figures[0].value == 20
