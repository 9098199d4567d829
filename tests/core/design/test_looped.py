"""Rows and loops of looped shades."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import BAR, answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.design.looped import book_loop_count
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length

LOOPED = Choices(style=StyleName.LOOPED, fullness=2.0)


def test_loops_within_five_and_a_half_inches() -> None:
    """Own arithmetic: 60 in within 5 1/2 in a loop takes 11 loops; exact."""
    design = replace(LOOPED, largest_row_spacing=inches("5 1/2"))
    assert laid_out(design, sized("36", "60")).rows.count.value == 11


@pytest.mark.parametrize(("spacing", "allowed"), [("6", 1.8), ("5", 2.35), ("4 1/2", 2.75)])
def test_the_fullness_a_loop_allows(spacing: str, allowed: float) -> None:
    """Own arithmetic: 16.9/s - 1 is 1.817, 2.38, 2.756; offered down to a twentieth."""
    design = replace(LOOPED, row_count=10, fullness=3.5, skirt=inches("1"))
    size = sized("36", inches(spacing) * 10)
    stop = finding(answer(design, size).findings, "design.loop-too-long")
    texts = [way.changes[0].text for way in stop.remedies if way.changes]
    assert str(allowed) in texts


def test_the_book_s_count_rounds_to_the_nearest_loop() -> None:
    drops = ["3", "9", "11 15/16", "12", "63"]
    counts = [book_loop_count(sized("36", drop).drop).value for drop in drops[1:]]
    assert counts == [1, 1, 2, 10]


def test_the_rows_share_the_drop_and_the_top_panel_gives_up_the_skirt() -> None:
    design = replace(LOOPED, row_count=12, skirt=inches("1 1/2"), head_allowance=inches("3"))
    rows = laid_out(design, sized("36", "63")).rows
    assert rows.spacing.value == inches("5 1/4")
    assert rows.first_row.value == inches("1 1/2")
    assert rows.top_panel.value == inches("3 3/4")
    assert rows.fold_depth.value == inches("5 1/4")


def test_the_top_panel_is_never_shorter_than_the_head() -> None:
    """With a head of 5 in the 11 spacings share 63 - 1 1/2 - 5 in."""
    design = replace(LOOPED, row_count=12, skirt=inches("1 1/2"), head_allowance=inches("5"))
    rows = laid_out(design, sized("36", "63")).rows
    assert abs(rows.top_panel.value - inches("5")) <= Length(1)
    assert abs(rows.spacing.value * 11 - inches("56 1/2")) <= Length(11)


def test_a_row_in_the_bar_s_pocket_is_a_stop() -> None:
    """A bar of 1 in wants a pocket of 1 1/4 in."""
    materials = Chosen(face=cloth(), bar=BAR)
    low = answer(replace(LOOPED, skirt=inches("1")), sized("36", "63"), materials).findings
    assert finding(low, "design.row-in-pocket").remedies[0].changes[0].text == "1 1/4 in"
    kept = answer(replace(LOOPED, skirt=inches("1 1/4")), sized("36", "63"), materials).findings
    assert "design.row-in-pocket" not in ids(kept)


def test_a_rod_finds_no_fold_line_in_a_loop() -> None:
    found = answer(replace(LOOPED, rods=RodPlace.MID_FOLD), sized("36", "63")).findings
    ways = finding(found, "design.rods-in-loops").remedies
    assert [way.changes[0].text for way in ways] == ["at rows", "none"]


def test_lining_and_face_loop_alike() -> None:
    """Own arithmetic: a skirt of 1 in hangs straight, 59 in loop double, and 4 and 3 in turn."""
    materials = Chosen(face=cloth(), lining=cloth())
    design = replace(
        LOOPED,
        shrinkage=0.0,
        skirt=inches("1"),
        hem_allowance=inches("4"),
        top_allowance=inches("3"),
    )
    cuts = laid_out(design, sized("36", "60"), materials).cuts
    assert [cut.length.value for cut in cuts] == [inches("126"), inches("122")]


def test_rows_lie_farther_apart_on_the_flat_cloth_than_they_hang() -> None:
    """From the skirt up every spacing takes twice its height of cloth."""
    rows = laid_out(replace(LOOPED, skirt=inches("1")), sized("36", "60")).rows
    flat = [mark.value for mark in rows.cloth_marks]
    assert flat[0] == inches("1")
    for mark, on_the_cloth in zip(rows.marks, flat, strict=True):
        assert abs(on_the_cloth - inches("1") - (mark.value - inches("1")) * 2) <= Length(20)


def test_the_top_panel_keeps_its_head_where_the_lowest_loop_sets_the_rows() -> None:
    """The lowest row lies half a spacing up, and 11 spacings and a half share 63 - 5 in."""
    design = replace(LOOPED, row_count=12, head_allowance=inches("5"))
    rows = laid_out(design, sized("36", "63")).rows
    assert abs(rows.top_panel.value - inches("5")) <= Length(2)
    assert abs(rows.first_row.value * 2 - rows.spacing.value) <= Length(1)
