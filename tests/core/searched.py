"""Shades by hand for the tests of the layout search."""

from __future__ import annotations

from typing import Any

from tests.core.layouts import HABITS, US, answer, cloth, sized

from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.layouts.proposing import propose_layouts
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.choices import Choices
from foldwright.core.design.layout import Layout
from foldwright.core.facts.markets import Market
from foldwright.core.facts.records import Chosen, ShopList
from foldwright.core.measure.finished import FinishedSize


def reviewed(
    design: Choices,
    size: FinishedSize,
    chosen: Chosen | None = None,
    markets: tuple[Market, ...] = US,
    **spec: Any,
) -> Review:
    """Give a shade laid out by itself, ready to be searched."""
    records = chosen or Chosen(face=cloth())
    plan = ShadePlan(
        spec=ShadeSpec(tag="A", design=design, **spec),
        chosen=records,
        size=size,
        layout=answer(design, size, records).result,
    )
    return Review(plan=plan, shop=ShopList(), habits=HABITS, markets=markets)


def offered(design: Choices, width: str, drop: str, *more: Any, **named: Any) -> Offers:
    """Search a shade of a size, and give what is offered."""
    offers = propose_layouts(reviewed(design, sized(width, drop), *more, **named))
    assert offers is not None
    return offers


def shape(layout: Layout) -> tuple[object, ...]:
    """Give every mark of a layout, for comparing two of them."""
    figures = (
        *layout.rows.marks,
        *layout.rows.rod_marks,
        *layout.columns.marks,
        *layout.widths.seams,
        layout.rows.head_allowance,
        layout.rows.skirt,
        layout.travel,
        layout.stack.raised_size,
        *(cut.length for cut in layout.cuts),
        *(cut.width for cut in layout.cuts),
    )
    return tuple(figure.value for figure in figures)
