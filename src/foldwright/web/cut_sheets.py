"""The cut sheets of a job, by the best plans that its search has so far."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.cloth.order import ClothPlan
from foldwright.papers.cut_sheet import cut_sheet
from foldwright.papers.header import Header, Paper
from foldwright.web.opened import OpenJob
from foldwright.work.cut_search import CutSearch
from foldwright.work.cutting import ClothCut
from foldwright.work.job import Job
from foldwright.work.packet import cut_sheet_name


def search_of(job: OpenJob, read: Job) -> CutSearch:
    """Give the search for the plans of a job as it is saved."""
    return job.desk.cuts.search(search_key(job), read)


def search_key(job: OpenJob) -> tuple[int, int]:
    """Give the key under which the search of a save is kept."""
    return job.entry.job_id, job.entry.number


def cut_sheets(job: OpenJob, paper: Paper) -> Iterator[tuple[str, bytes]]:
    """Give every cut sheet with the name of its file; none of a job that has faults."""
    read = job.reading.job
    cuts = search_of(job, read).cuts if read is not None and read.shades else ()
    for number, cut in enumerate(cuts, start=1):
        if cut is not None and cut.plan is not None:
            yield cut_sheet_name(number, cut.to_cut.title), set_cut_sheet(job, cut, cut.plan, paper)


def set_cut_sheet(job: OpenJob, cut: ClothCut, plan: ClothPlan, paper: Paper) -> bytes:
    """Set the cut sheet of one cloth, in the units of the job."""
    version, order = str(job.entry.number), cut.to_cut.order
    header = Header(job=job.entry.name, version=version, printed_at=job.desk.clock())
    title, system = cut.to_cut.title, job.job_system
    return cut_sheet(plan, order, cloth=title, header=header, paper=paper, system=system)
