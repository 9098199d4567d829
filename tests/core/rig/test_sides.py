"""Which end the spring goes to and which way it turns."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.core.rig.building import found, headrail, kind, rigged, spring

from foldwright.core.facts.records import ShopList
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Face, Mount, Side
from foldwright.core.rig.sides import Turning, end_for_hand, raising_direction

OTHER_SIDE = {Side.LEFT: Side.RIGHT, Side.RIGHT: Side.LEFT}
OTHER_FACE = {Face.ROOM: Face.WINDOW, Face.WINDOW: Face.ROOM}


def by_hand(hand: str | None) -> ShopList:
    return ShopList(springs={"spring": spring(hand)})


@given(st.sampled_from(Side), st.sampled_from(Face))
def test_a_rail_flipped_front_to_back_keeps_its_turning(side: Side, face: Face) -> None:
    flipped = raising_direction(OTHER_SIDE[side], OTHER_FACE[face])
    assert flipped is raising_direction(side, face)


@given(st.sampled_from(Side), st.sampled_from(Face))
def test_one_fact_alone_turns_it_round(side: Side, face: Face) -> None:
    turned = raising_direction(side, face).opposite
    assert raising_direction(OTHER_SIDE[side], face) is turned
    assert raising_direction(side, OTHER_FACE[face]) is turned


def test_a_coil_tightens_when_the_shade_goes_down() -> None:
    """A right-hand screw advances away when turned clockwise, so a right-hand coil tightens
    when the tube, beyond the fixed near end, turns clockwise: down must be clockwise."""
    for face in Face:
        assert raising_direction(end_for_hand("right", face), face) is Turning.COUNTER_CLOCKWISE
        assert raising_direction(end_for_hand("left", face), face) is Turning.CLOCKWISE


@pytest.mark.parametrize(
    ("hand", "face", "side"),
    [
        ("left", Face.ROOM, "right"),
        ("left", Face.WINDOW, "left"),
        ("right", Face.ROOM, "left"),
        ("right", Face.WINDOW, "right"),
        (None, Face.ROOM, "right"),
        (None, Face.WINDOW, "left"),
    ],
)
def test_the_hand_of_the_coil_decides_the_end(hand: str | None, face: Face, side: str) -> None:
    mount = Mount(cord_side=face, board_edge=face)
    assert headrail(mount=mount, shop=by_hand(hand)).spring_side.value == side


@pytest.mark.parametrize("written", ["Right", " right ", "RIGHT"])
def test_the_hand_is_read_as_people_write_it(written: str) -> None:
    mount = Mount(cord_side=Face.WINDOW, board_edge=Face.WINDOW)
    assert headrail(mount=mount, shop=by_hand(written)).spring_side.value == "right"


@pytest.mark.parametrize("written", ["LH", "clockwise", "both"])
def test_a_hand_that_cannot_be_read_is_asked_for(written: str) -> None:
    assert "rig.spring-hand" in found(rigged(shop=by_hand(written)))
    assert "rig.spring-hand" not in found(rigged(shop=by_hand("right")))
    assert "rig.spring-hand" not in found(rigged(shop=by_hand("")))


def test_a_spring_of_either_hand_goes_where_it_is_asked_for() -> None:
    rail = headrail(mount=Mount(control_side=Side.LEFT))
    assert (rail.spring_side.value, rail.wind_direction.value) == ("left", "counter-clockwise")


def test_a_spring_at_the_wrong_end_is_stopped_and_the_remedy_works() -> None:
    mount = Mount(control_side=Side.LEFT)
    answer = rigged(mount=mount, shop=by_hand("left"))
    (change,) = found(answer)["rig.spring-end"].remedies[0].changes
    assert (change.path, change.text) == ("mount.control_side", "right")
    mended = replace(mount, control_side=Side(change.text))
    assert "rig.spring-end" not in found(rigged(mount=mended, shop=by_hand("left")))


@pytest.mark.parametrize("lift", [LiftKind.CLUTCH, LiftKind.MOTOR])
@pytest.mark.parametrize("side", [None, Side.LEFT, Side.RIGHT])
def test_a_control_goes_where_it_is_asked_for_or_right(lift: LiftKind, side: Side | None) -> None:
    rail = headrail(mount=Mount(control_side=side), choices=kind(lift))
    assert rail.spring_side.value == (side or Side.RIGHT).value


def test_cloth_and_cords_on_different_sides_are_asked_about_and_the_remedy_works() -> None:
    mount = Mount(board_edge=Face.WINDOW)
    (change,) = found(rigged(mount=mount))["rig.cloth-and-cords-apart"].remedies[0].changes
    assert change.path == "mount.cord_side"
    assert not found(rigged(mount=replace(mount, cord_side=Face(change.text)))).keys() & {
        "rig.cloth-and-cords-apart"
    }
