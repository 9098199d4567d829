from dataclasses import replace

import pytest
from tests.core.drawing.building import SPEC, figure, plan

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import Circle, Drawing, Layer, Rectangle, Text
from foldwright.core.drawing.rail import headrail_from_back, headrail_from_room
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Unit


def back(made: ShadePlan) -> Drawing:
    return headrail_from_back(made, System.INCH)


def room(made: ShadePlan) -> Drawing:
    return headrail_from_room(made, System.INCH)


def texts(drawing: Drawing) -> dict[str, Text]:
    return {e.words: e for e in drawing.elements if isinstance(e, Text)}


def tagged(drawing: Drawing, path: str) -> Text:
    found = (e for e in drawing.elements if isinstance(e, Text) and e.tag and e.tag.path == path)
    return next(found)


def bodies(drawing: Drawing, layer: Layer) -> list[Rectangle]:
    return [e for e in drawing.elements if isinstance(e, Rectangle) and e.layer is layer]


def sprung_at(side: str) -> ShadePlan:
    made = plan()
    assert made.headrail is not None
    side_figure = figure("spring side", side, Unit.WORD)
    return replace(made, headrail=replace(made.headrail, spring_side=side_figure))


def test_lengths_are_to_scale_along_the_board() -> None:
    # Board 47 3/4 in, tube 46 3/4 in, starting 1/2 in from the end.
    drawing = back(plan())
    board, tube = bodies(drawing, Layer.BOARD)[0], bodies(drawing, Layer.TUBE)[0]
    assert tube.width / board.width == pytest.approx(46.75 / 47.75)
    assert (tube.corner.x - board.corner.x) / board.width == pytest.approx(0.5 / 47.75)


def test_clips_are_marked_cumulatively_where_they_stand() -> None:
    # Columns 2, 10.8 … in from the shade's edge are 5/8 in less from the tube's end; each
    # clip lies 2 1/2 in to one side of its column, to the right of odd ones, left of even.
    drawing = back(plan())
    words = [tagged(drawing, f"headrail.lines.{i}.clip").words for i in range(6)]
    assert words == ["3 7/8", "7 11/16", "21 1/2", "25 1/4", "39 1/16", "42 7/8"]
    tube = bodies(drawing, Layer.TUBE)[0]
    first = tagged(drawing, "headrail.lines.0.clip").at.x
    assert (first - tube.corner.x) / tube.width == pytest.approx(3.875 / 46.75)


def test_the_view_from_the_room_is_the_mirror_of_that_from_the_back() -> None:
    made = plan()
    for path in ("headrail.lines.0.clip", "headrail.lines.3.column", "headrail.bracket_marks.1"):
        seen_back, seen_room = tagged(back(made), path), tagged(room(made), path)
        assert seen_back.words == seen_room.words
        width = back(made).extent.width
        assert seen_back.at.x + seen_room.at.x == pytest.approx(width)


@pytest.mark.parametrize("side", ["left", "right"])
def test_the_spring_is_at_its_side_as_seen_from_the_room(side: str) -> None:
    made = sprung_at(side)
    from_room, from_back = texts(room(made)), texts(back(made))
    at_right = from_room["spring"].at.x > from_room["idle end"].at.x
    assert at_right == (side == "right")
    assert (from_back["spring"].at.x > from_back["idle end"].at.x) != at_right


@pytest.mark.parametrize(("side", "end"), [("right", "spring"), ("left", "idle")])
def test_marks_come_from_one_named_end_with_a_circle_at_it(side: str, end: str) -> None:
    # The left end seen from the back is the right one seen from the room.
    drawing = room(sprung_at(side))
    assert f"Tube marks from its {end} end" in " ".join(drawing.words())
    origins = [e for e in drawing.elements if isinstance(e, Circle) and e.layer is Layer.SIZES]
    board = bodies(drawing, Layer.BOARD)[0]
    assert max(circle.centre.x for circle in origins) == pytest.approx(board.corner.x + board.width)


def test_bands_of_wraps_lie_from_the_clip_towards_the_column() -> None:
    drawing = back(plan())
    band = bodies(drawing, Layer.CORDS)[0]
    clip = tagged(drawing, "headrail.lines.0.clip").at.x
    column = tagged(drawing, "headrail.lines.0.column").at.x
    assert band.corner.x + band.width == pytest.approx(clip)
    assert column < band.corner.x


def test_columns_are_numbered_from_the_left_at_the_back() -> None:
    numbers = [text for words, text in texts(back(plan())).items() if words in set("123456")]
    assert [n.words for n in sorted(numbers, key=lambda n: n.at.x)] == list("123456")
    mirrored = [text for words, text in texts(room(plan())).items() if words in set("123456")]
    assert [n.words for n in sorted(mirrored, key=lambda n: n.at.x)] == list("654321")


@pytest.mark.parametrize(("kind", "word"), [(LiftKind.CLUTCH, "clutch"), (LiftKind.MOTOR, "motor")])
def test_the_end_is_named_after_what_sits_in_it(kind: LiftKind, word: str) -> None:
    made = plan(spec=replace(SPEC, lift=LiftChoices(kind=kind)))
    assert word in texts(back(made))


def test_board_and_tube_say_how_long_they_are_cut() -> None:
    assert {"board 47 3/4 in", "tube 46 3/4 in"} <= set(back(plan()).words())


def test_the_room_view_can_leave_the_tube_marks_to_the_other() -> None:
    plain = headrail_from_room(plan(), System.INCH, tube_marks=False)
    assert "3 7/8" not in list(plain.words())
    assert "Seen from the room" in list(plain.words())
    assert plain.extent.height < room(plan()).extent.height


def test_each_view_says_whence_it_is_seen() -> None:
    assert (back(plan()).seen_from, room(plan()).seen_from) == ("from the back", "from the room")


def test_without_a_headrail_it_says_what_is_missing() -> None:
    drawing = back(ShadePlan(spec=SPEC))
    assert list(drawing.words()) == [drawing.description]
