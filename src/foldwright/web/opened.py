"""A job or a shade opened from the book, for one request."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from starlette.requests import Request

from foldwright.core.check.layouts.offers import Offers
from foldwright.core.quantity.rounding import System
from foldwright.web.desk import Desk, Sorry, reader_system
from foldwright.web.figures import FigureIndex
from foldwright.web.forms import Table
from foldwright.web.shelf import Planned
from foldwright.web.view import ShadeView
from foldwright.web.wording import Wording
from foldwright.work.book import Entry
from foldwright.work.document import Document, Reading, typed_system
from foldwright.work.groups import renamed

LARGEST_NUMBER = 10**9
DIGITS = len(str(LARGEST_NUMBER))
NO_JOB = "There is no such job in this book. Look at the list of jobs."
NO_SHADE = "This job has no such shade; it may have been taken out since. Look at the job."
NOTHING = Planned(plan=None, figures=FigureIndex(None))


@dataclass(frozen=True, kw_only=True)
class OpenJob:
    """A job as it stands, and the reader who looks at it."""

    desk: Desk
    entry: Entry
    reading: Reading
    system: System  # of the reader

    @classmethod
    def of(cls, request: Request) -> OpenJob:
        """Open the job that the address names."""
        return cls.at(request, Desk.of(request).book.open(job_number(request)))

    @classmethod
    def at(cls, request: Request, entry: Entry) -> OpenJob:
        """Open a job as one save of it says."""
        desk = Desk.of(request)
        system = reader_system(request, typed_system(entry.document))
        return cls(desk=desk, entry=entry, reading=desk.reading(entry), system=system)

    @property
    def url(self) -> str:
        """Give the address of the job's page."""
        return f"/jobs/{self.entry.job_id}"

    @property
    def head(self) -> dict[str, Any]:
        """Give the head of the job as typed."""
        head = self.entry.document.get("job")
        return head if isinstance(head, dict) else {}

    @property
    def client(self) -> str:
        """Give the client as typed."""
        return str(self.head.get("client", ""))

    @property
    def job_system(self) -> System:
        """Give the units of the job's bare numbers."""
        return typed_system(self.entry.document)

    @property
    def shades(self) -> list[Table]:
        """Give the tables of the shades as typed."""
        return shades_of(self.entry.document)

    def save_number(self, number: int) -> Entry | None:
        """Give an earlier save of this job, or None."""
        saves = self.desk.book.history(self.entry.job_id)
        return next((entry for entry in saves if entry.number == number), None)

    def view(self, number: int, raise_share: float = 0.0) -> ShadeView:
        """Look at one shade, counted from 1, as saved."""
        return self.look(self.entry.document, self.reading, number, raise_share)

    def look(
        self,
        document: Document,
        reading: Reading,
        number: int,
        raise_share: float = 0.0,
        *,
        typed: bool = False,
    ) -> ShadeView:
        """Look at one shade of a document that was read, saved or not."""
        planned = self.planned(document, reading, number)
        url = f"{self.url}/shades/{number}"
        return ShadeView(
            url=url,
            number=number,
            count=len(self.shades),
            version=self.entry.number,
            shade=shades_of(document)[number - 1],
            plan=planned.plan,
            figures=planned.figures,
            wording=Wording(planned.figures, self.system, f"{url}/why"),
            shop=self.desk.shop,
            system=self.system,
            job_system=self.job_system,
            raise_share=raise_share,
            faults=reading.faults,
            typed=typed,
            search=lambda: self._offers(document, reading, number),
        )

    def _offers(self, document: Document, reading: Reading, number: int) -> Offers | None:
        if reading.job is None:
            return None
        return self.desk.shelf.offers(document, reading.job, number)

    def planned(self, document: Document, reading: Reading, number: int) -> Planned:
        """Plan one shade of a document that was read; nothing while it has faults."""
        if reading.job is None:
            return NOTHING
        return self.desk.shelf.plan(document, reading.job, number)


def job_number(request: Request) -> int:
    """Give the number of the job that the address names."""
    number: int = request.path_params["job_id"]
    if number > LARGEST_NUMBER:
        raise Sorry(404, "No such job", NO_JOB)
    return number


def shade_number(request: Request, job: OpenJob) -> int:
    """Give the number of the shade that the address names."""
    number: int = request.path_params["number"]
    if not 1 <= number <= len(job.shades):
        raise Sorry(404, "No such shade", NO_SHADE)
    return number


def whole_number(text: str | None) -> int | None:
    """Read a whole number from an address or a hidden field, or give None."""
    digits = text or ""
    readable = digits.isdecimal() and digits.isascii() and len(digits) < DIGITS
    return int(digits) if readable else None


def raise_share(text: str | None) -> float:
    """Read how far the shade is to be shown raised: a share, kept between 0 and 1."""
    try:
        share = float(text or 0.0)
    except ValueError:
        return 0.0
    return min(1.0, max(0.0, share)) if share == share else 0.0  # noqa: PLR0124 - not a number


def shades_of(document: Document) -> list[Table]:
    """Give the shades of a document, however badly it was typed."""
    shades = document.get("shades", [])
    return (
        [shade for shade in shades if isinstance(shade, dict)] if isinstance(shades, list) else []
    )


def with_shade(document: Document, number: int, shade: Table) -> Document:
    """Give the document with one shade, counted from 1, put in the place of another.

    A group that names it by its tag goes on to do so.
    """
    shades = shades_of(document)
    tags = [str(each.get("tag", "")) for each in (shades[number - 1], shade)]
    shades[number - 1] = shade
    return renamed({**document, "shades": shades}, *tags)


def number_of(document: Document, tag: str) -> int | None:
    """Find a shade by its tag: its number in this document, or None."""
    tags = [str(shade.get("tag", "")) for shade in shades_of(document)]
    return tags.index(tag) + 1 if tag in tags else None
