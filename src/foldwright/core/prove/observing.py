"""What a person at the bench can note, each with what it says about a trial shade.

Every observation gives, for each trial shade, the logarithm of how likely it would be if
that shade were the true one. The hand is unsteady, the scale is not exact, and no shade
is quite as the model has it: all three are allowed for, or the answer would be too sure.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy.special import log_ndtr

from foldwright.core.facts.proving import (
    HAND_UNSTEADINESS,
    LOAD_DISCREPANCY,
    STALL_REACH,
    TIME_DISCREPANCY,
    WEIGHING_SPREAD,
)
from foldwright.core.prove.true_shade import TrialShades

Reals = NDArray[np.float64]


class Observation(Protocol):
    """One thing noted at the bench."""

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give how likely it is for each trial shade, as a logarithm."""
        ...


@dataclass(frozen=True, kw_only=True, slots=True)
class GuidedStall:
    """Guided by hand and slowly, the shade stopped by itself."""

    turns: float  # counted at the up-stop
    raise_m: float

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

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: whether the top, where it is heaviest, was reached."""
        spare = shades.lifting_torque(self.turns, shades.travel_m)
        sure = _sureness(shades, shades.travel_m, spare)
        return np.asarray(log_ndtr(sure if self.rose else -sure), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, slots=True)
class Holding:
    """Let go at rest with nothing but a one-way lock or friction: it held, or it sank."""

    turns: float
    raise_m: float
    held: bool

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: a shade sinks when load beats spring and all friction together."""
        spare = shades.holding_torque(self.turns, self.raise_m)
        sure = _sureness(shades, self.raise_m, spare)
        return np.asarray(log_ndtr(sure if self.held else -sure), dtype=np.float64)


@dataclass(frozen=True, kw_only=True, slots=True)
class ScalePair:
    """A spring scale on the bar at one height, drawn slowly down and let slowly up.

    Friction cancels in the mean of the two, and nothing else is left in their difference.
    """

    turns: float
    raise_m: float
    down_n: float
    up_n: float

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: mean and half difference, each with its own spread."""
        down, up = shades.hand_forces(self.turns, self.raise_m)
        load = shades.load_at(self.raise_m)
        hand = HAND_UNSTEADINESS.value
        discrepancy = LOAD_DISCREPANCY.value * load
        mean = ((self.down_n + self.up_n) - (down + up)) / 2
        half = ((self.down_n - self.up_n) - (down - up)) / 2
        spread = np.hypot(hand, discrepancy)
        return -((mean / spread) ** 2) / 2 - (half / hand) ** 2 / 2 - np.log(spread)


@dataclass(frozen=True, kw_only=True, slots=True)
class Weighed:
    """The made-up panel on a scale, with bar and rods as it hangs."""

    load_n: float  # what hangs on the cords fully raised

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it."""
        expected = shades.trials.load_raised_n
        spread = WEIGHING_SPREAD.value * expected
        return -(((self.load_n - expected) / spread) ** 2) / 2 - np.log(spread)


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringTorque:
    """The spring's own torque, measured on its bench at so many turns."""

    turns: float
    torque_n_m: float

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: the mean of winding and unwinding is rate times turns."""
        expected = shades.trials.rate_n_m_turn * self.turns
        spread = WEIGHING_SPREAD.value * expected
        return -(((self.torque_n_m - expected) / spread) ** 2) / 2 - np.log(spread)


@dataclass(frozen=True, kw_only=True, slots=True)
class RiseTime:
    """The time of a full rise with a speed brake; without one a time says nothing."""

    turns: float
    seconds: float

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give it: a braked shade moves at the speed at which the brake eats the surplus."""
        expected = shades.braked_seconds(self.turns)
        with np.errstate(divide="ignore", invalid="ignore"):
            misfit = np.log(self.seconds / expected) / TIME_DISCREPANCY.value
        return np.where(np.isfinite(misfit), -(misfit**2) / 2, -50.0)


def _sureness(shades: TrialShades, raise_m: float, spare_n_m: Reals) -> Reals:
    """Count a torque to spare in spreads of what the model does not know about the load."""
    arm, load = shades.arm_at(raise_m), shades.load_at(raise_m)
    return np.asarray(spare_n_m / (LOAD_DISCREPANCY.value * load * arm), dtype=np.float64)
