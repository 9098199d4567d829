"""What the roll on the table says against the order: repeat, width, bow, flaws."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import (
    BOW_AND_SKEW,
    FLAW_SPACING,
    REPEAT_DIFFERENCE,
    SUPPLIERS_BOW,
)
from foldwright.core.facts.records import Cloth
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, measured, supplied
from foldwright.core.why.trying import Draft, by_change, by_hand

L = Figure[Length]


def draft_roll_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what each roll in hand says against the order; nothing is replaced once it is cut."""
    face = review.chosen.face
    for roll in review.rolls if face else ():
        if face is not None and roll.cloth != face.name:
            yield from _another_cloth(review, roll)
        elif face is not None:
            sheet = review.company.sheet or face
            yield from _repeat(review, sheet, roll)
            yield from _width(review, sheet, roll)
            yield from _bow(roll)
            yield from _flaws(roll)


def _another_cloth(review: Review, roll: ReceivedRoll) -> Iterator[Draft[ShadeSpec]]:
    free = by_change(
        review.spec, review.system, "Cut it from the rolls of its own cloth.", cutting__roll=""
    )
    yield draft(
        Severity.STOP,
        "roll-of-another-cloth",
        "The face is to be cut from roll “{0}”, which is {1}.",
        chosen("roll", roll.name, Unit.WORD),
        chosen("cloth of the roll", roll.cloth, Unit.WORD),
        ways=(free, by_hand("Or choose the cloth of that roll for the face.")),
        stage=Stage.TABLE,
    )


def _repeat(review: Review, face: Cloth, roll: ReceivedRoll) -> Iterator[Draft[ShadeSpec]]:
    if roll.vertical_repeat is None or face.vertical_repeat is None:
        return
    found = measured(f"repeat on roll “{roll.name}”", roll.vertical_repeat)
    sheet = supplied("vertical repeat", face.vertical_repeat, Unit.LENGTH, face.name)
    off = derived(
        "repeat off its sheet",
        abs(found.value - sheet.value),
        Unit.LENGTH,
        "{0} on the roll and {1} on the sheet.",
        found,
        sheet,
    )
    if off.value > REPEAT_DIFFERENCE.value:
        drift = _drift(review, off, sheet)
        yield draft(
            Severity.STOP,
            "repeat-differs",
            "The repeat on the roll is {2} and {3} on its sheet: {0} off, where {1} is usual, and"
            " {4} over the drop.",
            off,
            REPEAT_DIFFERENCE,
            found,
            sheet,
            drift,
            ways=(
                by_hand("Cut by {0}, as the cuts are planned, if the client will have it.", found),
                by_hand("Or send the roll back before anything is cut."),
            ),
            stage=Stage.TABLE,
        )


def _drift(review: Review, off: L, sheet: L) -> L:
    """Add the difference up over the repeats of one drop."""
    drop = review.size.drop.value if review.size else sheet.value
    repeats = derived(
        "repeats in the drop", float(drop / sheet.value), Unit.RATIO, "The drop over {0}.", sheet
    )
    value = Length(round(off.value.nanometres * repeats.value))
    return derived("drift", value, Unit.LENGTH, "{0} at each of {1} repeats.", off, repeats)


def _width(review: Review, sheet: Cloth, roll: ReceivedRoll) -> Iterator[Draft[ShadeSpec]]:
    """Find a face that takes more widths of its rolls than it would by the sheet."""
    ordered = review.laid_out(review.spec.design, replace(review.chosen, face=sheet))
    width = roll.usable_width
    if width is None or width >= sheet.usable_width or ordered is None or review.layout is None:
        return
    now, then = review.layout.widths.widths, ordered.widths.widths
    if now.value > then.value:
        yield draft(
            Severity.STOP,
            "roll-too-narrow",
            "The roll is {0} wide where it can be used and {1} on its sheet: the face now takes {2}"
            " widths, not {3}.",
            measured(f"usable width of roll “{roll.name}”", width),
            supplied("usable width of the face", sheet.usable_width, Unit.LENGTH, sheet.name),
            now,
            then,
            ways=(
                by_hand("Show the client where the seams fall before anything is cut."),
                by_hand("Or send the roll back before anything is cut."),
            ),
            stage=Stage.TABLE,
        )


def _bow(roll: ReceivedRoll) -> Iterator[Draft[ShadeSpec]]:
    if roll.bow_or_skew is not None and roll.bow_or_skew > BOW_AND_SKEW.value:
        yield draft(
            Severity.ASK,
            "cloth-off-square",
            "The cloth runs off square by {0} across its width; beyond {1} the pattern climbs.",
            measured(f"bow or skew of roll “{roll.name}”", roll.bow_or_skew),
            BOW_AND_SKEW,
            ways=(
                by_hand("Pull it straight damp, and measure again; cut a print to its print."),
                by_hand("Or send it back: suppliers allow up to {0}.", SUPPLIERS_BOW),
            ),
            stage=Stage.TABLE,
            source=SUPPLIERS_BOW.source,
        )


def _flaws(roll: ReceivedRoll) -> Iterator[Draft[ShadeSpec]]:
    if not roll.flaws or roll.length is None:
        return
    between = derived(
        "cloth for each flaw",
        roll.length / roll.flaws,
        Unit.LENGTH,
        "{0} of cloth with {1} flaws.",
        measured(f"length of roll “{roll.name}”", roll.length),
        chosen("flaws", roll.flaws, Unit.COUNT),
    )
    if between.value < FLAW_SPACING.value:
        yield draft(
            Severity.ASK,
            "too-many-flaws",
            "The roll has a flaw in every {0}; one in {1} is usual.",
            between,
            FLAW_SPACING,
            ways=(
                by_hand("Tag each flaw with its distance from the start, and cut round them."),
                by_hand("Or send the roll back before anything is cut."),
            ),
            stage=Stage.TABLE,
        )
