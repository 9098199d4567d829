"""Bench steps that test: handle, level, release, hand force, cycles."""

from __future__ import annotations

from foldwright.core.facts.bench import BAR_LEVEL, TEST_CYCLES
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.length import ZERO
from foldwright.core.rig import cautions
from foldwright.core.rig.headrail import Step
from foldwright.core.rig.parts import Parts, known, step
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen


def handle(parts: Parts) -> Step:
    """Fix the pull handle.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> handle(PARTS).title
    'handle'
    """
    return step(
        "handle",
        "Fix the pull handle to the bar {0} from its left edge, seen from the back.",
        parts.handle,
        reason="A pull off the centre tilts the bar and loosens the cords of the other side.",
    )


def level(parts: Parts) -> Step:
    """Level the bar.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> level(PARTS).title
    'level'
    """
    return step(
        "level",
        "Check the bar at a quarter, a half, three quarters and fully up: level within {0}. Mend"
        f" by {parts.wraps.noun} length or {parts.wraps.culprit}, never by turns.",
        BAR_LEVEL,
        reason="Turns lift every column alike; only a difference between columns tilts the bar.",
        caution=cautions.CORDS,
    )


def release(parts: Parts) -> Step | None:
    """Try the release from the lowest lock position.

    Takes: the parts.

    Gives: the step, or None where nothing is released.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> release(PARTS).title
    'release'
    """
    if parts.release.value <= ZERO:
        return None
    return step(
        "release",
        "From the lowest lock, {0} above fully down, pull {1} further: the lock lets go before the"
        " cloth is taut. Guide the bar up.",
        parts.lowest_lock,
        parts.release,
        reason="A shade that cannot be let go when down cannot be used.",
        caution=f"{cautions.RELEASE} {cautions.LET_BACK}",
    )


def hand_force(parts: Parts) -> Step:
    """Weigh the hand force at the bar.

    Takes: the parts.

    Gives: the step with the expected force, where the balance knows it, and the limit.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> hand_force(PARTS).title
    'hand force'
    """
    expected = parts.balance.hand_force_down
    ask = "Hook a scale to the handle and draw slowly: at most {0} down"
    return step(
        "hand force",
        ask + ("; {1} is expected just above the bottom." if expected else "."),
        _limit(parts),
        *known(expected),
        reason="The spring is strongest and the load smallest when the shade is down.",
        caution=cautions.RELEASE,
    )


def _limit(parts: Parts) -> Figure[float]:
    asked = parts.choices.hand_force_limit_n
    if asked is None:
        return parts.habits.hand_force_limit_n
    return chosen("greatest hand force", asked, Unit.FORCE)


def cycles(parts: Parts) -> Step:
    """Run the shade up and down.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> cycles(PARTS).title
    'cycles'
    """
    watch = "no tape off its roll" if parts.wraps.is_tape else "no wrap climbing on another"
    sprung = parts.kind is LiftKind.SPRING
    return step(
        "cycles",
        f"Run {{0}} full cycles: {watch}, none off a ring, the stop clear, the bar level.",
        TEST_CYCLES,
        reason="A fault of winding shows only after some cycles.",
        caution=cautions.LET_BACK if sprung else cautions.CORDS,
    )
