"""The list of jobs, those put away, and the two ways a job comes in: begun, or from a file."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from starlette.datastructures import FormData, UploadFile
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.web.desk import Desk, Sorry, see, text_of
from foldwright.web.heads import shop_not_read, with_head
from foldwright.work.book import Entry
from foldwright.work.document import Document, read_document
from foldwright.work.files import CannotUse, parse_toml

NOT_TAKEN_IN = "This file was not taken in"
NO_FILE = "No file was chosen. Choose a job file (.toml) and send it again."
NO_TEXT = "It is not plain text. Save the job file as UTF-8 text and send it again."


@dataclass(frozen=True, kw_only=True, slots=True)
class JobLine:
    """One job in the list."""

    entry: Entry
    client: str
    shades: int


def list_jobs(request: Request) -> Response:
    """Show the jobs, the latest saved first."""
    return _jobs_page(request)


def begin_job(request: Request, form: FormData) -> Response:
    """Begin a job from its name and units; keep the form as typed where that is not enough."""
    fields = text_of(form)
    desk = Desk.of(request)
    begun: Document = {"job": {"system": fields.get("units", "")}}
    document = with_head(begun, fields, form.getlist("markets"))
    faults = read_document(document, desk.shop).faults
    if faults:
        return _jobs_page(request, fields=fields, faults=faults, status=422)
    return see(f"/jobs/{desk.book.begin(document).job_id}")


def take_in_file(request: Request, form: FormData) -> Response:
    """Take in a job file, or say everything that is wrong with it."""
    desk = Desk.of(request)
    document = _document_in(form.get("file"))
    faults = read_document(document, desk.shop).faults
    if faults:
        count = "one thing" if len(faults) == 1 else f"{len(faults)} things"
        mend = f"Mend {count} in it and send it again. {shop_not_read(document)}".strip()
        raise Sorry(422, NOT_TAKEN_IN, mend, faults)
    return see(f"/jobs/{desk.book.begin(document).job_id}")


def _jobs_page(
    request: Request,
    *,
    fields: dict[str, str] | None = None,
    faults: tuple[Fault, ...] = (),
    status: int = 200,
) -> Response:
    desk = Desk.of(request)
    context: dict[str, Any] = {
        "jobs": [_line(entry) for entry in desk.book.jobs()],
        "jobs_away": [_line(entry) for entry in desk.book.jobs(put_away=True)],
        "markets": tuple(Market),
        "systems": tuple(System),
        "head": fields or {},
        "faults": faults,
    }
    return desk.page(request, "jobs.html", status=status, **context)


def _line(entry: Entry) -> JobLine:
    head = entry.document.get("job", {})
    shades = entry.document.get("shades", [])
    return JobLine(entry=entry, client=str(head.get("client", "")), shades=len(shades))


def _document_in(file: object) -> Document:
    if not isinstance(file, UploadFile) or not file.filename:
        raise Sorry(422, NOT_TAKEN_IN, NO_FILE)
    try:
        return parse_toml(file.file.read().decode("utf-8-sig"), file.filename)
    except UnicodeDecodeError:
        raise Sorry(422, NOT_TAKEN_IN, NO_TEXT) from None
    except CannotUse as trouble:
        raise Sorry(422, NOT_TAKEN_IN, "It cannot be read.", trouble.faults) from None
