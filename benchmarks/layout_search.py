"""The layout search of one shade: the median of every shade must stay under 50 ms.

    python benchmarks/layout_search.py

Each shade of the demo job and of the job of styles is planned once and searched afresh; what
counts is the time that the processor spends on it, whatever else the machine is doing.
"""

from __future__ import annotations

import statistics
import sys
import time

from foldwright.core.check.plan import ShadePlan
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, STYLES_JOB, load_job
from foldwright.work.layouts import offer_layouts
from foldwright.work.planning import plan_one

BOUND_MS = 50.0
ROUNDS = 15


def main() -> int:
    """Time every shade; give 1 if the median of any is over the bound."""
    slowest = 0.0
    for job in filter(None, (load_job(path).job for path in (DEMO_JOB, STYLES_JOB))):
        for shade in job.shades:
            plan = plan_one(job, shade)
            taken = [one(job, plan) for _ in range(ROUNDS)]
            median = statistics.median(taken)
            slowest = max(slowest, median)
            print(f"{shade.tag:12} median {median:6.1f} ms  most {max(taken):6.1f} ms")
    print(f"{'slowest':12} median {slowest:6.1f} ms, bound {BOUND_MS:.0f} ms")
    return int(slowest > BOUND_MS)


def one(job: Job, plan: ShadePlan) -> float:
    """Search one shade and give the milliseconds that the processor took."""
    start = time.process_time()
    offer_layouts(job, plan)
    return (time.process_time() - start) * 1000


if __name__ == "__main__":
    sys.exit(main())
