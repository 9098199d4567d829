"""Orders that no layout can be drawn for: what is impossible, and the way out."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import ONLY_FOR
from foldwright.core.design.columns import usual_edge
from foldwright.core.design.order import Order, draft, head_allowance, skirt, stacked_pitch
from foldwright.core.design.styles import row_count, style_of
from foldwright.core.design.usual import LEAST_COLUMNS
from foldwright.core.design.widths import least_cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

LEAST_ROWS = 1


def draft_refusals(order: Order) -> Iterator[Draft[Order]]:
    """Draft what makes a layout impossible.

    Takes: the order.

    Gives: drafts of findings, every one a stop; none when a layout can be drawn.

    Source: derived here.
    """
    style = style_of(order.design.style)
    rows = [*_short_drop(order), *_few_rows(order), *style.refusals(order)]
    others = [*(rows or _crowded_rows(order)), *_few_columns(order), *_narrow(order)]
    others += _wrong_share(order)
    yield from others or _narrow_cloth(order)


def _refuse(
    name: str,
    sentence: str,
    *figures: Figure[Length] | Figure[int] | Figure[float],
    ways: tuple[Way[Order], ...],
) -> Draft[Order]:
    return draft(Severity.STOP, name, sentence, *figures, ways=ways)


def _short_drop(order: Order) -> Iterator[Draft[Order]]:
    """Find a drop that head allowance, skirt and one stacked row use up."""
    head, under, row = head_allowance(order), skirt(order), _room_to_rise(order)
    needed = derived(
        "least drop",
        head.value + under.value + row.value * 2,
        Unit.LENGTH,
        "Head allowance {0}, skirt {1}, and twice {2} for a single row.",
        head,
        under,
        row,
    )
    if order.drop.value <= needed.value:
        yield _refuse(
            "drop-too-short",
            "The drop is {0}; head, skirt and a single row take {1}.",
            order.drop,
            needed,
            ways=tuple(_shorter(order)),
        )


def _shorter(order: Order) -> Iterator[Way[Order]]:
    """Leave the skirt out, unless a bar needs the cloth for its pocket."""
    if order.chosen.bar is None:
        yield by_change(order, order.system, "Take no skirt.", design__skirt=ZERO)
    yield by_hand("Make the shade longer, or fix this piece without a lift.")


def _few_rows(order: Order) -> Iterator[Draft[Order]]:
    typed = order.design.row_count
    if typed is not None and typed < LEAST_ROWS:
        found = chosen("number of rows", typed, Unit.COUNT)
        ways = (_free(order, "row_count", "Let the spacing decide the rows."),)
        yield _refuse("rows-too-few", "A shade with {0} rows does not rise.", found, ways=ways)


def _crowded_rows(order: Order) -> Iterator[Draft[Order]]:
    """Find rows so close that stacking them would lift next to nothing."""
    count = row_count(order)
    spacing = derived(
        "least row spacing",
        Length(round(style_of(order.design.style).least_spacing(order, count.value))),
        Unit.LENGTH,
        "What the drop {0} leaves to each of {1} rows.",
        order.drop,
        count,
    )
    needed = _room_to_rise(order)
    if spacing.value < needed.value:
        yield _refuse(
            "rows-too-many",
            "The rows would lie {0} apart; under {1} stacking them lifts next to nothing.",
            spacing,
            needed,
            ways=tuple(_wider_rows(order)),
        )


def _room_to_rise(order: Order) -> L:
    pitch = stacked_pitch(order)
    value, because = pitch.value * 2, "Twice the {0} that stacked rows lie apart."
    return derived("least row spacing", value, Unit.LENGTH, because, pitch)


def _wider_rows(order: Order) -> Iterator[Way[Order]]:
    if order.design.row_count is not None:
        yield _free(order, "row_count", "Let the spacing decide the rows.")
    if order.design.largest_row_spacing is not None:
        yield _free(order, "largest_row_spacing", "Let the market's cap decide the spacing.")
    if order.design.step is not None:
        yield _free(order, "step", "Let the rows decide how far the folds step.")
    yield by_hand("Use fewer rows, a shorter head allowance, or thinner rods.")


def _few_columns(order: Order) -> Iterator[Draft[Order]]:
    typed = order.design.column_count
    if typed is not None and typed < LEAST_COLUMNS:
        yield _refuse(
            "columns-too-few",
            "{0} columns cannot hold a shade level; it needs {1}.",
            chosen("number of columns", typed, Unit.COUNT),
            derived("least columns", LEAST_COLUMNS, Unit.COUNT, "One column near each edge."),
            ways=(_free(order, "column_count", "Let the pitch decide the columns."),),
        )


def _narrow(order: Order) -> Iterator[Draft[Order]]:
    edge = usual_edge(order)
    if edge.value * 2 >= order.width.value:
        yield _refuse(
            "too-narrow",
            "The shade is {0} wide, and its columns want {1} from each edge.",
            order.width,
            edge,
            ways=(
                _free(order, "edge_distance", "Take the usual edge distance."),
                by_hand("Hang this piece without a lift, or make it wider."),
            ),
        )


def _narrow_cloth(order: Order) -> Iterator[Draft[Order]]:
    """Find a cloth of which not even the narrowest side piece can be cut, with turn and seam."""
    face, needed = order.chosen.face, least_cloth(order)
    if face is not None and face.usable_width <= needed.value:
        yield _refuse(
            "cloth-too-narrow",
            "The face cloth is {0} wide, and turns and seams use up {1} of every piece.",
            supplied("usable width of the face", face.usable_width, Unit.LENGTH, face.name),
            needed,
            ways=(by_hand("Check the usable width in the shop list, or take a wider cloth."),),
        )


def _wrong_share(order: Order) -> Iterator[Draft[Order]]:
    shrink, full = order.design.shrinkage, order.design.fullness
    if shrink is not None and not 0 <= shrink < 1:
        found = chosen("shrinkage", shrink, Unit.SHARE)
        ways = (_free(order, "shrinkage", "Take the house's guess until it is tested."),)
        yield _refuse("shrinkage", "A cloth cannot shrink by {0} and be a shade.", found, ways=ways)
    if order.design.style in ONLY_FOR["fullness"] and full is not None and full < 1:
        found = chosen("fullness", full, Unit.RATIO)
        ways = (_free(order, "fullness", "Take the house's fullness."),)
        sentence = "A full shade has more cloth than drop, not {0} of it."
        yield _refuse("fullness-under-one", sentence, found, ways=ways)
    yield from _narrower_than_the_shade(order)


def _narrower_than_the_shade(order: Order) -> Iterator[Draft[Order]]:
    across = order.design.width_fullness
    if order.design.style in ONLY_FOR["width_fullness"] and across is not None and across < 1:
        yield _refuse(
            "width-fullness-under-one",
            "A gathered shade has more cloth across than its width, not {0} of it.",
            chosen("width fullness", across, Unit.RATIO),
            ways=(_free(order, "width_fullness", "Take the house's fullness across."),),
        )


def _free(order: Order, field: str, sentence: str) -> Way[Order]:
    return by_change(order, order.system, sentence, **{f"design__{field}": None})
