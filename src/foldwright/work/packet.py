"""Write a job's papers: two sheets for each shade that has come far enough."""

from __future__ import annotations

from pathlib import Path

from foldwright.work.job import JobPlan


def write_papers(plan: JobPlan, folder: Path, paper: str) -> tuple[Path, ...]:
    """Write the papers."""
    raise NotImplementedError
