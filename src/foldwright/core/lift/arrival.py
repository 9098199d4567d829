"""What a shade without a speed brake does when it is released free, and when it merely stands."""

from __future__ import annotations

import numpy as np

from foldwright.core.lift.span import Reals
from foldwright.core.lift.trials import Trials


def arrival_energy(trials: Trials, turns: float) -> Reals:
    """Give the greatest energy with which a free release can reach the stop.

    Takes: trial shades; the turns in the spring at the up-stop.

    Gives: joules, one for each trial; 0 where the shade cannot arrive at all.

    Holds for: no brake; an upper bound, since folding cloth takes energy too.

    Source: derived here: the work of the spring less the gain in height and the friction.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(arrival_energy(EXAMPLE, 10.0)), 2)
    19.37
    """
    wound = turns * trials.travel_turns + trials.travel_turns**2 / 2
    released = 2 * np.pi * trials.rate_n_m_turn * (1 - trials.spring_hysteresis) * wound
    raised = trials.work_j * (1 + trials.load_friction)
    rubbed = trials.constant_friction_n_m * 2 * np.pi * trials.travel_turns
    return np.maximum(released - raised - rubbed, 0.0)


def arrival_speed(trials: Trials, turns: float) -> Reals:
    """Give the greatest speed with which a free release can reach the stop.

    Takes: trial shades; the turns in the spring at the up-stop.

    Gives: metres per second, one for each trial.

    Holds for: no brake; an upper bound.

    Source: derived here from the energy.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(arrival_speed(EXAMPLE, 10.0)), 2)
    5.68
    """
    speed: Reals = np.sqrt(2 * arrival_energy(trials, turns) / trials.moving_kg)
    return speed


def spring_energy(trials: Trials, turns: float) -> Reals:
    """Give the energy stored in the spring when the shade is fully lowered.

    Takes: trial shades; the turns in the spring at the up-stop.

    Gives: joules, one for each trial.

    Holds for: springs whose torque is proportional to their turns; a turn is 2 pi radians.

    Source: derived here.

    >>> from foldwright.core.lift.trials import EXAMPLE
    >>> round(float(spring_energy(EXAMPLE, 10.0)), 2)
    43.98
    """
    return np.pi * trials.rate_n_m_turn * (turns + trials.travel_turns) ** 2
