"""A roll that has come: looked over, measured and saved, so that its cuts are planned anew."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.facts.house import house_habits
from foldwright.core.why.fault import Fault
from foldwright.web.desk import Sorry, see, text_of
from foldwright.web.opened import OpenJob, whole_number
from foldwright.web.rolls import RollView, rolls_of, with_roll, without_roll
from foldwright.work.book import Entry
from foldwright.work.document import Document, read_document

NO_ROLL = "This job has no such roll; it may have been taken out since. Look at its cloth."
NO_FORM = "The form did not arrive. Open the roll again and send it from there."


def show_roll(request: Request) -> Response:
    """Show what was measured on a roll, or an empty form for one that has come."""
    job = OpenJob.of(request)
    return _roll_page(request, job, job.entry, job.entry.document, job.reading.faults)


def save_roll(request: Request, form: FormData) -> Response:
    """Save a roll, or show all that is wrong with it, as typed."""
    job, fields = OpenJob.of(request), text_of(form)
    if "version" not in fields:
        raise Sorry(400, "Nothing was changed", NO_FORM)
    base = _base(job, whole_number(fields["version"]))
    document = with_roll(base.document, _number(request, base.document), fields)
    if faults := read_document(document, job.desk.shop).faults:
        return _roll_page(request, job, base, document, faults, status=422)
    job.desk.book.save(job.entry.job_id, document, follows=base.number)
    return see(f"{job.url}/cloth#rolls")


def take_out_roll(request: Request, _form: FormData) -> Response:
    """Take a roll out of the job; every earlier save still holds it."""
    job = OpenJob.of(request)
    document = without_roll(job.entry.document, _number(request, job.entry.document))
    if faults := read_document(document, job.desk.shop).faults:
        raise Sorry(409, "The roll stays", "Something in the job still needs it.", faults=faults)
    job.desk.book.save(job.entry.job_id, document, follows=job.entry.number)
    return see(f"{job.url}/cloth#rolls")


def _number(request: Request, document: Document) -> int:
    """Give the number that the address names: a roll of the job, or the one after the last."""
    number: int = request.path_params["roll"]
    if not 1 <= number <= len(rolls_of(document)) + 1:
        raise Sorry(404, "No such roll", NO_ROLL)
    return number


def _base(job: OpenJob, version: int | None) -> Entry:
    """Give the save to lay the form into: the standing one, unless its rolls moved meanwhile."""
    earlier = job.save_number(version) if version is not None else None
    moved = earlier is not None and rolls_of(earlier.document) != rolls_of(job.entry.document)
    return earlier if earlier is not None and moved else job.entry


def _roll_page(  # noqa: PLR0913 - a request, and the roll as it is to be shown
    request: Request,
    job: OpenJob,
    base: Entry,
    document: Document,
    faults: tuple[Fault, ...],
    *,
    status: int = 200,
) -> Response:
    number = _number(request, base.document)
    read = job.reading.job
    view = RollView(
        document=document,
        number=number,
        version=base.number,
        system=job.job_system,
        shop=read.shop if read else job.desk.shop,
        habits=read.habits if read else house_habits(),
        faults=faults,
    )
    saved = number <= len(rolls_of(base.document))
    return job.desk.page(
        request, "roll.html", status=status, job=job, system=job.system, view=view, saved=saved
    )
