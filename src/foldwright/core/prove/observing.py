"""What a person at the bench can note, each with what it says about a trial shade.

Every observation gives, for each trial shade, the logarithm of how likely it would be if
that shade were the true one. The hand is unsteady and the scale not exact: that is in the
spreads here. That no shade is quite as the model has it is in the trial shades themselves;
only what wanders from place to place too fast for them is in the spreads again.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from math import sqrt
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy.special import log_ndtr

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.proving import (
    HAND_UNSTEADINESS,
    STALL_REACH,
    TIME_DISCREPANCY,
    WEIGHING_SPREAD,
)
from foldwright.core.lift.choices import Lock
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.why.figure import Unit

Reals = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Reading:
    """One number that was noted, beside what each trial shade would have given."""

    name: str
    unit: Unit  # lengths in metres
    noted: float
    predicted: Reals
    spread: float  # of the reading itself, one standard deviation


class Observation(Protocol):
    """One thing noted at the bench."""

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the numbers noted, each beside what the trial shades would have given."""
        ...

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give how likely it is for each trial shade, as a logarithm."""
        ...


class Way(Enum):
    """Which way a hand moves the bar while a scale is read."""

    DOWN = "drawn slowly down"
    UP = "let slowly up"


@dataclass(frozen=True, kw_only=True, slots=True)
class GuidedStall:
    """Guided by hand and slowly, the shade stopped by itself."""

    turns: float  # counted at the up-stop
    raise_m: float

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the height at which it stopped."""
        return (
            Reading(
                name="height of the stall",
                unit=Unit.LENGTH,
                noted=self.raise_m,
                predicted=shades.stalls_at(self.turns),
                spread=STALL_REACH.value.in_metres,
            ),
        )

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: the shade still ran a little below, and no longer ran a little above."""
        reach = STALL_REACH.value.in_metres
        below = max(self.raise_m - reach, 0.0)
        above = min(self.raise_m + reach, shades.travel_m)
        ran = _sureness(shades, below, shades.lifting_torque(self.turns, below))
        stood = _sureness(shades, above, -shades.lifting_torque(self.turns, above))
        return np.asarray(log_ndtr(ran) + log_ndtr(stood), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, slots=True)
class FullRise:
    """Guided by hand, the shade rose all the way, or did not."""

    turns: float
    rose: bool

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give whether the top was reached, as a share of 1 or 0."""
        reached = shades.raised_torque(self.turns) >= 0
        return (_whether("reaches the top", noted=self.rose, predicted=reached),)

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: whether the top, where it is heaviest, was reached."""
        spare = shades.raised_torque(self.turns)
        sure = _sureness(shades, shades.travel_m, spare)
        return np.asarray(log_ndtr(sure if self.rose else -sure), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, slots=True)
class Holding:
    """Let go at rest with nothing but a one-way lock or friction: it held, or it sank."""

    turns: float
    raise_m: float
    held: bool

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give whether it held, as a share of 1 or 0."""
        held = shades.holding_torque(self.turns, self.raise_m) >= 0
        return (_whether("holds", noted=self.held, predicted=held),)

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: a shade sinks when load beats spring and all friction together.

        A two-way lock holds at any height, and then it says nothing.
        """
        if shades.case.lock is Lock.TWO_WAY:
            return np.zeros(shades.cloth_scale.shape)
        spare = shades.holding_torque(self.turns, self.raise_m)
        sure = _sureness(shades, self.raise_m, spare)
        return np.asarray(log_ndtr(sure if self.held else -sure), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, slots=True)
class ScaleForce:
    """A spring scale on the bar at one height, read one way only; friction is in it."""

    turns: float
    raise_m: float
    force_n: float  # downwards; below zero: the hand had to lift
    way: Way

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the force."""
        down, up = shades.hand_forces(self.turns, self.raise_m)
        predicted = down if self.way is Way.DOWN else up
        return (_force(f"force {self.way.value}", self.force_n, predicted),)

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it."""
        down, up = shades.hand_forces(self.turns, self.raise_m)
        expected = down if self.way is Way.DOWN else up
        spread = np.hypot(HAND_UNSTEADINESS.value, shades.roughness_n)
        return _bell(self.force_n - expected, spread)


@dataclass(frozen=True, kw_only=True, slots=True)
class ScalePair:
    """A spring scale on the bar at one height, drawn slowly down and let slowly up.

    Friction cancels in the mean of the two, and nothing else is left in their difference.
    """

    turns: float
    raise_m: float
    down_n: float
    up_n: float

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give both forces."""
        down, up = shades.hand_forces(self.turns, self.raise_m)
        return (
            _force(f"force {Way.DOWN.value}", self.down_n, down),
            _force(f"force {Way.UP.value}", self.up_n, up),
        )

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: mean and half difference; a rough place pulls both the same way."""
        down, up = shades.hand_forces(self.turns, self.raise_m)
        hand = HAND_UNSTEADINESS.value / sqrt(2)
        mean = ((self.down_n + self.up_n) - (down + up)) / 2
        half = ((self.down_n - self.up_n) - (down - up)) / 2
        return _bell(mean, np.hypot(hand, shades.roughness_n)) + _bell(half, hand)


@dataclass(frozen=True, kw_only=True, slots=True)
class Weighed:
    """The made-up panel on a scale, with its bar, rods and rings."""

    mass_kg: float

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the mass."""
        expected = shades.panel_n / GRAVITY.value
        spread = WEIGHING_SPREAD.value * self.mass_kg
        return (
            Reading(
                name="mass of the panel",
                unit=Unit.MASS,
                noted=self.mass_kg,
                predicted=expected,
                spread=spread,
            ),
        )

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it."""
        expected = shades.panel_n / GRAVITY.value
        return _bell(self.mass_kg - expected, WEIGHING_SPREAD.value * expected)


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringTorque:
    """The spring's own torque, measured on its bench: the mean of winding and unwinding."""

    turns: float  # counted from unwound
    torque_n_m: float

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the torque."""
        return (
            Reading(
                name="torque of the spring",
                unit=Unit.TORQUE,
                noted=self.torque_n_m,
                predicted=shades.trials.rate_n_m_turn * self.turns,
                spread=WEIGHING_SPREAD.value * self.torque_n_m,
            ),
        )

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: friction cancels in the mean, so that rate times turns is left."""
        expected = shades.trials.rate_n_m_turn * self.turns
        return _bell(self.torque_n_m - expected, WEIGHING_SPREAD.value * expected)


@dataclass(frozen=True, kw_only=True, slots=True)
class RiseTime:
    """The time of a full rise with a speed brake; without one a time says nothing."""

    turns: float
    seconds: float

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:
        """Give the time; nothing without a speed brake."""
        if not shades.braked:
            return ()
        expected = shades.braked_seconds(self.turns)
        return (
            Reading(
                name="time of the rise",
                unit=Unit.TIME,
                noted=self.seconds,
                predicted=np.where(np.isfinite(expected), expected, STANDING_S),
                spread=TIME_DISCREPANCY.value * self.seconds,
            ),
        )

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: a braked shade moves at the speed at which the brake eats the surplus."""
        if not shades.braked:
            return np.zeros(shades.brake_drag_n_m_s.shape)
        expected = shades.braked_seconds(self.turns)
        timed = np.isfinite(expected) & (expected > 0)
        misfit = np.log(self.seconds / np.where(timed, expected, 1.0))
        return np.where(timed, _bell(misfit, TIME_DISCREPANCY.value), NEVER)


def _force(name: str, noted: float, predicted: Reals) -> Reading:
    spread = HAND_UNSTEADINESS.value
    return Reading(name=name, unit=Unit.FORCE, noted=noted, predicted=predicted, spread=spread)


def _whether(name: str, *, noted: bool, predicted: NDArray[np.bool_]) -> Reading:
    shares = predicted.astype(np.float64)
    return Reading(name=name, unit=Unit.SHARE, noted=noted, predicted=shares, spread=0.0)


STANDING_S = 600.0  # a shade that does not arrive is watched no longer
NEVER = -50.0  # the logarithm of a likelihood too small to matter, still a number


def _bell(misfit: Reals, spread: float | Reals) -> Reals:
    """Give the logarithm of a normal curve."""
    return np.asarray(-((misfit / spread) ** 2) / 2 - np.log(spread * sqrt(2 * np.pi)))


def _sureness(shades: TrialShades, raise_m: float, spare_n_m: Reals) -> Reals:
    """Count a torque to spare in spreads of what a rough place takes or gives."""
    return np.asarray(spare_n_m / (shades.roughness_n * shades.arm_at(raise_m)), dtype=np.float64)
