"""Cord and tape on the tube, against figures worked by hand."""

from __future__ import annotations

import numpy as np
import pytest

from foldwright.core.lift.winding import CordWinding, TapeWinding

TRAVEL_M = 1.407


def tape(radius_mm: float, thickness_mm: float) -> TapeWinding:
    return TapeWinding(
        tube_radius_m=radius_mm / 1000,
        tape_thickness_m=thickness_mm / 1000,
        tape_width_m=0.016,
        safety_wraps=3,
    )


CORD = CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=3)


def test_cord_worked_by_hand() -> None:
    assert float(CORD.length_per_turn) * 1000 == pytest.approx(123.787, abs=5e-4)
    assert float(CORD.turns(TRAVEL_M)) == pytest.approx(11.3663, abs=5e-5)
    assert float(CORD.arm(0.0)) * 1000 == pytest.approx(19.7013, abs=5e-5)
    assert float(CORD.walk(TRAVEL_M)) * 1000 == pytest.approx(15.913, abs=5e-4)
    assert float(CORD.wound_width(TRAVEL_M)) * 1000 == pytest.approx(20.113, abs=5e-4)


def test_the_arm_of_cord_stays() -> None:
    assert CORD.arm(np.linspace(0, TRAVEL_M, 5)) == pytest.approx(np.full(5, 0.0197013), rel=1e-5)


def test_safety_wraps_of_cord_widen_the_band_but_are_no_turns_of_travel() -> None:
    bare = CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=0)
    assert float(CORD.turns(TRAVEL_M)) == float(bare.turns(TRAVEL_M))
    wider = float(CORD.wound_width(TRAVEL_M) - bare.wound_width(TRAVEL_M))
    assert wider == pytest.approx(3 * 0.0014)


@pytest.mark.parametrize(
    ("thickness_mm", "turns", "lowered_mm", "raised_mm"),
    [(0.4, 10.0797, 20.200, 24.232), (0.9, 8.7366, 21.700, 29.563)],
)
def test_tape_worked_by_hand(
    thickness_mm: float, turns: float, lowered_mm: float, raised_mm: float
) -> None:
    wound = tape(19, thickness_mm)
    assert float(wound.turns(TRAVEL_M)) == pytest.approx(turns, abs=5e-5)
    arms = 1000 * wound.arm(np.array([0.0, TRAVEL_M]))
    assert arms == pytest.approx([lowered_mm, raised_mm], abs=5e-4)


@pytest.mark.parametrize(
    ("radius_mm", "thickness_mm", "travel_m", "turns", "without_growth"),
    [
        (19, 0.4, 1.8, 12.608, 14.921),
        (19, 0.8, 1.5, 9.477, 12.306),
        (12.5, 1.0, 2.4, 16.189, 29.383),
    ],
)
def test_leaving_the_growth_of_tape_out_overstates_its_turns(
    radius_mm: float, thickness_mm: float, travel_m: float, turns: float, without_growth: float
) -> None:
    """Without growth every turn would lie on the bare tube, half a thickness off it."""
    wound = tape(radius_mm, thickness_mm)
    assert float(wound.turns(travel_m)) == pytest.approx(turns, abs=5e-4)
    on_the_tube = 2 * np.pi * (radius_mm + thickness_mm / 2) / 1000
    assert travel_m / on_the_tube == pytest.approx(without_growth, abs=1e-3)


def test_turns_to_go_count_down_to_the_up_stop() -> None:
    wound = tape(19, 0.4)
    raises = np.array([0.0, 0.5, TRAVEL_M])
    assert wound.turns_to_go(raises, TRAVEL_M) == pytest.approx(
        wound.turns(TRAVEL_M) - wound.turns(raises)
    )
    assert CORD.turns_to_go(raises, TRAVEL_M)[[0, 2]] == pytest.approx([11.36632, 0.0], abs=1e-4)


def test_tape_takes_its_own_width_and_does_not_walk() -> None:
    wound = tape(19, 0.4)
    assert float(wound.wound_width(TRAVEL_M)) == 0.016
    assert float(wound.walk(TRAVEL_M)) == 0.0


def test_many_diameters_and_raises_at_once() -> None:
    diameters = np.array([[0.0012], [0.0014], [0.0016]])
    cords = CordWinding(tube_radius_m=0.019, cord_diameter_m=diameters, safety_wraps=3)
    raises = np.linspace(0.0, TRAVEL_M, 7)
    assert cords.arm(raises).shape == (3, 7)
    assert cords.turns(raises)[1] == pytest.approx(CORD.turns(raises))
    tapes = TapeWinding(
        tube_radius_m=0.019, tape_thickness_m=diameters, tape_width_m=0.016, safety_wraps=3
    )
    assert tapes.turns(raises)[0] == pytest.approx(tape(19, 1.2).turns(raises))
