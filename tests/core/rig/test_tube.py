"""The tube between its brackets."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from tests.core.rig.building import found, headrail, kind, mm, rigged, size, spring

from foldwright.core.facts.records import Clutch, ShopList, Spring
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Mount, Side
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.rig import example

CLUTCH = Clutch(
    name="clutch",
    gear_ratio=1.0,
    efficiency=0.7,
    sprocket_radius=Length.mm(16),
    greatest_torque_n_m=1.5,
    deduction=Length.mm(40),
)


def test_the_tube_is_the_board_less_what_this_bracket_takes() -> None:
    rail = headrail()
    assert rail.tube_cut.value == Length.mm(1194 - 34)
    assert rail.tube_cut.rounding is Rounding.MUST_FIT
    assert rail.tube_start.value == Length.mm(17)


def test_a_clutch_takes_what_it_needs_at_its_own_end() -> None:
    shop = ShopList(clutches={"clutch": CLUTCH})
    choices = kind(LiftKind.CLUTCH, clutch="clutch")
    right = headrail(choices=choices, shop=shop)
    left = headrail(choices=choices, shop=shop, mount=Mount(control_side=Side.LEFT))
    assert right.tube_cut.value == left.tube_cut.value == Length.mm(1194 - 40)
    assert (right.tube_start.value, left.tube_start.value) == (Length.mm(23), Length.mm(17))


def test_bracket_marks_are_centres_from_one_end() -> None:
    left, right = headrail().bracket_marks
    assert (left.value, right.value) == (Length.mm(20), Length.mm(1174))


@given(st.integers(300, 3000))
def test_brackets_and_tube_sit_centred(width: int) -> None:
    rail = headrail(finished=size(width))
    board = rail.board_length.value
    assert rail.bracket_marks[0].value + rail.bracket_marks[1].value == board
    assert rail.tube_start.value * 2 + rail.tube_cut.value == board


def test_a_spring_longer_than_the_tube_is_stopped() -> None:
    shop = ShopList(springs={"spring": spring(body=1161)})
    assert "rig.tube-too-short" in found(rigged(shop=shop))
    fitting = ShopList(springs={"spring": spring(body=1160)})
    assert "rig.tube-too-short" not in found(rigged(shop=fitting))


def test_a_spring_without_a_stated_length_is_let_pass() -> None:
    shop = ShopList(springs={"spring": Spring(name="spring", rate_n_m_turn=0.03)})
    assert "rig.tube-too-short" not in found(rigged(shop=shop))


def test_brackets_are_weighed_against_their_sheet() -> None:
    carried = 14.49 + 0.3745 * 1.160 * 9.80665
    weak = replace(example.BRACKET, greatest_load_n=carried - 0.01)
    strong = replace(example.BRACKET, greatest_load_n=carried + 0.01)
    assert "rig.brackets-overloaded" in found(rigged(bracket=weak))
    assert "rig.brackets-overloaded" not in found(rigged(bracket=strong))


def test_a_stiff_tube_needs_no_cradle() -> None:
    answer = rigged(tube_sag=mm(1160 / 500 - 0.001))
    assert headrail().cradle_marks == ()
    assert not {"rig.cradle", "rig.no-room-for-cradle"} & found(answer).keys()


def test_a_limp_tube_gets_a_cradle_where_nothing_winds() -> None:
    answer = rigged(tube_sag=mm(1160 / 500 * 7.9))
    assert "rig.cradle" in found(answer)
    assert answer.result is not None
    (mark,) = answer.result.cradle_marks
    assert mark.value == Length.mm(580 + 17)  # the middle bay is free of clips
    assert len(headrail(tube_sag=mm(1160 / 500 * 8.1)).cradle_marks) == 2


def test_a_tube_held_too_high_to_turn_under_the_board_is_a_stop() -> None:
    high = replace(example.BRACKET, tube_centre_below_board=Length.mm(7 + 19))
    free = replace(example.BRACKET, tube_centre_below_board=Length.mm("26.1"))
    assert "rig.tube-fouls-board" in found(rigged(bracket=high))
    assert "rig.tube-fouls-board" not in found(rigged(bracket=free))
