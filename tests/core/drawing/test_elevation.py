from dataclasses import replace

import pytest
from tests.core.drawing.building import SPEC, length, plan, with_rods

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace, RodPocket
from foldwright.core.design.layout import PocketPlan
from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.frame import SCREEN
from foldwright.core.drawing.model import (
    Circle,
    Dimension,
    Drawing,
    Layer,
    Lettering,
    Line,
    LineKind,
    Rectangle,
)
from foldwright.core.drawing.surround import surround
from foldwright.core.measure.opening import Face, Mount, MountPlace, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System

INCH = 25.4


def draw(made: ShadePlan, share: float = 0.0) -> Drawing:
    return elevation(made, share, System.INCH)


def lines(drawing: Drawing, layer: Layer) -> list[Line]:
    return [e for e in drawing.elements if isinstance(e, Line) and e.layer is layer]


def shade(drawing: Drawing) -> Rectangle:
    boxes = [e for e in drawing.elements if isinstance(e, Rectangle)]
    return next(box for box in boxes if box.layer is Layer.CLOTH)


def fold_edges(drawing: Drawing) -> list[float]:
    width = shade(drawing).width
    found = [line for line in lines(drawing, Layer.CLOTH) if line.kind is LineKind.VISIBLE]
    assert all(line.end.x - line.start.x == pytest.approx(width) for line in found)
    return [line.start.y for line in found]


def test_only_the_two_finished_sizes_are_written_largest() -> None:
    great = [
        element.words
        for element in draw(plan(), 0.5).elements
        if isinstance(element, Dimension) and element.size is Lettering.GREAT
    ]
    assert great == ["48 in", "60 in"]


def test_the_shade_is_drawn_to_scale() -> None:
    box = shade(draw(plan()))
    assert (box.width, box.height) == pytest.approx((48 * INCH, 60 * INCH))


def test_fully_down_no_fold_is_seen() -> None:
    assert fold_edges(draw(plan())) == []


def test_the_first_fold_hangs_half_its_slack_below_the_lowest_row() -> None:
    # 3 in up: the lowest row at 8.2 in, its panel 3 in too long, its edge at 6.7 in.
    assert fold_edges(draw(plan(), 3 / 51.8)) == pytest.approx([6.7 * INCH])


def test_loops_are_seen_when_the_shade_is_down() -> None:
    assert len(fold_edges(draw(plan(fullness=1.4)))) == 7


def test_the_sheet_never_jumps_while_the_shade_is_raised() -> None:
    extents = {draw(plan(), share / 10).extent for share in range(11)}
    assert len(extents) == 1


def test_it_keeps_within_its_frame() -> None:
    for made in (plan(), plan(12, 96, row_count=12), plan(110, 40, row_count=5)):
        drawing = draw(made)
        assert drawing.extent.width / drawing.scale <= SCREEN.width + 1e-6
        assert drawing.extent.height / drawing.scale <= SCREEN.height + 1e-6


def test_cords_end_at_the_lowest_row_behind_the_cloth() -> None:
    cords = lines(draw(plan(), 10 / 51.8), Layer.CORDS)
    assert {cord.kind for cord in cords} == {LineKind.HIDDEN}
    assert [cord.end.y for cord in cords] == pytest.approx([15.2 * INCH] * 6)


def test_marks_from_the_left_edge_at_the_back_are_mirrored() -> None:
    made = plan()
    assert made.headrail is not None
    rail = replace(made.headrail, handle=length("pull handle", 10))
    drawing = draw(replace(made, headrail=rail))
    handles = [e for e in drawing.elements if isinstance(e, Circle) and e.layer is Layer.HANDLE]
    assert [handle.centre.x for handle in handles] == pytest.approx([38 * INCH])


def test_rods_are_hidden_lines() -> None:
    rods = lines(draw(with_rods(plan(), RodPlace.ROWS)), Layer.RODS)
    assert [rod.start.y / INCH for rod in rods] == pytest.approx(
        [5.2, 12.6, 20.0, 27.4, 34.8, 42.2, 49.6]
    )
    assert {rod.kind for rod in rods} == {LineKind.HIDDEN}


def test_rods_in_pockets_to_the_room_are_seen_where_no_fold_hangs_before_them() -> None:
    made = with_rods(plan(), RodPlace.ROWS)
    assert made.layout is not None
    pocket = length("cloth of a rod's pocket", 1)
    pockets = PocketPlan(
        place=RodPocket.TO_THE_ROOM, count=made.layout.rows.count, allowance=pocket, marks=()
    )
    ribbed = replace(made, layout=replace(made.layout, pockets=pockets))
    down, up = (lines(draw(ribbed, share), Layer.RODS) for share in (0.0, 1.0))
    assert {rod.kind for rod in down} == {LineKind.VISIBLE}
    assert len(down) == made.layout.rows.count.value
    assert up == []


def test_the_headrail_is_seen_where_the_cloth_leaves_the_window_edge() -> None:
    def board_kind(edge: Face) -> LineKind:
        made = plan(spec=replace(SPEC, mount=Mount(place=MountPlace.INSIDE, board_edge=edge)))
        found = [e for e in draw(made).elements if e.layer is Layer.BOARD]
        return found[0].kind

    assert board_kind(Face.ROOM) is LineKind.HIDDEN
    assert board_kind(Face.WINDOW) is LineKind.VISIBLE


def test_the_window_is_dashed_behind_the_shade_and_plain_below_it() -> None:
    window = lines(draw(plan(), 1.0), Layer.WINDOW)
    outside = Mount(place=MountPlace.OUTSIDE, above=Length.inches(4))
    casing = Opening(casing_width=Length.inches(44), casing_height=Length.inches(50))
    behind = plan(spec=replace(SPEC, mount=outside, opening=casing))
    covered = lines(draw(behind), Layer.WINDOW)
    assert {line.kind for line in window} >= {LineKind.THIN}
    assert {line.kind for line in covered} == {LineKind.HIDDEN}
    # 48 in of shade over 44 in of casing: 2 in each side, its head 4 in down.
    assert {round(line.start.x / INCH, 3) for line in covered} == {2.0, 46.0}
    assert max(line.start.y for line in covered) == pytest.approx(56 * INCH)


def test_what_is_known_is_drawn_without_the_later_rooms() -> None:
    only_size = replace(plan(), layout=None, weights=None, balance=None, headrail=None)
    assert list(draw(only_size, 0.5).words()) == ["48 in", "60 in", "Seen from the room"]


def test_without_a_size_it_says_what_is_missing() -> None:
    drawing = draw(ShadePlan(spec=SPEC))
    assert list(drawing.words()) == [drawing.description]


def test_metric_readers_get_millimetres() -> None:
    words = list(elevation(plan(), 0.5, System.METRIC).words())
    assert words[:2] == ["1219 mm", "1524 mm"]


def test_it_says_how_far_it_is_raised() -> None:
    assert "51 13/16 in" in list(draw(plan(), 1.0).words())
    assert "Raised by 51 13/16 in; 7 of 7 panels folded." in draw(plan(), 1.0).description


def test_columns_are_mirrored_too() -> None:
    made = plan()
    assert made.layout is not None
    columns = replace(made.layout.columns, marks=(length("column", 5), length("column", 40)))
    lopsided = replace(made, layout=replace(made.layout, columns=columns))
    across = [cord.start.x / INCH for cord in lines(draw(lopsided), Layer.CORDS)]
    assert across == pytest.approx([43.0, 8.0])


def test_fold_edges_that_lie_close_are_drawn_thin() -> None:
    # Fully raised the top fold hides all but the lowest three of the stack, which peep out
    # below it one pitch of 4 mm apart: half a millimetre on paper.
    edges = [line for line in lines(draw(plan(), 1.0), Layer.CLOTH) if line.start.x == 0.0]
    peeping = [line for line in edges if 53.3 < line.start.y / INCH < 53.75]
    assert [line.kind for line in peeping] == [LineKind.THIN] * 3


def test_the_opening_stands_where_it_was_measured() -> None:
    # 1/8 in to spare at the left and 3/8 at the right, wider at the sill, lower at the left.
    made = plan(
        spec=replace(
            SPEC,
            opening=Opening(
                width_top=Length.inches("48.5"),
                width_bottom=Length.inches("49.5"),
                height_left=Length.inches(62),
                height_right=Length.inches(61),
            ),
        )
    )
    assert made.size is not None
    size = replace(
        made.size,
        side_gap_left=length("gap", "1/8"),
        side_gap_right=length("gap", "3/8"),
        top_above_glass=length("top to glass", 6),
    )
    window = surround(made, size)
    assert window is not None
    corners = [(point.x / INCH, point.y / INCH) for point in window.outline]
    assert corners[0] == pytest.approx((24.125 - 24.75, -2.0))
    assert corners[2] == pytest.approx((24.125 + 24.75, -1.0))
    assert corners[4] == pytest.approx((24.125 + 24.25, 60.0))
    glass = [
        line.start.y / INCH
        for line in lines(draw(replace(made, size=size)), Layer.WINDOW)
        if line.kind is LineKind.CENTRE
    ]
    assert glass == pytest.approx([54.0])
