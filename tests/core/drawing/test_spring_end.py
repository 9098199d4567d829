from dataclasses import replace

import pytest
from tests.core.drawing.building import SPEC, figure, plan

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.model import Arc, Circle, Drawing, Layer, Line, Text
from foldwright.core.drawing.spring_end import spring_end
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.opening import Face, Mount, MountPlace
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Unit

# Spring side from the room, side of the tube that the cord leaves, turning as it rises seen
# at the spring end: common practice, no source.
FOUR_CASES = [
    ("right", Face.WINDOW, "counter-clockwise"),
    ("left", Face.WINDOW, "clockwise"),
    ("right", Face.ROOM, "clockwise"),
    ("left", Face.ROOM, "counter-clockwise"),
]


def made(side: str, cord: Face, turning: str, edge: Face = Face.ROOM) -> ShadePlan:
    mount = Mount(place=MountPlace.INSIDE, cord_side=cord, board_edge=edge)
    base = plan(spec=replace(SPEC, mount=mount))
    assert base.headrail is not None
    rail = replace(
        base.headrail,
        spring_side=figure("spring side", side, Unit.WORD),
        wind_direction=figure("winding direction", turning, Unit.WORD),
    )
    return replace(base, headrail=rail)


def draw(shade: ShadePlan) -> Drawing:
    return spring_end(shade, System.INCH)


def cord_across(drawing: Drawing) -> float:
    cords = [e for e in drawing.elements if isinstance(e, Line) and e.layer is Layer.CORDS]
    return cords[0].start.x


@pytest.mark.parametrize(("side", "cord", "turning"), FOUR_CASES)
def test_the_tube_takes_up_the_cord_on_the_side_where_it_hangs(
    side: str, cord: Face, turning: str
) -> None:
    drawing = draw(made(side, cord, turning))
    arc = next(e for e in drawing.elements if isinstance(e, Arc))
    # A clockwise wheel goes up at its left, and there the rising cord must hang.
    goes_up_at_left = arc.reverse
    assert (cord_across(drawing) < 0) == goes_up_at_left


@pytest.mark.parametrize(("side", "room_at_left"), [("right", True), ("left", False)])
def test_who_stands_at_the_right_end_has_the_room_at_the_left(
    side: str,
    room_at_left: bool,  # noqa: FBT001 - a table of cases
) -> None:
    drawing = draw(made(side, Face.ROOM, "clockwise"))
    words = {e.words: e.at.x for e in drawing.elements if isinstance(e, Text)}
    assert (words["Room"] < words["Window"]) == room_at_left


def test_the_cloth_hangs_from_its_edge_of_the_board() -> None:
    def cloth(edge: Face) -> float:
        drawing = draw(made("right", Face.ROOM, "clockwise", edge))
        found = [e for e in drawing.elements if isinstance(e, Line) and e.layer is Layer.CLOTH]
        return found[0].start.x

    assert cloth(Face.ROOM) == pytest.approx(-31.75)
    assert cloth(Face.WINDOW) == pytest.approx(31.75)


def test_the_tube_is_drawn_to_scale_at_its_height() -> None:
    drawing = draw(plan())
    tube = next(e for e in drawing.elements if isinstance(e, Circle))
    assert tube.radius == pytest.approx(0.75 * 25.4)
    assert tube.centre.y == pytest.approx(-1.5 * 25.4)


def test_it_says_the_turning_in_words() -> None:
    drawing = draw(made("left", Face.ROOM, "counter-clockwise"))
    assert "Rises counter-clockwise" in list(drawing.words())
    assert "the left one as seen from the room" in drawing.description
    assert drawing.seen_from == "at the spring end, the left one from the room"


def test_a_clutch_makes_it_the_control_end() -> None:
    clutched = plan(spec=replace(SPEC, lift=LiftChoices(kind=LiftKind.CLUTCH)))
    assert draw(clutched).title == "Control end"


def test_without_its_parts_it_says_what_is_missing() -> None:
    drawing = draw(ShadePlan(spec=SPEC))
    assert list(drawing.words()) == [drawing.description]
