"""A staircase with sloping treads: the shape of every load on lift cords."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Self

import numpy as np
from numpy.typing import NDArray

if TYPE_CHECKING:
    from collections.abc import Iterable

Samples = NDArray[np.float64]


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Staircase:
    """A load that grows along sloping treads and jumps where something is picked up.

    `climbed_n[i]` is the sum of the first i steps, `moments_n_m[i]` the same sum with
    each step multiplied by its raise.
    """

    start_n: float
    slope_n_m: float
    at_m: Samples
    climbed_n: Samples
    moments_n_m: Samples

    @classmethod
    def build(
        cls, *, start_n: float, slope_n_m: float, steps: Iterable[tuple[float, float]]
    ) -> Self:
        """Build from the load just off the floor, the slope, and steps (raise m, load N).

        >>> stairs = Staircase.build(start_n=3.0, slope_n_m=2.0, steps=[(0.2, 1.0)])
        >>> float(stairs.before(0.2)), float(stairs.after(0.2))
        (3.4, 4.4)
        """
        ordered = sorted(steps)
        at = np.array([raise_m for raise_m, _ in ordered], dtype=np.float64)
        heights = np.array([load_n for _, load_n in ordered], dtype=np.float64)
        return cls(
            start_n=start_n,
            slope_n_m=slope_n_m,
            at_m=at,
            climbed_n=np.concatenate(([0.0], np.cumsum(heights))),
            moments_n_m=np.concatenate(([0.0], np.cumsum(heights * at))),
        )

    def after(self, raise_m: float | Samples, *, reach_m: float = 0.0) -> Samples:
        """Give the load just above a raise, with every step up to `reach_m` above it."""
        raised = np.asarray(raise_m, dtype=np.float64)
        passed = np.searchsorted(self.at_m, raised + reach_m, side="right")
        return self._tread(raised) + self.climbed_n[passed]

    def before(self, raise_m: float | Samples) -> Samples:
        """Give the load just below a raise."""
        raised = np.asarray(raise_m, dtype=np.float64)
        passed = np.searchsorted(self.at_m, raised, side="left")
        return self._tread(raised) + self.climbed_n[passed]

    def work(self, raise_m: float | Samples) -> Samples:
        """Give the exact area under the staircase up to a raise, in joules."""
        raised = np.asarray(raise_m, dtype=np.float64)
        passed = np.searchsorted(self.at_m, raised, side="right")
        treads = raised * (self.start_n + self.slope_n_m * raised / 2)
        return treads + self.climbed_n[passed] * raised - self.moments_n_m[passed]

    def _tread(self, raised: Samples) -> Samples:
        return self.start_n + self.slope_n_m * raised
