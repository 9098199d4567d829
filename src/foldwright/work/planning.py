"""Plan a whole job, or one shade of it."""

from __future__ import annotations

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.planning import plan_shade
from foldwright.work.draws import house_draws
from foldwright.work.job import Job, JobPlan


def plan_job(job: Job) -> JobPlan:
    """Plan every shade of a job, in the order of its file."""
    return JobPlan(job=job, shades=tuple(plan_one(job, spec) for spec in job.shades))


def plan_one(job: Job, spec: ShadeSpec) -> ShadePlan:
    """Plan one shade with the job's shop list, habits and markets."""
    return plan_shade(spec, job.shop, job.habits, job.markets, house_draws())
