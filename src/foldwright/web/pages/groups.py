"""The groups of a job: begun, matched, drawn and taken apart."""

from __future__ import annotations

from copy import deepcopy

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.forms import Table
from foldwright.web.groups import GroupView, group_views
from foldwright.web.opened import OpenJob
from foldwright.web.pages.job import job_page
from foldwright.work.document import Document, read_document
from foldwright.work.groups import AS_THEY_HANG, type_match

NO_GROUP = "This job has no such group; it may have been taken apart since. Look at the job."
NOT_YET = "This group cannot be matched yet; the job's page says what is missing."
SVG = "image/svg+xml"


def begin_group(request: Request, form: FormData) -> Response:
    """Name shades as a group; keep the form as typed where that will not do."""
    job, fields = OpenJob.of(request), text_of(form)
    shades = [str(tag) for tag in form.getlist("shades")]
    group: Table = {"name": fields.get("name", "").strip(), "shades": shades}
    if fields.get("rows_from"):
        group["rows_from"] = fields["rows_from"]
    if fields.get("own_hems"):
        group["own_hems"] = True
    document = deepcopy(job.entry.document)
    document["groups"] = [*document.get("groups", []), group]
    faults = read_document(document, job.desk.shop).faults
    if faults:
        return job_page(request, job, status=422, group=group, faults=faults)
    return _saved(job, document)


def match_group(request: Request, _form: FormData) -> Response:
    """Type for every shade of a group what puts its rows level, and save it all at once."""
    job = OpenJob.of(request)
    matching = _group(request, job).matching
    if not matching.shades:
        raise Sorry(409, "Not matched", NOT_YET)
    return _saved(job, type_match(job.entry.document, matching))


def take_apart(request: Request, _form: FormData) -> Response:
    """Let the shades of a group hang by themselves; what was typed for them stays."""
    job = OpenJob.of(request)
    number = _group(request, job).number
    document = deepcopy(job.entry.document)
    document["groups"].pop(number - 1)
    return _saved(job, document)


def draw_group(request: Request) -> Response:
    """Give a drawing of a group by itself: as its shades hang, or as they would."""
    view = _group(request, OpenJob.of(request))
    drawings = view.drawings
    drawing = drawings.get(request.query_params.get("as", AS_THEY_HANG))
    if drawing is None:
        raise Sorry(404, "Not drawn", NO_GROUP)
    return Response(drawing, media_type=SVG)


def _group(request: Request, job: OpenJob) -> GroupView:
    number: int = request.path_params["group"]
    views = group_views(job)
    if not 1 <= number <= len(views):
        raise Sorry(404, "No such group", NO_GROUP)
    return views[number - 1]


def _saved(job: OpenJob, document: Document) -> Response:
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(f"{job.url}#groups")
