"""The sheets that travel with a shade: table layout, headrail, child safety and label."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.rounding import System
from foldwright.papers.header import Header, Paper
from foldwright.papers.headrail_sheet import headrail_sheet
from foldwright.papers.safety_sheet import safety_sheet
from foldwright.papers.table_sheet import table_sheet

__all__ = ["Header", "Paper", "headrail_sheet", "safety_sheet", "table_sheet", "write_sheets"]

NOT_IN_A_FILE_NAME = re.compile(r"[^\w-]+")


def write_sheets(
    plans: Iterable[ShadePlan], header: Header, folder: Path, paper: Paper, system: System
) -> list[Path]:
    """Write the sheets of each shade that has come far enough for them.

    Takes: the plans; the header; a folder, made where it is missing; the paper; the
    reader's system.

    Gives: the files written, in the order of the shades.

    Raises: OSError when the folder cannot be written.

    Source: derived here.
    """
    folder.mkdir(parents=True, exist_ok=True)
    written = []
    for number, plan in enumerate(plans, start=1):
        for name, pdf in _sheets(plan, header, paper, system):
            path = folder / f"{number:02d}-{_file_name(plan.spec.tag)}-{name}.pdf"
            path.write_bytes(pdf)
            written.append(path)
    return written


def _sheets(
    plan: ShadePlan, header: Header, paper: Paper, system: System
) -> list[tuple[str, bytes]]:
    """Set what can be set."""
    sheets = []
    if plan.size is not None and plan.layout is not None:
        sheets.append(("table-layout", table_sheet(plan, header, paper, system)))
    if plan.size is not None and plan.headrail is not None:
        sheets.append(("headrail", headrail_sheet(plan, header, paper, system)))
    if plan.size is not None and plan.safety is not None:
        sheets.append(("safety", safety_sheet(plan, header, paper, system)))
    return sheets


def _file_name(tag: str) -> str:
    """Make a tag fit for a file name."""
    return NOT_IN_A_FILE_NAME.sub("-", tag).strip("-") or "shade"
