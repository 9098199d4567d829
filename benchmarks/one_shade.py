"""One shade through all rooms with its uncertainty: the median must stay under 50 ms.

    python benchmarks/one_shade.py

Each demo shade is planned afresh; the machine's noise is shown by the spread.
"""

from __future__ import annotations

import statistics
import sys
import time

from foldwright.core.check.plan import ShadeSpec
from foldwright.work.job import Job
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.planning import plan_one

BOUND_MS = 50.0
ROUNDS = 15


def main() -> int:
    """Time every demo shade; give 1 if the median of all is over the bound."""
    job = load_job(DEMO_JOB).job
    if job is None:
        return 1
    times: list[float] = []
    for shade in job.shades:
        plan_one(job, shade)
        taken = [one(job, shade) for _ in range(ROUNDS)]
        times += taken
        print(
            f"{shade.tag:12} median {statistics.median(taken):6.1f} ms  most {max(taken):6.1f} ms"
        )
    median = statistics.median(times)
    print(f"{'all':12} median {median:6.1f} ms, bound {BOUND_MS:.0f} ms")
    return int(median > BOUND_MS)


def one(job: Job, shade: ShadeSpec) -> float:
    """Plan one shade and give the milliseconds it took."""
    start = time.perf_counter()
    plan_one(job, shade)
    return (time.perf_counter() - start) * 1000


if __name__ == "__main__":
    sys.exit(main())
