"""The window of turns as figures: each limit, the turns to wind, and what would move them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from foldwright.core.facts.balancing import ARM_STEP, BAR_STEP, CLOTH_STEP, RATE_STEP
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.balance import Verdict, Window
from foldwright.core.lift.case_answer import Limit
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.telling_load import LoadFigures, N, spanned
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, supplied

if TYPE_CHECKING:
    from foldwright.core.lift.judging import Judged
    from foldwright.core.lift.span import Span


def window_figures(judged: Judged, loads: LoadFigures) -> Window:
    """Put the window of turns into figures.

    Takes: a spring tried on a shade; the figures of the load.

    Gives: every limit with its range, the turns to wind, and the sensitivities.

    Source: derived here.
    """
    found, rate = judged.window, spring_rate(judged)
    least = _least(judged, loads, rate)
    by_hand = _by_hand(judged, loads, rate)
    limits = {
        Limit.SPRING: _by_spring(judged, loads),
        Limit.HAND: by_hand,
        Limit.SPEED: by_speed(judged, loads) if judged.case.brake is Brake.FITTED else None,
    }
    most = limits[found.limited_above_by] or by_hand
    return Window(
        least_turns=least,
        most_by_spring=limits[Limit.SPRING],
        most_by_hand=by_hand,
        most_by_speed=limits[Limit.SPEED],
        recommended_turns=_recommended(judged, least, most),
        chance=_chance(judged, least, most),
        limited_below_by=_word("what bounds the turns below", found.limited_below_by.value, least),
        limited_above_by=_word("what bounds the turns above", found.limited_above_by.value, most),
        sensitivities=_sensitivities(judged, least),
    )


def spring_rate(judged: Judged) -> N:
    """Give the rate of all springs that turn the tube together."""
    count = judged.order.choices.springs_side_by_side
    if count == 1:
        return judged.reading.rate
    springs = chosen("springs side by side", count, Unit.COUNT)
    return spanned(
        "rate of the springs together",
        judged.window.rate_n_m_turn,
        Unit.RATE,
        "{1} springs of {0} each: side by side their torques add, their turns do not.",
        judged.reading.rate,
        springs,
    )


def _word(name: str, word: str, because_of: Figure[Any]) -> Figure[str]:
    return derived(name, word, Unit.WORD, "It is what gives {0}.", because_of)


def _least(judged: Judged, loads: LoadFigures, rate: N) -> N:
    habits = judged.order.habits
    return spanned(
        "least turns",
        judged.window.least_turns,
        Unit.TURN,
        "To lift it all the way: {0} on the arm {1}, {2} more for friction and {3} for margin, and"
        " {4} of constant friction, over the rate {5} less {6} that the spring loses to itself.",
        loads.load_raised,
        loads.arm_raised,
        habits.load_friction,
        habits.load_margin,
        habits.constant_friction_n_m,
        rate,
        habits.spring_hysteresis,
    )


def _by_spring(judged: Judged, loads: LoadFigures) -> N | None:
    strongest, habits = judged.reading.greatest_turns, judged.order.habits
    if strongest is None or judged.window.most_by_spring is None:
        return None
    return spanned(
        "most turns by the spring",
        judged.window.most_by_spring,
        Unit.TURN,
        "The spring's greatest turns {0} less the travel {1}, the release pull {2} and one ratchet"
        " pitch {3}.",
        strongest,
        loads.travel_turns,
        habits.release_turns,
        habits.lock_pitch_turns,
    )


def hand_limit(judged: Judged) -> N:
    """Give the greatest pull on the bar: as chosen for this shade, else the house's."""
    limit = judged.order.choices.hand_force_limit_n
    if limit is None:
        return judged.order.habits.hand_force_limit_n
    return chosen("greatest pull on the bar", limit, Unit.FORCE)


def _by_hand(judged: Judged, loads: LoadFigures, rate: N) -> N:
    habits = judged.order.habits
    return spanned(
        "most turns by the hand",
        judged.window.most_by_hand,
        Unit.TURN,
        "Fully lowered a pull of {0} and the load {1}, less {2} of it, on the arm {3}, less {4} of"
        " constant friction, hold the rate {5} with {6} more; less the travel {7}.",
        hand_limit(judged),
        loads.load_lowered,
        habits.load_friction,
        loads.arm_lowered,
        habits.constant_friction_n_m,
        rate,
        habits.spring_hysteresis,
        loads.travel_turns,
    )


def by_speed(judged: Judged, loads: LoadFigures) -> N | None:
    """Give the most turns with the spring's own brake; None where it has none."""
    drag, name = judged.spring.speed_brake_n_m_s, judged.spring.name
    if drag is None or judged.window.most_by_speed is None:
        return None
    brake = supplied("drag of the brake in N.m.s", drag, Unit.RATIO, name)
    return spanned(
        "most turns by the speed",
        judged.window.most_by_speed,
        Unit.TURN,
        "What raises {0} on the arm {1} and drives the brake of drag {2} at {3} on arrival,"
        " over the rate {4}.",
        loads.load_raised,
        loads.arm_raised,
        brake,
        judged.order.habits.arrival_speed_limit_m_s,
        spring_rate(judged),
    )


def _recommended(judged: Judged, least: N, most: N) -> N | None:
    found = judged.window
    if found.recommended_turns is None or judged.obstacle:
        return None
    step = judged.order.habits.winding_step_turns
    because = (
        "Enough for 95 of 100 shades like this one, {0:range}, rounded up to steps of {1}; more"
        " turns only add speed, pull and stress."
    )
    if found.verdict is Verdict.NARROW:
        because = (
            "No turns satisfy every limit for certain, {0:range} against {2:range}: these, in"
            " steps of {1}, satisfy them most often."
        )
    name = "turns to wind in at the up-stop"
    return derived(name, found.recommended_turns, Unit.TURN, because, least, step, most)


def _chance(judged: Judged, least: N, most: N) -> N:
    turns = derived(
        "turns with the best chance",
        judged.window.likeliest_turns,
        Unit.TURN,
        "Of all turns that can be wound, these lie between {0} and {1} most often.",
        least,
        most,
    )
    return derived(
        "chance",
        judged.window.chance,
        Unit.SHARE,
        "The share of shades like this one that lift with {0} and stay within every limit.",
        turns,
    )


def _sensitivities(judged: Judged, least: N) -> tuple[N, ...]:
    """Give by how much the least turns would change for a named change of one input."""
    found, answer, case = judged.window, judged.answer, judged.case
    rate = found.rate_n_m_turn.likely
    habits = judged.order.habits
    lost = rate * (1 - habits.spring_hysteresis.value)
    carried = (1 + habits.load_friction.value) * (1 + case.load_margin) / lost
    arm, load = answer.arm_raised_m.likely, answer.load_raised_n.likely
    hardware = case.load.bar_n + sum(case.load.rows_n)
    moved = (
        (RATE_STEP, found.least_turns.likely * (1 / (1 + RATE_STEP.value) - 1)),
        (BAR_STEP, BAR_STEP.value * GRAVITY.value * arm * carried),
        (ARM_STEP, ARM_STEP.value.in_metres * load * carried),
        (CLOTH_STEP, CLOTH_STEP.value * (load - hardware) * arm * carried),
    )
    return tuple(_moved(step, turns, least) for step, turns in moved)


def _moved(step: Figure[Any], turns: float, least: N) -> N:
    because = "How far the least turns {1} move for {0} more."
    return derived(step.name, turns, Unit.TURN, because, step, least)


def at_turns(
    name: str, span: Span, unit: Unit, because: str, judged: Judged, *more: Figure[Any]
) -> N:
    """Give what holds at the turns that are wound in, or would be."""
    turns = wound_turns(judged)
    return spanned(name, span, unit, because, turns, *more)


def wound_turns(judged: Judged) -> N:
    """Give the turns in the spring at the up-stop: typed, else those with the best chance."""
    if judged.order.choices.turns is not None:
        return chosen("turns at the up-stop", judged.window.turns, Unit.TURN)
    return derived(
        "turns at the up-stop",
        judged.window.turns,
        Unit.TURN,
        "In steps of {0}, what satisfies every limit for a spring of {1}, or comes nearest to it.",
        judged.order.habits.winding_step_turns,
        spring_rate(judged),
    )
