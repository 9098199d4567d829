"""Whether a hand reaches the bar, and finds it free."""

from __future__ import annotations

import math
from collections.abc import Iterator

from foldwright.core.check.drafting import draft
from foldwright.core.check.plan import ShadeSpec
from foldwright.core.check.review import Review
from foldwright.core.facts.balancing import LEAST_RAISE, RAISE_STEP
from foldwright.core.facts.order_limits import PULL_BESIDE_HANDLE, REACH
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.making import derived, measured
from foldwright.core.why.trying import Draft, Way, by_change, by_hand

L = Figure[Length]


def draft_reach_checks(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Draft what keeps a hand from the bar; nothing where a chain or a motor moves the shade."""
    if review.spec.lift.kind is LiftKind.SPRING:
        yield from _too_high(review)
        yield from _at_the_handle(review)


def _too_high(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a raised bar that nobody reaches without a stool."""
    rail, top = review.plan.headrail, review.top_above_floor()
    if rail is None or top is None or review.spec.lift.wand:
        return
    height = derived(
        "raised bar above the floor",
        top.value - rail.hem_at_stop.value,
        Unit.LENGTH,
        "The top {0} above the floor, and the bottom edge {1} below it when raised.",
        top,
        rail.hem_at_stop,
    )
    if height.value > REACH.value:
        yield draft(
            Severity.ASK,
            "bar-out-of-reach",
            "Raised, the bar hangs {0} above the floor; above {1} it is reached from a stool.",
            height,
            REACH,
            ways=_reached(review, height),
            stage=Stage.HEADRAIL,
        )


def _reached(review: Review, height: L) -> Iterator[Way[ShadeSpec]]:
    wand = derived(
        "length of the wand",
        review.marked(height.value - REACH.value, Rounding.CUT_OVERSIZE),
        Unit.LENGTH,
        "The bar at {0} less the reach {1}.",
        height,
        REACH,
        rounding=Rounding.CUT_OVERSIZE,
    )
    sentence = "Hang a pull wand from the bar, {0} long or more."
    yield by_change(review.spec, review.system, sentence, wand, lift__wand=True)
    yield from _raise_less(review, wand)
    yield by_hand("Or take a motor.")


def _raise_less(review: Review, missing: L) -> Iterator[Way[ShadeSpec]]:
    """Stop the raise where the bar is still in reach, as far as that is worth having."""
    if review.layout is None:
        return
    travel = review.layout.travel
    now = review.spec.lift.raise_limit_share or 1.0
    steps = math.floor((now - float(missing.value / travel.value)) / RAISE_STEP.value + 1e-9)
    share = round(steps * RAISE_STEP.value, 2)
    if share >= LEAST_RAISE.value:
        figure = derived(
            "share of the raise in reach",
            share,
            Unit.SHARE,
            "The travel {0} less {1}, rounded down to {2}.",
            travel,
            missing,
            RAISE_STEP,
        )
        sentence = "Raise it to {0} of the travel only."
        yield by_change(review.spec, review.system, sentence, figure, lift__raise_limit_share=share)


def _at_the_handle(review: Review) -> Iterator[Draft[ShadeSpec]]:
    """Find a bar that comes to rest before a lock or a handle of the window."""
    up, size = review.spec.opening.obstruction_above_sill, review.size
    if up is None or size is None or size.sill_gap is None:
        return
    handle = measured("handle above the sill", up)
    off = derived(
        "bar to the handle, fully down",
        abs(size.sill_gap.value - handle.value),
        Unit.LENGTH,
        "The bar comes down to {0} above the sill, and the handle stands {1} above it.",
        size.sill_gap,
        handle,
    )
    if off.value < PULL_BESIDE_HANDLE.value:
        yield draft(
            Severity.NOTE,
            "bar-at-handle",
            "Fully down, the bar ends {0} from a handle of the window; a hand wants {1}.",
            off,
            PULL_BESIDE_HANDLE,
            ways=(
                by_hand("Sew the pull where the handle is not, or hang a tassel below the bar."),
            ),
            stage=Stage.HEADRAIL,
        )
