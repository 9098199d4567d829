"""Readings far from all that the shade could give, and pairs that cannot both be right."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations
from statistics import NormalDist
from typing import Any

import numpy as np

from foldwright.core.facts.proving import FAR_OFF, UNLIKELY
from foldwright.core.lift.span import TAIL, Reals, Span
from foldwright.core.prove.figures import noted_reading, ranged, reckoned
from foldwright.core.prove.observing import Observation, Reading
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

FAR = float(FAR_OFF.value)
HAIR = 1e-12  # the least spread, where nothing is left open
DEVIATIONS = NormalDist().inv_cdf(1 - TAIL)


def far_off(shades: TrialShades, observation: Observation) -> Finding | None:
    """Ask about a reading that hardly any shade of the case would give."""
    even = np.full(shades.cloth_scale.size, 1 / shades.cloth_scale.size)
    for reading in observation.readings(shades):
        expected = _expected(reading, even)
        if _strays(reading, even) > FAR:
            return _far_off(reading, expected)
    return None


def _far_off(reading: Reading, expected: Span) -> Finding:
    backwards = reading.unit is Unit.FORCE and reading.noted * expected.likely < 0
    remedy = "Was it noted with the wrong sign? A hand that holds the bar down reads above zero."
    if not backwards:
        remedy = "Read the instrument again, and look whether the right unit was typed."
    because = "What nine in ten of the trial shades of this case would give."
    return Finding(
        id="prove.far-off",
        severity=Severity.ASK,
        stage=Stage.BENCH,
        sentence=f"The {reading.name} was noted as {{0}}; by all that is known of this shade it"
        " should be {1:range}.",
        figures=(
            noted_reading(reading),
            ranged(f"expected {reading.name}", expected, reading.unit, because),
        ),
        remedies=(Remedy(sentence=remedy),),
    )


def contradictions(
    shades: TrialShades, observations: Sequence[Observation]
) -> Iterator[tuple[int, int, Finding]]:
    """Show side by side each two observations that hardly any trial shade explains together."""
    weights = [_weights(each.log_likelihood(shades)) for each in observations]
    readings = [each.readings(shades) for each in observations]
    for first, second in combinations(range(len(observations)), 2):
        strayed = (each for each in readings[second] if _strays(each, weights[first]) > FAR)
        reading = next(strayed, None)
        if reading and readings[first]:
            expected = _expected(reading, weights[first])
            yield first, second, _side_by_side(readings[first][0], reading, expected)


def _weights(logs: Reals) -> Reals:
    raw = np.exp(logs - logs.max())
    return np.asarray(raw / raw.sum(), dtype=np.float64)


def _strays(reading: Reading, weights: Reals) -> float:
    """Count how many standard deviations a reading lies from what the trial shades would give."""
    middle = float(weights @ reading.predicted)
    if reading.unit is Unit.SHARE:
        chance = middle if reading.noted else 1 - middle
        return float("inf") if chance < UNLIKELY.value else 0.0
    spread = float(weights @ np.square(reading.predicted - middle))
    return abs(reading.noted - middle) / max(float(np.hypot(np.sqrt(spread), reading.spread)), HAIR)


def _expected(reading: Reading, weights: Reals) -> Span:
    """Give the middle 90 % of what the trial shades would give, the reading's own spread in it."""
    middle = float(weights @ reading.predicted)
    spread = float(weights @ np.square(reading.predicted - middle))
    reach = DEVIATIONS * float(np.hypot(np.sqrt(spread), reading.spread))
    return Span(likely=middle, low=middle - reach, high=middle + reach)


def _side_by_side(first: Reading, second: Reading, expected: Span) -> Finding:
    because = "What nine in ten of the trial shades would give that explain {0}."
    one, other = noted_reading(first), noted_reading(second)
    figures = (one, other, *_by_how_much(second, expected, because, one, other))
    both = f"The {first.name} was noted as {{0}}, the {second.name} as {{1}}: "
    apart = "with the first the second should be {2:range}, and it is {3} off."
    if second.unit is Unit.SHARE:
        apart = "hardly any shade of this case gives both."
    return Finding(
        id="prove.contradiction",
        severity=Severity.ASK,
        stage=Stage.BENCH,
        sentence=both + apart,
        figures=figures,
        remedies=(Remedy(sentence="Repeat both, the turns counted anew, and keep what repeats."),),
    )


def _by_how_much(
    reading: Reading, expected: Span, because: str, *inputs: Figure[Any]
) -> tuple[Figure[Any], ...]:
    if reading.unit is Unit.SHARE:
        return ()
    told = ranged(f"expected {reading.name}", expected, reading.unit, because, inputs[0])
    apart = abs(reading.noted - expected.likely)
    off = reckoned("how far off", apart, reading.unit, "{0} against {1}.", inputs[1], told)
    return told, off
