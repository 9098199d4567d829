"""What to turn, which way and how much, when the shade on the rig does not do as it should.

Turns mend what is wrong at all columns alike; a bar that hangs out of level never is.
"""

from __future__ import annotations

import math

from foldwright.core.facts.bench import ADJUSTING_STEP
from foldwright.core.lift.choices import LiftKind, Lock
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.rig.headrail import Adjustment
from foldwright.core.rig.parts import Parts, known
from foldwright.core.rig.sides import DriveEnd, Turning
from foldwright.core.rig.wraps import Wraps
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Status

L = Figure[Length]
N = Figure[float]
W = Figure[str]

NO_STEP = derived(
    "turns at a time",
    0.0,
    Unit.TURN,
    "No number of turns is known that lifts this shade within every limit, so none are wound.",
)


def adjustment_table(parts: Parts) -> tuple[Adjustment, ...]:
    """Say for each symptom on the rig what to change, by how much and at which end.

    Takes: everything the headrail is made of.

    Gives: one line for each symptom that this kind of lift can show.

    Source: common practice; the amounts are derived here.

    >>> from foldwright.core.rig.example import PARTS
    >>> adjustment_table(PARTS)[0].symptom
    'will not rise fully when let go'
    """
    lines = {
        LiftKind.SPRING: _spring_lines,
        LiftKind.CLUTCH: _clutch_lines,
        LiftKind.MOTOR: _motor_lines,
    }[parts.kind]
    return (*lines(parts), _tilted_bar(parts))


def _practice(name: str, words: str, because: str) -> W:
    return fact(name, words, Unit.WORD, because, Status.PRACTICE)


def _spring_lines(parts: Parts) -> tuple[Adjustment, ...]:
    return (
        _will_not_rise(parts),
        *_sinks(parts),
        _flies_up(parts),
        _stops_on_the_way(parts),
        *_cannot_be_let_go(parts),
    )


def _will_not_rise(parts: Parts) -> Adjustment:
    return Adjustment(
        symptom="will not rise fully when let go",
        action=_more_turns(
            parts, "The spring gives out before the top, where the load is greatest."
        ),
        amount=_turns_left(parts),
        end=_winding_end(parts.end, parts.end.raising),
    )


def _sinks(parts: Parts) -> tuple[Adjustment, ...]:
    """Leave it out behind a two-way lock, which blocks sinking too."""
    if parts.choices.lock is Lock.TWO_WAY:
        return ()
    because = "This lock does not block sinking: spring and friction carry the shade alone."
    if parts.choices.lock is Lock.UNKNOWN:
        because = "Behind a one-way lock spring and friction carry the shade alone; a two-way lock"
        because += " that lets it sink wants mending, not turns."
    return (
        Adjustment(
            symptom="sinks from where it was left",
            action=_more_turns(parts, because),
            amount=_turns_left(parts),
            end=_winding_end(parts.end, parts.end.raising),
        ),
    )


def _more_turns(parts: Parts, because: str) -> W:
    words = "more turns"
    if _turns_left(parts).value <= 0:
        words += "; none are left for this shade, so lighten it or change the spring"
    return _practice("what to do", words, because)


def _fewer_turns(parts: Parts, because: str) -> W:
    words = "fewer turns, or a heavier bar"
    if _turns_to_spare(parts).value <= 0:
        words = "fewer turns would no longer lift it: a heavier bar or a softer spring"
    return _practice("what to do", words, because)


def _flies_up(parts: Parts) -> Adjustment:
    return Adjustment(
        symptom="flies up, will not stay down, or pulls hard",
        action=_fewer_turns(parts, "The spring has more in it than load and friction take up."),
        amount=_turns_to_spare(parts),
        end=_winding_end(parts.end, parts.end.raising.opposite),
    )


def _stops_on_the_way(parts: Parts) -> Adjustment:
    return Adjustment(
        symptom="stops on the way, guided by hand",
        action=_practice(
            "what to do",
            "look for friction first" + (", then more turns" if _turns_left(parts).value else ""),
            "A ring, cradle or climbed wrap that drags stops it as too few turns do: change one"
            " thing at a time and try again, guided by hand, never let go free.",
        ),
        amount=_turns_left(parts),
        end=_winding_end(parts.end, parts.end.raising),
    )


def _cannot_be_let_go(parts: Parts) -> tuple[Adjustment, ...]:
    if parts.lowest_lock.value <= ZERO:
        return ()
    return (
        Adjustment(
            symptom="cannot be let go when fully down",
            action=_practice(
                "what to do",
                "raise the lowest lock position",
                "With the cloth taut, or the bar on the sill, no further pull is left.",
            ),
            amount=parts.lowest_lock,
            end=_practice(
                "where", "at the bar", "Measured from the bottom edge with the cloth taut."
            ),
        ),
    )


def _winding_end(end: DriveEnd, turning: Turning) -> W:
    return derived(
        "where, and which way",
        f"spring end ({end.side.value}, seen from the room): turn the fixed shaft {turning.value},"
        " looking at that end",
        Unit.WORD,
        "At the {0} end a fixed shaft turned as the tube turns while rising, {1}, winds the spring;"
        " the other way lets it down. Where the maker's method turns the tube instead, it is the"
        " other way round.",
        end.side_figure,
        end.raising_figure,
    )


def _turns_left(parts: Parts) -> N:
    """Give the next step up, never past the spring's own limit."""
    window = parts.balance.window
    if parts.pretension is None:
        return NO_STEP
    if window is None:
        return ADJUSTING_STEP
    most = window.most_turns
    return _step(parts, most, most.value - parts.pretension.value, "most")


def _turns_to_spare(parts: Parts) -> N:
    """Give the next step down, never below what lifts the shade."""
    window = parts.balance.window
    if parts.pretension is None:
        return NO_STEP
    if window is None:
        return ADJUSTING_STEP
    least = window.least_turns
    return _step(parts, least, parts.pretension.value - least.value, "least")


def _step(parts: Parts, limit: N, left: float, word: str) -> N:
    """Give a whole turn, or as much of it as can be wound before the limit."""
    winding_step = parts.habits.winding_step_turns
    windable = max(0, math.floor(left / winding_step.value)) * winding_step.value
    return derived(
        "turns at a time",
        min(ADJUSTING_STEP.value, windable),
        Unit.TURN,
        f"{{2}} at a time, in steps of {{3}}, tried after each: {{0}} are wound and {{1}} is the"
        f" {word} for this shade. Where no step is left, mend the load, not the turns.",
        *known(parts.pretension),
        limit,
        ADJUSTING_STEP,
        winding_step,
    )


def _tilted_bar(parts: Parts) -> Adjustment:
    wraps = parts.wraps
    noun = wraps.noun
    action = _practice(
        "what to do",
        f"{noun} length, or {wraps.culprit}; never turns",
        "Turns lift all columns alike, so they cannot level a bar.",
    )
    where = _practice("where", f"at the {noun} of the high or low side", "Only that one differs.")
    return Adjustment(
        symptom="bar hangs out of level", action=action, amount=_tilt(wraps), end=where
    )


def _tilt(wraps: Wraps) -> L:
    if wraps.is_tape:
        return fact(
            f"difference between {wraps.noun}s",
            ZERO,
            Unit.LENGTH,
            "All tapes start at the same rotation of the tube and are tied off at one length.",
            Status.PRACTICE,
        )
    return derived(
        "rise for each turn of a climbed wrap",
        Length.metres(2 * math.pi * wraps.step.value.in_metres),
        Unit.LENGTH,
        "A cord {0} thick that climbs on its own wraps gains a circle of that radius each turn.",
        wraps.step,
    )


def _clutch_lines(parts: Parts) -> tuple[Adjustment, ...]:
    return (
        Adjustment(
            symptom="pulls hard",
            action=_practice(
                "what to do",
                "a higher gear ratio or a lighter shade",
                "A clutch holds no turns to add.",
            ),
            amount=parts.balance.chain_pull or parts.balance.torque_needed,
            end=_control_end(parts.end),
        ),
        Adjustment(
            symptom="creeps down",
            action=_practice(
                "what to do", "another clutch", "Its brake is worn or too weak for the load."
            ),
            amount=parts.balance.load_raised,
            end=_control_end(parts.end),
        ),
    )


def _motor_lines(parts: Parts) -> tuple[Adjustment, ...]:
    return (
        Adjustment(
            symptom="stops short of the up-stop, or runs past it",
            action=_practice(
                "what to do",
                "set the motor's limits again",
                "The limits count turns of the tube from the lowest position.",
            ),
            amount=parts.balance.travel_turns,
            end=_control_end(parts.end),
        ),
        Adjustment(
            symptom="stalls or trips on the way up",
            action=_practice(
                "what to do",
                "look for friction, then a stronger motor or a lighter shade",
                "A motor near its torque heats and trips.",
            ),
            amount=parts.balance.motor_torque or parts.balance.torque_needed,
            end=_control_end(parts.end),
        ),
    )


def _control_end(end: DriveEnd) -> W:
    return derived(
        "where",
        f"control end ({end.side.value}, seen from the room)",
        Unit.WORD,
        "The control sits at the {0} end.",
        end.side_figure,
    )
