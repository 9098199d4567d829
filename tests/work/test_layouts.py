"""Layouts that are offered go through every room without a stop that was not there before."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.core.why.finding import Severity
from foldwright.work.changing import change_shade
from foldwright.work.document import read_document
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, STYLES_JOB, load_job
from foldwright.work.layouts import offer_layouts
from foldwright.work.planning import plan_one


@cache
def job_of(path: Path) -> Job:
    job = load_job(path).job
    assert job is not None
    return job


def stops(plan: ShadePlan) -> set[str]:
    return {each.id for each in plan.findings if each.severity is Severity.STOP}


CASES = [
    pytest.param(path, number, id=shade.tag)
    for path in (DEMO_JOB, STYLES_JOB)
    for number, shade in enumerate(job_of(path).shades)
]


@pytest.mark.parametrize(("path", "number"), CASES)
def test_an_offered_layout_raises_no_stop_in_any_room(path: Path, number: int) -> None:
    reading, job = load_job(path), job_of(path)
    before = plan_one(job, job.shades[number])
    offers = offer_layouts(job, before)
    assert offers is not None
    for offer in offers.all:
        document = change_shade(reading.document, number, offer.way.changes)
        changed = read_document(document, job.shop).job
        assert changed is not None
        after = plan_one(changed, changed.shades[number])
        assert stops(after) <= stops(before), offer.title
        assert after.layout is not None
        assert after.layout.columns == offer.layout.columns
        assert after.layout.rows == offer.layout.rows
