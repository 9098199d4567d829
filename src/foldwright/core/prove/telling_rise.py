"""How the shade rises when it is let go, told with ranges: time, speeds, where it ends, forces.

A rise is integrated for a few of the trial shades, spread evenly through what is possible,
each at the harder of the two ways of counting a fold for its speeds, and at the more
careful one for whether it arrives. Forces at the bar are slow, and taken from all of them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from foldwright.core.lift.span import Reals, Span
from foldwright.core.prove.advice import RiseCurve, RiseTold
from foldwright.core.prove.figures import ranged, reckoned
from foldwright.core.prove.learning import Learned
from foldwright.core.prove.letting_go import trial_shade
from foldwright.core.prove.rising import End, Folding, Rise, rise
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

RISES = 7  # an odd number, so that one of them is the middle one
HEIGHTS = 41
HAIR_M = 1e-6  # just before a row is picked up
MOVING_SAMPLES = 121  # of the moving shade; a tenth of a second apart and less
WOUND = "The turns in the spring, counted at the up-stop."


def tell_rise(learned: Learned, turns: float, from_m: float = 0.0) -> RiseTold:
    """Tell how the shade rises when it is let go.

    Takes: what was learned, from nothing at first; the turns in the spring; the raise in m at
    which it is let go.

    Gives: the rise with ranges, and its lines for the graphs and the moving shade.

    Raises: ValueError where it would be let go above its stop.

    Holds for: springs with torque proportional to turns, viscous brakes. Without a brake a
    release that only just arrives, or just fails to, cannot be foretold; guide it by hand.

    Source: derived here; folded-chain-2006 for the folding that keeps its energy.

    >>> from dataclasses import replace
    >>> from scipy.stats import qmc
    >>> from foldwright.core.lift.choices import Brake
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.learning import learn
    >>> braked = replace(CASE, brake=Brake.FITTED, brake_drag_n_m_s=0.02)
    >>> told = tell_rise(learn(braked, (), qmc.Sobol(16, seed=1).random(256)), 16.0)
    >>> told.ending.value, 3 < told.rise_time.value < 8
    ('reaches the stop', True)
    """
    rises = _Rises.of(learned, turns, from_m)
    wound = reckoned("turns in the spring", turns, Unit.TURN, WOUND)
    shades = learned.shades
    down, _ = shades.hand_forces(turns, 0.0)
    _, up = shades.hand_forces(turns, shades.travel_m)
    return RiseTold(
        ending=_ending(learned, rises, turns, wound),
        end_raise=_spread("raise at which it ends", rises.ends, Unit.LENGTH, wound),
        rise_time=_spread("time of the rise", rises.times, Unit.TIME, wound),
        top_speed=_spread("greatest speed", rises.tops, Unit.SPEED, wound),
        arrival_speed=_spread("speed at the stop", rises.arrivals, Unit.SPEED, wound),
        arrival_energy=_spread("energy at the stop", rises.energies, Unit.ENERGY, wound),
        hand_force_down=_force(learned, "hand force down, lowered", down, wound),
        hand_force_up=_force(learned, "force held while easing up, raised", up, wound),
        curve=_curve(learned, rises.middle, turns),
    )


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Rises:
    """The rises of a few trial shades, from the one that lifts best to the one that lifts least."""

    hard: Sequence[Rise]
    careful: Sequence[Rise]

    @classmethod
    def of(cls, learned: Learned, turns: float, from_m: float) -> _Rises:
        shades = [trial_shade(learned.shades, place, turns) for place in _places(learned)]
        hard, careful = (
            [rise(shade, from_m, folding) for shade in shades]
            for folding in (Folding.HARSH, Folding.CAREFUL)
        )
        return cls(hard=hard, careful=careful)

    @property
    def middle(self) -> Rise:
        return self.hard[RISES // 2]

    @property
    def ends(self) -> list[float]:
        return [each.end_m for each in self.careful]

    @property
    def times(self) -> list[float]:
        return [each.duration_s for each in self.hard]

    @property
    def tops(self) -> list[float]:
        return [each.top_speed_m_s for each in self.hard]

    @property
    def arrivals(self) -> list[float]:
        return [each.arrival_speed_m_s for each in self.hard]

    @property
    def energies(self) -> list[float]:
        return [each.arrival_energy_j for each in self.hard]


def _places(learned: Learned) -> list[int]:
    """Give trial shades spread evenly through the middle nine tenths of the least turns."""
    return learned.spread(learned.shades.least_turns, RISES)


def _spread(name: str, values: list[float], unit: Unit, wound: Figure[float]) -> Figure[Any]:
    because = "The reckoned rise with {0}, of trial shades spread through what is possible."
    span = Span(likely=values[RISES // 2], low=min(values), high=max(values))
    return ranged(name, span, unit, because, wound)


def _force(learned: Learned, name: str, values: Reals, wound: Figure[float]) -> Figure[Any]:
    because = "What a scale on the bar would read with {0}, moved slowly."
    return ranged(name, learned.span(values), Unit.FORCE, because, wound)


def _ending(learned: Learned, rises: _Rises, turns: float, wound: Figure[float]) -> Figure[str]:
    ends = [each.end for each in rises.careful]
    likely = ends[RISES // 2]
    chance = learned.chance(learned.shades.raised_torque(turns) >= 0)
    guided = reckoned(
        "chance that it reaches the stop guided", chance, Unit.SHARE, "Of the trial shades."
    )
    because = "The reckoned rise with {0}; guided by hand it reaches the stop with a chance of {1}."
    if not learned.shades.braked:
        because += " Let go without a brake it arrives hard or not at all: guide it."
    others = {End.AT_THE_STOP, End.STALLS} & set(ends) - {likely}
    words = likely.value + "".join(f", or {other.value}" for other in others)
    return derived("how it ends", words, Unit.WORD, because, wound, guided)


def _curve(learned: Learned, middle: Rise, turns: float) -> RiseCurve:
    heights = _heights(learned)
    bands = [learned.shades.hand_forces(turns, float(height)) for height in heights]
    down, up = ([learned.span(pair[way]) for pair in bands] for way in (0, 1))
    times = np.linspace(0.0, middle.duration_s, MOVING_SAMPLES)
    return RiseCurve(
        time_s=_plain(times),
        raise_m=_plain(np.interp(times, middle.time_s, middle.raise_m)),
        speed_m_s=_plain(np.interp(times, middle.time_s, middle.speed_m_s)),
        at_m=_plain(heights),
        hand_down_n=tuple(span.likely for span in down),
        hand_down_low_n=tuple(span.low for span in down),
        hand_down_high_n=tuple(span.high for span in down),
        hand_up_n=tuple(span.likely for span in up),
        hand_up_low_n=tuple(span.low for span in up),
        hand_up_high_n=tuple(span.high for span in up),
    )


def _heights(learned: Learned) -> Reals:
    """Give even heights, and each pick-up from below and from above."""
    travel = learned.shades.travel_m
    pick_ups = np.array([at for at in learned.shades.curve.pick_ups if at < travel])
    even = np.linspace(0.0, travel, HEIGHTS)
    return np.unique(np.concatenate((even, pick_ups - HAIR_M, pick_ups)))


def _plain(values: Reals) -> tuple[float, ...]:
    return tuple(np.asarray(values, dtype=np.float64).tolist())
