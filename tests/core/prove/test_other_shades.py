"""The bench learns of every kind of shade that the lift knows, not of the flat one alone."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import qmc

from foldwright.core.lift.choices import Brake
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.prove.advising import advise
from foldwright.core.prove.asking import next_best
from foldwright.core.prove.diagnosing import diagnose
from foldwright.core.prove.example import CASE, PANEL
from foldwright.core.prove.learning import learn
from foldwright.core.prove.observing import GuidedStall, ScaleForce, ScalePair, Way, Weighed
from foldwright.core.prove.questioning import questions
from foldwright.core.prove.telling_rise import tell_rise
from foldwright.core.prove.true_shade import TrialShades
from foldwright.core.weigh.load import Lump

DRAWS = qmc.Sobol(16, seed=1).random(1024)
LONE_ROW = replace(
    PANEL, row_spacings_m=(), rows_n=(0.4,), top_panel_m=1.6, travel_m=0.7, cloth_n_m=9.0
)
SHADES = {
    "on tapes": replace(CASE, cord_diameter_m=None, tape_thickness_m=Span.within(0.0005, 0.1)),
    "cord as wound": replace(CASE, cord_diameter_m=Span.within(0.0014, 0.15)),
    "looped": replace(CASE, load=replace(PANEL, fullness=1.5, backing_n_m=0.4)),
    "poufed": replace(CASE, load=replace(PANEL, tied_rows=2, travel_m=1.0)),
    "stiff": replace(CASE, load=replace(PANEL, bending_length_m=0.04)),
    "with a mid-fold rod": replace(
        CASE, load=replace(PANEL, lumps=(Lump(panel=1, arc_m=0.1, weight_n=0.6),))
    ),
    "of one row": replace(CASE, load=LONE_ROW),
    "a spring known by pairs": replace(
        CASE, spring=SpringCase(pairs=((0.03, 0.8), (0.034, 0.85), (0.038, 0.9)))
    ),
    "a spring of unknown strength": replace(CASE, spring=SpringCase(rate_n_m_turn=0.034)),
    "two springs": replace(CASE, spring=SpringCase(rate_n_m_turn=0.017), springs_side_by_side=2),
    "known exactly": replace(
        CASE,
        spring=SpringCase(rate_n_m_turn=0.034),
        constant_friction_n_m=0.03,
        load_friction=0.1,
        spring_hysteresis=0.05,
        cloth_mass_spread=0.0,
    ),
    "braked": replace(CASE, brake=Brake.FITTED, brake_drag_n_m_s=Span.within(0.012, 0.2)),
}


@pytest.mark.parametrize("name", SHADES)
def test_it_is_learned_advised_asked_and_told(name: str) -> None:
    case: LiftCase = SHADES[name]
    likely = TrialShades.drawn(case, np.full((1, 16), 0.5))
    turns = round(2 * 0.8 * float(likely.least_turns[0])) / 2
    down, up = (float(force[0]) for force in likely.hand_forces(turns, likely.travel_m / 3))
    seen = [
        Weighed(mass_kg=float(likely.panel_n[0]) / 9.80665),
        GuidedStall(turns=turns, raise_m=float(likely.stalls_at(turns)[0])),
        ScalePair(turns=turns, raise_m=likely.travel_m / 3, down_n=down, up_n=up),
        ScaleForce(turns=turns, raise_m=likely.travel_m / 3, force_n=down, way=Way.DOWN),
    ]
    assert questions(case, seen, DRAWS) == ()
    before, learned = learn(case, (), DRAWS), learn(case, seen, DRAWS)
    wide, narrow = (each.span(each.shades.least_turns) for each in (before, learned))
    assert narrow.low <= float(likely.least_turns[0]) <= narrow.high
    assert narrow.high - narrow.low <= wide.high - wide.low
    advice = advise(learned, turns)
    assert not advice.contradicted
    assert advice.turns.value > 0
    assert next_best(learned, seen, turns)
    assert not diagnose(case, seen, DRAWS).contradicted
    told = tell_rise(learned, float(likely.least_turns[0]) + 3)
    assert told.ending.value.startswith("reaches the stop")
