"""The order of the work at the table and the machine, with the figures of each step."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.band_steps import applied_band_steps, flat_band_steps
from foldwright.core.design.choices import RodPlace
from foldwright.core.design.layout import Layout, SewingStep
from foldwright.core.design.lining_steps import (
    hole_steps,
    lining_steps,
    pocket_steps,
    stitched_through,
)
from foldwright.core.design.order import Order
from foldwright.core.design.rod_pockets import in_the_lining
from foldwright.core.design.styles import style_of
from foldwright.core.design.valance_steps import valance_steps
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived


def sewing_order(order: Order, layout: Layout) -> tuple[SewingStep, ...]:
    """Put the sewing of a shade in order.

    Takes: the order; its layout.

    Gives: the steps, first to last; what only its style does stands where it is done.

    Source: common practice.
    """
    return tuple(_steps(order, layout))


def _steps(order: Order, layout: Layout) -> Iterator[SewingStep]:
    style = style_of(layout.style)
    yield _press(layout)
    yield from _join(layout)
    yield from style.before_the_turns(order, layout)
    yield from flat_band_steps(layout)
    yield from lining_steps(order, layout)
    yield from _turns(order, layout)
    yield from pocket_steps(layout)
    yield _mark(layout)
    yield _rings(order, layout)
    yield from hole_steps(order)
    yield from style.after_the_rings(order, layout)
    yield from applied_band_steps(layout)
    yield from _rods(layout)
    yield _top(layout)
    yield from valance_steps(layout)
    yield _dress(layout)


def _press(layout: Layout) -> SewingStep:
    face = layout.cuts[0]
    return SewingStep(
        title="Press and square",
        instruction="Steam every layer before it is cut, square its first end, and cut the face"
        " {0} wide by {1} long.",
        figures=(face.width, face.length),
    )


def _join(layout: Layout) -> Iterator[SewingStep]:
    widths = layout.widths
    if widths.side_cut is not None and widths.centre_visible is not None:
        yield SewingStep(
            title="Join the widths",
            instruction="Sew the face from {0} widths, a full one in the centre showing {1} and"
            " equal pieces cut {2} at the sides; press the seams open.",
            figures=(widths.widths, widths.centre_visible, widths.side_cut),
        )


def _turns(order: Order, layout: Layout) -> Iterator[SewingStep]:
    if layout.side_turn is not None:
        under = order.chosen.lining is not None and not in_the_lining(order)
        over = "over the lining" if under else "to the back"
        yield SewingStep(
            title="Turn the sides",
            instruction=f"Turn {{0}} in at each side, {over}, and check the width {{1}} at three"
            " heights before going on.",
            figures=(layout.side_turn, _width_at_the_turns(order, layout)),
        )
    if layout.hem_allowance is not None:
        yield SewingStep(
            title="Turn the hem",
            instruction="Turn {0} up at the bottom edge and sew the pocket; no interlining in it.",
            figures=(layout.hem_allowance,),
        )


def _width_at_the_turns(order: Order, layout: Layout) -> Figure[Length]:
    """Give the width between the turned sides: flat, where the cloth is gathered only later."""
    gathered_later = layout.swag is not None and layout.swag.pinched
    return layout.widths.cloth_width or order.width if gathered_later else order.width


def _mark(layout: Layout) -> SewingStep:
    rows, columns = layout.rows, layout.columns
    sewn_up = rows.ridges or rows.rod_cloth_marks
    row_marks = rows.marks if sewn_up else rows.cloth_marks or rows.marks
    return SewingStep(
        title="Mark rows and columns",
        instruction="Lay the panel face down. Mark {0} rows from the bottom edge, the lowest at"
        " {1}, and {2} columns from the left edge, the first at {3}: every mark from its edge,"
        " none from its neighbour.",
        figures=(
            rows.count,
            row_marks[0],
            columns.count,
            (columns.cloth_marks or columns.marks)[0],
        ),
    )


def _rings(order: Order, layout: Layout) -> SewingStep:
    return SewingStep(
        title="Sew the rings",
        instruction="Sew {0} rings by hand or machine, four or five stitches each, "
        + _through_what(order),
        figures=(ring_count(layout),),
    )


def _through_what(order: Order) -> str:
    """Say what the rings are sewn to: the lining's pockets, or through to the face."""
    if in_the_lining(order) and order.design.rods.at_rows:
        return "to the edges of the lining's pockets: nothing is seen on the face."
    return "only a pin-prick through the face." + stitched_through(order)


def ring_count(layout: Layout) -> Figure[int]:
    """Count the rings, one where each row crosses each column.

    Takes: the layout.

    Gives: the count.

    Source: derived here.
    """
    rows, columns = layout.rows.count, layout.columns.count
    because = "One ring where each of {0} rows crosses each of {1} columns."
    return derived("rings", rows.value * columns.value, Unit.COUNT, because, rows, columns)


def _rods(layout: Layout) -> Iterator[SewingStep]:
    if layout.rows.rods is RodPlace.NONE:
        return
    place = {
        RodPlace.ROWS: "each row",
        RodPlace.MID_FOLD: "the middle of each fold",
        RodPlace.SLATS: "each row and the middle of each fold",
    }[layout.rows.rods]
    count = len(layout.rows.rod_marks)
    yield SewingStep(
        title="Put the rods in",
        instruction=f"Slide {count} rods into their pockets at {place}, and close the ends.",
    )


def _top(layout: Layout) -> SewingStep:
    measure = "Measure the drop from the bottom edge up, and mark the top line."
    over = () if layout.top_allowance is None else (layout.top_allowance,)
    if layout.tape is not None:
        return SewingStep(
            title="Fix the top",
            instruction=f"{measure} Turn the head to the back there, {{2}} of it, and sew the soft"
            " tape along the turn: {0} wide, {1} long.",
            figures=(layout.tape.width, layout.tape.length, *over),
        )
    return SewingStep(
        title="Fix the top",
        instruction=measure + (" {0} goes over the board." if over else ""),
        figures=over,
    )


def _dress(layout: Layout) -> SewingStep:
    return SewingStep(
        title="Dress the folds",
        instruction="Raise the shade to {0}, lay every fold by hand, tie it loosely, steam it"
        " without wetting it, and leave it for one to three days.",
        figures=(layout.stack.raised_size,),
    )
