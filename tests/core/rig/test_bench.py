"""Adjustments and bench steps."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.rig.building import TAPE, headrail, kind, mm, number, window

from foldwright.core.facts.records import Chosen
from foldwright.core.lift.choices import LiftChoices, LiftKind, Lock
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import cautions, example
from foldwright.core.rig.headrail import Adjustment, Headrail
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.why.telling import fill, show

KINDS = [kind(lift) for lift in LiftKind]


def line(rail: Headrail, word: str) -> Adjustment:
    return next(each for each in rail.adjustments if word in each.symptom)


def titles(rail: Headrail) -> list[str]:
    return [step.title for step in rail.steps]


@pytest.mark.parametrize(
    ("word", "action", "turning"),
    [("rise fully", "more turns", "clockwise"), ("flies up", "fewer", "counter-clockwise")],
)
def test_more_turns_wind_and_fewer_let_down(word: str, action: str, turning: str) -> None:
    adjustment = line(headrail(), word)
    assert adjustment.action.value.startswith(action)
    assert f"turn the fixed shaft {turning}," in adjustment.end.value
    assert "right, seen from the room" in adjustment.end.value


@pytest.mark.parametrize(
    ("turns", "up", "down"), [(12.0, 1.0, 0.0), (12.8, 0.5, 1.0), (13.2, 0.0, 1.0)]
)
def test_a_step_never_leaves_the_window(turns: float, up: float, down: float) -> None:
    rail = headrail(
        window=window(11.6, 12.0, spring=13.4, hand=16.0),
        choices=kind(LiftKind.SPRING, turns=turns),
    )
    assert line(rail, "rise fully").amount.value == up
    assert line(rail, "flies up").amount.value == down
    assert ("none are left" in line(rail, "rise fully").action.value) is (up == 0)
    assert ("no longer lift" in line(rail, "flies up").action.value) is (down == 0)


def test_a_two_way_lock_is_not_mended_by_turns_when_it_sinks() -> None:
    assert line(headrail(choices=kind(LiftKind.SPRING, lock=Lock.ONE_WAY)), "sinks")
    rail = headrail(choices=kind(LiftKind.SPRING, lock=Lock.TWO_WAY))
    assert not [each for each in rail.adjustments if "sinks" in each.symptom]


@pytest.mark.parametrize("choices", KINDS)
def test_a_tilted_bar_is_never_a_matter_of_turns(choices: LiftChoices) -> None:
    tilted = line(headrail(choices=choices), "level")
    assert tilted.action.value.endswith("never turns")
    assert tilted.amount.value.in_millimetres == pytest.approx(8.8, abs=0.005)


def test_a_tilted_bar_on_tapes_is_no_climbed_wrap() -> None:
    assert "another rotation" in line(headrail(line=TAPE), "level").action.value


def test_the_turns_wished_for_go_before_the_turns_recommended() -> None:
    recommended = window(11.6, 12.0, spring=13.4, hand=16.0)
    wished = headrail(window=recommended).pretension_turns
    assert wished is not None
    assert wished.value == 11
    free = headrail(window=recommended, choices=kind(LiftKind.SPRING, turns=None))
    assert free.pretension_turns is not None
    assert free.pretension_turns.value == 12


@pytest.mark.parametrize("chances", [None, window(14.0, None, spring=11.0, hand=16.0)])
def test_without_turns_the_sheet_says_not_to_wind(chances: object) -> None:
    rail = headrail(window=chances, choices=kind(LiftKind.SPRING, turns=None))
    assert rail.pretension_turns is None
    step = next(step for step in rail.steps if step.title == "pretension")
    assert step.instruction.startswith("Do not wind")
    assert line(rail, "rise fully").amount.value == 0
    assert line(rail, "flies up").amount.value == 0
    assert not line(rail, "rise fully").is_measured
    assert line(rail, "stops on the way").action.value == "look for friction first"
    assert line(rail, "out of level").is_measured


def test_a_spring_is_wound_at_the_stop_before_hanging_and_tested_after() -> None:
    order = titles(headrail())
    asked = [
        "board", "brackets", "tube", "spring", "clips", "cords", "thread", "safety wraps",
        "up-stop", "pretension", "hang", "lower", "lowest lock", "handle", "level", "release",
        "hand force", "cycles",
    ]  # fmt: skip
    assert order == asked
    assert [step.number for step in headrail().steps] == list(range(1, len(asked) + 1))


def test_clutch_and_motor_have_steps_of_their_own() -> None:
    clutch, motor = (titles(headrail(choices=kind(lift))) for lift in list(LiftKind)[1:])
    assert {"clutch", "chain"} <= set(clutch)
    assert {"motor", "limits"} <= set(motor)
    assert not {"pretension", "release", "spring"} & {*clutch, *motor}


def test_a_tape_is_spoken_of_as_a_tape() -> None:
    rail = headrail(line=TAPE)
    assert "tapes" in titles(rail)
    assert not [step for step in rail.steps if "cord" in step.instruction.lower()]


def test_cradles_are_marked_only_where_there_are_any() -> None:
    assert "cradles" not in titles(headrail())
    assert "cradles" in titles(headrail(tube_sag=mm(20)))


@pytest.mark.parametrize(
    ("title", "choices", "caution"),
    [
        ("spring", KINDS[0], cautions.WOUND_SPRING),
        ("pretension", KINDS[0], cautions.WOUND_SPRING),
        ("lower", KINDS[0], cautions.LET_BACK),
        ("release", KINDS[0], cautions.LET_BACK),
        ("hang", KINDS[0], cautions.LADDER),
        ("thread", KINDS[0], cautions.CORDS),
        ("brackets", KINDS[0], cautions.FIXINGS),
        ("chain", KINDS[1], cautions.CHAIN),
        ("motor", KINDS[2], cautions.MAINS),
        ("limits", KINDS[2], cautions.MAINS),
    ],
)
def test_what_can_hurt_carries_its_caution(title: str, choices: LiftChoices, caution: str) -> None:
    step = next(step for step in headrail(choices=choices).steps if step.title == title)
    assert caution in step.caution


def test_the_cautions_name_what_hurts() -> None:
    for word in ("Hands clear", "eye protection", "locking pin under tension", "maker's tool"):
        assert word in cautions.WOUND_SPRING
    assert "without a speed brake" in cautions.LET_BACK
    assert "licensed person" in cautions.MAINS
    assert "child" in cautions.CORDS
    assert "child" in cautions.CHAIN


@pytest.mark.parametrize("system", list(System))
@pytest.mark.parametrize("choices", KINDS)
@pytest.mark.parametrize("limp", [0.2, 20])
def test_every_slot_of_every_sentence_is_filled(
    system: System, choices: LiftChoices, limp: float
) -> None:
    known = {
        "spring_energy": number("energy", 50.0),
        "hand_force_down": number("hand force", 40.0),
        "chain_pull": number("chain pull", 30.0),
        "motor_time": number("time", 24.0),
        "motor_torque": number("torque", 0.5),
    }
    for more in ({}, known):
        rail = headrail(choices=choices, tube_sag=mm(limp), **more)
        for step in rail.steps:
            told = fill(step.instruction, step.figures, system)
            assert "{" not in told
            assert step.reason
        for each in rail.adjustments:
            assert show(each.amount, system)
        for figure in (rail.spring_side, rail.wind_direction, rail.lines[0].offset):
            for inner in figure.family():
                assert "{" not in fill(inner.because, inner.inputs, system)


def test_every_figure_of_a_step_is_spoken_in_it() -> None:
    for choices in KINDS:
        for step in headrail(choices=choices, tube_sag=mm(20)).steps:
            for place in range(len(step.figures)):
                assert f"{{{place}}}" in step.instruction, step.title


def test_what_is_missing_is_asked_for_and_nothing_is_guessed() -> None:
    order = example.ORDER
    for part, choices in (
        ("bracket", example.LIFT),
        ("tube", example.LIFT),
        ("cord", example.LIFT),
        ("lift", LiftChoices()),
    ):
        chosen: Chosen = example.CHOSEN
        if part != "lift":
            chosen = replace(chosen, **{part: None})
        answer = rig_headrail(
            order.mount, order.size, order.layout, order.balance, order.weights, chosen, choices,
            order.habits,
        )  # fmt: skip
        assert answer.result is None
        assert [finding.id for finding in answer.findings] == [f"rig.choose-{part}"]
