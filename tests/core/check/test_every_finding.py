"""Every finding can fire and be silent, and every remedy silences it without firing a stop.

The list of findings is read out of the sources, so that a new one without a case fails here.
"""

from __future__ import annotations

from functools import cache

import pytest
from docs.findings import findings
from tests.core.check.cases_at_the_bench import AT_THE_BENCH, BENCH_RECORD
from tests.core.check.cases_design import DESIGN
from tests.core.check.cases_lift import LIFT
from tests.core.check.cases_measure import MEASURE, THREE_HEIGHTS
from tests.core.check.cases_of_cloth import OF_CLOTH
from tests.core.check.cases_of_rooms import OF_ROOMS, OfRoom
from tests.core.check.cases_order import CHECK
from tests.core.check.sound import SOUND, Order, found, ids, mended, planned, stops

from foldwright.core.check.plan import ShadePlan
from foldwright.core.why.finding import Severity

CASES = MEASURE | DESIGN | LIFT | CHECK
BY_ROOM: dict[str, OfRoom] = {**OF_ROOMS, **AT_THE_BENCH, **BENCH_RECORD, **OF_CLOTH}  # type: ignore[type-arg] - each its own
SILENT_ON = {  # where a sound shade of the same kind says it too
    "lift.accessible": Order(of="chain"),
    "lift.chain-loop": Order(of="spring"),
    "lift.lock-two-way": Order(of="spring", typed={"lift.lock": "one-way"}),
    "lift.motor-mains": Order(of="print"),
    "lift.wound-spring": Order(of="chain"),
    "rig.gap-when-locked": Order(of="chain"),
    "safety.test": Order(of="spring", typed=dict.fromkeys(THREE_HEIGHTS)),
    "weigh.bound": Order(of="spring"),
}
ALWAYS_SAID = set(SILENT_ON)


@cache
def spoilt(name: str) -> ShadePlan:
    return planned(CASES[name].document)


@cache
def sound(of: str) -> ShadePlan:
    return planned(Order(of=of).document)


def test_every_finding_of_the_sources_has_a_case_and_no_other() -> None:
    told = {said.id for said in findings()}
    cased = CASES.keys() | BY_ROOM.keys()
    assert told - cased == set(), "give each a case in tests/core/check/cases_*.py"
    assert cased - told == set()
    assert CASES.keys() & BY_ROOM.keys() == set()


@pytest.mark.parametrize("of", SOUND)
def test_nothing_is_wrong_with_a_sound_order(of: str) -> None:
    assert sound(of).headrail is not None
    assert ids(sound(of)) <= ALWAYS_SAID
    assert all(each.severity is Severity.NOTE for each in sound(of).findings)


@pytest.mark.parametrize("name", CASES)
def test_a_finding_fires_where_one_thing_is_spoilt_and_is_silent_where_none_is(name: str) -> None:
    silent = SILENT_ON.get(name)
    assert name in ids(spoilt(name))
    assert name not in ids(planned(silent.document) if silent else sound(CASES[name].of))


@pytest.mark.parametrize("name", CASES)
def test_every_remedy_pressed_silences_it_and_fires_no_stop(name: str) -> None:
    document, before = CASES[name].document, spoilt(name)
    for remedy in found(before, name).remedies:
        if remedy.changes:
            after = planned(mended(document, remedy.changes))
            assert name not in ids(after), remedy
            assert stops(after) <= stops(before), remedy


@pytest.mark.parametrize("name", BY_ROOM)
def test_a_finding_that_a_job_file_never_reaches_fires_and_is_silent_in_its_room(name: str) -> None:
    case = BY_ROOM[name]
    fired = {each.id: each for each in case.judge(case.spoilt)}
    assert name in fired
    assert name not in {each.id for each in case.judge(case.sound)}
    for remedy in fired[name].remedies:
        if remedy.changes and case.mend is not None:
            after = case.judge(case.mend(case.spoilt, remedy))
            assert name not in {each.id for each in after}, remedy
            assert {each.id for each in after if each.severity is Severity.STOP} <= fired.keys()


def test_most_findings_can_be_mended_by_a_button() -> None:
    """What only hands can mend is told in words; the rest has a button for the case shown here."""
    pressed = [
        name
        for name in CASES
        if any(remedy.changes for remedy in found(spoilt(name), name).remedies)
    ]
    assert len(pressed) > len(CASES) / 2
