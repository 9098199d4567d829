"""Cord friction around the tube and in the rings: the capstan rule."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Samples = NDArray[np.float64]


def friction_ratio(friction: float | Samples, wrap_rad: float | Samples) -> Samples:
    """Give how many times greater the pull is on the moving side of a cord than on the other.

    Takes: the friction coefficient; the angle in radians over which the cord bends.

    Gives: the ratio of the two pulls, 1 or more; the radius does not matter.

    Holds for: a limp cord that slides, or is about to.

    Source: capstan-article.

    >>> round(float(friction_ratio(0.3, np.pi)), 6)
    2.566332
    """
    return np.exp(np.multiply(friction, wrap_rad, dtype=np.float64))
