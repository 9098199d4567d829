"""The shop's own record: what was expected, what the bench found, and springs by themselves."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from secrets import token_hex
from typing import Any

from markupsafe import Markup
from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.prove.card_spring import spring_step
from foldwright.core.prove.card_step import Ask, CardStep
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure
from foldwright.web.bench import KEY_BYTES, FieldView
from foldwright.web.desk import Desk, Sorry, reader_system, see, text_of
from foldwright.web.figures import FigureIndex
from foldwright.web.pages.why import why_page
from foldwright.web.shop_record import found_in
from foldwright.web.wording import Wording
from foldwright.work.bench import LONGEST_NAME, LONGEST_TEXT, Note
from foldwright.work.bench_reading import unit_words
from foldwright.work.bench_shop import ShopRecord, shop_record
from foldwright.work.bench_springs import SYSTEM, read_spring

WHY = "/shop/why"
NO_FORM = "The form did not arrive. Open the shop's record again and send it from there."
NO_NAME = Fault(where="spring", what="it has no name", remedy="Take one, or type its name.")
LONGEST_KEY = 64


@dataclass(frozen=True, kw_only=True)
class ShopView:
    """The record of the shop, for one reader."""

    record: ShopRecord
    springs: Sequence[str]  # of the shop's list
    system: System
    typed: Mapping[str, str] = field(default_factory=dict)
    faults: tuple[Fault, ...] = ()
    key: str = field(default_factory=lambda: token_hex(KEY_BYTES))

    @property
    def step(self) -> CardStep:
        """Give what is done with a spring by itself."""
        return spring_step()

    @cached_property
    def figures(self) -> FigureIndex:
        """Give every figure of the page under its name."""
        return FigureIndex(None, {"record": self.record})

    @cached_property
    def wording(self) -> Wording:
        """Give what shows the figures."""
        return Wording(self.figures, self.system, WHY)

    def ranged(self, figure: Figure[Any]) -> Markup:
        """Show a figure with its range, as a link to its why."""
        return self.wording.link(figure, ranged=True)

    @property
    def groups(self) -> list[tuple[str, list[FieldView]]]:
        """Give the fields of a spring's test under their headings."""
        groups: dict[str, list[FieldView]] = {}
        for ask in spring_step().asks:
            groups.setdefault(ask.group, []).append(self._field(ask))
        return list(groups.items())

    @property
    def other_faults(self) -> tuple[Fault, ...]:
        """Give the faults that stand beside no field."""
        names = {ask.name for ask in spring_step().asks}
        return tuple(fault for fault in self.faults if fault.where not in names)

    def _field(self, ask: Ask) -> FieldView:
        return FieldView(
            ask=ask,
            id=f"spring-{ask.name}",
            text=self.typed.get(ask.name, ""),
            unit=unit_words(ask, self.system),
            faults=tuple(fault for fault in self.faults if fault.where == ask.name),
        )


def show_shop(request: Request) -> Response:
    """Show what was expected and what was found, spring by spring."""
    return _page(request, _view(request))


def note_spring(request: Request, form: FormData) -> Response:
    """Keep the test of a spring, as typed, or say what cannot be read in it."""
    fields, desk = text_of(form), Desk.of(request)
    key = fields.get("key", "")
    if not key or len(key) > LONGEST_KEY:
        raise Sorry(400, "Nothing was noted", NO_FORM)
    system = reader_system(request, System.INCH)
    asked = (ask.name for ask in spring_step().asks)
    typed = {name: fields.get(name, "")[:LONGEST_TEXT] for name in asked}
    spring = fields.get("spring", "").strip()[:LONGEST_NAME]
    _, faults = read_spring(typed, system)
    faults = faults if spring else (NO_NAME, *faults)
    if faults:
        view = _view(request, typed={**typed, "spring": spring}, faults=faults)
        return _page(request, view, status=422)
    by = fields.get("by", "").strip()[:LONGEST_NAME]
    note = Note(key=key, step="spring", typed={**typed, SYSTEM: system.value}, by=by)
    desk.book.bench.note(None, spring, note, session=None)
    return see("/shop")


def tell_shop_why(request: Request) -> Response:
    """Tell why a figure of the record is what it is."""
    view = _view(request)
    figure = view.figures.at(request.query_params.get("figure", ""))
    return why_page(request, figure, view.system, back="/shop", trail=())


def _view(
    request: Request, typed: Mapping[str, str] | None = None, faults: tuple[Fault, ...] = ()
) -> ShopView:
    desk = Desk.of(request)
    record = shop_record(desk.book.bench.of_shop(), lambda one: found_in(desk, one))
    return ShopView(
        record=record,
        springs=tuple(desk.shop.springs),
        system=reader_system(request, System.INCH),
        typed=typed or {},
        faults=faults,
    )


def _page(request: Request, view: ShopView, *, status: int = 200) -> Response:
    return Desk.of(request).page(request, "shop.html", status=status, shop=view, system=view.system)
