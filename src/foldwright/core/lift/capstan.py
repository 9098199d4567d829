"""Cord friction around rings, and around the tube itself: the capstan rule."""

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


def pull_through_rings(
    load_n: float | Samples,
    ring_friction: float | Samples,
    lead_rad: float,
    ring_rad: float,
    rings_waiting: int,
) -> Samples:
    """Give the pull at the tube of a cord that rubs in its rings.

    Takes: the load that hangs on the cord in N; the friction coefficient of cord on
    ring; the bend of the cord at its lead in rad; its bend in each ring not yet picked
    up in rad, and their number.

    Gives: newtons at the tube while the shade rises; on the way down the same factor divides.

    Holds for: rings that the cord bends round by the same angle.

    Source: capstan-article; the sum of the angles is derived here.

    >>> round(float(pull_through_rings(10.0, 0.2, 0.1, 0.05, 6)), 3)
    10.833
    """
    return load_n * friction_ratio(ring_friction, lead_rad + ring_rad * rings_waiting)
