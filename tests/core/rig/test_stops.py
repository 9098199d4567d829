"""Lowest lock, release, up-stop and handle."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.core.rig.building import TAPE, found, headrail, kind, mm, rigged, size

from foldwright.core.lift.choices import LiftChoices, LiftKind, Lock
from foldwright.core.quantity.length import Length
from foldwright.core.rig import example


def test_the_lowest_lock_leaves_the_release_pull_and_a_ratchet_pitch() -> None:
    rail = headrail()
    turn = 2 * math.pi * 19.7013
    assert rail.release_travel.value.in_millimetres == pytest.approx(turn / 4, abs=1e-3)
    assert rail.lowest_lock_position.value.in_millimetres == pytest.approx(turn * 3 / 8, abs=1e-3)


def test_a_tape_releases_on_the_arm_that_its_safety_wraps_give() -> None:
    rail = headrail(line=TAPE)
    assert rail.release_travel.value.in_millimetres == pytest.approx(math.pi / 2 * 20.2, abs=1e-2)


@pytest.mark.parametrize(
    "choices",
    [kind(LiftKind.CLUTCH), kind(LiftKind.MOTOR), kind(LiftKind.SPRING, lock=Lock.NONE)],
)
def test_without_a_lock_there_is_nothing_to_release(choices: LiftChoices) -> None:
    answer = rigged(choices=choices, finished=size(sill_gap=mm(6)))
    assert answer.result is not None
    assert answer.result.lowest_lock_position.value == Length(0)
    assert answer.result.release_travel.value == Length(0)
    assert not [name for name in found(answer) if "lock" in name or "release" in name]


def test_a_lock_not_known_yet_is_given_its_room() -> None:
    assert headrail(choices=kind(LiftKind.SPRING, lock=Lock.UNKNOWN)).release_travel.value


def test_the_gap_under_the_locked_shade_is_told() -> None:
    answer = rigged(finished=size(sill_gap=mm(6)))
    gap, pull = found(answer)["rig.gap-when-locked"].figures
    assert answer.result is not None
    assert gap.value == answer.result.lowest_lock_position.value + Length.mm(6)
    assert pull is answer.result.release_travel


@given(st.integers(-100, 100))
def test_the_release_pull_always_ends_above_the_sill(gap: int) -> None:
    """Where the sill lies higher than the drop the lock is set higher by as much."""
    rail = headrail(finished=size(sill_gap=mm(gap)))
    above_sill = rail.lowest_lock_position.value + Length.mm(gap)
    assert above_sill >= rail.release_travel.value
    assert rail.lowest_lock_position.value > rail.release_travel.value


def test_a_sill_in_the_way_of_the_release_is_told_and_the_drop_works() -> None:
    finished = size(sill_gap=mm(-12.34))
    (change,) = found(rigged(finished=finished))["rig.sill-in-release"].remedies[0].changes
    assert change.path == "asked.drop"
    drop = float(change.text.removesuffix(" mm"))
    assert 1600 - 12.5 < drop <= 1600 - 12.34
    mended = size(drop=drop, sill_gap=mm(1600 - 12.34 - drop))
    assert "rig.sill-in-release" not in found(rigged(finished=mended))


def test_where_no_sill_ends_the_pull_the_shorter_cover_is_told() -> None:
    finding = found(rigged())["rig.shorter-when-locked"]
    assert finding.remedies[0].figures[0].value > Length.mm(1600)


def test_the_up_stop_and_the_hem_follow_the_raise() -> None:
    rail = headrail()
    assert rail.up_stop.value == Length.mm(1600 - 60 - 1407)
    assert rail.hem_at_stop.value == Length.mm(1600 - 1407)


def test_a_lower_raise_limit_lowers_stop_and_hem_alike() -> None:
    rail = headrail(choices=kind(LiftKind.SPRING, raise_limit_share=0.5))
    assert rail.up_stop.value == Length.mm("836.5")
    assert rail.hem_at_stop.value == Length.mm("896.5")


def test_rings_at_the_rail_are_stopped_and_the_raise_limit_works() -> None:
    deep = replace(example.BRACKET, height=Length.mm(90))
    (change,) = found(rigged(bracket=deep))["rig.rings-at-rail"].remedies[0].changes
    assert change.path == "lift.raise_limit_share"
    share = float(change.text)
    kept = rigged(bracket=deep, choices=kind(LiftKind.SPRING, raise_limit_share=share))
    assert "rig.rings-at-rail" not in found(kept)
    closer = kind(LiftKind.SPRING, raise_limit_share=share + 0.002)
    assert "rig.rings-at-rail" in found(rigged(bracket=deep, choices=closer))


def test_a_top_row_not_yet_reached_stays_where_it_was_sewn() -> None:
    """Half raised, the top row still hangs 140 mm below the top: a rail of 120 is clear."""
    choices = kind(LiftKind.SPRING, raise_limit_share=0.5)
    deep = replace(example.BRACKET, height=Length.mm(120))
    assert "rig.rings-at-rail" not in found(rigged(bracket=deep, choices=choices))
    deeper = replace(example.BRACKET, height=Length.mm(130))
    assert "rig.rings-at-rail" in found(rigged(bracket=deeper, choices=choices))


def test_the_handle_is_in_the_middle() -> None:
    assert headrail(finished=size(1001)).handle.value == Length.mm("500.5")
