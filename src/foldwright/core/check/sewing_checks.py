"""What goes wrong at the needle: rows in a band, too much cloth in a turn."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.check.row_search import nearest_skirt
from foldwright.core.design.layout import Layout
from foldwright.core.facts.order_limits import DOUBLE_HEM_LAYERS
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_sewing_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what goes wrong at the needle."""
    yield from _band(review)
    yield from _interlining_in_hem(review)
    yield from _too_thick(review)


def _band(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Hold a band across the face against the rows, and against the skirt that shows it."""
    height = review.spec.making.band_height
    if height is None or review.layout is None:
        return
    lower = chosen("lower edge of the band", review.spec.making.band_above_hem or ZERO, Unit.LENGTH)
    upper = derived(
        "upper edge of the band",
        lower.value + height,
        Unit.LENGTH,
        "{0} above the bottom edge, and {1} high.",
        lower,
        chosen("height of the band", height, Unit.LENGTH),
    )
    yield from _row_on_band(review, lower, upper)
    yield from _band_hidden(review, upper)


def _row_on_band(review: Review, lower: L, upper: L) -> Iterator[Draft[ShadeSpec]]:
    rows = _rows_between(review.layout, lower.value, upper.value)
    if rows:
        yield draft(
            Severity.STOP,
            "row-on-band",
            "A ring row lies at {0}, on the band between {1} and {2}: the needle breaks, and the"
            " band is seen cut.",
            rows[0],
            lower,
            upper,
            ways=_off_the_band(review, lower.value, upper.value),
            stage=Stage.ORDER,
        )


def _rows_between(layout: Layout | None, lower: Length, upper: Length) -> list[L]:
    marks = layout.rows.marks if layout else ()
    return [mark for mark in marks if lower <= mark.value <= upper]


def _off_the_band(review: Review, lower: Length, upper: Length) -> Iterator[Way[ShadeSpec]]:
    yield from nearest_skirt(review, lambda layout: not _rows_between(layout, lower, upper))
    yield by_hand("Or sew the band after the rings, or move it between two rows.")


def _band_hidden(review: Review, upper: L) -> Iterator[Draft[ShadeSpec]]:
    """Find a band at the hem that disappears under the folds."""
    if review.layout is None or upper.value <= review.layout.rows.skirt.value:
        return
    if upper.value > review.layout.rows.first_row.value:
        return
    skirt = review.marked(upper.value, Rounding.CUT_OVERSIZE)
    figure = derived("skirt", skirt, Unit.LENGTH, "{0}, rounded up to a mark.", upper)
    yield draft(
        Severity.NOTE,
        "band-hidden",
        "The band reaches {0} above the bottom edge, and the raised folds leave {1} to be seen.",
        upper,
        review.layout.rows.skirt,
        ways=(
            by_change(
                review.spec, review.system, "Take a skirt of {0}.", figure, design__skirt=skirt
            ),
            by_hand("Or show the client how much of it stays hidden."),
        ),
        stage=Stage.ORDER,
    )


def _interlining_in_hem(review: Review) -> Iterator[Draft[ShadeSpec]]:
    if review.chosen.interlining is not None and review.spec.making.interlining_in_hem:
        yield draft(
            Severity.NOTE,
            "interlining-in-hem",
            "The interlining is to go into the hem turn: the hem gets a lump, and hangs crooked.",
            ways=(
                by_change(
                    review.spec,
                    review.system,
                    "Cut it off at the fold of the hem.",
                    making__interlining_in_hem=False,
                ),
            ),
            stage=Stage.ORDER,
        )


def _too_thick(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a hem thicker than the shop's machine sews; unmeasured cloth says nothing."""
    face = review.chosen.face
    if face is None or face.thickness is None:
        return
    layers = [_thickness("face", face, face.thickness)]
    for name, cloth in _inner(review):
        if cloth.thickness is not None:
            layers.append(_thickness(name, cloth, cloth.thickness))
    hem = derived(
        "thickness at the hem",
        layers[0].value * DOUBLE_HEM_LAYERS.value + sum((x.value for x in layers[1:]), ZERO),
        Unit.LENGTH,
        "{1} layers of the face at {0}"
        + "".join(f", and {{{number}}}" for number in range(2, len(layers) + 1))
        + ".",
        layers[0],
        DOUBLE_HEM_LAYERS,
        *layers[1:],
    )
    if hem.value > review.habits.needle_capacity.value:
        yield draft(
            Severity.NOTE,
            "too-thick-to-sew",
            "At the hem {0} of cloth lie under the needle; the machine sews {1}.",
            hem,
            review.habits.needle_capacity,
            ways=(by_hand("Sew the hem and its corners by hand, and grade the layers."),),
            stage=Stage.ORDER,
        )


def _inner(review: Review) -> Iterator[tuple[str, Cloth]]:
    if review.chosen.lining is not None:
        yield "lining", review.chosen.lining
    if review.chosen.interlining is not None and review.spec.making.interlining_in_hem:
        yield "interlining", review.chosen.interlining


def _thickness(name: str, cloth: Cloth, thickness: Length) -> L:
    return supplied(f"thickness of the {name}", thickness, Unit.LENGTH, cloth.name)
