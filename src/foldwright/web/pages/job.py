"""One job: its shades side by side, its file, and what can be done with it as a whole."""

from __future__ import annotations

import re
from copy import deepcopy
from urllib.parse import quote

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.facts.markets import Market
from foldwright.web.boards import board_views
from foldwright.web.desk import Desk, see, text_of
from foldwright.web.groups import group_views
from foldwright.web.habits import HabitsView
from foldwright.web.heads import shop_not_read, with_head
from foldwright.web.opened import OpenJob, job_number, shade_number, shades_of
from foldwright.work.document import Document, read_document
from foldwright.work.groups import without_tag
from foldwright.work.jobfile import job_text


def show_job(request: Request) -> Response:
    """Show the shades of a job with their sizes, verdicts and open findings."""
    return job_page(request, OpenJob.of(request))


def change_head(request: Request, form: FormData) -> Response:
    """Change what is true of the whole job; its units stay, since bare numbers are in them."""
    job = OpenJob.of(request)
    fields = text_of(form)
    document = with_head(job.entry.document, fields, form.getlist("markets"))
    faults = read_document(document, job.desk.shop).faults
    if faults:
        return job_page(request, job, status=422, head=fields, faults=faults)
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(job.url)


def add_shade(request: Request, form: FormData) -> Response:
    """Add a shade by its tag; keep the form as typed where the tag will not do."""
    job = OpenJob.of(request)
    fields = text_of(form)
    document = deepcopy(job.entry.document)
    document["shades"] = [*shades_of(document), {"tag": fields.get("tag", "").strip()}]
    return _saved_with_shade(request, job, document, fields)


def copy_shade(request: Request, form: FormData) -> Response:
    """Add a shade like another one, under a tag of its own."""
    job = OpenJob.of(request)
    document = deepcopy(job.entry.document)
    like = shades_of(document)[shade_number(request, job) - 1]
    tag = text_of(form).get("tag", "").strip()
    document["shades"] = [*shades_of(document), {**deepcopy(like), "tag": tag}]
    return _saved_with_shade(request, job, document, {"tag": tag})


def take_out_shade(request: Request, _form: FormData) -> Response:
    """Take a shade out of the job; every earlier save still holds it."""
    job = OpenJob.of(request)
    number = shade_number(request, job)
    tag = str(job.shades[number - 1].get("tag", ""))
    document = without_tag(job.entry.document, tag)
    document["shades"].pop(number - 1)
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(job.url)


def put_job_away(request: Request, _form: FormData) -> Response:
    """Take a job off the list; nothing is lost."""
    Desk.of(request).book.put_away(job_number(request))
    return see("/")


def bring_job_back(request: Request, _form: FormData) -> Response:
    """Put a job back on the list."""
    Desk.of(request).book.put_away(job_number(request), away=False)
    return see("/")


def give_file(request: Request) -> Response:
    """Give the job as its file."""
    job = OpenJob.of(request)
    name = re.sub(r"[^\w-]+", "-", job.entry.name.lower()).strip("-") or "job"
    disposition = f"attachment; filename*=utf-8''{quote(name)}.toml"
    return Response(
        job_text(job.entry.document),
        media_type="application/toml; charset=utf-8",
        headers={"Content-Disposition": disposition},
    )


def _saved_with_shade(
    request: Request, job: OpenJob, document: Document, fields: dict[str, str]
) -> Response:
    faults = read_document(document, job.desk.shop).faults
    if faults:
        return job_page(request, job, status=422, fields=fields, faults=faults)
    entry = job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(f"{job.url}/shades/{len(shades_of(entry.document))}")


def job_page(request: Request, job: OpenJob, *, status: int = 200, **context: object) -> Response:
    """Give the page of a job; what is given besides goes before what is saved."""
    given = {
        "job": job,
        "system": job.system,
        "views": [job.view(number) for number in range(1, len(job.shades) + 1)],
        "groups": group_views(job),
        "group": {},
        "boards": board_views(job),
        "board": {},
        "fields": {},
        "head": job.head,
        "markets": tuple(Market),
        "faults": job.reading.faults,
        "away": job.desk.book.is_away(job.entry.job_id),
        "habits": HabitsView(
            document=job.entry.document, system=job.job_system, version=job.entry.number
        ),
        "shop_not_read": shop_not_read(job.entry.document),
    }
    return job.desk.page(request, "job.html", status=status, **(given | context))
