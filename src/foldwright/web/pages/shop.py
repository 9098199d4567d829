"""The shop's own record: what was reckoned of each spring type, and what the bench found."""

from __future__ import annotations

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.quantity.rounding import System
from foldwright.web.desk import Desk, reader_system
from foldwright.web.figures import FigureIndex
from foldwright.web.opened import number_of
from foldwright.web.pages.why import why_page
from foldwright.web.wording import Wording
from foldwright.work.bench import Record
from foldwright.work.bench_card import card_order, card_steps
from foldwright.work.bench_session import Session
from foldwright.work.bench_shop import Opened, ShadeFound, found_by_spring, shade_found
from foldwright.work.book import Entry, NotInBook
from foldwright.work.document import typed_system

WHY = "/shop/why"


@dataclass(frozen=True, kw_only=True)
class ShopView:
    """The record of the shop, for one reader."""

    springs: dict[str, list[ShadeFound]]
    system: System

    @property
    def figures(self) -> FigureIndex:
        """Give every figure of the page under its name."""
        numbered = {str(number): alike for number, alike in enumerate(self.springs.values())}
        return FigureIndex(None, numbered)

    @property
    def wording(self) -> Wording:
        """Give what shows the figures."""
        return Wording(self.figures, self.system, WHY)


def show_shop(request: Request) -> Response:
    """Show what was reckoned and what was found, spring by spring."""
    view, desk = _view(request), Desk.of(request)
    return desk.page(request, "shop.html", shop=view, wording=view.wording, system=view.system)


def tell_shop_why(request: Request) -> Response:
    """Tell why a figure of the record is what it is."""
    view = _view(request)
    figure = view.figures.at(request.query_params.get("figure", ""))
    return why_page(request, figure, view.system, back="/shop", trail=())


def _view(request: Request) -> ShopView:
    desk, system = Desk.of(request), reader_system(request, System.INCH)

    def found(record: Record) -> ShadeFound | None:
        return desk.found.get((record.id, len(record.entries)), None, lambda: _found(desk, record))

    return ShopView(springs=found_by_spring(desk.book.bench.of_shop(), found), system=system)


def _found(desk: Desk, record: Record) -> ShadeFound | None:
    opened = _opened(desk, record)
    return shade_found(opened) if opened else None


def _opened(desk: Desk, record: Record) -> Opened | None:
    """Open the shade of a record as it stood when the session began."""
    entry = _entry(desk, record)
    job = desk.reading(entry).job if entry else None
    number = number_of(entry.document, record.subject) if entry else None
    if entry is None or job is None or number is None:
        return None
    plan = desk.shelf.plan(entry.document, job, number).plan
    order = card_order(plan, job.habits, job.markets)
    if plan is None or order is None:
        return None
    system = typed_system(entry.document)
    session = Session(order=order, steps=card_steps(order), record=record, system=system)
    address = f"/jobs/{record.job_id}/shades/{number}/bench?session={record.id}"
    return Opened(session=session, plan=plan, job=job, address=address)


def _entry(desk: Desk, record: Record) -> Entry | None:
    if record.job_id is None:
        return None
    try:
        saves = desk.book.history(record.job_id)
    except NotInBook:
        return None
    return next((save for save in saves if save.number == record.version), saves[0])
