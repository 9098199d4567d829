"""Tape on itself against a spiral drawn and measured numerically, and against counted rings."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq

from foldwright.core.lift.winding import CordWinding, TapeWinding

TAPES = [(0.019, 0.0004, 1.8), (0.019, 0.0008, 1.5), (0.0125, 0.001, 2.4)]


def spiral_length(radius: float, thickness: float, start: float, end: float) -> float:
    """Measure a spiral that grows by one thickness a turn, between two counts of turns."""
    growth = thickness / (2 * np.pi)

    def piece(angle: float) -> float:
        return float(np.hypot(radius + growth * angle, growth))

    return float(quad(piece, 2 * np.pi * start, 2 * np.pi * end, epsabs=1e-12, limit=200)[0])


@pytest.mark.parametrize(("radius", "thickness", "travel"), TAPES)
def test_turns_of_tape_agree_with_the_drawn_spiral(
    radius: float, thickness: float, travel: float
) -> None:
    tape = TapeWinding(
        tube_radius_m=radius, tape_thickness_m=thickness, tape_width_m=0.016, safety_wraps=3
    )
    turns = float(tape.turns(travel))
    assert spiral_length(radius, thickness, 3, 3 + turns) == pytest.approx(travel, abs=6e-5)
    drawn = brentq(lambda n: spiral_length(radius, thickness, 3, 3 + n) - travel, 1.0, 40.0)
    assert turns == pytest.approx(drawn, abs=1e-3)
    assert float(tape.arm(travel)) == pytest.approx(radius + thickness * (3 + drawn), rel=1e-5)


@pytest.mark.parametrize(("radius", "thickness", "travel"), TAPES)
def test_turns_of_tape_agree_with_counted_rings(
    radius: float, thickness: float, travel: float
) -> None:
    tape = TapeWinding(
        tube_radius_m=radius, tape_thickness_m=thickness, tape_width_m=0.016, safety_wraps=3
    )
    rings = 2 * np.pi * (radius + thickness * (np.arange(3, 60) + 0.5))
    wound = np.concatenate(([0.0], np.cumsum(rings)))
    counted = np.interp(travel, wound, np.arange(len(wound)))
    assert float(tape.turns(travel)) == pytest.approx(counted, abs=0.005)


def test_a_turn_of_cord_is_as_long_as_the_drawn_helix() -> None:
    cord = CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=3)
    angles = np.linspace(0.0, 20 * np.pi, 200_001)
    line = np.array(
        [0.0197 * np.cos(angles), 0.0197 * np.sin(angles), 0.0014 * angles / (2 * np.pi)]
    )
    drawn = np.linalg.norm(np.diff(line, axis=1), axis=0).sum()
    assert float(cord.length(10)) == pytest.approx(drawn, rel=1e-7)
