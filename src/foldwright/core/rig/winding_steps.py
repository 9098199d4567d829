"""Bench steps that wind and hang: safety wraps, up-stop, pretension, lowest lock, limits."""

from __future__ import annotations

from foldwright.core.facts.bench import ADJUSTING_STEP
from foldwright.core.quantity.length import ZERO
from foldwright.core.rig import cautions
from foldwright.core.rig.headrail import Step
from foldwright.core.rig.parts import Parts, known, step


def safety_wraps(parts: Parts) -> Step:
    """Wind the safety wraps with the shade fully down.

    Takes: the parts.

    Gives: the step.

    Source: common practice; capstan-article for what three wraps hold.

    >>> from foldwright.core.rig.example import PARTS
    >>> safety_wraps(PARTS).title
    'safety wraps'
    """
    laid = (
        "each on the one before"
        if parts.wraps.is_tape
        else "side by side from the clip towards its column"
    )
    return step(
        "safety wraps",
        f"With the shade fully down wind {{0}} of every {parts.wraps.noun} on the tube,"
        f" {laid}, turning it {{1}} as seen at the {{2}} end.",
        parts.wraps.safety,
        parts.end.raising_figure,
        parts.end.side_figure,
        reason="They never come off: their friction takes the load off the clip. They are no"
        " turns of the spring.",
    )


def up_stop(parts: Parts) -> Step:
    """Set the up-stop.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> up_stop(PARTS).title
    'up-stop'
    """
    return step(
        "up-stop",
        "On the table raise the shade by turning the tube {2}, watch the wraps lie down, and set"
        " the stop with the lowest ring row {0} below the top of the board; the bottom edge is then"
        " at {1}.",
        parts.up_stop,
        parts.hem_at_stop,
        parts.balance.travel_turns,
        reason="Without a stop the lift pulls the top rings into the headrail and tears them off.",
    )


def pretension(parts: Parts) -> Step:
    """Wind the spring at the up-stop, before the shade is hung.

    Takes: the parts.

    Gives: the step; without turns to wind it says that the shade is not ready to be wound.

    Source: common practice for winding at the stop; the turns come from the balance.

    >>> from foldwright.core.rig.example import PARTS
    >>> pretension(PARTS).title
    'pretension'
    """
    if parts.pretension is None:
        return step(
            "pretension",
            "Do not wind: no number of turns is known that lifts this shade within every limit.",
            reason="The findings name what to change first.",
            caution=cautions.WOUND_SPRING,
        )
    return step(
        "pretension",
        "Shade tied at the up-stop, before hanging: from slack wind {0} into the spring, counted"
        " aloud, {3} at a time, turning the fixed shaft {1} as seen at the {2} end. Lock, and"
        " write the number on the sheet." + _energy(parts),
        parts.pretension,
        parts.end.raising_figure,
        parts.end.side_figure,
        ADJUSTING_STEP,
        *known(parts.balance.spring_energy),
        reason="Turns are counted at the up-stop, where the spring is weakest and the load"
        " greatest; lowering the shade adds the turns of travel.",
        caution=cautions.WOUND_SPRING,
    )


def _energy(parts: Parts) -> str:
    return " Fully down it will hold {4}." if parts.balance.spring_energy else ""


def hang(parts: Parts) -> Step:
    """Hang the board on the rig.

    Takes: the parts.

    Gives: the step.

    Source: common practice; osha-1926-1053 for the ladder.

    >>> from foldwright.core.rig.example import PARTS
    >>> hang(PARTS).title
    'hang'
    """
    return step(
        "hang",
        "Hang the board of {0} on the test rig, level, its bar still tied.",
        parts.size.board_length,
        reason="A rig out of level shows as a bar out of level.",
        caution=cautions.LADDER,
    )


def lower(parts: Parts) -> Step:
    """Lower the shade for the first time.

    Takes: the parts.

    Gives: the step.

    Source: derived here.

    >>> from foldwright.core.rig.example import PARTS
    >>> lower(PARTS).title
    'lower'
    """
    return step(
        "lower",
        "Untie the bar and draw it down by hand over {0} of the tube" + _force(parts) + ".",
        parts.balance.travel_turns,
        *known(parts.balance.hand_force_down),
        reason="The spring tightens all the way; it is strongest when the shade is down.",
        caution=cautions.LET_BACK,
    )


def _force(parts: Parts) -> str:
    return "; just above the bottom it pulls back with {1}" if parts.balance.hand_force_down else ""


def lowest_lock(parts: Parts) -> Step | None:
    """Set the lowest position at which the lock catches.

    Takes: the parts.

    Gives: the step, or None where there is no lock.

    Source: derived here; the quarter turn is common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> lowest_lock(PARTS).title
    'lowest lock'
    """
    if parts.lowest_lock.value <= ZERO:
        return None
    return step(
        "lowest lock",
        "Let the lock catch with the bottom edge {0} above fully down, no lower: the {1} of release"
        " pull and a tooth of the ratchet are then left.",
        parts.lowest_lock,
        parts.release,
        reason="Letting go takes a further pull; with the cloth taut there is none, and the shade"
        " could not be raised again.",
    )


def chain(parts: Parts) -> Step:
    """Fit the chain loop.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> chain(PARTS).title
    'chain'
    """
    pull = parts.balance.chain_pull
    return step(
        "chain",
        "Fit the loop at the {0} end with its stops at fully down and at the up-stop, and its"
        " tension device" + ("; the pull should be about {1}." if pull else "."),
        parts.end.side_figure,
        *known(pull),
        reason="A loop held taut can neither be raised into a noose nor run the shade past its"
        " stops.",
        caution=cautions.CHAIN,
    )


def limits(parts: Parts) -> Step:
    """Set the motor's limits.

    Takes: the parts.

    Gives: the step.

    Source: common practice.

    >>> from foldwright.core.rig.example import PARTS
    >>> limits(PARTS).title
    'limits'
    """
    return step(
        "limits",
        "Set the lower limit at fully down and the upper one {0} higher, with the bottom edge {1}"
        " below the top" + ("; the way up should take {2}." if parts.balance.motor_time else "."),
        parts.balance.travel_turns,
        parts.hem_at_stop,
        *known(parts.balance.motor_time),
        reason="The motor counts turns of the tube; the safety wraps are not among them.",
        caution=f"{cautions.MAINS} {cautions.MOVING}",
    )
