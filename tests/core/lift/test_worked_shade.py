"""An invented shade worked by hand, step by step: the core must arrive at the same figures.

Source: own arithmetic, done beside the code with a pocket calculator's precision.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from tests.core.lift.worked import NEWER, OLDER, A, B, C, answered, case, window, wound

from foldwright.core.facts.wire import WireStrength
from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.case_answer import Limit
from foldwright.core.lift.choices import Brake
from foldwright.core.lift.clutch import chain_pull
from foldwright.core.lift.raising import likeliest_stand
from foldwright.core.lift.wire import WireSpring


def test_load_and_turns_of_travel() -> None:
    answer = answered()
    assert answer.load_lowered_n.likely == pytest.approx(3.7299, abs=5e-5)
    assert answer.load_raised_n.likely == pytest.approx(14.4909, abs=5e-5)
    assert answer.travel_turns.likely == pytest.approx(11.3663, abs=5e-5)
    assert answer.torque_needed_n_m.likely == pytest.approx(0.34975, abs=5e-6)


@pytest.mark.parametrize(
    ("thickness_m", "turns", "lowered_mm", "raised_mm", "torque"),
    [(0.0004, 10.0797, 20.200, 24.232, 0.35114), (0.0009, 8.7366, 21.700, 29.563, 0.42839)],
)
def test_tape_makes_the_top_harder(
    thickness_m: float, turns: float, lowered_mm: float, raised_mm: float, torque: float
) -> None:
    answer = answered(cord_diameter_m=None, tape_thickness_m=thickness_m)
    arm = answer.arm_raised_m.likely
    assert answer.travel_turns.likely == pytest.approx(turns, abs=5e-5)
    assert answer.arm_lowered_m.likely * 1000 == pytest.approx(lowered_mm, abs=5e-4)
    assert arm * 1000 == pytest.approx(raised_mm, abs=5e-4)
    assert arm * answer.load_raised_n.likely == pytest.approx(torque, abs=1e-5)


@pytest.mark.parametrize(
    ("spring", "without", "with_margin"),
    [(A, 6.665, 7.274), (B, 9.825, 10.724), (C, 10.718, 11.698)],
)
def test_least_turns(spring: WireSpring, without: float, with_margin: float) -> None:
    assert window(wound(spring), load_margin=0.0).least_turns.likely == pytest.approx(
        without, abs=1e-3
    )
    assert window(wound(spring)).least_turns.likely == pytest.approx(with_margin, abs=1e-3)


@pytest.mark.parametrize(
    ("spring", "table", "release", "most"),
    [
        (A, OLDER, 0.0, 0.29),
        (B, OLDER, 0.0, 11.30),
        (B, OLDER, 0.25, 11.05),
        (B, OLDER, 0.5, 10.80),
        (C, OLDER, 0.5, 12.86),
        (A, NEWER, 0.0, 1.29),
        (B, NEWER, 0.25, 13.04),
        (C, NEWER, 0.5, 15.03),
    ],
)
def test_most_turns_by_the_spring(
    spring: WireSpring, table: WireStrength, release: float, most: float
) -> None:
    found = window(wound(spring, table), release_turns=release).most_by_spring
    assert found is not None
    assert found.likely == pytest.approx(most, abs=6e-3)


@pytest.mark.parametrize(
    ("spring", "limit_n", "most"),
    [(A, 50.0, 6.21), (B, 50.0, 14.55), (C, 50.0, 16.91), (B, 22.241, 0.65)],
)
def test_most_turns_by_the_hand(spring: WireSpring, limit_n: float, most: float) -> None:
    found = window(wound(spring), hand_force_limit_n=limit_n)
    assert found.most_by_hand.likely == pytest.approx(most, abs=6e-3)


def test_the_stiff_spring_has_no_window() -> None:
    found = window(wound(A))
    assert found.verdict is Verdict.NOTHING_FITS
    assert found.recommended_turns is None


@pytest.mark.parametrize(
    ("spring", "table", "release", "turns"),
    [(B, OLDER, 0.25, 11.0), (C, OLDER, 0.5, 12.0), (B, NEWER, 0.5, 11.0)],
)
def test_turns_to_wind(
    spring: WireSpring, table: WireStrength, release: float, turns: float
) -> None:
    found = window(wound(spring, table), release_turns=release)
    assert found.recommended_turns == turns
    assert found.verdict is Verdict.BY_HAND


def test_half_a_turn_of_release_leaves_the_middle_spring_none() -> None:
    found = window(wound(B), release_turns=0.5)
    assert found.verdict is Verdict.NOTHING_FITS
    assert found.limited_above_by is Limit.SPRING


def test_accessible_operation_leaves_no_turns() -> None:
    found = window(wound(B), hand_force_limit_n=22.2)
    assert found.verdict is Verdict.NOTHING_FITS
    assert found.limited_above_by is Limit.HAND


@pytest.mark.parametrize(
    ("drag", "most"), [(0.008, 15.5), (0.012, 18.4), (0.020, 24.1), (0.0, 9.8)]
)
def test_most_turns_by_the_speed(drag: float, most: float) -> None:
    found = window(wound(B), brake=Brake.FITTED, brake_drag_n_m_s=drag).most_by_speed
    assert found is not None
    assert found.likely == pytest.approx(most, abs=0.06)


@pytest.mark.parametrize(
    ("raise_m", "torque", "load", "down", "up"),
    [
        (0.0, 0.8381, 3.730, 42.91, 34.71),
        (0.5, 0.6867, 7.078, 31.89, 23.66),
        (1.0, 0.5354, 11.402, 20.02, 11.52),
        (1.407, 0.4122, 14.491, 10.74, 2.12),
    ],
)
def test_hand_forces_at_eleven_turns(
    raise_m: float, torque: float, load: float, down: float, up: float
) -> None:
    rate = wound(B).rate_n_m_turn
    assert isinstance(rate, float)
    stand = likeliest_stand(case(), np.array([raise_m]), rate, 11.0)
    assert stand.torque_n_m[0] == pytest.approx(torque, abs=5e-5)
    assert stand.load_n[0] == pytest.approx(load, abs=6e-4)
    assert stand.hand_down_n[0] == pytest.approx(down, abs=6e-3)
    assert stand.hand_up_n[0] == pytest.approx(up, abs=6e-3)


def test_what_the_spring_can_lift_and_what_sinks_against_it_at_the_top() -> None:
    rate = wound(B).rate_n_m_turn
    assert isinstance(rate, float)
    top = likeliest_stand(case(), np.array([1.407]), rate, 11.0)
    lifting = (0.95 * 0.41217 - 0.03) / 0.0197013 / 1.12
    resisting = (1.05 * 0.41217 + 0.03) / 0.0197013 / 0.88
    assert top.lifting_n[0] == pytest.approx(lifting, abs=2e-3)
    assert top.resisting_n[0] == pytest.approx(resisting, abs=2e-3)


def test_a_free_release_without_a_brake_at_eleven_turns() -> None:
    found = window(wound(B), turns=11.0)
    assert found.arrival_energy_j.likely == pytest.approx(26.498, abs=1e-3)
    assert found.arrival_speed_m_s.likely == pytest.approx(5.33, abs=5e-3)
    assert found.spring_energy_j.likely == pytest.approx(58.9, abs=0.05)
    assert found.hand_force_n.likely == pytest.approx(42.91, abs=6e-3)


def test_a_free_release_at_the_least_turns() -> None:
    least = window(wound(B), load_margin=0.0).least_turns.likely
    found = window(wound(B), turns=least, turning_inertia_kg_m2=1.5e-4)
    assert found.arrival_energy_j.likely == pytest.approx(23.5, abs=0.05)
    assert found.arrival_speed_m_s.likely == pytest.approx(5.0, abs=0.05)


def test_what_moves_the_least_turns() -> None:
    before = window(wound(B)).least_turns.likely
    stiffer = replace(wound(B), rate_n_m_turn=B.rate(STIFFER_PA))
    heavier = replace(case().load, bar_n=case().load.bar_n + 0.2 * 9.80665)
    assert window(stiffer).least_turns.likely - before == pytest.approx(-0.975, abs=1e-3)
    assert window(wound(B), load=heavier).least_turns.likely - before == pytest.approx(
        1.337, abs=1e-3
    )
    longer = window(wound(B), tube_outside_m=0.040)
    assert longer.least_turns.likely - before == pytest.approx(0.502, abs=1e-3)
    turns = answered(tube_outside_m=0.040).travel_turns.likely
    assert turns - answered().travel_turns.likely == pytest.approx(-0.549, abs=1e-3)


STIFFER_PA = 1.1 * 206e9


@pytest.mark.parametrize(("ratio", "pull"), [(1.0, 31.23), (1.5, 20.82)])
def test_chain_pull(ratio: float, pull: float) -> None:
    torque = answered().torque_needed_n_m.likely
    found = chain_pull(torque, gear_ratio=ratio, efficiency=0.7, sprocket_radius_m=0.016)
    assert found == pytest.approx(pull, abs=6e-3)
