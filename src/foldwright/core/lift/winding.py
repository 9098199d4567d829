"""Cord and tape on the tube: the arm, the turns, and the room the wraps take.

A cord winds in one layer, wrap beside wrap, so its arm stays; a tape winds on itself,
so its arm grows as the shade rises. Raises, diameters and thicknesses may be numbers or
arrays that broadcast, in metres; turns are whole turns of the tube.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

Samples = NDArray[np.float64]
Metres = float | Samples
Turns = float | Samples


class Winding(Protocol):
    """What the lift asks of anything that winds on the tube."""

    def arm(self, raise_m: Metres) -> Samples:
        """Give the lever arm of the load in m at a raise."""
        ...

    def turns(self, raise_m: Metres) -> Samples:
        """Give the turns made from fully down to a raise; safety wraps are not counted."""
        ...

    def turns_to_go(self, raise_m: Metres, travel_m: Metres) -> Samples:
        """Give the turns from a raise to the up-stop."""
        ...

    def wound_width(self, travel_m: Metres) -> Samples:
        """Give the width in m that one column takes on the tube, fully raised."""
        ...

    def walk(self, travel_m: Metres) -> Samples:
        """Give how far in m the cord's leaving point moves along the tube over the travel."""
        ...


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class CordWinding:
    """A round cord in one layer, side by side.

    Takes: outside radius of the tube, diameter of the cord *as wound* (a braid flattens:
    measure ten wraps), safety wraps that stay on the tube at full drop.
    Holds for: one layer without gaps; a wrap that climbs is not described.
    Source: derived here, a helix on the cord's centre line.

    >>> cord = CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=3)
    >>> round(float(cord.turns(1.407)), 4), round(float(cord.wound_width(1.407)) * 1000, 3)
    (11.3663, 20.113)
    """

    tube_radius_m: Metres
    cord_diameter_m: Metres
    safety_wraps: Turns

    @property
    def length_per_turn(self) -> Samples:
        """Give the cord taken up by one turn, in m."""
        around = 2 * np.pi * (self.tube_radius_m + np.asarray(self.cord_diameter_m) / 2)
        return np.hypot(around, self.cord_diameter_m)

    def arm(self, raise_m: Metres) -> Samples:
        """Give the lever arm of the load in m: the same at every raise."""
        return self.length_per_turn / (2 * np.pi) + np.zeros_like(
            np.asarray(raise_m, dtype=np.float64)
        )

    def turns(self, raise_m: Metres) -> Samples:
        """Give the turns made from fully down to a raise; safety wraps are not counted."""
        return np.asarray(raise_m, dtype=np.float64) / self.length_per_turn

    def turns_to_go(self, raise_m: Metres, travel_m: Metres) -> Samples:
        """Give the turns from a raise to the up-stop."""
        return self.turns(
            np.asarray(travel_m, dtype=np.float64) - np.asarray(raise_m, dtype=np.float64)
        )

    def length(self, turns: Turns) -> Samples:
        """Give the cord in m on the tube after a number of turns from the bare tube."""
        return turns * self.length_per_turn

    def wound_width(self, travel_m: Metres) -> Samples:
        """Give the width in m of all wraps side by side, fully raised."""
        return (self.safety_wraps + self.turns(travel_m)) * self.cord_diameter_m

    def walk(self, travel_m: Metres) -> Samples:
        """Give how far in m the wraps walk along the tube over the travel."""
        return self.turns(travel_m) * self.cord_diameter_m


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class TapeWinding:
    """A flat tape on itself; each wrap lies on the one before.

    Takes: outside radius of the tube, thickness and width of the tape, safety wraps
    that stay on the tube at full drop.
    Holds for: a tape pulled flat and straight; a thickness of 0 gives the plain tube.
    Source: derived here from rings of one thickness each, `L = pi (d n + t n^2)`.

    >>> tape = TapeWinding(
    ...     tube_radius_m=0.019, tape_thickness_m=0.0004, tape_width_m=0.016, safety_wraps=3
    ... )
    >>> round(float(tape.turns(1.407)), 4)
    10.0797
    >>> [round(float(arm) * 1000, 3) for arm in tape.arm(np.array([0.0, 1.407]))]
    [20.2, 24.232]
    """

    tube_radius_m: Metres
    tape_thickness_m: Metres
    tape_width_m: float
    safety_wraps: Turns

    def arm(self, raise_m: Metres) -> Samples:
        """Give the lever arm of the load in m at a raise, the safety wraps below it included."""
        wound = self.length(self.safety_wraps) + np.asarray(raise_m, dtype=np.float64)
        return np.sqrt(np.square(self.tube_radius_m) + self.tape_thickness_m * wound / np.pi)

    def turns(self, raise_m: Metres) -> Samples:
        """Give the turns made from fully down to a raise; safety wraps are not counted."""
        return np.asarray(raise_m, dtype=np.float64) / (np.pi * (self.arm(raise_m) + self.arm(0.0)))

    def turns_to_go(self, raise_m: Metres, travel_m: Metres) -> Samples:
        """Give the turns from a raise to the up-stop."""
        rest = np.asarray(travel_m, dtype=np.float64) - np.asarray(raise_m, dtype=np.float64)
        return rest / (np.pi * (self.arm(raise_m) + self.arm(travel_m)))

    def length(self, turns: Turns) -> Samples:
        """Give the tape in m on the tube after a number of turns from the bare tube."""
        turned = np.asarray(turns, dtype=np.float64)
        return np.pi * (2 * self.tube_radius_m * turned + self.tape_thickness_m * turned**2)

    def wound_width(self, travel_m: Metres) -> Samples:
        """Give the width in m that the tape takes on the tube: its own, at any travel."""
        return np.full(np.shape(travel_m), self.tape_width_m)

    def walk(self, travel_m: Metres) -> Samples:
        """Give 0: a tape on itself does not walk along the tube."""
        return np.zeros(np.shape(travel_m))
