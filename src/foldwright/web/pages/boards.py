"""The shared boards of a job: begun, their widths typed, and taken apart."""

from __future__ import annotations

from copy import deepcopy

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.boards import BoardView, board_views
from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.forms import Table
from foldwright.web.opened import OpenJob
from foldwright.web.pages.job import job_page
from foldwright.work.boards import type_widths
from foldwright.work.document import Document, read_document

NO_BOARD = "This job has no such board; it may have been taken apart since. Look at the job."
TYPED = ("name", "gap", "lift", "across")


def begin_board(request: Request, form: FormData) -> Response:
    """Put shades on one board; keep the form as typed where that will not do."""
    job, fields = OpenJob.of(request), text_of(form)
    board: Table = {name: fields[name].strip() for name in TYPED if fields.get(name, "").strip()}
    board["shades"] = [str(tag) for tag in form.getlist("shades")]
    document = deepcopy(job.entry.document)
    document["boards"] = [*document.get("boards", []), board]
    faults = read_document(document, job.desk.shop).faults
    if faults:
        return job_page(request, job, status=422, board=board, faults=faults)
    return _saved(job, document)


def type_board_widths(request: Request, _form: FormData) -> Response:
    """Type the widths that a board shares out, and save them all at once."""
    job = OpenJob.of(request)
    return _saved(job, type_widths(job.entry.document, _board(request, job).boarding))


def take_board_apart(request: Request, _form: FormData) -> Response:
    """Let the shades of a board hang by themselves; what was typed for them stays."""
    job = OpenJob.of(request)
    number = _board(request, job).number
    document = deepcopy(job.entry.document)
    document["boards"].pop(number - 1)
    return _saved(job, document)


def _board(request: Request, job: OpenJob) -> BoardView:
    number: int = request.path_params["board"]
    views = board_views(job)
    if not 1 <= number <= len(views):
        raise Sorry(404, "No such board", NO_BOARD)
    return views[number - 1]


def _saved(job: OpenJob, document: Document) -> Response:
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(f"{job.url}#boards")
