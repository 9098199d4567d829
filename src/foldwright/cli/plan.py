"""`foldwright plan`: plan a job, say what matters of it, and write its papers."""

from __future__ import annotations

import argparse
import time
from datetime import UTC, datetime
from pathlib import Path

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.summary import summary
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.why.fault import Fault
from foldwright.papers.header import Paper
from foldwright.work.answers import PlanAnswer
from foldwright.work.cutting import cloths_of, cut_cloths
from foldwright.work.files import CannotUse
from foldwright.work.job import Job, JobPlan
from foldwright.work.jobfile import DEMO_JOB, load_job
from foldwright.work.packet import write_papers
from foldwright.work.planning import plan_job

SECONDS_TO_CUT = 10.0  # `cut` looks for as long as one likes
PAPERS = {"a4": Paper.A4, "letter": Paper.LETTER}
NO_SHADES = Fault(
    where="shades",
    what="the job holds no shade",
    remedy="Add a table [[shades]] with a tag and its measurements.",
)


def run(options: argparse.Namespace) -> int:
    """Plan the job that was asked for."""
    reading = load_job(options.job or DEMO_JOB, options.shop)
    if reading.job is None or not reading.job.shades:
        tell_faults(reading.faults or (NO_SHADES,), as_json=options.json)
        return BAD_INPUT
    try:
        return _plan(reading.job, options)
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT


def _plan(job: Job, options: argparse.Namespace) -> int:
    plan = plan_job(job)
    papers = _write_papers(plan, options) if options.out else ()
    if options.json:
        names = tuple(str(path) for path in papers)
        answer = PlanAnswer(
            program_version=__version__, job=job.head, shades=plan.shades, papers=names
        )
        say_json(answer, job.system)
        return GOOD
    for line in summary(plan):
        say(line)
    if papers:
        say(f"{len(papers)} papers are in {options.out}.")
    return GOOD


def _write_papers(plan: JobPlan, options: argparse.Namespace) -> tuple[Path, ...]:
    file = options.job or DEMO_JOB
    cuts = cut_cloths(cloths_of(plan.job), time_given_s=SECONDS_TO_CUT, clock=time.monotonic)
    return write_papers(
        plan,
        cuts,
        options.out,
        PAPERS[options.paper],
        version=f"{file.name}, foldwright {__version__}",
        printed_at=datetime.now(UTC).astimezone(),
    )
