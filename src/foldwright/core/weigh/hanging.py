"""The sag of a hem between its cord columns where no bar holds it straight: a catenary."""

from __future__ import annotations

from dataclasses import dataclass
from math import cosh, sinh
from typing import TYPE_CHECKING, Self

if TYPE_CHECKING:
    from collections.abc import Callable

# Half span over parameter; between these an edge is 1e-12 to 12 million times too long.
_FLATTEST, _STEEPEST = 1e-6, 20.0


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
    def _of_steepness(cls, span_m: float, misfit: Callable[[float], float]) -> Self:
        # Loaded when a hem sags: a quarter second that the first page need not wait for.
        from scipy.optimize import brentq  # noqa: PLC0415

        half_span_over_parameter = float(brentq(misfit, _FLATTEST, _STEEPEST, xtol=1e-15))
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
