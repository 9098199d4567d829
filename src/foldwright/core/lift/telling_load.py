"""Figures of what any lift must do: loads, arms, turns of travel and torque, with their why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.lift.case_answer import CaseAnswer
from foldwright.core.lift.order import LiftOrder
from foldwright.core.lift.span import Span
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, supplied

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadFigures:
    """What any lift must do, as a person sees it."""

    travel: L
    load_lowered: N
    load_raised: N
    arm_lowered: L
    arm_raised: L
    travel_turns: N
    torque_needed: N


def load_figures(order: LiftOrder, answer: CaseAnswer) -> LoadFigures:
    """Put what any lift must do into figures.

    Takes: the order; the answer of its case.

    Gives: loads, arms, turns of travel and torque, each with its range.

    Holds for: orders whose tube and cord or tape are chosen.

    Source: derived here.
    """
    travel = _travel(order)
    loads = _loads(order, answer, travel)
    arms = _arms(order, answer, travel)
    return LoadFigures(
        travel=travel,
        load_lowered=loads[0],
        load_raised=loads[1],
        arm_lowered=arms[0],
        arm_raised=arms[1],
        travel_turns=_travel_turns(order, answer, travel, arms),
        torque_needed=_torque(order, answer, loads[1], arms[1]),
    )


def spanned(name: str, span: Span, unit: Unit, because: str, *inputs: Figure[Any]) -> N:
    """Make a derived figure with its range; a span without width shows none."""
    wide = span.high > span.low
    return derived(
        name,
        span.likely,
        unit,
        because,
        *inputs,
        low=span.low if wide else None,
        high=span.high if wide else None,
    )


def _travel(order: LiftOrder) -> L:
    design = order.layout.travel
    if order.choices.raise_limit_share is None:
        return design
    share = chosen("share of the raise", order.travel_share, Unit.SHARE)
    return derived(
        "raise",
        Length.metres(design.value.in_metres * order.travel_share),
        Unit.LENGTH,
        "{1} of the full raise {0}.",
        design,
        share,
    )


def _loads(order: LiftOrder, answer: CaseAnswer, travel: L) -> tuple[N, N]:
    weights = order.weights
    lowered = spanned(
        "load fully lowered",
        answer.load_lowered_n,
        Unit.FORCE,
        "Just off the sill the cords carry the bar {0}, the skirt up to the lowest ring row,"
        " and that row; the rest of the shade {1} still hangs from the board.",
        weights.bar,
        weights.total,
    )
    raised = spanned(
        "load fully raised",
        answer.load_raised_n,
        Unit.FORCE,
        "Raised by {0} the cords carry nearly the whole shade {1}: only the upper half of the fold"
        " under the board still hangs from it.",
        travel,
        weights.total,
    )
    return lowered, raised


def tube_outside(order: LiftOrder) -> L:
    """Give the outside of the chosen tube as a figure."""
    tube = order.chosen.tube
    if tube is None:
        message = "materials.tube: no tube is chosen. Choose one."
        raise ValueError(message)
    return supplied("tube outside diameter", tube.outside, Unit.LENGTH, tube.name)


def _winding(order: LiftOrder) -> tuple[L, str, str]:
    """Give what winds, and why the arm is what it is when lowered and when raised."""
    cord, tape = order.chosen.cord, order.chosen.tape
    if cord is not None:
        because = "Half the tube {0} and half the cord {1}, which winds side by side."
        return (
            supplied("cord as wound", cord.diameter, Unit.LENGTH, cord.name),
            because,
            because,
        )
    if tape is None:
        message = "materials.cord: neither cord nor tape is chosen. Choose one."
        raise ValueError(message)
    return (
        supplied("tape thickness", tape.thickness, Unit.LENGTH, tape.name),
        "Half the tube {0} and the tape {1} of the {2} safety turns wound on it.",
        "Half the tube {0} and the tape {1} of the raise {3} and the safety turns, wound up.",
    )


def _arms(order: LiftOrder, answer: CaseAnswer, travel: L) -> tuple[L, L]:
    winds, lowered, raised = _winding(order)
    inputs = (tube_outside(order), winds, order.habits.safety_wraps, travel)
    return (
        _arm("arm fully lowered", answer.arm_lowered_m, lowered, *inputs),
        _arm("arm fully raised", answer.arm_raised_m, raised, *inputs),
    )


def _arm(name: str, span: Span, because: str, *inputs: Figure[Any]) -> L:
    wide = span.high > span.low
    return derived(
        name,
        Length.metres(span.likely),
        Unit.LENGTH,
        because,
        *inputs,
        low=Length.metres(span.low) if wide else None,
        high=Length.metres(span.high) if wide else None,
    )


def _travel_turns(order: LiftOrder, answer: CaseAnswer, travel: L, arms: tuple[L, L]) -> N:
    because = "The raise {0} over the way round the tube at an arm of {1}."
    if order.chosen.cord is None:
        because = "The raise {0} over the way round the tube, at an arm growing from {1} to {2}."
    name = "turns of travel"
    return spanned(name, answer.travel_turns, Unit.TURN, because, travel, *arms)


def _torque(order: LiftOrder, answer: CaseAnswer, load: N, arm: L) -> N:
    return spanned(
        "torque to raise",
        answer.torque_needed_n_m,
        Unit.TORQUE,
        "The load fully raised {0} on its arm {1}, {2} more for friction that follows the load,"
        " and {3} of constant friction.",
        load,
        arm,
        order.habits.load_friction,
        order.habits.constant_friction_n_m,
    )
