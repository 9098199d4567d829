"""Which observation would help most next: each is tried on shades that may be the true one.

A few trial shades are taken in turn for the true one, as often as each is likely. Each then
answers the observation, and all are weighed anew by its answer. The range that is left, on
average, is what the observation is worth.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.proving import LIKELY_STALL, SCALE_HEIGHTS, SPRING_BENCH_TURNS
from foldwright.core.lift.choices import Lock
from foldwright.core.lift.span import Reals
from foldwright.core.prove.advice import NextStep
from foldwright.core.prove.figures import reckoned
from foldwright.core.prove.kinds import kind_of, on_the_rig
from foldwright.core.prove.learning import Learned
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScalePair,
    SpringTorque,
    Weighed,
)
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.why.figure import Figure, Unit

TRUTHS = 12
Answering = Callable[[int], Observation]


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Candidate:
    """An observation that may be made: how, and what each trial shade would answer."""

    instruction: str
    answer: Answering
    figures: tuple[Figure[Any], ...] = ()


def next_best(
    learned: Learned, observations: Sequence[Observation], turns: float
) -> tuple[NextStep, ...]:
    """Rank the observations not yet made by the range of the least turns that each would leave.

    Takes: what was learned; what was noted; the turns now in the spring.

    Gives: the next steps, the most telling first, with the range now and the range expected.

    Holds for: what is to be known is the least turns; a cause of trouble is another question.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> steps = next_best(learn(CASE, (), qmc.Sobol(16, seed=1).random(1024)), (), 12.0)
    >>> steps[0].kind, steps[0].width_after.value < steps[0].width_now.value / 2
    ('guided stall', True)
    """
    now = _width(learned, learned.weights)
    candidates = _candidates(learned, observations, turns)
    steps = (_step(learned, candidate, now) for candidate in candidates)
    return tuple(sorted(steps, key=lambda step: step.width_after.value))


def _width(learned: Learned, weights: Reals) -> float:
    span = learned.reweighed(weights).span(learned.shades.least_turns)
    return span.high - span.low


def _step(learned: Learned, candidate: _Candidate, now: float) -> NextStep:
    # As often as each is likely, evenly through what is to be known.
    truths = learned.spread(learned.shades.least_turns, TRUTHS)
    after = float(np.mean([_after(learned, candidate, place) for place in truths]))
    width = reckoned(
        "range of the least turns now",
        now,
        Unit.TURN,
        "From the low to the high end of the middle 90 %.",
    )
    left = reckoned(
        "range expected afterwards",
        min(after, now),
        Unit.TURN,
        "The same, as it would be left on average by the answers of shades that may be the true"
        " one; now it is {0}.",
        width,
    )
    return NextStep(
        kind=kind_of(candidate.answer(0)),
        instruction=candidate.instruction,
        figures=candidate.figures,
        width_now=width,
        width_after=left,
    )


def _after(learned: Learned, candidate: _Candidate, truth: int) -> float:
    logs = candidate.answer(truth).log_likelihood(learned.shades)
    raw = learned.weights * np.exp(logs - logs.max())
    return _width(learned, raw / raw.sum())


def _candidates(
    learned: Learned, observations: Sequence[Observation], turns: float
) -> Iterator[_Candidate]:
    """List what may still be done; once the shade hangs its spring is not taken out again."""
    shades, done = learned.shades, {type(each) for each in observations}
    hung = any(on_the_rig(each) for each in observations)
    if Weighed not in done:
        yield _weigh(shades)
    if SpringTorque not in done and not hung:
        yield _spring(shades)
    yield from _stalls(learned, observations, turns)
    yield from (_scale(shades, turns, share) for share in SCALE_HEIGHTS)
    yield _full_rise(shades, turns)
    if shades.case.lock is not Lock.TWO_WAY:
        yield _hold(shades, turns)
    if shades.braked:
        yield _time(shades, turns)


def _weigh(shades: TrialShades) -> _Candidate:
    masses = shades.panel_n / GRAVITY.value
    return _Candidate(
        instruction="Weigh the finished panel with its bar, rods and rings.",
        answer=lambda place: Weighed(mass_kg=float(masses[place])),
    )


def _spring(shades: TrialShades) -> _Candidate:
    turns = float(SPRING_BENCH_TURNS.value)
    torques = shades.trials.rate_n_m_turn * turns
    return _Candidate(
        instruction="Before it is put in: measure the spring's torque at {0}, the mean of winding"
        " and letting back. Eye protection, hands clear.",
        answer=lambda place: SpringTorque(turns=turns, torque_n_m=float(torques[place])),
        figures=(SPRING_BENCH_TURNS,),
    )


def _turns(turns: float) -> Figure[float]:
    return reckoned("turns in the spring", turns, Unit.TURN, "Counted at the up-stop.")


def _stalls(
    learned: Learned, observations: Sequence[Observation], turns: float
) -> Iterator[_Candidate]:
    """Propose the turns with which it stalls most surely, and the most that still do."""
    noted = {each.turns for each in observations if isinstance(each, GuidedStall)}
    step = learned.shades.case.winding_step_turns
    least = learned.span(learned.shades.least_turns)
    tried = [count * step for count in range(1, int(least.high / step) + 1)]
    sure = {each: _stalling(learned, each) for each in tried if each not in noted}
    if sure:
        surest = max(sure, key=lambda each: (round(sure[each], 2), -abs(each - turns)))
        enough = [each for each, chance in sure.items() if chance >= LIKELY_STALL.value]
        yield from (_stall(learned.shades, each) for each in {surest, *enough[-1:]})


def _stall(shades: TrialShades, turns: float) -> _Candidate:
    heights = shades.stalls_at(turns)
    return _Candidate(
        instruction="With {0} in the spring let it rise guided by hand, slowly, and note where it"
        " stops by itself.",
        answer=lambda place: GuidedStall(turns=turns, raise_m=float(heights[place])),
        figures=(_turns(turns),),
    )


def _stalling(learned: Learned, turns: float) -> float:
    """Give the chance that it stalls well on the way."""
    shades = learned.shades
    low, high = 0.2 * shades.travel_m, 0.9 * shades.travel_m
    started = shades.lifting_torque(turns, low) > 0
    return learned.chance(started & (shades.lifting_torque(turns, high) < 0))


def _scale(shades: TrialShades, turns: float, share: float) -> _Candidate:
    raise_m = share * shades.travel_m
    down, up = shades.hand_forces(turns, raise_m)
    height = reckoned("height", raise_m, Unit.LENGTH, "A share of the travel.")
    return _Candidate(
        instruction="With {0} in the spring read a scale on the bar at {1}, drawn slowly down and"
        " let slowly up.",
        answer=lambda place: ScalePair(
            turns=turns, raise_m=raise_m, down_n=float(down[place]), up_n=float(up[place])
        ),
        figures=(_turns(turns), height),
    )


def _full_rise(shades: TrialShades, turns: float) -> _Candidate:
    rose = shades.raised_torque(turns) >= 0
    return _Candidate(
        instruction="With {0} in the spring let it rise guided by hand: does it reach the stop?",
        answer=lambda place: FullRise(turns=turns, rose=bool(rose[place])),
        figures=(_turns(turns),),
    )


def _hold(shades: TrialShades, turns: float) -> _Candidate:
    raise_m = 0.75 * shades.travel_m
    held = shades.holding_torque(turns, raise_m) >= 0
    height = reckoned("height", raise_m, Unit.LENGTH, "Three quarters of the travel.")
    return _Candidate(
        instruction="With {0} in the spring leave it at {1}: does it hold?",
        answer=lambda place: Holding(turns=turns, raise_m=raise_m, held=bool(held[place])),
        figures=(_turns(turns), height),
    )


def _time(shades: TrialShades, turns: float) -> _Candidate:
    seconds = shades.braked_seconds(turns)
    known = np.where(np.isfinite(seconds), seconds, 600.0)
    return _Candidate(
        instruction="With {0} in the spring time a full rise, the speed brake working.",
        answer=lambda place: RiseTime(turns=turns, seconds=float(known[place])),
        figures=(_turns(turns),),
    )
