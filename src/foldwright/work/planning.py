"""Plan a whole job, or one shade of it."""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.planning import plan_shade
from foldwright.work.job import Job, JobPlan

TRIALS = 1024
UNCERTAIN_INPUTS = 16
SEED = 20_260_101  # any fixed number: the same job gives the same plan on every machine


@cache
def house_draws() -> NDArray[np.float64]:
    """Give the trials by which every plan weighs what is uncertain.

    A Latin hypercube: each input takes one value from each of as many equal slices of its
    range as there are trials, so that quantiles settle with few of them.
    """
    chance = np.random.default_rng(SEED)
    slices = np.tile(np.arange(TRIALS, dtype=np.float64), (UNCERTAIN_INPUTS, 1))
    shuffled = chance.permuted(slices, axis=1).T
    draws = (shuffled + chance.random(shuffled.shape)) / TRIALS
    draws.setflags(write=False)
    return draws


def plan_job(job: Job) -> JobPlan:
    """Plan every shade of a job, in the order of its file."""
    return JobPlan(job=job, shades=tuple(plan_one(job, spec) for spec in job.shades))


def plan_one(job: Job, spec: ShadeSpec) -> ShadePlan:
    """Plan one shade with the job's shop list, habits and markets."""
    return plan_shade(spec, job.shop, job.habits, job.markets, house_draws())
