"""What is wrong with the columns and seams, and what would mend it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

from foldwright.core.design.choices import RodPlace
from foldwright.core.design.columns import (
    fewest_columns,
    largest_pitch,
    plan_columns,
)
from foldwright.core.design.layout import ColumnPlan
from foldwright.core.design.order import Order, draft
from foldwright.core.design.usual import LEAST_COLUMNS
from foldwright.core.design.widths import Joining, full_piece, join_widths, usable_width
from foldwright.core.facts.panel_limits import LEAST_PITCH
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]
Inputs = TypeVar("Inputs")


def nearest_column(columns: ColumnPlan, joining: Joining) -> L | None:
    """Find the least distance from a seam to a column.

    Takes: the columns; the joining of the face.

    Gives: the least distance, or None without seams.

    Source: derived here.

    >>> from foldwright.core.design.example import ORDER
    >>> joining = join_widths(ORDER)
    >>> round(nearest_column(plan_columns(ORDER, joining.seams), joining).value.in_millimetres, 2)
    56.24
    """
    marks = columns.cloth_marks or columns.marks
    pairs = [(seam, mark) for seam in joining.seams for mark in marks]
    if not pairs:
        return None
    seam, mark = min(pairs, key=lambda pair: abs(pair[0].value - pair[1].value))
    return derived(
        "seam to the nearest column",
        abs(seam.value - mark.value),
        Unit.LENGTH,
        "From the seam at {0} to the column at {1}.",
        seam,
        mark,
    )


def draft_column_checks(
    order: Order, columns: ColumnPlan, joining: Joining
) -> Iterator[Draft[Order]]:
    """Draft what is wrong with the columns.

    Takes: the order; its columns; the joining of its face.

    Gives: drafts of findings, the edge first.

    Source: ansi-wcma-2012, 4.5.3.2 (edge); cord-spacing-page (pitch); common practice.
    """
    yield from _edge(order, columns)
    yield from _seam(order, columns, joining)
    yield from _wide(order, columns)
    yield from _crowded(order, columns)
    yield from _middle_too_wide(order)
    yield from _face_missing(order)


def _edge(order: Order, columns: ColumnPlan) -> Iterator[Draft[Order]]:
    if columns.edge_distance.value < order.edge_floor.value:
        inward = order.marked(order.edge_floor.value, Rounding.CUT_OVERSIZE)
        figure = derived(
            "edge distance", inward, Unit.LENGTH, "{0}, rounded up to a mark.", order.edge_floor
        )
        sentence = "Move the outer columns in to {0}."
        yield draft(
            Severity.STOP,
            "edge-too-near",
            "The outer columns are {0} from the edges; the strictest market sold into asks {1}.",
            columns.edge_distance,
            order.edge_floor,
            ways=(
                by_change(order, order.system, sentence, figure, design__edge_distance=inward),
                by_hand("Or give the side cords a release that the local rule accepts."),
            ),
            source=order.edge_floor.source,
        )


def _seam(order: Order, columns: ColumnPlan, joining: Joining) -> Iterator[Draft[Order]]:
    gap = nearest_column(columns, joining)
    if gap is not None and gap.value < order.habits.seam_to_column.value:
        yield draft(
            Severity.STOP,
            "seam-on-column",
            "A column stands {0} from a seam; nearer than {1} the rings meet its bulk.",
            gap,
            order.habits.seam_to_column,
            ways=_off_the_seam(order, gap),
        )


def _off_the_seam(order: Order, gap: L) -> Iterator[Way[Order]]:
    """Free the edge first, then the count, then both."""
    edge_typed = order.design.edge_distance is not None
    count_typed = order.design.column_count is not None
    if edge_typed:
        yield _freed(order, design__edge_distance=None)
    if count_typed:
        yield _freed(order, design__column_count=None)
    if edge_typed and count_typed:
        yield _freed(order, design__edge_distance=None, design__column_count=None)
    yield from _move_the_seam(order, gap)


def _freed(order: Order, **fields: None) -> Way[Order]:
    """Free a field, and tell the columns that come of it."""
    free = by_change(order, order.system, "", **fields).inputs or order
    columns = plan_columns(free, join_widths(free).seams)
    sentence = "Use {0} columns, the first {1} from the edge."
    return by_change(order, order.system, sentence, columns.count, columns.edge_distance, **fields)


def _move_the_seam(order: Order, gap: L) -> Iterator[Way[Order]]:
    shift = derived(
        "shift of the seam",
        order.marked(order.habits.seam_to_column.value - gap.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The distance wanted {0} less the {1} there is.",
        order.habits.seam_to_column,
        gap,
        rounding=Rounding.CUT_OVERSIZE,
    )
    yield from narrower_middle(order, order, shift)
    yield by_hand("Or join the cloth elsewhere, so that the seams move by {0}.", shift)


def narrower_middle(order: Order, inputs: Inputs, shift: L) -> Iterator[Way[Inputs]]:
    """Make the way that moves the seams by cutting the middle piece narrower.

    Takes: the order; the inputs that the change is tried on, with a design among them; how
    far each seam is to move.

    Gives: the way, where as many widths of cloth are still enough.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> [way] = narrower_middle(ORDER, ORDER, ORDER.habits.seam_to_column)
    >>> way.remedy.changes[0].text
    '52 in'
    """
    joining = join_widths(order)
    if joining.centre_visible is None:
        return
    middle = derived(
        "middle piece",
        order.marked(joining.centre_visible.value - shift.value * 2, Rounding.MUST_FIT),
        Unit.LENGTH,
        "The middle piece {0} less {1} at each side.",
        joining.centre_visible,
        shift,
        rounding=Rounding.MUST_FIT,
    )
    narrower = replace(order, design=replace(order.design, middle_piece=middle.value))
    if middle.value > ZERO and join_widths(narrower).widths.value == joining.widths.value:
        sentence = "Cut the middle piece to show {0}: the seams move by {1}."
        fields = {"design__middle_piece": middle.value}
        yield by_change(inputs, order.system, sentence, middle, shift, **fields)


def _wide(order: Order, columns: ColumnPlan) -> Iterator[Draft[Order]]:
    limit = largest_pitch(order)
    if columns.pitch.value > limit.value:
        yield draft(
            Severity.STOP,
            "columns-too-far-apart",
            "The columns are {0} apart; beyond {1} the cloth sags between them.",
            columns.pitch,
            limit,
            ways=_closer(order, columns, limit),
            source=limit.source,
        )


def _closer(order: Order, columns: ColumnPlan, limit: L) -> Iterator[Way[Order]]:
    yield _more_columns(order, columns, limit)
    yield _freed(order, design__column_count=None)
    yield from _rods_at_rows(order)
    yield by_hand("Or keep it where the cloth is stiff enough to span that far.")


def _more_columns(order: Order, columns: ColumnPlan, limit: L) -> Way[Order]:
    fewest = fewest_columns(order, columns.edge_distance.value)
    count = derived("number of columns", fewest, Unit.COUNT, "The fewest within {0}.", limit)
    pitch = derived(
        "column pitch",
        (order.width.value - columns.edge_distance.value * 2) / (fewest - 1),
        Unit.LENGTH,
        "The width {0} less twice the edge {1}, shared by one space fewer than {2} columns.",
        order.width,
        columns.edge_distance,
        count,
    )
    sentence = "Use {0} columns, {1} apart."
    return by_change(order, order.system, sentence, count, pitch, design__column_count=fewest)


def _rods_at_rows(order: Order) -> Iterator[Way[Order]]:
    """Let rods carry the cloth over the larger pitch, where the pitch is the house's own."""
    if order.design.rods is RodPlace.NONE and order.design.largest_pitch is None:
        limit = order.habits.largest_pitch_with_rods
        sentence = "Put a rod at every row: the columns may then be {0} apart."
        yield by_change(order, order.system, sentence, limit, design__rods=RodPlace.ROWS)


def _crowded(order: Order, columns: ColumnPlan) -> Iterator[Draft[Order]]:
    spare = columns.count.value > LEAST_COLUMNS
    if spare and ZERO < columns.pitch.value < LEAST_PITCH.value:
        yield draft(
            Severity.NOTE,
            "columns-crowded",
            "The columns are {0} apart; closer than {1} they cost rings and cords for nothing.",
            columns.pitch,
            LEAST_PITCH,
            ways=_sparser(order),
        )


def _sparser(order: Order) -> Iterator[Way[Order]]:
    yield _freed(order, design__column_count=None)
    yield by_hand("Keep them where the cloth is soft and wants them.")


def _middle_too_wide(order: Order) -> Iterator[Draft[Order]]:
    """Find a middle piece that its cloth is too narrow for; the cloth's own width is kept."""
    asked, usable = order.design.middle_piece, usable_width(order)
    if asked is None or usable is None or asked <= (full := full_piece(order, usable)).value:
        return
    sentence = "Take the whole width."
    yield draft(
        Severity.ASK,
        "middle-too-wide",
        "A middle piece of {0} is asked for; the cloth shows {1} at most, and that is kept.",
        chosen("middle piece", asked, Unit.LENGTH),
        full,
        ways=(by_change(order, order.system, sentence, design__middle_piece=None),),
    )


def _face_missing(order: Order) -> Iterator[Draft[Order]]:
    if order.chosen.face is None:
        yield draft(
            Severity.ASK,
            "face-missing",
            "No face cloth is chosen yet, so nobody knows whether the face needs seams.",
            ways=(by_hand("Choose the face cloth from the shop list."),),
        )
