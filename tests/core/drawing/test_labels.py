from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.drawing.frame import Frame, Gutters, fit, text_width, widened, with_gutters
from foldwright.core.drawing.labels import levels, pairwise_apart, spread
from foldwright.core.drawing.model import Box, Layer, Lettering, LineKind, Point
from foldwright.core.drawing.shapes import around, behind

PLACES = st.lists(st.floats(0.0, 200.0), min_size=1, max_size=20)


@given(places=PLACES)
def test_labels_stand_apart_in_their_order(places: list[float]) -> None:
    moved = spread(places, 5.0)
    in_order = [place for _, place in sorted(zip(places, moved, strict=True))]
    assert all(b - a >= 5.0 - 1e-6 for a, b in pairwise(in_order))


@given(places=PLACES)
def test_labels_that_stand_apart_stay_where_they_are(places: list[float]) -> None:
    apart = [place * 10 for place in range(len(places))]
    assert spread(apart, 5.0) == pytest.approx(apart)


@given(places=PLACES, width=st.floats(1.0, 60.0))
def test_no_two_labels_of_a_line_overlap(places: list[float], width: float) -> None:
    in_order = sorted(places)
    count = levels(in_order, width)
    if count < len(in_order):
        assert all(b - a >= width for a, b in pairwise_apart(in_order, count))


def test_one_line_is_enough_where_there_is_room() -> None:
    assert levels([0.0, 20.0, 40.0], 15.0) == 1


def test_a_thing_and_its_gutters_fill_the_frame_one_way() -> None:
    box = Box(left=0.0, bottom=0.0, right=1000.0, top=3000.0)
    gutters = Gutters(left=10.0, bottom=5.0, right=20.0, top=15.0)
    frame = Frame(width=180.0, height=200.0)
    scale = fit(box, frame, gutters)
    whole = with_gutters(box, gutters, scale)
    assert whole.height / scale == pytest.approx(200.0)
    assert whole.width / scale <= 180.0


def test_narrow_things_get_room_for_their_words() -> None:
    box = Box(left=0.0, bottom=0.0, right=10.0, top=1000.0)
    gutters = Gutters(left=10.0, bottom=5.0, right=30.0, top=15.0)
    frame = Frame(width=180.0, height=200.0)
    wider = widened(gutters, box, frame, 80.0)
    scale = fit(box, frame, wider)
    assert 2 * min(wider.left, wider.right) + box.width / scale >= 80.0


def test_a_figure_is_never_lettered_under_eleven_points() -> None:
    assert min(size.value for size in Lettering if size is not Lettering.NOTE) >= 11 / 72 * 25.4
    assert text_width("1", Lettering.GREAT) < text_width("10", Lettering.GREAT)


@given(x=st.floats(-50, 50), y=st.floats(-50, 50), u=st.floats(-50, 50), v=st.floats(-50, 50))
def test_a_covered_line_is_hidden_only_within_its_cover(
    x: float, y: float, u: float, v: float
) -> None:
    cover = Box(left=-10.0, bottom=-10.0, right=10.0, top=10.0)
    pieces = list(behind(Point(x, y), Point(u, v), cover, Layer.WINDOW))
    for piece in pieces:
        middle = Point((piece.start.x + piece.end.x) / 2, (piece.start.y + piece.end.y) / 2)
        inside = abs(middle.x) <= 10.0 + 1e-6 and abs(middle.y) <= 10.0 + 1e-6
        assert inside or piece.kind is LineKind.THIN
        if abs(middle.x) < 10.0 - 1e-6 and abs(middle.y) < 10.0 - 1e-6:
            assert piece.kind is LineKind.HIDDEN


def test_a_box_round_boxes_holds_them() -> None:
    boxes = [Box(left=0, bottom=1, right=2, top=3), Box(left=-1, bottom=2, right=1, top=9)]
    assert around(boxes) == Box(left=-1, bottom=1, right=2, top=9)
