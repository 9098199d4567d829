"""What a shade must share with the others: one lot, one nap, one start of the pattern, one roll."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.check.review import Review
from foldwright.core.facts.order_limits import ROLL_MARGIN
from foldwright.core.pieces.matching import PatternAlong
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived, measured
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, by_change, by_hand

L = Figure[Length]


def draft_company_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what sets a shade apart from those before it in the job, told at the later one."""
    if review.chosen.face is None:
        return
    for other in review.company.earlier:
        if _same_room(review.plan, other) and _same_cloth(review.plan, other):
            yield from _lots(review, other)
            yield from _naps(review, other)
            yield from _motifs(review, other)
    yield from _roll_short(review)


def _same_room(one: ShadePlan, other: ShadePlan) -> bool:
    return bool(one.spec.room.strip()) and one.spec.room.strip() == other.spec.room.strip()


def _same_cloth(one: ShadePlan, other: ShadePlan) -> bool:
    return one.spec.materials.face == other.spec.materials.face


def _lots(review: Review, other: ShadePlan) -> Iterator[Draft[ShadeSpec]]:
    own, others = _lot_of(review, review.spec), _lot_of(review, other.spec)
    if own and others and own != others:
        yield draft(
            Severity.STOP,
            "lots-mixed",
            f"This shade is cut from lot {{0}}, and “{other.spec.tag}” in the same room from lot"
            " {1}: the difference is seen.",
            chosen("lot of this shade", own, Unit.WORD),
            chosen("lot of the other", others, Unit.WORD),
            ways=(
                by_change(
                    review.spec,
                    review.system,
                    f"Cut it from roll “{other.spec.cutting.roll}” as well.",
                    cutting__roll=other.spec.cutting.roll,
                ),
                by_hand("Or order all of the room anew from one lot."),
            ),
            stage=Stage.TABLE,
            source=Source(id="check-before-cutting-page"),
        )


def _lot_of(review: Review, spec: ShadeSpec) -> str:
    rolls = (roll for roll in review.company.rolls if roll.name == spec.cutting.roll)
    return next((roll.lot.strip() for roll in rolls), "")


def _naps(review: Review, other: ShadePlan) -> Iterator[Draft[ShadeSpec]]:
    own, others = review.spec.cutting.nap, other.spec.cutting.nap
    if own is not None and others is not None and own is not others:
        yield draft(
            Severity.STOP,
            "naps-mixed",
            f"The pile of this shade runs {{0}}, and that of “{other.spec.tag}” in the same room"
            " {1}: they look like two colours.",
            chosen("nap of this shade", own.value, Unit.WORD),
            chosen("nap of the other", others.value, Unit.WORD),
            ways=(
                by_change(
                    review.spec, review.system, f"Run it {others.value}.", cutting__nap=others
                ),
                by_hand("Or turn the other one, if it is not cut yet."),
            ),
            stage=Stage.TABLE,
        )


def _motifs(review: Review, other: ShadePlan) -> Iterator[Draft[ShadeSpec]]:
    """Find a motif that stands elsewhere in its repeat than on the shade before."""
    face = review.chosen.face
    if face is None or face.vertical_repeat is None:
        return
    if review.spec.cutting.pattern_along is not other.spec.cutting.pattern_along:
        yield from _motif_ends(review, other)
    elif review.spec.cutting.pattern_along is PatternAlong.HEM:
        yield from _motif_heights(review, other, face.vertical_repeat)


def _motif_ends(review: Review, other: ShadePlan) -> Iterator[Draft[ShadeSpec]]:
    """Find a motif counted from the other end than on the shade before."""
    own, others = review.spec.cutting.pattern_along, other.spec.cutting.pattern_along
    yield draft(
        Severity.ASK,
        "motif-ends-mixed",
        f"The motif is placed {{0}} here, and {{1}} on “{other.spec.tag}” in the same room: only by"
        " chance do they stand at one height.",
        chosen("motif of this shade", own.value, Unit.WORD),
        chosen("motif of the other", others.value, Unit.WORD),
        ways=(
            by_change(
                review.spec,
                review.system,
                f"Place it {others.value} as well.",
                cutting__pattern_along=others,
            ),
            by_hand("Or let the client see both drawn before they are cut."),
        ),
        stage=Stage.ORDER,
    )


def _motif_heights(review: Review, other: ShadePlan, repeat: Length) -> Iterator[Draft[ShadeSpec]]:
    """Find a motif at another height over the bottom edge than on the shade before."""
    own, others = review.spec.cutting.motif_above_hem, other.spec.cutting.motif_above_hem
    if own is None or others is None:
        return
    apart = Length((own - others).nanometres % repeat.nanometres)
    if apart != ZERO:
        there = chosen("motif of the other", others, Unit.LENGTH)
        yield draft(
            Severity.STOP,
            "motifs-differ",
            f"The motif stands {{0}} above the bottom edge here, and {{1}} on “{other.spec.tag}” in"
            " the same room: they are to look alike.",
            chosen("motif of this shade", own, Unit.LENGTH),
            there,
            ways=(
                by_change(
                    review.spec,
                    review.system,
                    "Centre it {0} above the bottom edge as well.",
                    there,
                    cutting__motif_above_hem=others,
                ),
                by_hand("Or let the client see both drawn before they are cut."),
            ),
            stage=Stage.ORDER,
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Cut:
    """The face of one shade as it comes off the roll."""

    tag: str
    length: L  # of all its widths together, each begun at the same place of the repeat


def _roll_short(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find the shade for which the cloth in hand runs out, cut in the order of the job."""
    in_hand, own = _in_hand(review), _cut_of(review.plan)
    if in_hand is None or own is None:
        return
    before = [
        cut
        for other in review.company.earlier
        if _same_supply(review.plan, other) and (cut := _cut_of(other))
    ]
    needed = _together([*before, own])
    left = derived(
        "cloth left over",
        in_hand.value - needed.value,
        Unit.LENGTH,
        "{0} in hand less {1} for this shade and those before it.",
        in_hand,
        needed,
    )
    if left.value < ROLL_MARGIN.value:
        missing = derived(
            "cloth to order",
            review.marked(ROLL_MARGIN.value - left.value, Rounding.CUT_OVERSIZE),
            Unit.LENGTH,
            "The spare wanted {0} less the {1} that is left.",
            ROLL_MARGIN,
            left,
            rounding=Rounding.CUT_OVERSIZE,
        )
        yield draft(
            Severity.STOP,
            "roll-short",
            "Cut one after another the shades up to this one leave {0} of {2}; {1} is to be spare.",
            left,
            ROLL_MARGIN,
            in_hand,
            ways=(
                by_hand("Order {0} more of the same lot before anything is cut.", missing),
                by_hand("Or lay out the cuts, which may share a width."),
            ),
            stage=Stage.TABLE,
        )


def _same_supply(one: ShadePlan, other: ShadePlan) -> bool:
    return _same_cloth(one, other) and one.spec.cutting.roll == other.spec.cutting.roll


def _in_hand(review: Review) -> L | None:
    rolls = review.rolls
    if not rolls or any(roll.length is None for roll in rolls):
        return None
    lengths = tuple(_length_of(roll) for roll in rolls)
    if len(lengths) == 1:
        return lengths[0]
    slots = " and ".join(f"{{{number}}}" for number in range(len(lengths)))
    total = sum((length.value for length in lengths), ZERO)
    return derived("cloth in hand", total, Unit.LENGTH, f"{slots}.", *lengths)


def _length_of(roll: ReceivedRoll) -> L:
    return measured(f"length of roll “{roll.name}”", roll.length or ZERO)


def _together(cuts: list[_Cut]) -> L:
    slots = ", ".join(f"{{{number}}} for “{_plain(cut.tag)}”" for number, cut in enumerate(cuts))
    total = sum((cut.length.value for cut in cuts), ZERO)
    lengths = [cut.length for cut in cuts]
    return derived("cloth for these shades", total, Unit.LENGTH, f"{slots}.", *lengths)


def _plain(tag: str) -> str:
    """Take out what a sentence would take for a place to fill."""
    return tag.replace("{", "(").replace("}", ")")


def _cut_of(plan: ShadePlan) -> _Cut | None:
    """Give the cloth of one face, each of its widths begun at the same place of the repeat."""
    face, layout = plan.chosen.face, plan.layout
    if face is None or layout is None or not layout.cuts:
        return None
    length, widths = layout.cuts[0].length, layout.widths.widths
    if face.vertical_repeat is None:
        one = length
    else:
        repeat = chosen("repeat", face.vertical_repeat, Unit.LENGTH)
        repeats = -(-length.value.nanometres // repeat.value.nanometres)
        because = f"{{0}}, up to {repeats} whole repeats of {{1}}."
        one = derived(
            "length off the roll", repeat.value * repeats, Unit.LENGTH, because, length, repeat
        )
    total = derived(
        f"cloth for “{_plain(plan.spec.tag)}”",
        one.value * widths.value,
        Unit.LENGTH,
        "{1} widths of {0}.",
        one,
        widths,
        rounding=Rounding.CUT_OVERSIZE,
        source=Source(id="repeat-newsletter"),
    )
    return _Cut(tag=plan.spec.tag, length=total)
