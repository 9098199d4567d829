"""From observations to what is now known: trial shades weighed by how well they explain them.

Where few of the trial shades explain what was seen, new ones are drawn where those few
lie, and weighed against how often the case itself would have given such a shade. Only
this keeps ranges honest when a person has noted much.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray
from scipy.special import ndtr, ndtri

from foldwright.core.facts.proving import STRANGEST
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.sampling import DRAW_COLUMNS
from foldwright.core.lift.span import TAIL, Span
from foldwright.core.prove.observing import Observation
from foldwright.core.prove.trouble import SOUND, Trouble
from foldwright.core.prove.true_shade import TrialShades

Reals = NDArray[np.float64]
FARTHEST = 6.0  # standard deviations; beyond, a trial shade is as good as impossible
ENOUGH = 0.15  # of the trial shades: with so many still explaining, none are drawn anew
STEPPING = 0.10  # of the trial shades that must still explain each step on the way ...
STEPPING_ON = 10 * DRAW_COLUMNS  # ... and so many at least, or their spread is a guess
WIDER = 1.25  # the new trial shades spread so much wider than those that explained
MOST_ROUNDS = 9
FEWEST_EXPLAINING = 0.02  # of the trial shades; with fewer the ranges are not to be trusted


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Learned:
    """What the observations leave possible: trial shades with their weights, which sum to 1."""

    shades: TrialShades
    weights: Reals
    explaining: float  # share of evenly weighed trial shades that the weights are worth
    evidence: float  # log of the mean likelihood; compare one way of explaining with another
    strangeness: float  # squared distance of the shade that explains best from the likeliest

    @property
    def contradicted(self) -> bool:
        """Tell whether only a shade explains what was seen that this case hardly ever gives."""
        return self.explaining < FEWEST_EXPLAINING or self.strangeness > STRANGEST.value

    def span(self, values: Reals) -> Span:
        """Give the weighed median and the middle 90 % of a quantity of the trial shades."""
        order = np.argsort(values)
        reached = np.cumsum(self.weights[order])
        places = np.searchsorted(reached, (TAIL, 0.5, 1 - TAIL)).clip(max=values.size - 1)
        low, likely, high = values[order][places].tolist()
        return Span(likely=likely, low=low, high=high)

    def spread(self, values: Reals, count: int) -> list[int]:
        """Give the places of trial shades spread evenly through what is possible of a quantity."""
        order = np.argsort(values)
        reached = np.cumsum(self.weights[order])
        shares = (np.arange(count) + 0.5) / count
        places = np.searchsorted(reached, shares).clip(max=order.size - 1)
        return [int(place) for place in order[places]]

    def reweighed(self, weights: Reals) -> Learned:
        """Give the same trial shades with other weights."""
        return replace(self, weights=weights)

    def chance(self, holds: NDArray[np.bool_]) -> float:
        """Give the chance that something holds."""
        return float(self.weights[holds].sum())


def learn(
    case: LiftCase, observations: Sequence[Observation], draws: Reals, trouble: Trouble = SOUND
) -> Learned:
    """Weigh trial shades by how well each explains all that was observed.

    Takes: the case as specified; what was observed, in any mix; uniform numbers, one row for
    each trial shade (some thousands, a thousand at the fewest) and at least 16 columns; what
    is wrong with them all.

    Gives: the trial shades with their weights.

    Holds for: guided and slow observations; what the model leaves out is drawn for each
    trial shade as a wander of its load.

    Source: derived here.

    >>> from scipy.stats import qmc
    >>> from foldwright.core.prove.example import CASE
    >>> from foldwright.core.prove.observing import GuidedStall
    >>> draws = qmc.Sobol(16, seed=1).random(4096)
    >>> before = learn(CASE, (), draws)
    >>> after = learn(CASE, [GuidedStall(turns=8.0, raise_m=1.1)], draws)
    >>> wide, narrow = (found.span(found.shades.least_turns) for found in (before, after))
    >>> narrow.high - narrow.low < (wide.high - wide.low) / 2
    True
    """
    normals = np.clip(ndtri(draws[:, :DRAW_COLUMNS]), -FARTHEST, FARTHEST)
    told = _Told(case=case, observations=tuple(observations), trouble=trouble)
    round_ = _Round.of(told, normals, np.zeros(len(normals)))
    best = round_
    for _ in range(MOST_ROUNDS):
        if best.explaining >= ENOUGH:
            break
        round_ = _nearer(told, round_, normals)
        best = max(best, round_, key=lambda each: each.explaining)
    return best.learned()


@dataclass(frozen=True, kw_only=True, slots=True)
class _Told:
    """What trial shades are drawn from and weighed by."""

    case: LiftCase
    observations: tuple[Observation, ...]
    trouble: Trouble


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class _Round:
    """Trial shades as they were drawn: their normals, and the logarithms that weigh them."""

    shades: TrialShades
    normals: Reals
    likelihoods: Reals
    rarities: Reals  # how much rarer the case itself gives such a shade than it was drawn

    @classmethod
    def of(cls, told: _Told, normals: Reals, rarities: Reals) -> _Round:
        shades = TrialShades.drawn(told.case, ndtr(normals), told.trouble)
        likelihoods = np.zeros(len(normals))
        for observation in told.observations:
            likelihoods = likelihoods + observation.log_likelihood(shades)
        return cls(shades=shades, normals=normals, likelihoods=likelihoods, rarities=rarities)

    def weights(self, heed: float = 1.0) -> Reals:
        """Give the weights when the likelihoods are heeded by a share only."""
        logs = heed * self.likelihoods + self.rarities
        raw = np.exp(logs - logs.max())
        return np.asarray(raw / raw.sum(), dtype=np.float64)

    @property
    def explaining(self) -> float:
        return _worth(self.weights())

    def heed(self) -> float:
        """Give the greatest share of heed that leaves enough trial shades explaining."""
        low, high = 0.0, 1.0
        needed = max(STEPPING, STEPPING_ON / len(self.normals))
        for _ in range(20):
            middle = (low + high) / 2
            enough = _worth(self.weights(middle)) >= needed
            low, high = (middle, high) if enough else (low, middle)
        return high

    def learned(self) -> Learned:
        logs = self.likelihoods + self.rarities
        return Learned(
            shades=self.shades,
            weights=self.weights(),
            explaining=self.explaining,
            strangeness=float(np.square(np.einsum("n,ni->i", self.weights(), self.normals)).sum()),
            evidence=float(logs.max() + np.log(np.exp(logs - logs.max()).mean())),
        )


def _worth(weights: Reals) -> float:
    """Give the share of evenly weighed trial shades that the weights are worth."""
    return float(1 / np.square(weights).sum() / weights.size)


def _nearer(told: _Told, last: _Round, normals: Reals) -> _Round:
    """Draw new trial shades where those lie that explain, and note how rare each would be."""
    weights = last.weights(last.heed())
    # Plain sums: many threads on products as narrow as these only wait for each other.
    middle = np.einsum("n,ni->i", weights, last.normals)
    apart = last.normals - middle
    spread = WIDER * np.einsum("ni,nj->ij", apart * weights[:, None], apart)
    lower = np.linalg.cholesky(spread + 1e-9 * np.eye(len(middle)))
    drawn = np.clip(middle + np.einsum("nj,ij->ni", normals, lower), -FARTHEST, FARTHEST)
    drawn_as = -np.square(normals).sum(axis=1) / 2 - np.log(np.diag(lower)).sum()
    rarities = -np.square(drawn).sum(axis=1) / 2 - drawn_as
    return _Round.of(told, drawn, rarities)
