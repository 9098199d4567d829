"""The numbers in the remedies, worked by hand."""

from __future__ import annotations

from dataclasses import replace

from tests.core.layouts import (
    BAR,
    BRACKET,
    ROD,
    answer,
    cloth,
    figure,
    finding,
    habit,
    inches,
    laid_out,
    sized,
)

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Finding

BENCH = Choices(head_allowance=inches("3"), skirt=inches("1 1/2"))
SIZE = sized("48", "60")
WIDE = Chosen(face=cloth("118"))


def texts(found: Finding) -> list[str]:
    return [way.changes[0].text for way in found.remedies if way.changes]


def test_folds_too_shallow_get_the_most_rows_that_are_deep_enough() -> None:
    """55 1/2 in in folds of 2 1/2: 11.1 - 1/2, so 10 rows 5.286 in apart."""
    found = answer(replace(BENCH, row_count=12), SIZE, WIDE).findings
    assert texts(finding(found, "design.fold-depth")) == ["10"]


def test_folds_too_deep_get_the_fewest_rows_that_are_shallow_enough() -> None:
    """55 1/2 in in folds of 5: 5.55 - 1/2, so 6 rows 8.54 in apart; a cap of 20 in allows it."""
    found = answer(replace(BENCH, row_count=3), SIZE, WIDE, cap=figure("cap", "20")).findings
    assert texts(finding(found, "design.fold-depth")) == ["6"]


def test_no_number_of_rows_makes_the_folds_of_a_tiny_shade_deep() -> None:
    found = answer(replace(BENCH, head_allowance=inches("4")), sized("48", "9"), WIDE).findings
    assert texts(finding(found, "design.fold-depth")) == []


def test_one_row_may_be_the_way_out() -> None:
    """12 - 3 - 1 1/2 is 7 1/2 in: 1 row at 5 in is just deep enough."""
    found = answer(replace(BENCH, row_count=2), sized("48", "12"), WIDE).findings
    assert texts(finding(found, "design.fold-depth")) == ["1"]


def test_a_shorter_skirt_takes_back_what_the_folds_grow() -> None:
    """7 rows, 0.2 in too much: 0.2 x 15/14 = 0.214 off 1 1/2 in, down to 1 1/4."""
    size = replace(SIZE, top_above_glass=figure("top to glass", "8"))
    design = replace(BENCH, stack_allowed_on_glass=inches("0"))
    thin = habit("stacked_row_pitch", Length(0))
    stop = finding(answer(design, size, WIDE, habits=thin).findings, "design.stack-over-allowed")
    assert texts(stop) == ["8", "1 1/4 in"]
    shorter = replace(design, skirt=inches("1 1/4"))
    covered = laid_out(shorter, size, WIDE, habits=thin).stack.glass_covered
    assert covered is not None
    assert covered.value == Length(0)


def test_limits_between_marks_are_rounded_to_the_safe_side() -> None:
    """A rail of 2 1/32 in, a floor of 51 mm, a bar of 1 1/32 in."""
    bracket = replace(BRACKET, height=inches("2 1/32"))
    found = answer(
        Choices(head_allowance=inches("2")), SIZE, Chosen(face=cloth(), bracket=bracket)
    ).findings
    assert texts(finding(found, "design.head-too-short")) == ["3 1/16 in"]
    bar = replace(BAR, width=inches("1 1/32"))
    looped = Choices(style=StyleName.LOOPED, skirt=inches("1"))
    found = answer(looped, SIZE, Chosen(face=cloth(), bar=bar)).findings
    assert texts(finding(found, "design.row-in-pocket")) == ["1 5/16 in"]
    metric = Choices(edge_distance=Length.mm(45))
    size = sized(Length.mm(1201), Length.mm(1501))
    found = answer(metric, size, WIDE).findings
    assert texts(finding(found, "design.edge-too-near")) == ["51 mm"]


def test_typing_both_columns_and_edge_frees_both_only_where_both_are_typed() -> None:
    only_count = answer(Choices(column_count=9, edge_distance=None), sized("75", "60")).findings
    assert only_count == ()  # the edge moved by itself
    only_edge = answer(Choices(edge_distance=inches("3 1/2"), column_count=None), sized("75", "60"))
    assert only_edge.result is not None
    assert only_edge.result.columns.edge_distance.value == inches("3 1/2")


def test_spacing_of_just_twice_the_stacked_rows_is_drawn() -> None:
    """60 - 4 1/2 over 221 and a half rows is 0.2506 in, over 222 is 0.2494; twice 1/8 is 1/4."""
    assert answer(replace(BENCH, row_count=221), SIZE, WIDE).result is not None
    assert answer(replace(BENCH, row_count=222), SIZE, WIDE).result is None


def test_thin_rods_at_the_rows_stack_by_the_rings() -> None:
    thin = replace(ROD, diameter=inches("1/16"))
    rows = laid_out(Choices(rods=RodPlace.ROWS), SIZE, Chosen(rod=thin, face=cloth("118"))).rows
    assert rows.stacked_pitch is not None
    assert rows.stacked_pitch.value == inches("1/8")


def test_columns_are_named_from_the_edge_and_no_rows_are_tied() -> None:
    layout = laid_out(BENCH, SIZE, WIDE)
    assert layout.rows.tied_rows.value == 0
    assert [mark.name for mark in layout.columns.marks[:2]] == ["column 1", "column 2"]
    assert [mark.name for mark in layout.rows.marks[:2]] == ["row 1", "row 2"]
