"""The search beside other work: a quick look at every cloth, and no plan given up for a worse."""

from __future__ import annotations

import time

from foldwright.core.cloth.order import ClothPlan
from foldwright.work.cut_search import CutSearch
from foldwright.work.cutting import ClothCut, cloths_of
from foldwright.work.jobfile import DEMO_JOB, load_job


def _search(seconds: float) -> CutSearch:
    job = load_job(DEMO_JOB, None).job
    assert job is not None
    return CutSearch(cloths_of(job), seconds, time.monotonic)


def _plans(cuts: tuple[ClothCut | None, ...]) -> list[ClothPlan]:
    plans = [cut.plan for cut in cuts if cut is not None]
    assert None not in plans
    return [plan for plan in plans if plan is not None]


def test_every_cloth_of_the_demo_job_is_proven_soon() -> None:
    search = _search(60.0)
    search.start()
    search.wait(30.0)
    plans = _plans(search.cuts)
    assert len(plans) == len(search.cloths)
    assert all(plan.proven for plan in plans)


def test_a_plan_is_not_given_up_for_one_of_which_less_is_proven() -> None:
    search = _search(60.0)
    search.start()
    search.wait(30.0)
    known = search.cuts
    search._plan(0.0)  # a look without time proves nothing
    assert [plan.proven for plan in _plans(search.cuts)] == [True] * len(known)
