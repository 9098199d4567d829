"""Answer for a stop by name and with a reason, or take the answer back."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.opened import OpenJob, shade_number
from foldwright.work.document import Document, read_document
from foldwright.work.overriding import with_override, without_override

NOT_ANSWERED = "Who answers for it, and for what reason? Go back, type both and send it again."


def override_stop(request: Request, form: FormData) -> Response:
    """Save that somebody answers for a stop; without a name and a reason nothing is saved."""
    job, fields = OpenJob.of(request), text_of(form)
    document = with_override(
        job.entry.document,
        shade_number(request, job) - 1,
        finding=fields.get("finding", ""),
        name=fields.get("name", ""),
        reason=fields.get("reason", ""),
    )
    return _saved(request, job, document)


def take_override_back(request: Request, form: FormData) -> Response:
    """Save that nobody answers for a stop any more."""
    job = OpenJob.of(request)
    index = shade_number(request, job) - 1
    finding = text_of(form).get("finding", "")
    return _saved(request, job, without_override(job.entry.document, index, finding))


def _saved(request: Request, job: OpenJob, document: Document) -> Response:
    faults = read_document(document, job.desk.shop).faults
    if faults:
        raise Sorry(422, "Not overridden", NOT_ANSWERED, faults)
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(f"{job.url}/shades/{shade_number(request, job)}#findings")
