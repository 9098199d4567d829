from dataclasses import replace

import pytest
from tests.core.drawing.building import length, plan, with_rods
from tests.core.drawing.measuring import collisions

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.model import (
    Box,
    Circle,
    Drawing,
    Layer,
    Line,
    LineKind,
    Polyline,
    Rectangle,
    Text,
)
from foldwright.core.drawing.table import table_layout
from foldwright.core.quantity.rounding import System

INCH = 25.4


def draw(made: ShadePlan, system: System = System.INCH) -> Drawing:
    return table_layout(made, system)


def seamed(made: ShadePlan, *places: str) -> ShadePlan:
    assert made.layout is not None
    seams = tuple(length("seam", place) for place in places)
    widths = replace(made.layout.widths, seams=seams)
    return replace(made, layout=replace(made.layout, widths=widths))


def outline(drawing: Drawing, layer: Layer) -> Box:
    box = next(e for e in drawing.elements if isinstance(e, Rectangle) and e.layer is layer)
    x, y = box.corner
    return Box(left=x, bottom=y, right=x + box.width, top=y + box.height)


def texts(drawing: Drawing, layer: Layer) -> list[Text]:
    return [e for e in drawing.elements if isinstance(e, Text) and e.layer is layer]


def test_row_marks_are_cumulative_from_the_bottom_edge() -> None:
    # The worked shade's rows, each rounded only here to the nearest sixteenth.
    marks = [text.words for text in texts(draw(plan()), Layer.ROWS)]
    assert marks == [
        "0", "5 3/16", "12 5/8", "20", "27 3/8", "34 13/16", "42 3/16", "49 5/8",
    ]  # fmt: skip


def test_row_lines_lie_at_their_marks() -> None:
    rows = [e for e in draw(plan()).elements if isinstance(e, Polyline) and e.layer is Layer.ROWS]
    heights = [row.points[0].y / INCH for row in rows]
    assert heights == pytest.approx([5.2, 12.6, 20.0, 27.4, 34.8, 42.2, 49.6])


def test_column_marks_are_cumulative_from_the_left_edge_at_the_back() -> None:
    # Finished width 48 in, 2 in from the edges, 6 columns 8.8 in apart.
    marks = texts(draw(plan()), Layer.COLUMNS)
    assert [mark.words for mark in marks] == [
        "2", "10 13/16", "19 5/8", "28 3/8", "37 3/16", "46",
    ]  # fmt: skip
    places = [mark.at.x / INCH for mark in marks]
    assert places == pytest.approx([2.0, 10.8, 19.6, 28.4, 37.2, 46.0])


def test_every_crossing_has_a_ring() -> None:
    rings = [e for e in draw(plan()).elements if isinstance(e, Circle) and e.layer is Layer.ROWS]
    assert len({ring.centre for ring in rings}) == 7 * 6


def test_the_cut_edge_is_thin_and_as_far_out_as_turns_and_hem() -> None:
    drawing = draw(plan())
    cut, finished = outline(drawing, Layer.CUTS), outline(drawing, Layer.CLOTH)
    assert (finished.width, finished.height) == pytest.approx((48 * INCH, 60 * INCH))
    assert cut.left == pytest.approx(-1.5 * INCH)
    assert cut.right == pytest.approx(49.5 * INCH)
    assert cut.bottom == pytest.approx(-4 * INCH)
    assert cut.top == pytest.approx(63 * INCH)


def test_the_staple_line_lies_a_board_depth_above_the_top_line() -> None:
    staples = [
        e
        for e in draw(plan()).elements
        if isinstance(e, Line) and e.layer is Layer.CUTS and e.kind is LineKind.HIDDEN
    ]
    assert [line.start.y for line in staples] == pytest.approx([62.5 * INCH])
    assert "staple line" in list(draw(plan()).words())


def test_seams_are_dashed_and_marked_from_the_left_edge_at_the_back() -> None:
    drawing = draw(seamed(plan(72), "9.5", "62.5"))
    seams = [e for e in drawing.elements if isinstance(e, Line) and e.layer is Layer.SEAMS]
    assert [seam.start.x for seam in seams] == pytest.approx([9.5 * INCH, 62.5 * INCH])
    assert {seam.kind for seam in seams} == {LineKind.HIDDEN}
    assert [text.words for text in texts(drawing, Layer.SEAMS)] == ["seam 9 1/2", "seam 62 1/2"]


def test_rods_between_rows_have_marks_of_their_own() -> None:
    words = list(draw(with_rods(plan(), RodPlace.MID_FOLD)).words())
    assert "rod 8 7/8" in words  # 5.2 in and half of 7.4 in
    assert "row 1" in words


def test_rods_at_rows_are_told_with_the_row() -> None:
    assert "row 1 + rod" in list(draw(with_rods(plan(), RodPlace.ROWS)).words())


def test_it_says_that_it_is_seen_from_the_back() -> None:
    drawing = draw(plan(), System.METRIC)
    assert drawing.seen_from == "from the back, face down"
    assert "Seen from the back, face down. Sizes in millimetres." in list(drawing.words())


def test_the_words_for_a_screen_reader_hold_every_mark() -> None:
    told = draw(plan()).description
    assert "Rows from the bottom edge: 5 3/16, 12 5/8, 20, 27 3/8, 34 13/16" in told
    assert "Columns from the left edge: 2, 10 13/16" in told


def test_without_a_layout_it_says_what_is_missing() -> None:
    drawing = draw(replace(plan(), layout=None))
    assert list(drawing.words()) == [drawing.description]


def test_marks_stay_apart_where_the_sheet_leaves_little_room() -> None:
    drawing = table_layout(plan(72, 96, row_count=13), System.INCH, Frame(width=180, height=90))
    assert collisions(drawing) == []
