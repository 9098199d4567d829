"""Whether the face can be cut as it is meant: turned, matched, with its shrinkage."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import NATURAL_SHRINKAGE, SHRINKAGE_APART
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, by_change, by_hand

L = Figure[Length]

TINY = 1e-9  # decimal shares that are one per cent apart differ from it by less


def draft_cutting_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what stands against cutting the face as it is meant; nothing until it is chosen."""
    face = review.chosen.face
    if face is None:
        return
    yield from _turned(review, face)
    yield from _half_drop(review, face)
    yield from _untested(review, face)
    yield from _apart(review)


def _turned(review: Review, face: Cloth) -> Iterator[Draft[ShadeSpec]]:
    if not review.spec.cutting.turned:
        return
    upright = by_change(review.spec, review.system, "Cut it along the roll.", cutting__turned=False)
    if face.directional:
        yield draft(
            Severity.STOP,
            "turned-pattern",
            "The face has an up and a down, and is to be cut across the roll: it would lie on its"
            " side.",
            ways=(upright, by_hand("Or take a cloth that is printed across the roll.")),
            stage=Stage.ORDER,
        )
    cut = review.face_cut
    width = supplied("usable width of the face", face.usable_width, Unit.LENGTH, face.name)
    if cut is not None and cut.length.value > width.value:
        yield draft(
            Severity.STOP,
            "turned-too-long",
            "Cut across the roll the face would need {0}, and the roll is {1} wide.",
            cut.length,
            width,
            ways=(upright, by_hand("Or take a cloth at least {0} wide.", cut.length)),
            stage=Stage.ORDER,
        )


def _half_drop(review: Review, face: Cloth) -> Iterator[Draft[ShadeSpec]]:
    """Ask for the shifted second width, where the pattern drops and the face has seams."""
    joined = review.layout is not None and review.layout.widths.widths.value > 1
    planned = review.spec.cutting.half_drop_planned
    if not face.half_drop or face.vertical_repeat is None or not joined or planned:
        return
    repeat = supplied("vertical repeat", face.vertical_repeat, Unit.LENGTH, face.name)
    shift = derived("half a repeat", repeat.value / 2, Unit.LENGTH, "Half of {0}.", repeat)
    yield draft(
        Severity.ASK,
        "half-drop",
        "The pattern drops by half a repeat, and the face has seams: the next width must begin {0}"
        " further on, or the join does not meet.",
        shift,
        ways=(
            by_change(
                review.spec,
                review.system,
                "It is ordered and cut so: {0} more for each shade.",
                shift,
                cutting__half_drop_planned=True,
            ),
            by_hand("Or take a cloth wide enough for one width."),
        ),
        stage=Stage.ORDER,
        source=Source(id="curtain-book", clause="p. 119"),
    )


def face_shrinkage(review: Review) -> float | None:
    """Give what the face loses in steam as the shop tested it, or None."""
    typed = review.spec.design.shrinkage
    tests = [roll.steam_shrinkage for roll in review.rolls if roll.steam_shrinkage is not None]
    return typed if typed is not None else max(tests, default=None)


def _untested(review: Review, face: Cloth) -> Iterator[Draft[ShadeSpec]]:
    if not face.natural or review.size is None or face_shrinkage(review) is not None:
        return
    drop = review.size.drop
    rise = derived(
        "rise of the hem",
        Length.metres(drop.value.in_metres * NATURAL_SHRINKAGE.value),
        Unit.LENGTH,
        "{1} of the drop {0}.",
        drop,
        NATURAL_SHRINKAGE,
    )
    yield draft(
        Severity.ASK,
        "shrinkage-untested",
        "The face is of natural fibre and nobody has steamed a piece: at {1} its hem would rise"
        " by {0}.",
        rise,
        NATURAL_SHRINKAGE,
        ways=(
            by_change(
                review.spec,
                review.system,
                "Cut for {0} until it is tested.",
                NATURAL_SHRINKAGE,
                design__shrinkage=NATURAL_SHRINKAGE.value,
            ),
            by_hand("Press a marked square with the iron to be used, and type what it loses."),
        ),
        stage=Stage.TABLE,
        source=NATURAL_SHRINKAGE.source,
    )


def _apart(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a lining that shrinks otherwise than its face."""
    face, lining = face_shrinkage(review), review.spec.cutting.lining_shrinkage
    if face is None or lining is None or review.size is None:
        return
    tested = (
        chosen("shrinkage of the face", face, Unit.SHARE),
        chosen("shrinkage of the lining", lining, Unit.SHARE),
    )
    apart = derived("shrinkage apart", abs(face - lining), Unit.SHARE, "{0} against {1}.", *tested)
    if apart.value > SHRINKAGE_APART.value + TINY:
        bag = derived(
            "length that bags",
            Length.metres(review.size.drop.value.in_metres * apart.value),
            Unit.LENGTH,
            "{1} of the drop {0}.",
            review.size.drop,
            apart,
        )
        yield draft(
            Severity.ASK,
            "shrinks-apart",
            "Face and lining shrink {0} apart, more than {1}: one hangs in a bag of {2}.",
            apart,
            SHRINKAGE_APART,
            bag,
            ways=(by_hand("Steam both well before they are cut, and test again."),),
            stage=Stage.TABLE,
        )
