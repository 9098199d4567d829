"""What goes wrong with the layers behind the face: holes in a blackout, interlining left bare."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.design.choices import RodPlace
from foldwright.core.design.layout import ColumnPlan, Layout
from foldwright.core.design.making import HoleCover
from foldwright.core.design.usual import LEAST_COLUMNS
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

HOLE_WAYS = {
    HoleCover.COVER: "Glue a cover strip of the blackout under each ring row.",
    HoleCover.SECOND_LAYER: "Lay a second layer of the blackout under the first.",
    HoleCover.PAINTED: "Sew by hand, and paint over each hole.",
    HoleCover.NOT_STITCHED: "Stitch the rings to the face alone, and lay the blackout over them.",
    HoleCover.ACCEPTED: "The client accepts specks of light.",
}


def draft_lining_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what goes wrong with the layers behind the face."""
    yield from _holes(review)
    yield from _rings_beyond_turns(review)
    yield from _interlining_bare(review)


def _holes(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Ask what becomes of the holes that rings leave in a coated lining."""
    if review.layout is None or not _blacked_out(review) or review.spec.making.holes is not None:
        return
    rings = derived(
        "rings",
        review.layout.rows.count.value * review.layout.columns.count.value,
        Unit.COUNT,
        "{0} rows on {1} columns.",
        review.layout.rows.count,
        review.layout.columns.count,
    )
    yield draft(
        Severity.ASK,
        "blackout-holes",
        "The needle pierces the blackout at each of {0} rings, and each hole lets light through."
        " What is done about it?",
        rings,
        ways=(
            *(
                by_change(review.spec, review.system, sentence, making__holes=cover)
                for cover, sentence in HOLE_WAYS.items()
            ),
            _in_the_turns(review, review.layout),
        ),
        stage=Stage.ORDER,
        source=Source(id="reverse-mount-diary"),
    )


def _blacked_out(review: Review) -> bool:
    """Tell whether any layer blacks out."""
    layers = (review.chosen.face, review.chosen.lining, review.chosen.interlining)
    return any(cloth is not None and cloth.blackout for cloth in layers)


def _rings_beyond_turns(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find rings that are to be sewn in the side turns alone, but stand beyond them."""
    layout, asked = review.layout, review.spec.making.holes is HoleCover.SIDE_TURNS
    if layout is None or layout.side_turn is None or not (asked and _blacked_out(review)):
        return
    beyond = _rings_beyond(layout.columns, layout.side_turn)
    if beyond is None:
        return
    yield draft(
        Severity.STOP,
        "rings-beyond-turns",
        "Rings are to be sewn in the side turns alone, but {0} columns stand beyond the turns of"
        " {1}.",
        beyond,
        layout.side_turn,
        ways=_into_the_turns(review, layout),
        stage=Stage.ORDER,
        source=Source(id="reverse-mount-diary"),
    )


def _rings_beyond(columns: ColumnPlan, turn: L) -> Figure[int] | None:
    """Count the columns that stand beyond the side turns; None where there are none."""
    width = columns.marks[0].value + columns.marks[-1].value
    beyond = [m for m in columns.marks if turn.value <= m.value <= width - turn.value]
    if not beyond:
        return None
    because = "Of {0} columns, those that stand farther in than {1} from each edge."
    return derived(
        "columns beyond the turns", len(beyond), Unit.COUNT, because, columns.count, turn
    )


def _into_the_turns(review: Review, layout: Layout) -> Iterator[Way[ShadeSpec]]:
    yield _in_the_turns(review, layout)
    for cover in (HoleCover.SECOND_LAYER, HoleCover.COVER):
        yield by_change(review.spec, review.system, HOLE_WAYS[cover], making__holes=cover)


def _in_the_turns(review: Review, layout: Layout) -> Way[ShadeSpec]:
    """Widen the turns to hold the outer columns, and leave the others out; rods carry the cloth."""
    edge = layout.columns.edge_distance
    turn = derived(
        "side turn",
        review.marked(edge.value + review.habits.seam_to_column.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The outer columns at {0}, and {1} of cloth beyond their stitches.",
        edge,
        review.habits.seam_to_column,
    )
    return by_change(
        review.spec,
        review.system,
        "Sew rings in the side turns alone: turn {0} in, with two columns and rods at the rows.",
        turn,
        making__holes=HoleCover.SIDE_TURNS,
        design__side_turn=turn.value,
        design__column_count=LEAST_COLUMNS,
        design__rods=RodPlace.ROWS,
    )


def _interlining_bare(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Ask for the lining that an interlining is to be hidden by."""
    if review.chosen.interlining is not None and review.chosen.lining is None:
        yield draft(
            Severity.ASK,
            "interlining-bare",
            "The shade is interlined but has no lining: the interlining shows from the window.",
            ways=(
                by_hand("Choose a lining."),
                by_change(
                    review.spec,
                    review.system,
                    "Leave the interlining out.",
                    materials__interlining="",
                ),
            ),
            stage=Stage.ORDER,
        )
