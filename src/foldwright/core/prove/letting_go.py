"""One trial shade, or the likeliest, made ready to be let go."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import numpy as np

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.sampling import DRAW_COLUMNS, case_winding
from foldwright.core.prove.rising import RisingShade
from foldwright.core.prove.true_shade import TrialShades

LIKELIEST = np.full((1, DRAW_COLUMNS), 0.5)


def likeliest_shade(case: LiftCase, turns: float) -> RisingShade:
    """Make the likeliest shade of a case ready to be let go.

    Takes: a case with a spring; the turns in it, counted at the up-stop.

    Gives: the shade for `rise`.

    Source: derived here.

    >>> from foldwright.core.prove.example import CASE
    >>> round(likeliest_shade(CASE, 11.0).rate_n_m_turn, 6)
    0.034348
    """
    return trial_shade(_likeliest(case), 0, turns)


@lru_cache(maxsize=8)
def _likeliest(case: LiftCase) -> TrialShades:
    return TrialShades.drawn(case, LIKELIEST)


def trial_shade(shades: TrialShades, place: int, turns: float) -> RisingShade:
    """Make one of the trial shades ready to be let go.

    Takes: trial shades; the place of the one meant; the turns in it as counted.

    Gives: the shade for `rise`, its load the model's for its cloth and bar.

    Holds for: a wander of the load is left out: it slows and speeds in turn.

    Source: derived here.

    >>> from foldwright.core.prove.example import CASE
    >>> trial_shade(TrialShades.drawn(CASE, LIKELIEST), 0, 11.0).turns
    11.0
    """
    trials, case = shades.trials, shades.case
    panel = replace(case.load, bar_n=case.load.bar_n + float(shades.bar_n[place]))
    return RisingShade(
        curve=type(shades.curve).of(panel),
        winding=case_winding(case, np.asarray(0.5)),  # one winding, not a row of them
        rate_n_m_turn=float(trials.rate_n_m_turn[place]),
        turns=turns + float(shades.miscount_turns[place]),
        constant_friction_n_m=float(trials.constant_friction_n_m[place]),
        load_friction=float(trials.load_friction[place]),
        spring_hysteresis=float(trials.spring_hysteresis[place]),
        brake_drag_n_m_s=float(shades.brake_drag_n_m_s[place]),
        turning_inertia_kg_m2=case.turning_inertia_kg_m2,
        cloth_scale=float(shades.cloth_scale[place]),
    )
