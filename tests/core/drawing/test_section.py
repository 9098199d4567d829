from dataclasses import replace
from itertools import pairwise
from math import hypot

import pytest
from tests.core.drawing.building import SPEC, length, plan, with_rods

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace
from foldwright.core.drawing.folding import Panel, hang, stacked_pitch
from foldwright.core.drawing.loops import on_loop
from foldwright.core.drawing.model import (
    Circle,
    Drawing,
    Hatch,
    Layer,
    Point,
    Polyline,
    Rectangle,
    Text,
)
from foldwright.core.drawing.section import side_section
from foldwright.core.measure.opening import Face, Mount, MountPlace
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System

INCH = 25.4


def draw(made: ShadePlan, share: float = 0.0) -> Drawing:
    return side_section(made, share, System.INCH)


def cloth(drawing: Drawing) -> Polyline:
    found = [e for e in drawing.elements if isinstance(e, Polyline) and e.layer is Layer.CLOTH]
    assert len(found) == 1
    return found[0]


def board(drawing: Drawing) -> Rectangle:
    return next(e for e in drawing.elements if isinstance(e, Rectangle) and e.layer is Layer.BOARD)


def mounted(edge: Face, cord: Face = Face.ROOM) -> ShadePlan:
    mount = Mount(place=MountPlace.OUTSIDE, board_edge=edge, cord_side=cord)
    return plan(spec=replace(SPEC, mount=mount))


def test_fully_down_the_cloth_hangs_straight_from_board_to_hem() -> None:
    path = cloth(draw(plan())).points
    assert len({round(point.x, 6) for point in path}) == 1
    assert path[0].y == pytest.approx(60 * INCH)
    assert path[-1].y == pytest.approx(0.0)


def test_each_loop_reaches_its_fold_edge_and_no_lower() -> None:
    made = plan()
    assert made.layout is not None
    hung = hang(made.layout, drop_mm=60 * INCH, pitch_mm=4.0, raise_share=0.6)
    heights = [point.y for point in cloth(draw(made, 0.6)).points]
    for panel in hung.panels:
        if panel.folded:
            nearest = min(abs(height - panel.fold_edge) for height in heights)
            assert nearest < 1e-6
    assert min(heights) == pytest.approx(hung.lowest)


def test_higher_folds_hang_farther_into_the_room() -> None:
    made = plan()
    path = cloth(draw(made, 1.0)).points
    edges = [b.x for a, b, c in zip(path, path[1:], path[2:], strict=False) if a.y > b.y < c.y]
    assert len(edges) >= 7
    assert edges[:7] == sorted(set(edges[:7]), reverse=True)


def test_the_cloth_leaves_the_edge_of_the_board_that_the_mount_asks_for() -> None:
    at_room, at_window = draw(mounted(Face.ROOM)), draw(mounted(Face.WINDOW))
    rest = cloth(at_room).points[0].x
    assert board(at_room).corner.x + board(at_room).width == pytest.approx(rest)
    assert board(at_window).corner.x == pytest.approx(cloth(at_window).points[0].x)


def test_the_cord_leaves_the_side_of_the_tube_that_the_mount_asks_for() -> None:
    def start(cord: Face) -> tuple[float, float]:
        drawing = draw(mounted(Face.ROOM, cord))
        tube = next(e for e in drawing.elements if isinstance(e, Circle) and e.layer is Layer.TUBE)
        line = next(
            e for e in drawing.elements if isinstance(e, Polyline) and e.layer is Layer.CORDS
        )
        return tube.centre.x, line.points[0].x

    centre, cord = start(Face.ROOM)
    assert cord - centre == pytest.approx((0.75 + 0.055) * INCH)
    centre, cord = start(Face.WINDOW)
    assert cord - centre == pytest.approx(-(0.75 + 0.055) * INCH)


def test_the_window_side_is_named_left_of_the_room_side() -> None:
    texts = {e.words: e for e in draw(plan()).elements if isinstance(e, Text)}
    assert texts["Window"].at.x < texts["Room"].at.x


def test_a_wall_is_hatched_behind_an_outside_mount_only() -> None:
    def walls(made: ShadePlan) -> list[Hatch]:
        found = draw(made).elements
        return [e for e in found if isinstance(e, Hatch) and e.layer is Layer.WINDOW]

    assert walls(plan()) == []
    assert len(walls(mounted(Face.ROOM))) == 1


@pytest.mark.parametrize(("share", "wraps"), [(0.0, "3.0"), (0.5, "8.3"), (1.0, "13.6")])
def test_the_wraps_grow_with_the_raise(share: float, wraps: str) -> None:
    # Three safety wraps and 10.6 wraps of travel.
    assert f"{wraps} wraps on the tube" in list(draw(plan(), share).words())


def test_a_tape_is_drawn_thicker_as_it_winds_on_itself() -> None:
    made = plan()
    assert made.balance is not None
    taped = replace(
        made,
        chosen=replace(made.chosen, cord=None),
        balance=replace(
            made.balance,
            arm_lowered=length("arm", "0.8"),
            arm_raised=length("arm", "1.2"),
        ),
    )

    def wound(share: float) -> float:
        circles = [
            e
            for e in draw(taped, share).elements
            if isinstance(e, Circle) and e.layer is Layer.CORDS
        ]
        return circles[0].radius / INCH

    assert (wound(0.0), wound(0.5), wound(1.0)) == pytest.approx((0.8, 1.0, 1.2))


def test_raised_size_and_depth_are_written_as_the_plan_has_them() -> None:
    words = list(draw(plan()).words())
    assert "8 11/16 in" in words
    assert "Stack 2 in deep" in words


def test_heights_are_to_scale() -> None:
    drawing = draw(plan())
    thickness = board(drawing).height
    assert thickness == pytest.approx(Length.inches("0.75").in_millimetres)


def test_without_a_layout_it_says_what_is_missing() -> None:
    assert "rows" in draw(ShadePlan(spec=SPEC)).description


def rods(drawing: Drawing) -> list[Circle]:
    return [e for e in drawing.elements if isinstance(e, Circle) and e.layer is Layer.RODS]


@pytest.mark.parametrize("share", [0.0, 0.3, 0.7, 1.0])
@pytest.mark.parametrize("place", [RodPlace.ROWS, RodPlace.MID_FOLD])
def test_every_rod_lies_on_the_cloth_as_high_as_it_hangs(share: float, place: RodPlace) -> None:
    made = with_rods(plan(), place)
    drawing = draw(made, share)
    assert made.layout is not None
    hung = hang(made.layout, drop_mm=60 * INCH, pitch_mm=stacked_pitch(made), raise_share=share)
    found = rods(drawing)
    assert [rod.centre.y for rod in found] == pytest.approx(hung.rods)
    path = cloth(drawing).points
    for rod in found:
        assert min(_off(rod.centre, a, b) for a, b in pairwise(path)) < 1e-6


def _off(point: Point, start: Point, end: Point) -> float:
    """Give how far a point lies from a straight piece of the cloth."""
    along, across = end.x - start.x, end.y - start.y
    length = along**2 + across**2
    share = ((point.x - start.x) * along + (point.y - start.y) * across) / length if length else 0
    share = min(max(share, 0.0), 1.0)
    return hypot(point.x - start.x - share * along, point.y - start.y - share * across)


def test_a_shade_without_rods_shows_none() -> None:
    assert rods(draw(plan(), 0.5)) == []


def test_cloth_near_the_lower_row_lies_on_the_limb_that_hangs_from_it() -> None:
    """Of 300 mm over a gap of 100, a third hangs from the lower row, nearer to the rings."""
    panels = (Panel(lower=200.0, upper=300.0, cloth=300.0),)
    near, far = (on_loop(panels, 0, arc, lane=10.0, rest=1.0) for arc in (40.0, 160.0))
    assert near.y == far.y == pytest.approx(160.0)
    assert near.x < far.x
