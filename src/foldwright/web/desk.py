"""What every page has at hand: the book, the shop's list, the clock, and the plans on the shelf."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from datetime import datetime
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from typing import Any

import jinja2
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, RedirectResponse, Response

from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.web.cuts import CutDesk
from foldwright.web.shelf import Once, Shelf
from foldwright.work.bench_advice import Rising, Told
from foldwright.work.bench_shop import ShadeFound
from foldwright.work.book import Book, Entry
from foldwright.work.document import Reading, read_document

HERE = Path(__file__).parent
UNITS_COOKIE = "units"
READINGS_KEPT = 64
MOST_FIELDS = 200

Answer = Callable[[Request, FormData], Response]


class Sorry(HTTPException):
    """A request that cannot be answered as asked: a heading, a sentence, and any faults."""

    def __init__(
        self, status: int, title: str, sentence: str, faults: tuple[Fault, ...] = ()
    ) -> None:
        super().__init__(status, sentence)
        self.title = title
        self.faults = faults


@lru_cache
def static_address(name: str) -> str:
    """Give the address of a file that may be kept for ever, since its content is in it."""
    content = (HERE / "static" / name).read_bytes()
    return f"/static/{name}?{sha256(content).hexdigest()[:12]}"


def capital(words: str) -> str:
    """Begin words with a capital letter, and leave the rest as it is.

    >>> capital("the text “A” is no length")
    'The text “A” is no length'
    """
    return words[:1].upper() + words[1:]


def lower_first(words: str) -> str:
    """Begin words with a small letter, to stand inside a sentence."""
    return words[:1].lower() + words[1:]


def moment(when: datetime) -> str:
    """Tell a moment by the clock on this wall."""
    return f"{when.astimezone():%-d %B %Y, %H:%M}"


def _environment() -> jinja2.Environment:
    environment = jinja2.Environment(
        loader=jinja2.FileSystemLoader(HERE / "templates"),
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        undefined=jinja2.StrictUndefined,
        auto_reload=False,
    )
    environment.filters |= {"capital": capital, "lower_first": lower_first}
    environment.globals |= {"static": static_address, "moment": moment}
    return environment


@dataclass(frozen=True, kw_only=True)
class Desk:
    """The one thing that pages share."""

    book: Book
    shop: ShopList
    clock: Callable[[], datetime]
    shelf: Shelf = field(default_factory=Shelf)
    advice: Once[Told | None] = field(default_factory=Once)
    rises: Once[Rising | None] = field(default_factory=Once)
    found: Once[ShadeFound | None] = field(default_factory=Once)  # in the shop's record
    cuts: CutDesk = field(default_factory=CutDesk)
    templates: jinja2.Environment = field(default_factory=_environment)
    _readings: dict[tuple[int, int], Reading] = field(default_factory=dict)

    @staticmethod
    def of(request: Request) -> Desk:
        """Give the desk of the app that was asked."""
        desk: Desk = request.app.state.desk
        return desk

    def reading(self, entry: Entry) -> Reading:
        """Read a save; a save never changes, so each is read once."""
        key = (entry.job_id, entry.number)
        if key not in self._readings:
            while len(self._readings) >= READINGS_KEPT:
                self._readings.pop(next(iter(self._readings)))
            self._readings[key] = read_document(entry.document, self.shop)
        return self._readings[key]

    def page(
        self, request: Request, template: str, *, status: int = 200, **context: Any
    ) -> HTMLResponse:
        """Fill a template for this reader."""
        context.setdefault("system", reader_system(request, System.INCH))
        text = self.templates.get_template(template).render(here=here(request), **context)
        return HTMLResponse(text, status)


def reader_system(request: Request, otherwise: System) -> System:
    """Give the units this reader chose to see; until then those of the job."""
    word = request.cookies.get(UNITS_COOKIE)
    return next((system for system in System if system.value == word), otherwise)


def here(request: Request) -> str:
    """Give the address to come back to: the page asked for, without its host."""
    if request.method != "GET":
        return (
            request.url.path.removesuffix("/preview")
            .removesuffix("/remedy")
            .removesuffix("/layout")
        )
    query = f"?{request.url.query}" if request.url.query else ""
    return request.url.path + query


def posted(answer: Answer) -> Callable[[Request], Awaitable[Response]]:
    """Make an endpoint of a function that answers a form."""

    async def endpoint(request: Request) -> Response:
        async with request.form(max_files=1, max_fields=MOST_FIELDS) as form:
            return await run_in_threadpool(answer, request, form)

    return endpoint


def text_of(form: FormData) -> dict[str, str]:
    """Give the fields of a form that hold text."""
    return {name: value for name, value in form.items() if isinstance(value, str)}


def see(address: str) -> Response:
    """Send the reader to another page after a change."""
    return RedirectResponse(address, 303)
