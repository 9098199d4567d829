"""The trials by which every plan weighs what is uncertain."""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

TRIALS = 1024
TRIALS_AT_THE_BENCH = 2048  # more, for few of them explain all that was noted
TRIALS_OF_CAUSES = 4096  # with fewer, chance decides between two causes that are much alike
UNCERTAIN_INPUTS = 16
SEED = 20_260_101  # any fixed number: the same job gives the same plan on every machine


@cache
def house_draws(trials: int = TRIALS) -> NDArray[np.float64]:
    """Give uniform numbers between 0 and 1, one row for each trial.

    A Latin hypercube: each input takes one value from each of as many equal slices of its
    range as there are trials, so that quantiles settle with few of them.
    """
    chance = np.random.default_rng(SEED)
    slices = np.tile(np.arange(trials, dtype=np.float64), (UNCERTAIN_INPUTS, 1))
    shuffled = chance.permuted(slices, axis=1).T
    draws = (shuffled + chance.random(shuffled.shape)) / trials
    draws.setflags(write=False)
    return draws
