"""What the search holds columns against at the headrail is what the headrail itself stops at."""

from __future__ import annotations

from dataclasses import replace

import pytest

from foldwright.core.check.layouts.rail import Rail, rail_of
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.quantity.length import Length
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_one

MILLIMETRE = Length.mm(1)
CORDED, TAPED = "Garden", "Dining"


def job() -> Job:
    read = load_job(DEMO_JOB).job
    assert read is not None
    return read


def planned(tag: str, **design: object) -> ShadePlan:
    spec = next(shade for shade in job().shades if shade.tag == tag)
    return plan_one(job(), replace(spec, design=replace(spec.design, **design)))  # type: ignore[arg-type]


def rail(plan: ShadePlan) -> Rail:
    found = rail_of(plan, job().habits)
    assert found is not None
    return found


def travel(plan: ShadePlan) -> int:
    assert plan.layout is not None
    return plan.layout.travel.value.nanometres


def stopped(plan: ShadePlan, name: str) -> bool:
    return any(finding.id == name for finding in plan.findings)


@pytest.mark.parametrize("tag", [CORDED, TAPED])
def test_the_least_edge_is_where_the_wraps_leave_the_bracket(tag: str) -> None:
    plan = planned(tag)
    least = Length(round(rail(plan).least_edge(travel(plan))))
    for edge, stops in ((least - MILLIMETRE, True), (least + MILLIMETRE, False)):
        tried = planned(tag, edge_distance=edge)
        assert stopped(tried, "rig.wraps-at-bracket") == stops


def test_the_least_pitch_is_where_facing_wraps_meet() -> None:
    plan = planned(CORDED)
    assert plan.size is not None
    least = Length(round(rail(plan).least_pitch(travel(plan))))
    clear = plan.size.width.value - Length.inches(4)
    most = int(clear / least) + 1
    for count, stops in ((most, False), (most + 1, True)):
        tried = planned(CORDED, column_count=count, edge_distance=Length.inches(2))
        assert stopped(tried, "rig.columns-too-close") == stops


def test_a_tape_asks_for_no_pitch_and_a_plain_tube_for_no_cradle() -> None:
    taped, corded = planned(TAPED), planned(CORDED)
    assert rail(taped).least_pitch(travel(taped)) == 0
    assert rail(corded).cradled_pitch(travel(corded), facing=True) == 0


def test_a_cradle_asks_for_its_own_width_beside_the_wraps() -> None:
    plan = planned(CORDED)
    cradled = replace(rail(plan), cradle=Length.mm(20).nanometres)
    wound = cradled.wound(travel(plan))
    assert cradled.cradled_pitch(travel(plan), facing=False) == 20_000_000 + wound
    assert cradled.cradled_pitch(travel(plan), facing=True) > 20_000_000 + wound


def test_nothing_is_asked_before_the_headrail_is_known() -> None:
    assert rail_of(ShadePlan(spec=ShadeSpec(tag="A")), job().habits) is None
