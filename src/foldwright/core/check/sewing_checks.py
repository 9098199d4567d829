"""What goes wrong at the needle: interlining in the hem, too much cloth in a turn."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import DOUBLE_HEM_LAYERS
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived, supplied
from foldwright.core.why.trying import Draft, by_change, by_hand

L = Figure[Length]


def draft_sewing_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what goes wrong at the needle."""
    yield from _interlining_in_hem(review)
    yield from _too_thick(review)


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
