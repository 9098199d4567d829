"""The bench card asks what the shade needs, and holds what was noted against its limits.

The limits themselves are common practice or house defaults, as each figure says.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from foldwright.core.facts.acceptance import LOOP_PULL, loop_pull
from foldwright.core.facts.markets import Market
from foldwright.core.lift.balance import Window
from foldwright.core.lift.choices import Brake, LiftKind, Lock
from foldwright.core.prove.accepting import JUDGES, judge
from foldwright.core.prove.card import bench_card
from foldwright.core.prove.card_example import order
from foldwright.core.prove.card_step import CardOrder, Outcome, Reading, Reads
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen
from foldwright.core.why.telling import fill

SHADE = order()
LIMIT = chosen("way round a loop", Length.mm(440), Unit.LENGTH)


def mm(value: float) -> Length:
    return Length.mm(str(value))


def outcomes(step: str, shade: CardOrder = SHADE, **readings: Reading) -> list[str]:
    return [one.outcome.value for one in judge(step, readings, shade).judgements]


def ids(shade: CardOrder) -> list[str]:
    return [step.id for step in bench_card(shade)]


def test_a_sprung_shade_is_wound_hung_run_and_looked_over_in_this_order() -> None:
    assert ids(SHADE) == [
        "weigh", "width", "drop", "square", "rows", "wind", "hang", "stall", "scale",
        "release", "level", "hold", "cycles", "up-stop", "loops", "label",
    ]  # fmt: skip


def test_a_brake_is_timed_and_a_blackout_is_held_against_a_lamp() -> None:
    braked = replace(SHADE, lift=replace(SHADE.lift, brake=Brake.FITTED), blackout=True)
    assert set(ids(braked)) - set(ids(SHADE)) == {"rise-time", "light"}


def test_without_a_lock_there_is_nothing_to_release() -> None:
    assert "release" not in ids(replace(SHADE, lift=replace(SHADE.lift, lock=Lock.NONE)))


def test_a_clutch_is_not_wound() -> None:
    clutch = replace(SHADE, balance=replace(SHADE.balance, kind=LiftKind.CLUTCH))
    assert set(ids(SHADE)) - set(ids(clutch)) == {"wind", "stall", "scale", "release"}


def test_every_step_has_its_judge_and_every_field_its_own_name() -> None:
    whole = replace(SHADE, lift=replace(SHADE.lift, brake=Brake.FITTED), blackout=True)
    for step in bench_card(whole):
        assert step.id in JUDGES
        assert len({ask.name for ask in step.asks}) == len(step.asks)
        assert all(bool(ask.options) == (ask.reads is Reads.CHOICE) for ask in step.asks)
        assert fill(step.instruction, step.figures, System.INCH)


def test_what_can_hurt_is_said_before_the_spring_is_wound() -> None:
    (wind,) = [step for step in bench_card(SHADE) if step.id == "wind"]
    for words in ("crank", "eye protection", "Hands clear", "under control", "loosen a bracket"):
        assert words in wind.caution


@pytest.mark.parametrize("step", sorted(JUDGES))
def test_what_was_not_read_is_not_judged(step: str) -> None:
    assert judge(step, {}, SHADE).outcome is None


@pytest.mark.parametrize(
    ("step", "readings", "expected"),
    [
        ("weigh", {"mass": 1.55}, "pass"),
        ("weigh", {"mass": 2.0}, "ask"),
        ("width", {"top": mm(1200)}, "pass"),
        ("width", {"top": mm(1200.1)}, "stop"),
        ("width", {"bottom": mm(1200 - 3.175)}, "pass"),
        ("width", {"bottom": mm(1200 - 3.2)}, "ask"),
        ("drop", {"centre": mm(1603.175)}, "pass"),
        ("drop", {"centre": mm(1603.2)}, "ask"),
        ("drop", {"centre": mm(1596.8)}, "ask"),
        ("square", {"falling": mm(1524), "rising": mm(1524 - 3.175)}, "pass"),
        ("square", {"falling": mm(1524), "rising": mm(1524 - 3.2)}, "ask"),
        ("square", {"falling": mm(3048), "rising": mm(3048 - 6.3)}, "pass"),
        ("rows", {"off": mm(1.5875)}, "pass"),
        ("rows", {"off": mm(1.6)}, "ask"),
        ("wind", {"turns": 11.0}, "pass"),
        ("hang", {"hung": "yes"}, "pass"),
        ("stall", {"ended": "rose"}, "pass"),
        ("stall", {"ended": "stalled", "raise": mm(1100)}, "ask"),
        ("stall", {"ended": "free", "raise": mm(1100)}, "ask"),
        ("rise-time", {"seconds": 4.0}, "pass"),
        ("scale", {"low_down": 30.0, "low_up": 20.0}, "pass"),
        ("scale", {"low_down": 80.0}, "ask"),
        ("scale", {"high_down": 5.0, "high_up": -15.0}, "pass"),
        ("scale", {"high_down": 5.0, "high_up": -15.1}, "ask"),
        ("release", {"released": "no"}, "stop"),
        ("release", {"released": "yes"}, "pass"),
        ("release", {"released": "yes", "pull": mm(300)}, "ask"),
        ("level", {"half": mm(6.35)}, "pass"),
        ("level", {"half": mm(6.4)}, "ask"),
        ("hold", {"low_drift": mm(12.7)}, "pass"),
        ("hold", {"low_drift": mm(12.8)}, "ask"),
        ("hold", {"day": mm(25.4)}, "pass"),
        ("hold", {"day": mm(25.5)}, "ask"),
        ("cycles", {"cycles": 10.0, "ran": "clean"}, "pass"),
        ("cycles", {"cycles": 9.0, "ran": "clean"}, "ask"),
        ("cycles", {"cycles": 10.0}, "ask"),
        ("cycles", {"cycles": 10.0, "ran": "jumped"}, "stop"),
        ("up-stop", {"clear": mm(12.7)}, "pass"),
        ("up-stop", {"clear": mm(12.6)}, "stop"),
        ("light", {"holes": "none"}, "pass"),
        ("light", {"holes": "some"}, "ask"),
        ("label", {"present": "yes"}, "pass"),
        ("label", {"present": "no"}, "stop"),
    ],
)
def test_each_limit_is_kept_at_itself_and_not_beyond(
    step: str, readings: dict[str, Reading], expected: str
) -> None:
    judged = judge(step, readings, SHADE)
    assert judged.outcome is not None
    assert judged.outcome.value == expected
    for one in judged.judgements:
        assert fill(one.sentence, one.figures, System.METRIC)


def turns(name: str, value: float, low: float, high: float) -> Figure[float]:
    because = "Reckoned."
    return Figure(name=name, value=value, unit=Unit.TURN, because=because, low=low, high=high)


WINDOW = Window(
    least_turns=turns("least turns", 10.0, 8.5, 12.0),
    most_by_spring=turns("most turns", 20.0, 19.0, 21.0),
    most_by_hand=turns("most turns by hand", 30.0, 28.0, 32.0),
    most_by_speed=None,
    recommended_turns=chosen("turns", 12.5, Unit.TURN),
    chance=chosen("chance", 0.97, Unit.SHARE),
    limited_below_by=chosen("limit", "the load", Unit.WORD),
    limited_above_by=chosen("limit", "the spring", Unit.WORD),
)


@pytest.mark.parametrize(
    ("wound", "expected"), [(8.4, "ask"), (8.5, "pass"), (21.0, "pass"), (21.1, "stop")]
)
def test_turns_are_held_against_the_window_as_it_was_reckoned(wound: float, expected: str) -> None:
    windowed = replace(SHADE, balance=replace(SHADE.balance, window=WINDOW))
    assert outcomes("wind", windowed, turns=wound) == [expected]


def test_left_and_right_are_held_against_each_other() -> None:
    assert outcomes("drop", left=mm(1602), right=mm(1598)) == ["pass", "pass", "ask"]


def test_the_worst_finding_speaks_for_the_step() -> None:
    judged = judge("width", {"top": mm(1200), "middle": mm(1190), "bottom": mm(1201)}, SHADE)
    assert [one.outcome for one in judged.judgements] == [Outcome.PASS, Outcome.ASK, Outcome.STOP]
    assert judged.outcome is Outcome.STOP


@pytest.mark.parametrize(("found", "expected"), [(440, "pass"), (441, "stop")])
def test_a_loop_is_held_against_the_rule_of_the_market(found: float, expected: str) -> None:
    ruled = replace(SHADE, loop_limit=LIMIT, markets=(Market.CANADA,))
    assert outcomes("loops", ruled, column_4=mm(found)) == [expected]
    assert outcomes("loops", SHADE, column_4=mm(found)) == ["ask"]


def test_the_strongest_pull_of_the_markets_is_drawn_with() -> None:
    assert loop_pull((Market.UNITED_STATES,)).value == pytest.approx(22.24, abs=0.01)
    assert loop_pull((Market.UNITED_STATES, Market.CANADA)).value == 35.0
    assert loop_pull(()).value == max(pull.value for pull in LOOP_PULL.values())
