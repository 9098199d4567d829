"""The habits of a job: saved for all its shades at once."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.habits import HabitsView, with_habits
from foldwright.web.opened import OpenJob, whole_number
from foldwright.web.pages.job import job_page
from foldwright.work.book import Entry
from foldwright.work.document import read_document

NO_FORM = "The form did not arrive. Open the job again and send it from there."


def change_habits(request: Request, form: FormData) -> Response:
    """Save the habits of a job, or show all that is wrong with them, as typed."""
    fields = text_of(form)
    if "version" not in fields:
        raise Sorry(400, "Nothing was changed", NO_FORM)
    job = OpenJob.of(request)
    base = _base(job, whole_number(fields["version"]))
    document = with_habits(base.document, fields, job.job_system)
    faults = read_document(document, job.desk.shop).faults
    if faults:
        view = HabitsView(
            document=document, system=job.job_system, version=base.number, faults=faults
        )
        elsewhere = tuple(fault for fault in faults if fault.where not in view.fields)
        return job_page(request, job, status=422, habits=view, faults=elsewhere)
    job.desk.book.save(job.entry.job_id, document, follows=base.number)
    return see(job.url)


def _base(job: OpenJob, version: int | None) -> Entry:
    """Give the save to lay the form into: the standing one, unless its habits moved meanwhile."""
    earlier = job.save_number(version) if version is not None else None
    standing = job.entry.document.get("habits")
    moved = earlier is not None and earlier.document.get("habits") != standing
    return earlier if earlier is not None and moved else job.entry
