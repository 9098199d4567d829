"""What is wrong with the rows, the head and the folds, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import RodPlace, StyleName
from foldwright.core.design.layout import RowPlan
from foldwright.core.design.order import Order, draft, least_head_allowance
from foldwright.core.design.style import Style
from foldwright.core.facts.panel_limits import POCKET_EASE
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_row_checks(order: Order, style: Style, rows: RowPlan) -> Iterator[Draft[Order]]:
    """Draft what is wrong with the rows.

    Takes: the order; its style; its rows.

    Gives: drafts of findings, the market's cap first.

    Source: sor-2019-97, s. 6; ansi-wcma-2012, 4.5.3; common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> from foldwright.core.design.styles import row_count, style_of
    >>> style = style_of(ORDER.design.style)
    >>> tuple(draft_row_checks(ORDER, style, style.rows(ORDER, row_count(ORDER))))
    ()
    """
    yield from _over_cap(order, style, rows)
    yield from _over_asked(order, style, rows)
    yield from _asked_over_cap(order)
    yield from style.drafts(order, rows)
    yield from _head(order)
    yield from _pocket(order, rows)
    yield from _fullness_on_flat(order)
    yield from _rod_missing(order)


def _over_cap(order: Order, style: Style, rows: RowPlan) -> Iterator[Draft[Order]]:
    if rows.spacing.value > order.row_cap.value:
        yield draft(
            Severity.STOP,
            "rows-too-far-apart",
            "The ring rows are {0} apart; the strictest market sold into allows {1}.",
            rows.spacing,
            order.row_cap,
            ways=_more_rows(
                order, style, "Or hold the cord between the rows the way the local rule allows."
            ),
            source=order.row_cap.source,
        )


def _over_asked(order: Order, style: Style, rows: RowPlan) -> Iterator[Draft[Order]]:
    """Find a typed number of rows that breaks the spacing asked for, though not the cap."""
    asked = order.design.largest_row_spacing
    if asked is not None and asked < rows.spacing.value <= order.row_cap.value:
        yield draft(
            Severity.NOTE,
            "rows-over-asked",
            "The ring rows are {0} apart, and at most {1} was asked for.",
            rows.spacing,
            chosen("largest row spacing", asked, Unit.LENGTH),
            ways=_more_rows(order, style, "Keep it if the client likes it."),
        )


def _asked_over_cap(order: Order) -> Iterator[Draft[Order]]:
    asked = order.design.largest_row_spacing
    if asked is not None and asked > order.row_cap.value:
        way = by_change(
            order, order.system, "Leave it to the market's cap.", design__largest_row_spacing=None
        )
        yield draft(
            Severity.NOTE,
            "asked-over-cap",
            "A row spacing of up to {0} was asked for; the market's cap {1} is kept instead.",
            chosen("largest row spacing", asked, Unit.LENGTH),
            order.row_cap,
            ways=(way, by_hand("Or leave it: the cap governs.")),
            source=order.row_cap.source,
        )


def _more_rows(order: Order, style: Style, otherwise: str) -> Iterator[Way[Order]]:
    yield from style.closer_rows(order)
    yield by_hand(otherwise)


def _head(order: Order) -> Iterator[Draft[Order]]:
    typed = order.design.head_allowance
    if typed is None or typed >= (needed := _needed_head(order)).value:
        return
    mended = order.marked(needed.value, Rounding.CUT_OVERSIZE)
    figure = derived(
        "head allowance",
        mended,
        Unit.LENGTH,
        "{0}, rounded up to a mark.",
        needed,
        rounding=Rounding.CUT_OVERSIZE,
    )
    yield draft(
        Severity.STOP,
        "head-too-short",
        "The head allowance is {0}; under {1} the shade never raises fully.",
        chosen("head allowance", typed, Unit.LENGTH),
        needed,
        ways=(
            by_change(order, order.system, "Allow {0}.", figure, design__head_allowance=mended),
            by_hand("Or take a lower headrail."),
        ),
    )


def _needed_head(order: Order) -> L:
    """Take the headrail's own need where it is known; the floor is for when it is not."""
    bracket, beyond = order.chosen.bracket, order.habits.head_allowance_beyond_rail
    if bracket is None:
        return least_head_allowance(order)
    height = supplied("headrail height", bracket.height, Unit.LENGTH, bracket.name)
    value = height.value + beyond.value
    because = "The headrail {0} and {1} under it."
    return derived("least head allowance", value, Unit.LENGTH, because, height, beyond)


def _pocket(order: Order, rows: RowPlan) -> Iterator[Draft[Order]]:
    """Find a lowest row that would be sewn into the bar's pocket."""
    bar = order.chosen.bar
    if bar is None:
        return
    height = supplied("height of the bar", max(bar.width, bar.thickness), Unit.LENGTH, bar.name)
    pocket = derived(
        "height of the pocket",
        height.value + POCKET_EASE.value,
        Unit.LENGTH,
        "The bar {0} and {1} of ease.",
        height,
        POCKET_EASE,
    )
    if rows.first_row.value < pocket.value:
        skirt = order.marked(pocket.value, Rounding.CUT_OVERSIZE)
        figure = derived("skirt", skirt, Unit.LENGTH, "The pocket {0}, rounded up.", pocket)
        yield draft(
            Severity.STOP,
            "row-in-pocket",
            "The lowest row lies {0} above the bottom edge, inside the bar's pocket of {1}.",
            rows.first_row,
            pocket,
            ways=(
                by_change(order, order.system, "Take a skirt of {0}.", figure, design__skirt=skirt),
                by_hand("Or take a bar that is less high."),
            ),
        )


def _fullness_on_flat(order: Order) -> Iterator[Draft[Order]]:
    full = order.design.fullness
    if order.design.style is StyleName.FLAT and full is not None and full != 1:
        ways = (
            by_change(order, order.system, "Make it flat.", design__fullness=None),
            by_change(order, order.system, "Make it looped.", design__style=StyleName.LOOPED),
        )
        yield draft(
            Severity.ASK,
            "fullness-on-flat",
            "A fullness of {0} is typed for a flat shade, which has none; it is not used.",
            chosen("fullness", full, Unit.RATIO),
            ways=ways,
        )


def _rod_missing(order: Order) -> Iterator[Draft[Order]]:
    if order.design.rods is not RodPlace.NONE and order.chosen.rod is None:
        ways = (
            by_change(order, order.system, "Leave the rods out.", design__rods=RodPlace.NONE),
            by_hand("Choose a rod from the shop list."),
        )
        sentence = f"Rods are asked for {order.design.rods.value}, but no rod is chosen yet."
        yield draft(Severity.ASK, "rod-missing", sentence, ways=ways)
