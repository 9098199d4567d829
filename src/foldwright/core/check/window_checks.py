"""Whether the shade leaves the window to its uses: a sash that opens inwards, light, an outlet."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.check.row_search import fewest_more_rows
from foldwright.core.facts.order_limits import DARK_OVERLAP
from foldwright.core.lift.choices import LiftKind
from foldwright.core.measure.opening import Side
from foldwright.core.measure.site import typed_or
from foldwright.core.measure.sizing import above_opening
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_window_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what the shade takes from the window."""
    yield from _sash(review)
    for side in Side:
        yield from _dark(review, side)
    yield from _outlet(review)


def _sash(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a raised shade that hangs into the way of a sash that swings or tilts inwards."""
    below = review.spec.opening.inward_sash_below_head
    free = None if below is None else review.from_top("sash", below)
    if free is None or review.layout is None:
        return
    raised = review.layout.stack.raised_size
    if raised.value > free.value:
        yield draft(
            Severity.STOP,
            "stack-in-sash",
            "The raised shade hangs {0} below its top, and a sash that opens inwards begins at {1}:"
            " the window cannot be opened.",
            raised,
            free,
            ways=_clear_of_sash(review, raised, free),
            stage=Stage.MEASURE,
        )


def _clear_of_sash(review: Review, raised: L, free: L) -> Iterator[Way[ShadeSpec]]:
    yield from fewest_more_rows(review, lambda layout: layout.stack.raised_size.value <= free.value)
    missing = derived(
        "distance higher",
        review.marked(raised.value - free.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The raised shade {0} less the {1} that is free.",
        raised,
        free,
        rounding=Rounding.CUT_OVERSIZE,
    )
    if review.outside:
        above = above_opening(review.site)
        higher = derived(
            "height above",
            review.marked(above.value + missing.value, Rounding.CUT_OVERSIZE),
            Unit.LENGTH,
            "{0} above the opening now, and {1} more.",
            above,
            missing,
            rounding=Rounding.CUT_OVERSIZE,
        )
        sentence = "Begin the shade {0} above the opening."
        yield by_change(review.spec, review.system, sentence, higher, mount__above=higher.value)
    yield by_hand("Hang it {0} higher, outside the opening.", missing)


def _dark(review: Review, side: Side) -> Iterator[Draft[ShadeSpec]]:
    """Find an overlap too small for a shade that is lined against the light."""
    spec, lining = review.spec, review.chosen.lining
    if not review.outside or spec.asked.width is not None or not (lining and lining.blackout):
        return
    typed = getattr(spec.mount, f"overlap_{side.value}")
    overlap = typed_or(f"overlap at the {side.value}", typed, review.habits.outside_overlap)
    if overlap.value < DARK_OVERLAP.value:
        wide = review.marked(DARK_OVERLAP.value, Rounding.CUT_OVERSIZE)
        fields: dict[str, object] = {f"mount__overlap_{side.value}": wide}
        sentence = f"Overlap {{0}} at the {side.value}."
        yield draft(
            Severity.NOTE,
            f"dark-overlap-{side.value}",
            f"The shade is lined against the light, but overlaps only {{0}} at the {side.value};"
            " under {1} light comes round the edge.",
            overlap,
            DARK_OVERLAP,
            ways=(
                by_change(spec, review.system, sentence, DARK_OVERLAP, **fields),
                by_hand("Or show the client the light beside the shade."),
            ),
            stage=Stage.MEASURE,
        )


def _outlet(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a mains motor at the other end than its outlet."""
    spec = review.spec
    outlet, control = spec.opening.outlet_side, spec.mount.control_side
    motor = review.shop.motors.get(spec.lift.motor)
    battery = motor is not None and motor.battery
    if spec.lift.kind is not LiftKind.MOTOR or battery or outlet is None or control is None:
        return
    if outlet is not control:
        yield draft(
            Severity.ASK,
            "outlet-side",
            "The motor's cable comes out at the {0}, and the outlet is at the {1}: it would want an"
            " extension lead.",
            chosen("side of the motor", control.value, Unit.WORD),
            chosen("side of the outlet", outlet.value, Unit.WORD),
            ways=(
                by_change(
                    spec,
                    review.system,
                    f"Put the motor at the {outlet.value}.",
                    mount__control_side=outlet,
                ),
                by_hand("Or have a licensed person move the outlet."),
            ),
            stage=Stage.HEADRAIL,
        )
