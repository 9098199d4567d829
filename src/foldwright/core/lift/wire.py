"""A lift spring from its measured wire: rate, strength, and the room it needs when wound.

The rate is per turn (N.m/turn). The diameter meant everywhere is the *mean* diameter of
the coil: outside diameter less one wire. Taking the outside diameter for it makes the
spring look a tenth softer than it is.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from foldwright.core.facts.wire import (
    ARBOR_CLEARANCE,
    ELASTIC_TURN_FACTOR,
    OLDER_METRIC,
    PRACTICAL_TURN_FACTOR,
    WireStrength,
)


def tensile_strength(wire_m: float, strength: WireStrength = OLDER_METRIC) -> float:
    """Give the tensile strength of spring wire.

    Takes: the wire in m; the set of constants, the lowest of four unless told otherwise.

    Gives: Pa. Thin wire is stronger.

    Holds for: music wire of 0.1 to 6.5 mm.

    Source: wire-strength-exercise; wire-strength-page; mechanical-design-textbook.

    >>> round(tensile_strength(0.002) / 1e6)
    1840
    """
    thinner = strength.unit.in_metres / wire_m
    return strength.at_unit_pa * float(thinner**strength.exponent)


def inner_fibre_factor(spring_index: float) -> float:
    """Give how much more the inside of a coil is stressed than straight wire.

    Takes: the spring index, mean coil over wire.

    Gives: a factor above 1.

    Holds for: an index above about 4.

    Source: spring-stress-page; spring-exercise.

    >>> round(inner_fibre_factor(10), 6)
    1.080556
    """
    return (4 * spring_index**2 - spring_index - 1) / (4 * spring_index * (spring_index - 1))


def legs_as_coils(legs_m: float, mean_coil_m: float) -> float:
    """Give the coils that the straight legs of a spring are worth.

    Takes: the length of both legs together and the mean coil, in m.

    Gives: coils to add to those of the body.

    Holds for: legs held at their ends.

    Source: mechanical-design-textbook, from memory.

    >>> round(legs_as_coils(2.0, 0.521), 6)
    0.407306
    """
    return legs_m / (3 * pi * mean_coil_m)


@dataclass(frozen=True, kw_only=True, slots=True)
class RateRange:
    """A rate per turn in N.m/turn and the ends of its 90 % range."""

    rate: float
    low: float
    high: float


@dataclass(frozen=True, kw_only=True, slots=True)
class WireSpring:
    """A round-wire torsion spring as measured with callipers.

    Takes: the wire, the mean coil, the coils of the body, and both legs together; m.

    Holds for: close-wound coils wound up in the direction that closes them.

    Source: spring-rate-page; spring-exercise; spring-stress-page.

    >>> spring = WireSpring(wire_m=0.0021, mean_coil_m=0.0225, body_coils=480)
    >>> round(spring.rate(206e9), 6), round(spring.elastic_rate(206e9), 6)
    (0.034348, 0.036418)
    >>> round(spring.greatest_torque(0.55 * tensile_strength(0.0021)), 4)
    0.8493
    """

    wire_m: float
    mean_coil_m: float
    body_coils: float
    legs_m: float = 0.0

    @property
    def spring_index(self) -> float:
        """Give the mean coil over the wire."""
        return self.mean_coil_m / self.wire_m

    @property
    def active_coils(self) -> float:
        """Give the coils that bend: those of the body and what the legs are worth."""
        return self.body_coils + legs_as_coils(self.legs_m, self.mean_coil_m)

    def rate(self, stiffness_pa: float) -> float:
        """Give the rate per turn of a real spring, whose coils rub."""
        return self._rate(stiffness_pa, PRACTICAL_TURN_FACTOR.value)

    def elastic_rate(self, stiffness_pa: float) -> float:
        """Give the rate per turn by the bending of the wire alone: 6 % stiffer.

        Source: spring-exercise; en-13906-3 is remembered to use this form.
        """
        return self._rate(stiffness_pa, ELASTIC_TURN_FACTOR.value)

    def rate_range(self, stiffness_pa: float, low_pa: float, high_pa: float) -> RateRange:
        """Give the rate with what the modulus and the rubbing coils leave open."""
        return RateRange(
            rate=self.rate(stiffness_pa),
            low=self.rate(low_pa),
            high=self.elastic_rate(high_pa),
        )

    def stress(self, torque_n_m: float) -> float:
        """Give the stress in Pa at the inside of the coil under a torque."""
        return self._stress_per_torque() * torque_n_m

    def greatest_torque(self, allowable_pa: float) -> float:
        """Give the torque in N.m at an allowable stress: it does not depend on the coils."""
        return allowable_pa / self._stress_per_torque()

    def wound_mean_coil(self, turns: float) -> float:
        """Give the mean coil in m after winding: it shrinks."""
        return self.mean_coil_m * self.active_coils / (self.active_coils + turns)

    def wound_body(self, turns: float) -> float:
        """Give the length of the close-wound body in m: one wire more for each turn of it."""
        return self.wire_m * (self.body_coils + 1 + turns * self._body_share)

    def turns_on_arbor(self, arbor_m: float) -> float:
        """Give the turns at which the coil has shrunk to its clearance on the arbor."""
        least_mean_coil = arbor_m * (1 + ARBOR_CLEARANCE.value) + self.wire_m
        return self.active_coils * (self.mean_coil_m / least_mean_coil - 1)

    def turns_in_pocket(self, pocket_m: float) -> float:
        """Give the turns at which the body fills the length of tube left for it."""
        return (pocket_m / self.wire_m - self.body_coils - 1) / self._body_share

    @property
    def _body_share(self) -> float:
        """Give the share of the turns that the body takes; the legs bend for the rest."""
        return self.body_coils / self.active_coils

    def _rate(self, stiffness_pa: float, turn_factor: float) -> float:
        coil = turn_factor * self.mean_coil_m * self.active_coils
        return stiffness_pa * self.wire_m**4 / coil

    def _stress_per_torque(self) -> float:
        return inner_fibre_factor(self.spring_index) * 32 / (pi * self.wire_m**3)
