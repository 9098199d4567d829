"""The sag of a hem between its cord columns where no bar holds it straight.

A hem that carries only its own even weight is a catenary; one that carries cloth hung evenly
along its span is a parabola. A real hem lies between the two, which differ by little.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import asinh, cosh, hypot, sinh
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from collections.abc import Callable

# Half span over parameter; between these an edge is 1e-12 to 12 million times too long.
_FLATTEST, _STEEPEST = 1e-6, 20.0
# Slope of a parabola at its ends; here the edge is five thousand times as long as its span.
_STEEPEST_CHORD = 1e4


@dataclass(frozen=True, kw_only=True, slots=True)
class HangingEdge:
    """An evenly heavy, limp edge hung at two points of one height.

    `parameter_m` is the horizontal pull over the weight per length, the one length that
    fixes the curve.

    Holds for: an edge that is longer than its span and carries only its own even weight.

    Source: catenary-page.

    >>> edge = HangingEdge.of_sag(1.0, 0.1)
    >>> round(edge.parameter_m, 6), round(edge.length_m, 6)
    (1.266324, 1.026187)
    """

    span_m: float
    parameter_m: float

    @classmethod
    def of_sag(cls, span_m: float, sag_m: float) -> Self:
        """Find the edge that sags by a given depth in the middle."""
        return cls._of_steepness(span_m, lambda u: (cosh(u) - 1) / (2 * u) - sag_m / span_m)

    @classmethod
    def of_length(cls, span_m: float, length_m: float) -> Self:
        """Find the edge of a given length, longer than its span."""
        return cls._of_steepness(span_m, lambda u: sinh(u) / u - length_m / span_m)

    @classmethod
    def of_length_and_sag(cls, length_m: float, sag_m: float) -> Self:
        """Find the edge of a given length that sags by a given depth, less than half of it."""
        half = length_m / 2
        parameter = (half**2 - sag_m**2) / (2 * sag_m)
        return cls(span_m=2 * parameter * asinh(half / parameter), parameter_m=parameter)

    def height_at(self, from_middle_m: float) -> float:
        """Give how far a point of the edge hangs above its lowest, by its distance across."""
        return self.parameter_m * (cosh(from_middle_m / self.parameter_m) - 1)

    @classmethod
    def _of_steepness(cls, span_m: float, misfit: Callable[[float], float]) -> Self:
        half_span_over_parameter = _root(misfit, _FLATTEST, _STEEPEST)
        return cls(span_m=span_m, parameter_m=span_m / 2 / half_span_over_parameter)

    @property
    def sag_m(self) -> float:
        """Give how far the middle hangs below the ends."""
        return self.parameter_m * (cosh(self._steepness) - 1)

    @property
    def length_m(self) -> float:
        """Give the length along the edge."""
        return 2 * self.parameter_m * sinh(self._steepness)

    def sideways_pull(self, weight_n_m: float) -> float:
        """Give the horizontal pull in N on either end, for a weight per length."""
        return weight_n_m * self.parameter_m

    def greatest_pull(self, weight_n_m: float) -> float:
        """Give the pull in N along the edge at its ends."""
        return weight_n_m * (self.parameter_m + self.sag_m)

    @property
    def _steepness(self) -> float:
        return self.span_m / 2 / self.parameter_m


@dataclass(frozen=True, kw_only=True, slots=True)
class EvenlyHungEdge:
    """A weightless, limp edge that carries cloth hung evenly along its span: a parabola.

    Holds for: an edge that is longer than its span.

    Source: derived here.

    >>> edge = EvenlyHungEdge(span_m=1.0, sag_m=0.1)
    >>> round(edge.length_m, 6), round(EvenlyHungEdge.of_length(1.0, edge.length_m).sag_m, 6)
    (1.026061, 0.1)
    """

    span_m: float
    sag_m: float

    @classmethod
    def of_length(cls, span_m: float, length_m: float) -> Self:
        """Find the edge of a given length, longer than its span."""

        def misfit(steepness: float) -> float:
            return _parabola(steepness) - length_m / span_m

        return cls(span_m=span_m, sag_m=span_m / 4 * _root(misfit, 0.0, _STEEPEST_CHORD))

    @classmethod
    def of_length_and_sag(cls, length_m: float, sag_m: float) -> Self:
        """Find the edge of a given length that sags by a given depth, less than half of it."""

        def misfit(steepness: float) -> float:
            return _parabola(steepness) * 4 / steepness - length_m / sag_m

        steepness = _root(misfit, _FLATTEST, _STEEPEST_CHORD)
        return cls(span_m=4 * sag_m / steepness, sag_m=sag_m)

    @property
    def length_m(self) -> float:
        """Give the length along the edge."""
        return self.span_m * _parabola(4 * self.sag_m / self.span_m)

    def sideways_pull(self, weight_n: float) -> float:
        """Give the horizontal pull in N on either end, for the whole weight that it carries."""
        return weight_n * self.span_m / (8 * self.sag_m)


def _root(misfit: Callable[[float], float], low: float, high: float) -> float:
    # Loaded when a hem sags: a quarter second that the first page need not wait for.
    from scipy.optimize import brentq  # noqa: PLC0415

    return float(brentq(misfit, low, high, xtol=1e-15))


def _parabola(steepness: float) -> float:
    """Give length over span of a parabola that leaves its ends at this slope."""
    if steepness == 0:
        return 1.0
    return (hypot(1, steepness) + asinh(steepness) / steepness) / 2
