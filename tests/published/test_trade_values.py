"""What every bench knows without a book: common practice, no source.

The trade hands these values on by word of mouth. The tool agrees with each, or a docstring
here and the figure's own sentence say in what it differs.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import pi

import pytest
from tests.core.rig.building import (
    cord,
    found,
    headrail,
    layout,
    number,
    rigged,
    size,
    spring,
)

from foldwright.core.facts.house import house_habits
from foldwright.core.facts.records import ShopList
from foldwright.core.lift.choices import Lock
from foldwright.core.measure.opening import Face, Mount, Side
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import example
from foldwright.core.rig.headrail import Headrail
from foldwright.core.why.telling import tell

METRIC = System.METRIC
DROPS = (600, 900, 1200, 1600, 2000, 2400, 3000)
COMMON_SPRING = ShopList(springs={"spring": spring("left")})


def of_drop(drop: float, thick: str = "1.4") -> Headrail:
    return headrail(made=layout(drop=drop), finished=size(drop=drop), line=cord(thick))


@pytest.mark.parametrize("drop", DROPS)
def test_at_least_three_wraps_stay_on_the_tube_at_full_drop(drop: int) -> None:
    """Common practice: at least three wraps stay on at full drop. The tool agrees."""
    rail = of_drop(drop)
    assert rail.safety_wraps.value >= 3
    wraps = next(step for step in rail.steps if step.title == "safety wraps")
    assert rail.safety_wraps in wraps.figures
    assert "fully down" in wraps.instruction


def test_fewer_than_three_wraps_are_refused() -> None:
    """Common practice: at least three wraps. A shop's habit of two is stopped."""
    two = {"safety_wraps": number("safety wraps", 2.0)}
    assert found(rigged(habits=two))["rig.safety-wraps"].severity.value == "stop"


def test_a_lock_is_released_by_about_a_quarter_turn_of_further_pull() -> None:
    """Common practice: about a quarter turn, 29.8 mm on a bare tube of 38 mm.

    The tool says 30.9 mm, because the bar follows the middle of the cord, not the tube's
    surface; the figure's own sentence says so.
    """
    rail = headrail()
    assert house_habits().release_turns.value == 0.25
    assert rail.release_travel.value.in_millimetres == pytest.approx(pi * 38 / 4, rel=0.05)
    assert rail.release_travel.value.in_millimetres == pytest.approx(30.9, abs=0.05)
    assert "at the middle of the cord" in tell(rail.release_travel, METRIC)


def test_that_pull_is_there_when_the_shade_is_down() -> None:
    """Common practice: a lock needs about a quarter turn more. The lowest lock leaves it."""
    rail = headrail()
    assert rail.lowest_lock_position.value >= rail.release_travel.value


@pytest.mark.parametrize("thick", ["0.9", "1.2", "1.4"])
@pytest.mark.parametrize("drop", DROPS)
def test_clips_stand_50_to_75_mm_beside_their_column(drop: int, thick: str) -> None:
    """Common practice: 50 to 75 mm. The tool agrees where the bays leave room for it.

    Side by side the wraps need less, about 20 mm for a drop of 1.6 m, and nearer clips lean
    less; the tool follows the trade, which keeps loose wraps from passing the column, and
    says both in its figures.
    """
    rail = of_drop(drop, thick)
    for line in rail.lines:
        assert Length.mm(50) <= line.offset.value <= Length.mm(75)
        assert abs(line.clip.value - line.column.value) == line.offset.value
    assert "loose wraps never pass the column" in tell(rail.lines[0].offset, METRIC)
    assert rail.greatest_lean is not None
    assert "would lean only" in tell(rail.greatest_lean, METRIC)


def test_a_narrow_bay_says_why_its_clips_stand_nearer() -> None:
    """Common practice: 50 to 75 mm. Where columns stand closer the tool says what it did."""
    answer = rigged(made=layout(4, 60, 420, 1600), finished=size(420))
    assert found(answer)["rig.clips-nearer-than-usual"].severity.value == "note"


def test_the_sides_alternate() -> None:
    """Common practice: clips stand left and right of their columns by turns."""
    sides = [line.clip_side for line in headrail(made=layout(6)).lines]
    assert sides == [Side.RIGHT, Side.LEFT] * 3


def test_an_odd_number_of_columns_has_two_alike() -> None:
    """Common practice: sides alternate. With an odd number both outermost clips still stand
    inward, where the tube has room, so one neighbouring pair stands alike; the clip's own
    sentence says that the outermost stand inward."""
    lines = headrail(made=layout(5)).lines
    alike = [one.clip_side is two.clip_side for one, two in pairwise(lines)]
    assert alike.count(True) == 1
    assert "outermost clips standing inward" in tell(lines[2].clip, METRIC)


def test_the_longest_drops_need_the_larger_offset() -> None:
    """Common practice: the longest drops need the larger figure. The tool agrees."""
    offsets = [of_drop(drop).lines[0].offset.value.in_millimetres for drop in DROPS]
    assert offsets == sorted(offsets)
    assert offsets[0] < 56
    assert offsets[-1] == 75


@pytest.mark.parametrize(("face", "side"), [(Face.ROOM, "right"), (Face.WINDOW, "left")])
@pytest.mark.parametrize("shop", [COMMON_SPRING, example.SHOP])
def test_one_spring_hand_goes_right_for_the_room_side_and_left_for_the_window_side(
    face: Face, side: str, shop: ShopList
) -> None:
    """Common practice: with one and the same spring hand, cloth and cords leaving on the room
    side put the spring at the right as seen from the room, on the window side at the left.

    The tool agrees for a left-hand coil, counted as a screw thread is, and for a sheet that
    names no hand; a right-hand coil goes to the other end each time, and the figure's
    sentence says so.
    """
    rail = headrail(mount=Mount(board_edge=face, cord_side=face), shop=shop)
    assert rail.spring_side.value == side
    assert rail.wind_direction.value == "clockwise"
    assert "other end" in tell(rail.spring_side, METRIC)


@pytest.mark.parametrize(
    ("side", "face", "turning"),
    [
        (Side.RIGHT, Face.WINDOW, "counter-clockwise"),
        (Side.LEFT, Face.ROOM, "counter-clockwise"),
        (Side.LEFT, Face.WINDOW, "clockwise"),
        (Side.RIGHT, Face.ROOM, "clockwise"),
    ],
)
def test_turning_seen_from_the_spring_end(side: Side, face: Face, turning: str) -> None:
    """Common practice, drawn on every bench: which way the tube turns while the shade rises."""
    rail = headrail(mount=Mount(board_edge=face, cord_side=face, control_side=side))
    assert rail.wind_direction.value == turning


def test_a_tube_of_38_mm_serves_drops_to_about_2_4_m() -> None:
    """Common practice: to about 2.4 m, here taken as within 5 %.

    The tool agrees for a cord of 1.4 mm and says why: from there on the walk of the wraps
    asks for a clip beyond 75 mm. A thinner cord serves more; the figure names the cord.
    """
    served = headrail().longest_drop
    assert served is not None
    assert served.value.in_metres == pytest.approx(2.4, rel=0.05)
    assert "a cord 1.4 mm thick walks until its clip stands at" in tell(served, METRIC)
    thinner = of_drop(1600, "0.9").longest_drop
    assert thinner is not None
    assert thinner.value > served.value


@pytest.mark.parametrize("lock", list(Lock))
def test_a_shade_that_will_not_rise_fully_wants_more_turns(lock: Lock) -> None:
    """Common practice: more turns, wound the way the tube turns while rising."""
    rail = headrail(choices=replace(example.LIFT, lock=lock))
    line = next(each for each in rail.adjustments if "will not rise fully" in each.symptom)
    assert line.action.value == "more turns"
    assert f"turn the fixed shaft {rail.wind_direction.value}," in line.end.value


@pytest.mark.parametrize("lock", list(Lock))
def test_a_shade_that_flies_up_wants_fewer_turns(lock: Lock) -> None:
    """Common practice: fewer turns, the other way round."""
    rail = headrail(choices=replace(example.LIFT, lock=lock))
    line = next(each for each in rail.adjustments if "flies up" in each.symptom)
    assert line.action.value.startswith("fewer turns")
    assert f"turn the fixed shaft {rail.wind_direction.value}," not in line.end.value
