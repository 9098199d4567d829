"""The papers of a job: one sheet, or all of them together."""

from __future__ import annotations

import io
import re
import zipfile
from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from foldwright.papers.sheets import Header, Paper
from foldwright.web.cut_sheets import cut_sheets
from foldwright.web.desk import Sorry
from foldwright.web.opened import OpenJob, shade_number, whole_number
from foldwright.web.printing import PAPER_WORDS, PAPERS, SHEETS, Papers, Sheet, papers_of
from foldwright.web.view import ShadeView
from foldwright.work.book import Entry

NO_PAPER = "There is no such sheet. Choose one from the papers of the shade."
NOT_YET = (
    "This shade has not come far enough for this sheet. "
    "Its findings say what is missing; settle those and print again."
)
NOT_IN_A_FILE_NAME = re.compile(r"[^\w-]+")


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadePapers:
    """One shade with its papers."""

    view: ShadeView
    papers: Papers


def list_papers(request: Request) -> Response:
    """Show every sheet of the job, shade by shade."""
    job = OpenJob.of(request)
    return job.desk.page(
        request,
        "papers.html",
        job=job,
        lines=_papers(job),
        sizes=PAPER_WORDS,
        system=job.system,
    )


def give_paper(request: Request) -> Response:
    """Give one sheet as a PDF, of the version asked for."""
    job = OpenJob.of(request)
    history = job.desk.book.history(job.entry.job_id)
    job = OpenJob.at(request, _version(job, history, request.query_params.get("version")))
    view = job.view(shade_number(request, job))
    papers = papers_of(history, job.entry.number, view.number, view.plan)
    sheet = _sheet(request.path_params["name"], papers)
    pdf = _set(job, ShadePapers(view=view, papers=papers), sheet, paper_asked(request))
    name = file_name(view, sheet.name)
    return Response(
        pdf,
        media_type="application/pdf",
        headers={"Content-Disposition": f'inline; filename="{name}"'},
    )


def give_all_papers(request: Request) -> Response:
    """Give every sheet of the job as it stands, in one archive."""
    job = OpenJob.of(request)
    archive = io.BytesIO()
    with zipfile.ZipFile(archive, "w", zipfile.ZIP_DEFLATED) as files:
        for line in _papers(job):
            for sheet in line.papers.sheets:
                files.writestr(
                    file_name(line.view, sheet.name), _set(job, line, sheet, paper_asked(request))
                )
        for name, pdf in cut_sheets(job, paper_asked(request)):
            files.writestr(name, pdf)
    return Response(
        archive.getvalue(),
        media_type="application/zip",
        headers={"Content-Disposition": 'attachment; filename="papers.zip"'},
    )


def _papers(job: OpenJob) -> list[ShadePapers]:
    history = job.desk.book.history(job.entry.job_id)
    views = [job.view(number) for number in range(1, len(job.shades) + 1)]
    return [
        ShadePapers(view=view, papers=papers_of(history, job.entry.number, view.number, view.plan))
        for view in views
    ]


def _set(job: OpenJob, line: ShadePapers, sheet: Sheet, paper: Paper) -> bytes:
    """Set a sheet in the units of the job: those in which the bench works."""
    if line.view.plan is None:
        raise Sorry(409, "Not yet", NOT_YET)
    header = Header(
        job=job.entry.name,
        version=line.papers.standing.header_version,
        printed_at=job.desk.clock(),
        replaces=line.papers.standing.header_replaces,
    )
    return sheet.set_it(line.view.plan, header, paper, job.job_system)


def _version(job: OpenJob, history: list[Entry], asked: str | None) -> Entry:
    if asked is None:
        return job.entry
    number = whole_number(asked)
    wanted = [entry for entry in history if entry.number == number]
    if not wanted:
        raise Sorry(404, "No such version", NO_PAPER)
    return wanted[0]


def _sheet(name: str, papers: Papers) -> Sheet:
    if name not in {sheet.name for sheet in SHEETS}:
        raise Sorry(404, "No such sheet", NO_PAPER)
    wanted = [sheet for sheet in papers.sheets if sheet.name == name]
    if not wanted:
        raise Sorry(409, "Not yet", NOT_YET)
    return wanted[0]


def paper_asked(request: Request) -> Paper:
    """Give the paper that the address asks for."""
    paper = PAPERS.get(request.query_params.get("size", "a4"))
    if paper is None:
        raise Sorry(404, "No such paper", NO_PAPER)
    return paper


def file_name(view: ShadeView, sheet: str) -> str:
    """Name the file of a sheet by the shade's number and tag."""
    tag = NOT_IN_A_FILE_NAME.sub("-", view.tag).strip("-").encode("ascii", "ignore").decode()
    return f"{view.number:02d}-{tag or 'shade'}-{sheet}.pdf"
