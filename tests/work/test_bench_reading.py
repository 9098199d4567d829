"""What is typed at the bench is read in the job's units, and becomes the right observations."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.prove.card import bench_card
from foldwright.core.prove.card_example import order
from foldwright.core.prove.card_step import CardOrder, CardStep, Reads
from foldwright.core.prove.noting import BarLevel, Cycled, FreeStall, ReleasePull, TurnsWound
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    RiseTime,
    ScaleForce,
    ScalePair,
    Way,
    Weighed,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.work.bench import Entry, Kind, Record
from foldwright.work.bench_observing import observed
from foldwright.work.bench_reading import read_step
from foldwright.work.bench_session import Session

NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)
PLANNED = order()
SHADE = replace(PLANNED, lift=replace(PLANNED.lift, brake=Brake.FITTED), blackout=True)
STEPS = {step.id: step for step in bench_card(SHADE)}
LOWEST_LOCK_M = SHADE.headrail.lowest_lock_position.value.in_metres
POUND_N = 4.4482216152605  # yard-and-pound-1959, standard-gravity-1901


def record(*noted: tuple[str, dict[str, str]]) -> Record:
    entries = (
        Entry(
            number=number,
            key=str(number),
            step=step,
            typed=typed,
            by="AB",
            noted_at=NOON,
            undoes=None,
        )
        for number, (step, typed) in enumerate(noted, start=1)
    )
    return Record(
        id=1,
        job_id=1,
        kind=Kind.BENCH,
        subject="A",
        version=1,
        begun_at=NOON,
        entries=tuple(entries),
    )


def seen(*noted: tuple[str, dict[str, str]], shade: CardOrder = SHADE) -> list[Any]:
    found = observed(record(*noted), tuple(STEPS.values()), shade, System.METRIC)
    return [one.observation for one in found]


@pytest.mark.parametrize(
    ("step", "typed", "system", "expected"),
    [
        ("weigh", {"mass": "1.5"}, System.METRIC, {"mass": 1.5}),
        ("weigh", {"mass": "2"}, System.INCH, {"mass": 2 * 0.45359237}),
        ("weigh", {"mass": "2 lb 8 oz"}, System.METRIC, {"mass": 2.5 * 0.45359237}),
        ("width", {"top": "35 3/16"}, System.INCH, {"top": Length.inches("35.1875")}),
        ("width", {"top": "894"}, System.METRIC, {"top": Length.mm(894)}),
        ("wind", {"turns": "9 1/2 turns"}, System.INCH, {"turns": 9.5}),
        ("wind", {"turns": "9,5"}, System.METRIC, {"turns": 9.5}),
        ("scale", {"low_down": "5"}, System.INCH, {"low_down": 5 * POUND_N}),
        ("scale", {"low_up": "-5 N"}, System.INCH, {"low_up": -5.0}),
        ("scale", {"low_up": "\N{MINUS SIGN}5"}, System.METRIC, {"low_up": -5.0}),
    ],
)
def test_each_kind_of_text_is_read(
    step: str, typed: dict[str, str], system: System, expected: dict[str, Any]
) -> None:
    readings, faults = read_step(STEPS[step], typed, system)
    assert faults == ()
    assert readings == pytest.approx(expected) if step in {"weigh", "scale"} else expected


@pytest.mark.parametrize("system", System)
@pytest.mark.parametrize("step", STEPS.values(), ids=lambda step: step.id)
def test_all_faults_of_a_step_are_told_at_once_each_at_its_field(
    step: CardStep, system: System
) -> None:
    typed = {ask.name: "?" for ask in step.asks if ask.reads is not Reads.TEXT}
    readings, faults = read_step(step, typed, system)
    assert readings == {}
    assert {fault.where for fault in faults} == set(typed)
    assert all(fault.what and fault.remedy.endswith(".") for fault in faults)


@given(
    step=st.sampled_from(list(STEPS.values())),
    text=st.text(max_size=60),
    system=st.sampled_from(System),
)
def test_whatever_is_typed_is_read_or_told_and_never_fails(
    step: CardStep, text: str, system: System
) -> None:
    typed = {ask.name: text for ask in step.asks}
    readings, faults = read_step(step, typed, system)
    assert set(readings) <= set(typed)
    assert readings or faults or not text.strip()


@pytest.mark.parametrize(
    ("step", "typed", "expected"),
    [
        ("weigh", {"mass": "1.5"}, [Weighed(mass_kg=1.5)]),
        ("wind", {"turns": "9"}, [TurnsWound(turns=9.0)]),
        ("stall", {"ended": "rose", "turns": "9"}, [FullRise(turns=9.0, rose=True)]),
        (
            "stall",
            {"ended": "stalled", "raise": "1100", "turns": "9"},
            [GuidedStall(turns=9.0, raise_m=1.1)],
        ),
        (
            "stall",
            {"ended": "free", "raise": "1100", "turns": "9"},
            [FreeStall(turns=9.0, raise_m=1.1)],
        ),
        ("rise-time", {"seconds": "4", "turns": "9"}, [RiseTime(turns=9.0, seconds=4.0)]),
        (
            "scale",
            {"low_raise": "300", "low_down": "36", "low_up": "28", "high_down": "18", "turns": "9"},
            [
                ScalePair(turns=9.0, raise_m=0.3, down_n=36.0, up_n=28.0),
                ScaleForce(turns=9.0, raise_m=1.05525, force_n=18.0, way=Way.DOWN),
            ],
        ),
        (
            "release",
            {"released": "yes", "pull": "20"},
            [ReleasePull(raise_m=LOWEST_LOCK_M, pull_m=0.02, released=True)],
        ),
        (
            "level",
            {"up": "3", "higher": "left"},
            [BarLevel(raise_m=1.407, right_above_left_m=-0.003)],
        ),
        (
            "hold",
            {"low_raise": "300", "low_drift": "2", "turns": "9"},
            [Holding(turns=9.0, raise_m=0.3, held=True)],
        ),
        (
            "hold",
            {"high_raise": "900", "high_drift": "20", "turns": "9"},
            [Holding(turns=9.0, raise_m=0.9, held=False)],
        ),
        ("cycles", {"cycles": "10", "ran": "jumped"}, [Cycled(cycles=10, cords_jumped=1)]),
        ("width", {"top": "1200"}, []),
    ],
)
def test_an_entry_becomes_its_observations(
    step: str, typed: dict[str, str], expected: list[object]
) -> None:
    assert seen((step, typed)) == expected


def test_an_unknown_lock_may_be_all_that_holds() -> None:
    unknown = replace(SHADE, lift=replace(SHADE.lift, lock=Lock.UNKNOWN))
    assert seen(("hold", {"low_drift": "0", "turns": "9"}), shade=unknown) == []


def test_evidence_noted_twice_counts_once_and_turns_count_each_time() -> None:
    stall = ("stall", {"ended": "rose", "turns": "9"})
    nine, ten = ("wind", {"turns": "9"}), ("wind", {"turns": "10"})
    found = seen(nine, stall, stall, ten, nine)
    assert [type(one).__name__ for one in found] == [
        "TurnsWound",
        "FullRise",
        "TurnsWound",
        "TurnsWound",
    ]


def session(*noted: tuple[str, dict[str, str]]) -> Session:
    kept = record(*noted) if noted else None
    steps = tuple(STEPS.values())
    return Session(order=SHADE, steps=steps, record=kept, system=System.METRIC)


def test_the_turns_now_are_those_counted_last_and_never_a_slip() -> None:
    assert session().turns_now == PLANNED.headrail.pretension_turns.value  # type: ignore[union-attr]
    assert session(("wind", {"turns": "9"}), ("wind", {"turns": "12"})).turns_now == 12.0
    assert session(("wind", {"turns": "9"}), ("wind", {"turns": "400"})).turns_now == 9.0


def test_a_step_is_open_begun_or_what_it_came_to() -> None:
    some = session(
        ("width", {"top": "1200"}), ("label", {"present": "no"}), ("drop", {"left": "1590"})
    )
    states = {step: some.state(STEPS[step]) for step in ("width", "label", "drop", "square")}
    assert states == {"width": "part", "label": "stop", "drop": "ask", "square": "open"}


def test_the_work_goes_on_after_the_last_step_noted() -> None:
    assert session().resume == "weigh"
    assert session(("hang", {"hung": "yes"})).resume == "stall"
    assert session(("label", {"present": "yes"})).resume == "weigh"


def test_the_years_count_from_the_first_session_on_record() -> None:
    visit = replace(record(), kind=Kind.VISIT, begun_at=NOON + timedelta(days=4 * 365.25))
    seen_again = replace(session(), record=visit, earlier=(record(), record()))
    assert seen_again.years == pytest.approx(4.0)
    assert replace(seen_again, earlier=()).years > 20
