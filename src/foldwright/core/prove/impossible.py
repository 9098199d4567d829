"""Numbers that no bench can give: each is asked about in one sentence, none is swallowed."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import asdict
from typing import Any

import numpy as np

from foldwright.core.facts.proving import MOST_TURNS_COUNTED, STALL_REACH
from foldwright.core.lift.span import Span
from foldwright.core.prove.figures import noted, ranged, reckoned
from foldwright.core.prove.kinds import on_the_rig
from foldwright.core.prove.observing import (
    Observation,
    RiseTime,
    ScalePair,
    SpringTorque,
    Weighed,
)
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

ABSURD = 1e6  # no bench reads a number so great, in any unit used here; nan is no smaller
NOTHING = 1e-3  # a gram, a thousandth of a turn: less is not read off any instrument here
Asking = Callable[[TrialShades, Observation], Finding | None]


def impossible(shades: TrialShades, observation: Observation) -> Finding | None:
    """Ask about a number that no shade of this case can give; None where it can be."""
    askings: tuple[Asking, ...] = (_no_number, _height, _turns, _signs, _nothing)
    asked = (ask(shades, observation) for ask in askings)
    return next((finding for finding in asked if finding), None)


def _ask(name: str, sentence: str, remedy: str, *figures: Figure[Any]) -> Finding:
    return Finding(
        id=name,
        severity=Severity.ASK,
        stage=Stage.BENCH,
        sentence=sentence,
        figures=figures,
        remedies=(Remedy(sentence=remedy),),
    )


def _numbers(observation: Any) -> Iterator[float]:
    values = asdict(observation).values()
    return (value for value in values if isinstance(value, int | float))


def _no_number(_: TrialShades, observation: Observation) -> Finding | None:
    if all(abs(number) < ABSURD for number in _numbers(observation)):
        return None
    return _ask(
        "prove.no-number",
        "What was noted is no number that an instrument shows.",
        "Read the instrument again.",
    )


def _height(shades: TrialShades, observation: Observation) -> Finding | None:
    raise_m = getattr(observation, "raise_m", None)
    if raise_m is None:
        return None
    stop_m = shades.travel_m
    stop = reckoned("travel to the stop", stop_m, Unit.LENGTH, "As the shade was drawn.")
    found = noted("raise", raise_m, Unit.LENGTH)
    if raise_m > stop_m + STALL_REACH.value.in_metres:
        return _ask(
            "prove.above-the-stop",
            "A raise of {0} lies above the stop, which is at {1}.",
            "Measure from where the bar hangs fully lowered, not from sill or floor.",
            found,
            stop,
        )
    if raise_m < 0:
        return _ask(
            "prove.below-the-bottom",
            "A raise of {0} lies below fully lowered.",
            "Measure upwards from where the bar hangs fully lowered.",
            found,
        )
    return None


def _turns(shades: TrialShades, observation: Observation) -> Finding | None:
    turns = getattr(observation, "turns", None)
    if turns is None:
        return None
    found = noted("turns counted", turns, Unit.TURN)
    if turns < 0 or (turns < NOTHING and isinstance(observation, SpringTorque)):
        return _ask(
            "prove.no-turns",
            "{0} cannot be wound.",
            "Count from the unwound spring, in the winding direction.",
            found,
        )
    if turns > MOST_TURNS_COUNTED.value:
        return _ask(
            "prove.turns-miscounted",
            "{0} were counted; no lift spring of a shade takes more than {1}.",
            "Count again; let the spring down under control to count from nothing.",
            found,
            MOST_TURNS_COUNTED,
        )
    return _overwound(shades, found) if on_the_rig(observation) else None


def _overwound(shades: TrialShades, found: Figure[Any]) -> Finding | None:
    most = _most_turns(shades)
    if most is None or found.value <= most.high:
        return None
    return _ask(
        "prove.overwound",
        "{0} were counted at the up-stop; with the travel on top this spring stands {1}.",
        "If the count is right, do not lower the shade: keep the crank on, hands clear, and let the"
        " spring back under control.",
        found,
        ranged(
            "most turns at the up-stop",
            most,
            Unit.TURN,
            "The spring's greatest safe turns, less the turns of the travel.",
        ),
    )


def _most_turns(shades: TrialShades) -> Span | None:
    """Give the turns at the up-stop that the spring stands, None where its sheet does not say."""
    greatest = shades.trials.greatest_turns
    if greatest is None:
        return None
    most = greatest - shades.trials.travel_turns
    return Span.of_draws(float(np.median(most)), most)


def _signs(_: TrialShades, observation: Observation) -> Finding | None:
    if not isinstance(observation, ScalePair) or observation.down_n >= observation.up_n:
        return None
    return _ask(
        "prove.friction-backwards",
        "Drawing down took {0}, letting up {1}; friction makes the first the greater.",
        "Were the two exchanged? Move the bar slowly and read the scale while it moves.",
        noted("force drawn slowly down", observation.down_n, Unit.FORCE),
        noted("force let slowly up", observation.up_n, Unit.FORCE),
    )


_NOTHING: dict[type[Any], tuple[str, str, Unit]] = {
    Weighed: ("mass_kg", "mass of the panel", Unit.MASS),
    SpringTorque: ("torque_n_m", "torque of the spring", Unit.TORQUE),
    RiseTime: ("seconds", "time of the rise", Unit.TIME),
}


def _nothing(_: TrialShades, observation: Observation) -> Finding | None:
    """Ask about a weight, torque or time of nothing, and about counts below nothing."""
    if type(observation) in _NOTHING:
        field, name, unit = _NOTHING[type(observation)]
        value = getattr(observation, field)
        if value < NOTHING:
            return _ask(
                "prove.nothing",
                f"A {name} of {{0}} cannot be.",
                "Set the scale to zero without a load, and read it again.",
                noted(name, value, unit),
            )
    return None
