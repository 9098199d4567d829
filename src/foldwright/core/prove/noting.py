"""What a person at the bench can note that says nothing about spring, weight or friction.

It belongs to the record of the test, tells how the shade stands now, or is what a cause of
trouble is known by; trial shades are neither likelier nor less likely for it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from foldwright.core.prove.observing import Reading
from foldwright.core.prove.true_shade import TrialShades

Reals = NDArray[np.float64]


class Note:
    """A thing noted that leaves every trial shade as likely as it was."""

    __slots__ = ()

    def readings(self, shades: TrialShades) -> tuple[Reading, ...]:  # noqa: ARG002 - a note reads no shade
        """Give nothing to compare with a trial shade."""
        return ()

    def log_likelihood(self, shades: TrialShades) -> Reals:
        """Give nothing for or against any trial shade."""
        return np.zeros(shades.trials.rate_n_m_turn.shape)


@dataclass(frozen=True, kw_only=True, slots=True)
class TurnsWound(Note):
    """Turns now in the spring, counted at the up-stop."""

    turns: float


@dataclass(frozen=True, kw_only=True, slots=True)
class FreeStall(Note):
    """Let go free, the shade came to rest here: it ran past its balance, so it proves nothing."""

    turns: float
    raise_m: float


@dataclass(frozen=True, kw_only=True, slots=True)
class ReleasePull(Note):
    """From the lowest lock position, the further pull after which the lock let go, if it did."""

    raise_m: float  # of the lowest lock position
    pull_m: float
    released: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class BarLevel(Note):
    """How much higher the bar hangs at its right end than at its left, seen from the room."""

    raise_m: float
    right_above_left_m: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Cycled(Note):
    """Full cycles made, and how often a cord jumped or left its ring meanwhile."""

    cycles: int
    cords_jumped: int = 0
