"""Whether a motif stays whole where the eye rests: at the bottom edge, and at the lowest fold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.check.row_search import nearest_skirt
from foldwright.core.design.layout import Layout
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]

MATCHING = Source(id="curtain-book", clause="p. 119")


def draft_motif_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what cuts a motif in two; nothing until its height and its place are typed."""
    motif = motif_of(review)
    if motif is not None:
        yield from _cut_at_the_hem(review, motif)
        yield from _cut_at_the_fold(review, motif)


@dataclass(frozen=True, kw_only=True, slots=True)
class Motif:
    """A motif that comes back at every repeat."""

    height: Length
    centre: Length  # of any of them over the bottom edge
    repeat: Length

    def crosses(self, line: Length) -> bool:
        """Tell whether a level line runs through one, not merely along its edge.

        Takes: the height of the line over the bottom edge.

        Gives: whether a motif is cut by it.

        Source: derived here.

        >>> rose = Motif(height=Length.mm(200), centre=Length.mm(150), repeat=Length.mm(600))
        >>> rose.crosses(Length.mm(700)), rose.crosses(Length.mm(450))
        (True, False)
        """
        from_centre = (line - self.centre).nanometres % self.repeat.nanometres
        nearest = min(from_centre, self.repeat.nanometres - from_centre)
        return 2 * nearest < self.height.nanometres


def motif_of(review: Review) -> Motif | None:
    """Give the motif of a face, once its height and its place are typed.

    Takes: the shade on review.

    Gives: the motif; None where the face has none, or nobody has said where it stands.

    Source: derived here.
    """
    cutting, face = review.spec.cutting, review.chosen.face
    height, centre = cutting.motif_height, cutting.motif_above_hem
    if height is None or centre is None or face is None or face.vertical_repeat is None:
        return None
    return Motif(height=height, centre=centre, repeat=face.vertical_repeat)


def _cut_at_the_hem(review: Review, motif: Motif) -> Iterator[Draft[ShadeSpec]]:
    """Find a motif that the bottom edge cuts through."""
    if not motif.crosses(Length(0)):
        return
    whole = derived(
        "motif over the bottom edge",
        review.marked(motif.height / 2, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "Half of its height {0}, so that it stands on the edge whole.",
        chosen("height of the motif", motif.height, Unit.LENGTH),
        rounding=Rounding.CUT_OVERSIZE,
    )
    yield draft(
        Severity.ASK,
        "motif-cut",
        "A motif centred {0} above the bottom edge is cut through by it; {1} is the least.",
        chosen("motif over the bottom edge", motif.centre, Unit.LENGTH),
        whole,
        ways=(
            by_change(
                review.spec,
                review.system,
                "Centre it {0} above the bottom edge.",
                whole,
                cutting__motif_above_hem=whole.value,
            ),
            by_hand("Or let the client choose where it is cut."),
        ),
        stage=Stage.ORDER,
        source=MATCHING,
    )


def _cut_at_the_fold(review: Review, motif: Motif) -> Iterator[Draft[ShadeSpec]]:
    """Find a motif that the lowest ring row folds in two: that fold stays in sight when raised."""
    row = review.layout.rows.first_row if review.layout else None
    if row is not None and motif.crosses(row.value):
        yield draft(
            Severity.NOTE,
            "motif-on-fold",
            "The lowest ring row lies at {0} and folds a motif {1} high in two, as the raised"
            " shade shows.",
            row,
            chosen("height of the motif", motif.height, Unit.LENGTH),
            ways=_off_the_motif(review, motif),
            stage=Stage.ORDER,
            source=MATCHING,
        )


def _off_the_motif(review: Review, motif: Motif) -> Iterator[Way[ShadeSpec]]:
    def clear(layout: Layout) -> bool:
        return not motif.crosses(layout.rows.first_row.value)

    yield from nearest_skirt(review, clear)
    yield by_hand("Or show the client the raised shade as it will look.")
