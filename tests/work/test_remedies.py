"""A remedy that can be applied is typed into fields that there are, with words that read."""

from __future__ import annotations

import pytest

from foldwright.core.check.plan import ShadePlan
from foldwright.work.changing import change_shade
from foldwright.work.document import read_document
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_job, plan_one

READING = load_job(DEMO_JOB)
PLANS = plan_job(READING.job).shades if READING.job else ()


@pytest.mark.parametrize(("index", "plan"), list(enumerate(PLANS)))
def test_every_remedy_offered_can_be_typed_and_changes_the_shade(
    index: int, plan: ShadePlan
) -> None:
    offered = [(each.id, way) for each in plan.findings for way in each.remedies if way.changes]
    for finding, remedy in offered:
        reading = read_document(change_shade(READING.document, index, remedy.changes))
        assert reading.job is not None, (finding, reading.faults)
        changed = plan_one(reading.job, reading.job.shades[index])
        assert changed.spec != plan.spec, (finding, remedy.sentence)
        assert finding not in {each.id for each in changed.findings}, remedy.sentence
