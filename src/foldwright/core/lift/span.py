"""A quantity that is not known exactly: the likeliest value and the middle 90 %."""

from __future__ import annotations

from dataclasses import dataclass
from statistics import NormalDist
from typing import Any, Self

import numpy as np
from numpy.typing import NDArray

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

Reals = NDArray[np.float64]

TAIL = 0.05  # by definition: what is possible below `low`, and again above `high`
_DEVIATIONS = NormalDist().inv_cdf(1 - TAIL)


@dataclass(frozen=True, kw_only=True, slots=True)
class Span:
    """The likeliest value of a quantity that cannot be negative, and its middle 90 %.

    Half of what is possible lies below `likely`, one twentieth below `low` and
    one twentieth above `high`.

    >>> Span.within(2.0, 0.1)
    Span(likely=2.0, low=1.8, high=2.2)
    """

    likely: float
    low: float
    high: float

    @classmethod
    def exact(cls, value: float) -> Self:
        """Take a value that is known."""
        return cls(likely=value, low=value, high=value)

    @classmethod
    def within(cls, value: float, share: float) -> Self:
        """Take a value and the half width of its 90 % range, as a share of it."""
        return cls(likely=value, low=value * (1 - share), high=value * (1 + share))

    @classmethod
    def of_figure(cls, figure: Figure[Any]) -> Self:
        """Take a figure's value and range, lengths in m; a figure without a range is exact."""
        value = _number(figure.value)
        low = value if figure.low is None else _number(figure.low)
        high = value if figure.high is None else _number(figure.high)
        return cls(likely=value, low=low, high=high)

    @classmethod
    def of_draws(cls, likely: float, draws: Reals) -> Self:
        """Take the likeliest value, and the middle 90 % of what was drawn."""
        low, high = quantiles(draws, (TAIL, 1 - TAIL))
        return cls(likely=likely, low=low, high=high)

    def times(self, factor: float) -> Span:
        """Give the span of the same quantity, `factor` times over."""
        return Span(likely=self.likely * factor, low=self.low * factor, high=self.high * factor)

    def at(self, uniform: Reals) -> Reals:
        """Give one value for each uniform number: two half normal curves joined at the likeliest.

        Takes: numbers between 0 and 1, any shape.

        Gives: values of the same shape, none below zero.

        Holds for: quantities that cannot be negative.

        Source: derived here.

        >>> Span(likely=0.12, low=0.02, high=0.35).at(np.array([0.05, 0.5, 0.95])).round(6).tolist()
        [0.02, 0.12, 0.35]
        """
        if self.low == self.high:
            return np.full(np.shape(uniform), self.likely)
        # Loaded with the first lift: a quarter second that the first page need not wait for.
        from scipy.special import ndtri  # noqa: PLC0415

        deviations = ndtri(uniform) / _DEVIATIONS
        reach = np.where(deviations < 0, self.likely - self.low, self.high - self.likely)
        return np.asarray(np.maximum(self.likely + deviations * reach, 0.0), dtype=np.float64)


def _number(value: Length | float) -> float:
    return value.in_metres if isinstance(value, Length) else float(value)


def quantiles(draws: Reals, shares: tuple[float, ...]) -> tuple[float, ...]:
    """Give the values below which the shares of the draws lie.

    Takes: draws, one dimension; shares between 0 and 1.

    Gives: one value for each share.

    Holds for: any values, endless ones too.

    Source: derived here, by sorting and taking the nearest.

    >>> quantiles(np.arange(101.0), (0.05, 0.5))
    (5.0, 50.0)
    """
    ordered = np.sort(draws)
    places = np.rint(np.asarray(shares) * (ordered.size - 1)).astype(np.intp)
    return tuple(float(value) for value in ordered[places])


def span_of(value: float | Span) -> Span:
    """Take a plain number as known exactly, and a span as it is.

    Takes: a number or a span.

    Gives: a span.

    Source: derived here.

    >>> span_of(2.0)
    Span(likely=2.0, low=2.0, high=2.0)
    """
    return value if isinstance(value, Span) else Span.exact(value)
