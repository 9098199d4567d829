"""Every save of a job, and the way back to any of them."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.opened import OpenJob, whole_number

NO_SAVE = "There is no such save of this job. Choose one from the list."


def show_history(request: Request) -> Response:
    """List the saves, the newest first."""
    job = OpenJob.of(request)
    saves = job.desk.book.history(job.entry.job_id)
    return job.desk.page(request, "history.html", job=job, saves=saves, system=job.system)


def restore(request: Request, form: FormData) -> Response:
    """Make an earlier save stand again, as a new one."""
    job = OpenJob.of(request)
    number = whole_number(text_of(form).get("number"))
    if number is None:
        raise Sorry(404, "No such save", NO_SAVE)
    job.desk.book.restore(job.entry.job_id, number)
    return see(job.url)
