"""Whatever is typed at the bench is answered or asked about; nothing breaks and nothing is nan."""

from __future__ import annotations

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import qmc

from foldwright.core.prove.advising import advise
from foldwright.core.prove.example import CASE
from foldwright.core.prove.learning import learn
from foldwright.core.prove.noting import BarLevel, Cycled, FreeStall, ReleasePull, TurnsWound
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScaleForce,
    ScalePair,
    SpringTorque,
    Way,
    Weighed,
)
from foldwright.core.prove.questioning import questions, taken
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

DRAWS = qmc.Sobol(16, seed=1).random(1024)
ANY = st.one_of(
    st.floats(), st.floats(-5, 40), st.sampled_from([0.0, -0.0, 400.0, 1e300, -1e300, 5e-324])
)
NOTED: st.SearchStrategy[Observation] = st.one_of(
    st.builds(GuidedStall, turns=ANY, raise_m=ANY),
    st.builds(FullRise, turns=ANY, rose=st.booleans()),
    st.builds(Holding, turns=ANY, raise_m=ANY, held=st.booleans()),
    st.builds(ScaleForce, turns=ANY, raise_m=ANY, force_n=ANY, way=st.sampled_from(Way)),
    st.builds(ScalePair, turns=ANY, raise_m=ANY, down_n=ANY, up_n=ANY),
    st.builds(Weighed, mass_kg=ANY),
    st.builds(SpringTorque, turns=ANY, torque_n_m=ANY),
    st.builds(RiseTime, turns=ANY, seconds=ANY),
    st.builds(TurnsWound, turns=ANY),
    st.builds(FreeStall, turns=ANY, raise_m=ANY),
    st.builds(ReleasePull, raise_m=ANY, pull_m=ANY, released=st.booleans()),
    st.builds(BarLevel, raise_m=ANY, right_above_left_m=ANY),
    st.builds(Cycled, cycles=st.integers(), cords_jumped=st.integers()),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(NOTED, max_size=4))
def test_it_is_answered_or_asked_about(noted: list[Observation]) -> None:
    asked = questions(CASE, noted, DRAWS)
    for question in asked:
        assert "{" not in fill(question.finding.sentence, question.finding.figures, System.INCH)
    learned = learn(CASE, taken(noted, asked), DRAWS)
    assert np.isfinite(learned.weights).all()
    assert np.isclose(learned.weights.sum(), 1)
    assert np.isfinite(advise(learned, 10.0).least_turns.value)
