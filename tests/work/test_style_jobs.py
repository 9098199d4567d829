"""The show-room job: one window in each style, planned from the size to the headrail."""

from __future__ import annotations

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import StyleName
from foldwright.core.why.finding import Severity
from foldwright.work.jobfile import STYLES_JOB, load_job
from foldwright.work.planning import plan_job

READING = load_job(STYLES_JOB)
assert READING.job is not None, READING.faults
PLANS = {plan.spec.tag: plan for plan in plan_job(READING.job).shades}


def test_every_style_of_the_house_has_its_window() -> None:
    assert {plan.spec.design.style for plan in PLANS.values()} == set(StyleName)
    assert all(plan.spec.note.endswith(".") for plan in PLANS.values())


@pytest.mark.parametrize("plan", PLANS.values(), ids=list(PLANS))
def test_each_is_planned_to_the_headrail_and_nothing_stops_it(plan: ShadePlan) -> None:
    loud = [each for each in plan.findings if each.severity is not Severity.NOTE]
    assert [each for each in loud if not each.id.startswith("safety.")] == []
    assert [each for each in loud if each.severity is Severity.STOP] == []
    assert plan.layout is not None
    assert plan.weights is not None
    assert plan.headrail is not None


@pytest.mark.parametrize("plan", PLANS.values(), ids=list(PLANS))
def test_each_tells_how_it_is_sewn(plan: ShadePlan) -> None:
    assert plan.layout is not None
    titles = [step.title for step in plan.layout.sewing]
    assert titles[0] == "Press and square"
    assert titles[-1] == "Dress the folds"
    assert len(set(titles)) == len(titles)
