"""The unrolled roll: marks, pieces in their places, bands that break no cut, words that read."""

from dataclasses import replace

import pytest
from tests.core.drawing.measuring import collisions, strays

from foldwright.core.cloth.example import ORDER, PLAN, ROLL
from foldwright.core.cloth.finding.listing import RollCuts, cut_list
from foldwright.core.cloth.order import ClothOrder, ClothPlan, CutLength, Pattern, Placement
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.model import Drawing, Hatch, Layer, Line, LineKind, Rectangle, Text
from foldwright.core.drawing.roll import roll_drawings
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System


def drawn(plan: ClothPlan = PLAN, order: ClothOrder = ORDER, **frame: float) -> tuple[Drawing, ...]:
    page = Frame(**{"width": 180.0, "height": 80.0} | frame)
    bands = [roll_drawings(roll, order, System.METRIC, page) for roll in cut_list(plan, order)]
    return tuple(band for roll in bands for band in roll)


def long_roll(cuts: int) -> ClothPlan:
    """Cut the same two narrow pieces again and again from one long roll."""
    levels, placements = [], []
    for number in range(cuts):
        start, names = Length.mm(100 + 900 * number), (f"{number} a", f"{number} b")
        levels.append(CutLength(roll="roll 1", start=start, length=Length.mm(850), pieces=names))
        placements += [
            Placement(
                piece=name, roll="roll 1", along=start, across=Length.mm(across),
                width=Length.mm(600), length=Length.mm(850),
            )
            for name, across in zip(names, (0, 600), strict=True)
        ]  # fmt: skip
    whole = Length.mm(200 + 900 * cuts)
    use = replace(PLAN.rolls[0], length=whole, used=whole)
    return replace(
        PLAN, levels=tuple(levels), placements=tuple(placements), rolls=(use,), remnants=()
    )


def texts(drawing: Drawing, layer: Layer) -> list[str]:
    return [e.words for e in drawing.elements if isinstance(e, Text) and e.layer is layer]


def test_marks_are_cumulative_from_the_outer_end() -> None:
    assert texts(drawn()[0], Layer.SIZES) == ["100", "1700", "1740", "3340"]


def test_each_piece_lies_where_it_is_cut() -> None:
    outlines = [
        (e.corner.x, e.corner.y, e.width, e.height)
        for e in drawn()[0].elements
        if isinstance(e, Rectangle) and e.layer is Layer.CUTS
    ]
    assert outlines == [
        (100.0, 0.0, 1600.0, 1350.0),
        (1740.0, 0.0, 1600.0, 300.0),
        (1740.0, 300.0, 1600.0, 300.0),
    ]


def test_repeats_are_ticked_where_the_roll_was_measured() -> None:
    ticks = [
        e.start.x
        for e in drawn()[0].elements
        if isinstance(e, Line) and e.layer is Layer.ROWS and e.start.y == 0.0
    ]
    assert ticks == [100.0, 920.0, 1740.0, 2560.0, 3380.0, 4200.0]


def test_a_plain_cloth_has_no_ticks() -> None:
    plain = replace(ORDER, pattern=Pattern())
    assert not [e for e in drawn(order=plain)[0].elements if e.layer is Layer.ROWS]


def test_a_flaw_is_hatched_at_its_place() -> None:
    hatches = [e for e in drawn()[0].elements if isinstance(e, Hatch)]
    assert [hatch.outline[0] for hatch in hatches] == [(3450.0, 200.0)]


def test_a_piece_too_small_for_its_name_carries_the_key_of_the_list() -> None:
    small, large = (
        {words for band in drawn(width=width) for words in texts(band, Layer.NOTES)}
        for width in (45.0, 260.0)
    )
    assert {"2a", "2b"} <= small
    assert {"2a  1 face left", "2b  1 face right"} <= large


def test_a_turned_piece_points_to_the_left_edge() -> None:
    turned = tuple(replace(place, turned=True) for place in PLAN.placements)
    arrows = [
        e for e in drawn(replace(PLAN, placements=turned))[0].elements
        if isinstance(e, Line) and e.arrow
    ]  # fmt: skip
    assert arrows
    assert all(arrow.end.y < arrow.start.y and arrow.end.x == arrow.start.x for arrow in arrows)
    straight = [e for e in drawn()[0].elements if isinstance(e, Line) and e.arrow]
    assert all(arrow.end.x < arrow.start.x and arrow.end.y == arrow.start.y for arrow in straight)


def test_what_is_left_is_named_with_its_use() -> None:
    notes = texts(drawn()[0], Layer.NOTES)
    assert {"left 770 by 1600", "for board cover", "left 1370 by 1660"} <= set(notes)


@pytest.mark.parametrize("cuts", [1, 2, 5, 23])
def test_bands_break_no_cut_and_leave_none_out(cuts: int) -> None:
    plan = long_roll(cuts)
    bands = drawn(plan)
    edges = [
        (e.corner.x, e.corner.x + e.width, band)
        for band in bands
        for e in band.elements
        if isinstance(e, Rectangle) and e.layer is Layer.CUTS
    ]
    assert len(edges) == 2 * cuts
    assert all(
        band.extent.left <= left and right <= band.extent.right for left, right, band in edges
    )
    assert len({band.scale for band in bands}) == 1


@pytest.mark.parametrize("plan", [PLAN, long_roll(23)], ids=["seamed", "long"])
@pytest.mark.parametrize("system", System)
@pytest.mark.parametrize("width", [110.0, 180.0, 260.0])
def test_no_words_run_into_each_other_or_off_the_sheet(
    plan: ClothPlan, system: System, width: float
) -> None:
    for roll in cut_list(plan, ORDER):
        for band in roll_drawings(roll, ORDER, system, Frame(width=width, height=80.0)):
            assert collisions(band) == []
            assert strays(band) == []


def test_the_start_in_the_repeat_is_read_off_the_measured_roll() -> None:
    (roll,) = cut_list(PLAN, ORDER)
    assert [cut.start_in_repeat for cut in roll.cuts] == [Length.mm(0), Length.mm(0)]
    moved = replace(PLAN.rolls[0], origin_along=Length.mm(150))
    (roll,) = cut_list(replace(PLAN, rolls=(moved,)), ORDER)
    assert [cut.start_in_repeat for cut in roll.cuts] == [Length.mm(770), Length.mm(770)]


def test_the_list_keeps_a_running_balance_and_names_the_seams() -> None:
    (roll,) = cut_list(PLAN, ORDER)
    assert isinstance(roll, RollCuts)
    assert roll.in_hand
    assert [cut.left_on_roll for cut in roll.cuts] == [Length.mm(3300), Length.mm(1660)]
    assert [cut.waste_before for cut in roll.cuts] == [Length.mm(100), Length.mm(40)]
    assert roll.lost_to_repeat == Length.mm(20)
    assert roll.cuts[0].pieces[0].partners == ("1 face left", "1 face right")
    assert [piece.rip_from for piece in roll.cuts[1].pieces] == [Length.mm(0), Length.mm(300)]


def test_a_roll_to_buy_has_no_measured_repeat() -> None:
    order = replace(ORDER, rolls=())
    (roll,) = cut_list(PLAN, order)
    assert [cut.start_in_repeat for cut in roll.cuts] == [None, None]
    assert not roll.in_hand
    assert ROLL.name == roll.use.name


def test_cut_lines_run_over_the_full_width() -> None:
    lines = [
        e for e in drawn()[0].elements
        if isinstance(e, Line) and e.layer is Layer.CUTS and e.kind is LineKind.VISIBLE
    ]  # fmt: skip
    assert {(line.start.x, line.end.y - line.start.y) for line in lines} == {
        (100.0, 1370.0), (1700.0, 1370.0), (1740.0, 1370.0), (3340.0, 1370.0),
    }  # fmt: skip
