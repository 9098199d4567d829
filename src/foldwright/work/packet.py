"""Write a job's papers into a folder: those of its shades and of its cloths, all or none."""

from __future__ import annotations

import tempfile
from datetime import datetime
from pathlib import Path

from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.papers.cut_sheet import cut_sheet
from foldwright.papers.sheets import NOT_IN_A_FILE_NAME, Header, Paper, write_sheets
from foldwright.work.cutting import ClothCut
from foldwright.work.files import CannotUse
from foldwright.work.job import JobPlan


def write_papers(  # noqa: PLR0913 - a planned job and its cuts, and what every sheet takes
    plan: JobPlan,
    cuts: tuple[ClothCut, ...],
    folder: Path,
    paper: Paper,
    *,
    version: str,
    printed_at: datetime,
) -> tuple[Path, ...]:
    """Write the sheets of each shade that has come far enough, and the cut sheet of each cloth.

    Takes: the planned job; its cloths as they are cut; the folder, made where it is missing;
    the paper; the words for this version of the job; the time.
    Gives: the files written, in the order of the shades, then of the cloths.
    Raises: CannotUse where the folder cannot be written; older papers in it then stand.
    """
    header = Header(job=plan.job.head.name, version=version, printed_at=printed_at)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=folder, prefix=".papers-") as beside:
            ready = write_sheets(plan.shades, header, Path(beside), paper, plan.job.system)
            ready += _write_cut_sheets(cuts, header, Path(beside), paper, plan.job.system)
            return tuple(sheet.replace(folder / sheet.name) for sheet in ready)
    except OSError as trouble:
        fault = Fault(
            where=str(folder),
            what=f"the papers could not be written ({trouble.strerror or trouble})",
            remedy="Make room or choose another folder, and write them again.",
        )
        raise CannotUse((fault,)) from None


def _write_cut_sheets(
    cuts: tuple[ClothCut, ...], header: Header, folder: Path, paper: Paper, system: System
) -> list[Path]:
    written = []
    for number, cut in enumerate(cuts, start=1):
        if cut.plan is not None:
            order, title = cut.to_cut.order, cut.to_cut.title
            path = folder / cut_sheet_name(number, title)
            path.write_bytes(
                cut_sheet(cut.plan, order, cloth=title, header=header, paper=paper, system=system)
            )
            written.append(path)
    return written


def cut_sheet_name(number: int, cloth: str) -> str:
    """Name the file of a cut sheet by the cloth's number and name.

    >>> cut_sheet_name(2, "Meadow print, indigo")
    'cloth-02-Meadow-print-indigo.pdf'
    """
    name = NOT_IN_A_FILE_NAME.sub("-", cloth).strip("-").encode("ascii", "ignore").decode()
    return f"cloth-{number:02d}-{name or 'cloth'}.pdf"
