"""A newly received spring, characterised with a bar, a weight and a tape.

The bar is clamped to the spring's shaft like a lever. At each number of turns the weight is
moved along it until the bar, level, just gives way: once while winding, once while letting
back. Friction opposes either way, so the mean of the two torques is rate times turns, and
half their difference is what the spring loses.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.proving import MISCOUNT
from foldwright.core.facts.shop_learning import DISTANCE_READ, TURNS_READ
from foldwright.core.lift.span import Span
from foldwright.core.prove.figures import ranged
from foldwright.core.prove.true_shade import DEVIATIONS
from foldwright.core.why.answer import Answer
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage

Reals = NDArray[np.float64]
N = Figure[float]
G = float(GRAVITY.value)
BROAD = 1e3  # the rate has no expectation of its own: the sheet is what is being checked


@dataclass(frozen=True, kw_only=True, slots=True)
class BarReading:
    """At so many turns, where on the bar the weight balances: winding, and letting back."""

    turns: float
    winding_m: float
    back_m: float


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringBench:
    """Bar, weight and readings; distances from the middle of the shaft."""

    weight_kg: float
    readings: tuple[BarReading, ...]
    bar_kg: float = 0.0
    bar_middle_m: float = 0.0  # where the bar alone would balance on an edge


@dataclass(frozen=True, kw_only=True, slots=True)
class Characterised:
    """What a spring is, by its bench."""

    rate: N
    spring_hysteresis: N
    constant_friction: N
    lost_turns: N


def characterise(bench: SpringBench) -> Answer[Characterised]:
    """Find a spring's rate and what it loses, with ranges, from a bar and a weight.

    Takes: the bench's readings, at one number of turns or, better, at two or three.

    Gives: the spring, or None with a question where the readings cannot be.

    Holds for: springs whose torque is proportional to their turns; keep the crank on, let it
    back under control, hands clear, eye protection on.

    Source: derived here, conjugate normal steps.

    >>> readings = tuple(
    ...     BarReading(turns=n, winding_m=0.0382 * n * 1.05 / 9.80665,
    ...                back_m=0.0382 * n * 0.95 / 9.80665) for n in (8.0, 12.0, 16.0))
    >>> spring = characterise(SpringBench(weight_kg=1.0, readings=readings)).result
    >>> round(spring.rate.value, 3), spring.rate.low < 0.0382 < spring.rate.high
    (0.038, True)
    """
    if doubts := _doubts(bench):
        return Answer(result=None, findings=doubts)
    turns = np.array([each.turns for each in bench.readings])
    winding, back = _torques(bench)
    rate, lost = _rate(bench, turns, (winding + back) / 2)
    hysteresis, still = _losses(bench, rate.likely * turns, (winding - back) / 2)
    return Answer(
        result=Characterised(
            rate=ranged("rate", rate, Unit.RATE, _OF_MEAN),
            lost_turns=ranged("turns lost in play", lost, Unit.TURN, _OF_MEAN),
            spring_hysteresis=ranged("hysteresis", hysteresis, Unit.SHARE, _OF_HALF),
            constant_friction=ranged("constant friction", still, Unit.TORQUE, _OF_HALF),
        )
    )


_OF_MEAN = "The mean of winding and letting back at each number of turns; friction cancels in it."
_OF_HALF = "Half the difference of winding and letting back, beside what the house expects."


def _torques(bench: SpringBench) -> tuple[Reals, Reals]:
    own = G * bench.bar_kg * bench.bar_middle_m
    winding, back = (
        np.array([G * bench.weight_kg * getattr(each, way) + own for each in bench.readings])
        for way in ("winding_m", "back_m")
    )
    return winding, back


def _reading_error(bench: SpringBench) -> float:
    """Give the error of a mean or half difference of two torques."""
    return G * bench.weight_kg * float(DISTANCE_READ.value.in_metres) / 2**0.5


def _rate(bench: SpringBench, turns: Reals, means: Reals) -> tuple[Span, Span]:
    """Fit rate and lost turns: the line through the means, hardly free to miss nothing at 0."""
    slope = float(means @ turns) / float(turns @ turns)
    error = np.hypot(_reading_error(bench), slope * float(TURNS_READ.value))
    play = slope * float(MISCOUNT.value) / DEVIATIONS
    design = np.column_stack((turns, np.ones_like(turns)))
    middle, spread = _fitted(design, means, error, (0.0, 0.0), (BROAD, play))
    rate = _span(middle[0], spread[0])
    return rate, Span(
        likely=-middle[1] / rate.likely,
        low=(-middle[1] - DEVIATIONS * spread[1]) / rate.likely,
        high=(-middle[1] + DEVIATIONS * spread[1]) / rate.likely,
    )


def _losses(bench: SpringBench, torques: Reals, halves: Reals) -> tuple[Span, Span]:
    """Fit what grows with the torque and what does not, from what the house expects of both."""
    habits = house_habits()
    expected = [
        Span.of_figure(each) for each in (habits.spring_hysteresis, habits.constant_friction_n_m)
    ]
    before = tuple(each.likely for each in expected)
    spreads = tuple((each.high - each.low) / 2 / DEVIATIONS for each in expected)
    design = np.column_stack((torques, np.ones_like(torques)))
    middle, spread = _fitted(design, halves, _reading_error(bench), before, spreads)
    return _span(middle[0], spread[0]), _span(middle[1], spread[1])


def _fitted(
    design: Reals,
    values: Reals,
    error: float,
    before: tuple[float, ...],
    spreads: tuple[float, ...],
) -> tuple[list[float], list[float]]:
    """Give middles and spreads of a line's two numbers: normal errors, normal expectations."""
    expected = np.diag([1 / spread**2 for spread in spreads])
    weight = design.T @ design / error**2 + expected
    middle = np.linalg.solve(weight, design.T @ values / error**2 + expected @ np.array(before))
    spread = np.sqrt(np.diag(np.linalg.inv(weight)))
    return middle.tolist(), spread.tolist()


def _span(middle: float, spread: float) -> Span:
    """Give a span of something that cannot be negative."""
    reach = DEVIATIONS * spread
    likely = max(middle, 0.0)
    return Span(likely=likely, low=max(middle - reach, 0.0), high=max(middle + reach, likely))


def _doubts(bench: SpringBench) -> tuple[Finding, ...]:
    """Ask about each thing that cannot be, once."""
    return tuple({finding.sentence: finding for finding in _asked(bench)}.values())


def _asked(bench: SpringBench) -> Iterator[Finding]:
    if not bench.readings or bench.weight_kg <= 0:
        yield _doubt(
            "prove.spring-unread",
            "Without a weight and one reading at least nothing is known of a spring.",
        )
    for each in bench.readings:
        if min(each.turns, each.winding_m, each.back_m) <= 0:
            yield _doubt(
                "prove.spring-from-nothing", "Turns and distances are counted from nothing upwards."
            )
        elif each.back_m > each.winding_m + DISTANCE_READ.value.in_metres:
            yield _doubt(
                "prove.spring-backwards",
                "Letting back took the weight further out than winding; friction brings it nearer.",
            )


def _doubt(name: str, sentence: str) -> Finding:
    return Finding(
        id=name,
        severity=Severity.ASK,
        stage=Stage.BENCH,
        sentence=sentence,
        remedies=(Remedy(sentence="Read bar and count again, the crank kept on."),),
    )
