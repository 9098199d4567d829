"""From observations to what is now known: trial shades weighed by how well they explain them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import TAIL, Span
from foldwright.core.lift.window import most_by_hand, most_by_spring
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.true_shade import TrialShades

Reals = NDArray[np.float64]
FEWEST_EXPLAINING = 40.0  # with fewer trial shades left, the observations contradict the model


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Learned:
    """What the observations leave possible: trial shades with their weights, which sum to 1."""

    shades: TrialShades
    weights: Reals
    explaining: float  # how many evenly weighed trial shades the weights are worth
    surprise: float  # log of the mean likelihood; compare one way of reading with another

    @property
    def contradicted(self) -> bool:
        """Tell whether hardly any trial shade explains what was seen."""
        return self.explaining < FEWEST_EXPLAINING

    def span(self, values: Reals) -> Span:
        """Give the weighed median and the middle 90 % of a quantity of the trial shades."""
        order = np.argsort(values)
        reached = np.cumsum(self.weights[order])
        places = np.searchsorted(reached, (TAIL, 0.5, 1 - TAIL)).clip(max=values.size - 1)
        low, likely, high = values[order][places].tolist()
        return Span(likely=likely, low=low, high=high)

    def chance(self, holds: NDArray[np.bool_]) -> float:
        """Give the chance that something holds."""
        return float(self.weights[holds].sum())


def learn(case: LiftCase, observations: Iterable[Observation], draws: Reals) -> Learned:
    """Weigh trial shades by how well each explains all that was observed.

    Takes: the case as specified; what was observed, in any mix; uniform numbers, one row for
    each trial shade (some ten thousand) and at least 16 columns.

    Gives: the trial shades with their weights.

    Holds for: guided and slow observations; what is not in the model is allowed for in each
    observation's own spread.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import GuidedStall
    >>> draws = qmc.Sobol(16, seed=1).random(8192)
    >>> before = learn(CASE, (), draws)
    >>> after = learn(CASE, [GuidedStall(turns=8.0, raise_m=1.1)], draws)
    >>> wide, narrow = (found.span(found.shades.least_turns) for found in (before, after))
    >>> narrow.high - narrow.low < (wide.high - wide.low) / 2
    True
    """
    shades = TrialShades.drawn(case, draws)
    logs = np.zeros(draws.shape[0])
    for observation in observations:
        logs = logs + observation.log_likelihood(shades)
    raw = np.exp(logs - logs.max())
    weights = raw / raw.sum()
    return Learned(
        shades=shades,
        weights=weights,
        explaining=float(1 / np.square(weights).sum()),
        surprise=float(logs.max() + np.log(raw.mean())),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Correction:
    """What to change at the spring end, and how sure it is."""

    change_turns: float  # above zero: wind in; below: let out
    turns: float  # at the up-stop, afterwards
    least_turns: Span
    most_turns: Span
    chance: float  # that the turns afterwards satisfy every limit


def correct(learned: Learned, turns: float) -> Correction:
    """Say how many turns to wind in or let out.

    Takes: what was learned; the turns now in the spring, as counted at the up-stop.

    Gives: the change, in whole winding steps, to the fewest turns that satisfy every limit
    as surely as any do; low in the window, since more buys only speed and force.

    Holds for: springs whose strength is known or not; unknown strength does not limit.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import GuidedStall
    >>> seen = [GuidedStall(turns=8.0, raise_m=1.2826)]
    >>> correct(learn(CASE, seen, qmc.Sobol(16, seed=1).random(8192)), 8.0).change_turns > 0
    True
    """
    shades, case = learned.shades, learned.shades.case
    least = shades.least_turns
    most = np.minimum(
        most_by_spring(shades.trials, case.release_turns),
        most_by_hand(shades.trials, case.hand_force_limit_n),
    )
    most = most - shades.miscount_turns
    step = case.winding_step_turns
    tried = np.arange(1, int(np.ceil(least.max() / step)) + 2) * step
    chances = np.array([learned.chance((least <= n) & (n <= most)) for n in tried])
    enough = min(1 - TAIL, float(chances.max()))
    best = int(np.argmax(chances >= enough - 1e-12))
    return Correction(
        change_turns=float(tried[best]) - turns,
        turns=float(tried[best]),
        least_turns=learned.span(least),
        most_turns=learned.span(most),
        chance=float(chances[best]),
    )
