"""The window of turns against a brute-force scan: try every number of turns at every raise.

The scan knows nothing of which raise is the worst. For each number of turns it walks the
whole raise and asks at every place, on both sides of each pick-up, whether the spring lifts
the load with its margin, whether it stays safe, and whether a hand can pull the bar down.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray
from tests.core.lift.worked import LIKELIEST, case
from tests.laws.shades import between, panels

from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.spring import SpringCase
from foldwright.core.lift.winding import CordWinding, TapeWinding
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad

STEP = 0.05
PLACES = 1500

Turns = NDArray[np.float64]


def plain(value: object) -> float:
    assert isinstance(value, float | int)
    return float(value)


def winding(given_case: LiftCase) -> CordWinding | TapeWinding:
    radius = given_case.tube_outside_m / 2
    if given_case.cord_diameter_m is not None:
        return CordWinding(
            tube_radius_m=radius,
            cord_diameter_m=plain(given_case.cord_diameter_m),
            safety_wraps=given_case.safety_wraps,
        )
    return TapeWinding(
        tube_radius_m=radius,
        tape_thickness_m=plain(given_case.tape_thickness_m),
        tape_width_m=0.016,
        safety_wraps=given_case.safety_wraps,
    )


def scan(given_case: LiftCase, tried: Turns) -> tuple[Turns, Turns, Turns]:
    """Tell for each number of turns whether it lifts, is safe, and can be pulled down."""
    panel, spring = given_case.load, given_case.spring
    assert spring is not None
    curve, wound = LoadCurve.of(panel), winding(given_case)
    travel = panel.travel_m
    raises = np.sort(np.concatenate((np.linspace(0, travel, PLACES), curve.pick_ups)))
    raises = raises[raises <= travel]
    arm, to_go = wound.arm(raises), wound.turns_to_go(raises, travel)
    after, before = curve.load_after(raises), curve.load_before(raises)
    after[-1] = curve.greatest_load()
    before[0] = curve.load_lowered()
    rate, mu = plain(spring.rate_n_m_turn), plain(given_case.load_friction)
    lost, still = plain(given_case.spring_hysteresis), plain(given_case.constant_friction_n_m)
    torque = rate * (tried[:, None] + to_go)
    needed = arm * after * (1 + mu) * (1 + given_case.load_margin) + still
    lifts = np.all(torque * (1 - lost) >= needed, axis=1)
    pull = (torque * (1 + lost) + still) / arm - before * (1 - mu)
    pulled = np.all(pull <= given_case.hand_force_limit_n, axis=1)
    most = tried + to_go[0] + given_case.release_turns
    return lifts, most * rate <= plain(spring.greatest_torque_n_m), pulled


@st.composite
def cases(draw: st.DrawFn) -> LiftCase:
    """Draw a shade on cords or tapes, with a spring of a size that may or may not do."""
    panel: PanelLoad = draw(panels())
    tape = draw(st.booleans())
    rate = draw(between(0.01, 0.2))
    return replace(
        case(),
        load=panel,
        tube_outside_m=draw(between(0.019, 0.06)),
        cord_diameter_m=None if tape else draw(between(0.0007, 0.003)),
        tape_thickness_m=draw(between(0.0001, 0.001)) if tape else None,
        spring=SpringCase(rate_n_m_turn=rate, greatest_torque_n_m=rate * draw(between(5, 60))),
        constant_friction_n_m=draw(between(0.0, 0.1)),
        load_friction=draw(between(0.0, 0.4)),
        spring_hysteresis=draw(between(0.0, 0.2)),
        hand_force_limit_n=draw(between(10, 90)),
    )


@settings(max_examples=60, deadline=None)
@given(cases())
def test_the_limits_are_where_the_scan_finds_them(given_case: LiftCase) -> None:
    found = answer_case(given_case, LIKELIEST).window
    assert found is not None
    assert found.most_by_spring is not None
    limits = (found.least_turns.likely, found.most_by_spring.likely, found.most_by_hand.likely)
    assume(all(-200 < limit < 400 for limit in limits))
    tried = np.arange(min(limits) - 1, max(limits) + 1, STEP)
    lifts, safe, pulled = scan(given_case, tried)
    assert tried[lifts].min() == pytest.approx(limits[0], abs=1.001 * STEP)
    assert tried[safe].max() == pytest.approx(limits[1], abs=1.001 * STEP)
    assert tried[pulled].max() == pytest.approx(limits[2], abs=1.001 * STEP)


@settings(max_examples=30, deadline=None)
@given(cases(), between(0.002, 0.05))
def test_the_turns_to_wind_pass_the_scan(given_case: LiftCase, drag: float) -> None:
    braked = replace(given_case, brake=Brake.FITTED, brake_drag_n_m_s=drag)
    found = answer_case(braked, LIKELIEST).window
    assert found is not None
    assume(found.recommended_turns is not None)
    lifts, safe, pulled = scan(given_case, np.array([found.recommended_turns]))
    assert lifts.all()
    assert safe.all()
    assert pulled.all()


@settings(max_examples=30, deadline=None)
@given(cases())
def test_where_nothing_is_recommended_no_step_passes_the_scan(given_case: LiftCase) -> None:
    found = answer_case(given_case, LIKELIEST).window
    assert found is not None
    assume(found.recommended_turns is None)
    passed = np.logical_and.reduce(scan(given_case, np.arange(0.5, 100, 0.5)))
    assert not passed.any()
