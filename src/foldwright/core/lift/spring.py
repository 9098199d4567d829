"""A lift spring as the balance sees it: a rate, and what it can safely be wound to."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from foldwright.core.lift.span import Reals, Span, span_of

Pair = tuple[float, float]


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringCase:
    """One spring in plain SI: rates per turn, never per radian.

    Give `rate_n_m_turn`, with `greatest_torque_n_m` or `greatest_turns` or both as far as
    they are known; or give `pairs`, equally likely pairs of rate (N.m/turn) and greatest
    torque (N.m), where a sheet leaves the two bound together but not known.
    """

    rate_n_m_turn: float | Span | None = None
    greatest_torque_n_m: float | Span | None = None
    greatest_turns: float | Span | None = None
    pairs: tuple[Pair, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SpringTrials:
    """Trial springs: one rate and one strength for each draw; None: strength unknown."""

    rate_n_m_turn: Reals
    greatest_turns: Reals | None


def spring_trials(
    spring: SpringCase, rate_draws: Reals, strength_draws: Reals, *, side_by_side: int = 1
) -> SpringTrials:
    """Draw trial springs; several side by side add their torques at the same turns.

    Takes: a spring; uniform numbers for its rate and for its strength; how many springs
    turn the tube together.

    Gives: rates in N.m/turn and greatest turns, one for each draw.

    Raises: ValueError where neither a rate nor pairs are given.

    Holds for: springs whose torque is proportional to their turns.

    Source: derived here.

    >>> middle = np.array([0.5])
    >>> pair = spring_trials(
    ...     SpringCase(rate_n_m_turn=0.03, greatest_torque_n_m=0.9), middle, middle, side_by_side=2
    ... )
    >>> pair.rate_n_m_turn.round(6).tolist(), pair.greatest_turns.round(6).tolist()
    ([0.06], [30.0])
    """
    one = (
        _paired(spring, rate_draws) if spring.pairs else _rated(spring, rate_draws, strength_draws)
    )
    return SpringTrials(
        rate_n_m_turn=one.rate_n_m_turn * side_by_side, greatest_turns=one.greatest_turns
    )


def _paired(spring: SpringCase, draws: Reals) -> SpringTrials:
    """Draw one of the pairs, softest first, so that the middle draw is the middle pair."""
    pairs = np.array(sorted(spring.pairs), dtype=np.float64)
    drawn = pairs[np.minimum((draws * len(pairs)).astype(np.intp), len(pairs) - 1)]
    return SpringTrials(rate_n_m_turn=drawn[:, 0], greatest_turns=drawn[:, 1] / drawn[:, 0])


def _rated(spring: SpringCase, rate_draws: Reals, strength_draws: Reals) -> SpringTrials:
    if spring.rate_n_m_turn is None:
        message = "rate_n_m_turn: the spring has neither a rate nor pairs. Give its rate."
        raise ValueError(message)
    rate = span_of(spring.rate_n_m_turn).at(rate_draws)
    return SpringTrials(
        rate_n_m_turn=rate, greatest_turns=_greatest_turns(spring, rate, strength_draws)
    )


def _greatest_turns(spring: SpringCase, rate: Reals, draws: Reals) -> Reals | None:
    """Give the safe turns: the lesser where both a torque and a number of turns are given."""
    limits = []
    if spring.greatest_torque_n_m is not None:
        limits.append(span_of(spring.greatest_torque_n_m).at(draws) / rate)
    if spring.greatest_turns is not None:
        limits.append(span_of(spring.greatest_turns).at(draws))
    return np.minimum.reduce(limits) if limits else None
