"""The demo job: nine windows, all different; eight work and one says why it does not."""

from __future__ import annotations

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace, StyleName
from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import MountPlace
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Finding, Severity
from foldwright.work.changing import change_shade, compare_plans
from foldwright.work.document import read_document
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_job, plan_one

READING = load_job(DEMO_JOB)
JOB = READING.job
assert JOB is not None, READING.faults
PLANS = {plan.spec.tag: plan for plan in plan_job(JOB).shades}
IMPOSSIBLE = "Library"
GOOD = (Verdict.WORKS, Verdict.BY_HAND)


def stops(plan: ShadePlan) -> list[Finding]:
    return [each for each in plan.findings if each.severity is Severity.STOP]


def test_there_are_nine_windows_each_with_its_lesson() -> None:
    assert len(PLANS) == 9
    assert len({plan.spec.note for plan in PLANS.values()}) == 9
    assert all(plan.spec.note.endswith(".") for plan in PLANS.values())


@pytest.mark.parametrize("tag", [tag for tag in PLANS if tag != IMPOSSIBLE])
def test_eight_of_them_work(tag: str) -> None:
    plan = PLANS[tag]
    assert plan.balance is not None
    assert plan.balance.verdict in GOOD
    assert plan.headrail is not None
    assert [each for each in plan.findings if each.severity is not Severity.NOTE] == []


def test_the_impossible_one_says_why_with_remedies_that_work() -> None:
    plan = PLANS[IMPOSSIBLE]
    assert plan.balance is not None
    assert plan.balance.verdict is Verdict.NOTHING_FITS
    (stop,) = stops(plan)
    remedies = [remedy for remedy in stop.remedies if remedy.changes]
    assert len(remedies) >= 2
    index = list(PLANS).index(IMPOSSIBLE)
    for remedy in remedies:
        job = read_document(change_shade(READING.document, index, remedy.changes)).job
        assert job is not None
        mended = plan_one(job, job.shades[index])
        assert mended.balance is not None
        assert mended.balance.verdict in GOOD, remedy.sentence
        assert stops(mended) == []
        assert compare_plans(plan, mended, System.INCH)


def test_what_is_instructive_about_each_is_there() -> None:
    stair, dining, bay, garden, kitchen = (
        PLANS[tag] for tag in ("Stair", "Dining", "Bay", "Garden", "Kitchen")
    )
    assert stair.size is not None
    assert stair.size.drop.value > stair.size.width.value * 4
    assert dining.layout is not None
    assert dining.layout.widths.widths.value > 1
    assert bay.spec.opening.width_top == Length.mm(894)
    assert garden.size is not None
    assert garden.size.racking is not None
    assert abs(garden.size.racking.value) > Length.inches("0.2")
    assert kitchen.spec.mount.place is MountPlace.OUTSIDE
    assert kitchen.spec.opening.depth_head is not None
    assert kitchen.spec.opening.depth_head < Length.inches(2)
    snug, nursery, parlour = (PLANS[tag] for tag in ("Snug", "Nursery", "Parlour"))
    assert snug.chosen.interlining is not None
    assert nursery.spec.lift.kind is LiftKind.SPRING
    assert parlour.chosen.face is not None
    assert parlour.chosen.face.vertical_repeat is not None


def test_the_nine_use_what_the_tool_can_do() -> None:
    specs = [plan.spec for plan in PLANS.values()]
    assert {spec.lift.kind for spec in specs} == set(LiftKind)
    assert {spec.design.style for spec in specs} == {StyleName.FLAT, StyleName.LOOPED}
    assert {spec.design.rods for spec in specs} == set(RodPlace) - {RodPlace.SLATS}
    assert {spec.mount.place for spec in specs} == set(MountPlace)
    assert any(spec.materials.tape for spec in specs)
    assert any(spec.materials.cord for spec in specs)


def test_inch_and_metric_say_the_same() -> None:
    """A plan does not know the units it was typed in."""
    metric = {**READING.document, "job": {**READING.document["job"], "system": "metric"}}
    shades = [spec for spec in (JOB.shades if JOB else ()) if spec.tag == "Bay"]
    bay = [shade for shade in metric["shades"] if shade["tag"] == "Bay"]
    bay = [{**bay[0], "design": {**bay[0]["design"], "largest_row_spacing": 152.4}}]
    job = read_document({**metric, "shades": bay}).job
    assert job is not None
    assert list(job.shades) == shades
