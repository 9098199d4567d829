"""Write a job's papers into a folder: all of them, or none."""

from __future__ import annotations

import tempfile
from datetime import datetime
from pathlib import Path

from foldwright.core.why.fault import Fault
from foldwright.papers.sheets import Header, Paper, write_sheets
from foldwright.work.files import CannotUse
from foldwright.work.job import JobPlan


def write_papers(
    plan: JobPlan, folder: Path, paper: Paper, *, version: str, printed_at: datetime
) -> tuple[Path, ...]:
    """Write the sheets of each shade that has come far enough for them.

    Takes: the planned job; the folder, made where it is missing; the paper; the words for
    this version of the job; the time.
    Gives: the files written, in the order of the shades.
    Raises: CannotUse where the folder cannot be written; older papers in it then stand.
    """
    header = Header(job=plan.job.head.name, version=version, printed_at=printed_at)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=folder, prefix=".papers-") as beside:
            ready = write_sheets(plan.shades, header, Path(beside), paper, plan.job.system)
            return tuple(sheet.replace(folder / sheet.name) for sheet in ready)
    except OSError as trouble:
        fault = Fault(
            where=str(folder),
            what=f"the papers could not be written ({trouble.strerror or trouble})",
            remedy="Make room or choose another folder, and write them again.",
        )
        raise CannotUse((fault,)) from None
