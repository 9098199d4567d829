"""What is wrong with bands and trims: needles that meet them, folds that hide them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.check.row_search import nearest_skirt
from foldwright.core.design.layout import BandPlan, Layout
from foldwright.core.design.making import BandSewing
from foldwright.core.facts.panel_limits import EDGE_STEP, FARTHEST_EDGE
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_band_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what is wrong with bands and trims."""
    if review.layout is None or review.layout.bands is None:
        return
    plan = review.layout.bands
    yield from _off_the_shade(review, plan)
    if plan.sewing is BandSewing.FLAT:
        yield from _row_on_band(review, review.layout, plan)
        yield from _column_on_edge(review, review.layout, plan)
    yield from _hidden(review, review.layout, plan)


def _off_the_shade(review: Review, plan: BandPlan) -> Iterator[Draft[ShadeSpec]]:
    """Find bands that do not lie on the shade at all, or meet in its middle."""
    size = review.size
    if size is None:
        return
    wide = plan.side_edges and plan.side_edges[len(plan.side_edges) // 2 - 1]
    if wide and wide.value * 2 > size.width.value:
        yield _too_large(review, wide, size.width, making__side_band_width=None)
    elif plan.upper is not None and plan.upper.value > size.drop.value:
        yield _too_large(review, plan.upper, size.drop, making__band_height=None)


def _too_large(review: Review, edge: L, whole: L, **cleared: None) -> Draft[ShadeSpec]:
    return draft(
        Severity.STOP,
        "band-off-shade",
        "A band reaches to {0}, which a shade of {1} has no room for.",
        edge,
        whole,
        ways=(
            by_change(review.spec, review.system, "Leave it out.", **cleared),
            by_hand("Or type a smaller one."),
        ),
        stage=Stage.ORDER,
    )


def _row_on_band(review: Review, layout: Layout, plan: BandPlan) -> Iterator[Draft[ShadeSpec]]:
    if plan.lower is None or plan.upper is None:
        return
    rows = _rows_between(layout, plan.lower.value, plan.upper.value)
    if rows:
        yield draft(
            Severity.STOP,
            "row-on-band",
            "A ring row lies at {0}, on the band between {1} and {2}: the needle breaks, and the"
            " band is seen cut.",
            rows[0],
            plan.lower,
            plan.upper,
            ways=_off_the_band(review, plan.lower.value, plan.upper.value),
            stage=Stage.ORDER,
        )


def _rows_between(layout: Layout, lower: Length, upper: Length) -> list[L]:
    return [mark for mark in layout.rows.marks if lower <= mark.value <= upper]


def _off_the_band(review: Review, lower: Length, upper: Length) -> Iterator[Way[ShadeSpec]]:
    yield from nearest_skirt(review, lambda layout: not _rows_between(layout, lower, upper))
    yield _after_the_rings(review)
    yield by_hand("Or move it between two rows.")


def _after_the_rings(review: Review) -> Way[ShadeSpec]:
    return by_change(
        review.spec,
        review.system,
        "Apply it as a trim, after the rings.",
        making__band_sewing=BandSewing.APPLIED,
    )


def _column_on_edge(review: Review, layout: Layout, plan: BandPlan) -> Iterator[Draft[ShadeSpec]]:
    """Find a column whose needle meets the turned edge of a side band."""
    gap = nearest_to_edge(layout, plan)
    if gap is None or gap.value >= review.habits.seam_to_column.value:
        return
    yield draft(
        Severity.STOP,
        "column-on-band",
        "A column stands {0} from the edge of a side band; nearer than {1} the needle meets its"
        " turned edge.",
        gap,
        review.habits.seam_to_column,
        ways=_off_the_edge(review, gap),
        stage=Stage.ORDER,
    )


def nearest_to_edge(layout: Layout, plan: BandPlan) -> L | None:
    """Give the least distance from a column to the edge of a side band, if there are any."""
    pairs = [(edge, mark) for edge in plan.side_edges for mark in layout.columns.marks]
    if not pairs:
        return None
    edge, mark = min(pairs, key=lambda pair: abs(pair[0].value - pair[1].value))
    value = abs(edge.value - mark.value)
    because = "From the edge at {0} to the column at {1}."
    return derived("band to the nearest column", value, Unit.LENGTH, because, edge, mark)


def _off_the_edge(review: Review, gap: L) -> Iterator[Way[ShadeSpec]]:
    yield from _another_edge(review)
    for inset in _insets(review, gap.value):
        figure = chosen("side band from the edge", inset, Unit.LENGTH)
        yield by_change(
            review.spec,
            review.system,
            "Place the side bands {0} in from the edge.",
            figure,
            making__side_band_inset=inset,
        )
    yield _after_the_rings(review)


def _insets(review: Review, gap: Length) -> Iterator[Length]:
    """Move the bands away from the columns, or their edges past them."""
    now, least = review.spec.making.side_band_inset or ZERO, review.habits.seam_to_column.value
    for move in (gap - least, least - gap, least + gap):
        inset = now + move
        if inset >= ZERO:
            yield review.marked(inset, Rounding.MARK)


def _another_edge(review: Review) -> Iterator[Way[ShadeSpec]]:
    """Find the edge distance nearest to the floor with which every column stands clear."""
    least, order = review.habits.seam_to_column.value, review.order
    edge = None if order is None else review.marked(order.edge_floor.value, Rounding.CUT_OVERSIZE)
    while edge is not None and edge <= FARTHEST_EDGE.value:
        layout = review.laid_out(replace(review.spec.design, edge_distance=edge))
        gap = layout and layout.bands and nearest_to_edge(layout, layout.bands)
        if layout and gap and gap.value >= least:
            distance, sentence = layout.columns.edge_distance, "Move the outer columns to {0}."
            fields = {"design__edge_distance": edge}
            yield by_change(review.spec, review.system, sentence, distance, **fields)
            return
        edge = edge + EDGE_STEP.value


def _hidden(review: Review, layout: Layout, plan: BandPlan) -> Iterator[Draft[ShadeSpec]]:
    """Find a band at the hem that disappears under the folds."""
    upper, rows = plan.upper, layout.rows
    if upper is None or upper.value <= rows.skirt.value or upper.value > rows.first_row.value:
        return
    skirt = review.marked(upper.value, Rounding.CUT_OVERSIZE)
    figure = derived("skirt", skirt, Unit.LENGTH, "{0}, rounded up to a mark.", upper)
    yield draft(
        Severity.NOTE,
        "band-hidden",
        "The band reaches {0} above the bottom edge, and the raised folds leave {1} to be seen.",
        upper,
        rows.skirt,
        ways=(
            by_change(
                review.spec, review.system, "Take a skirt of {0}.", figure, design__skirt=skirt
            ),
            by_hand("Or show the client how much of it stays hidden."),
        ),
        stage=Stage.ORDER,
    )
