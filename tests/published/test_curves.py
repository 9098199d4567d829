"""Cord friction, hanging edges and wound lengths against published figures."""

from __future__ import annotations

from math import pi, radians

import pytest

from foldwright.core.design.hanging import HangingEdge
from foldwright.core.lift.capstan import friction_ratio
from foldwright.core.lift.winding import CordWinding, TapeWinding

INCH = 0.0254


def tape(tube_m: float, thickness_m: float) -> TapeWinding:
    return TapeWinding(
        tube_radius_m=tube_m / 2, tape_thickness_m=thickness_m, tape_width_m=0.016, safety_wraps=0
    )


def test_five_turns_round_a_post() -> None:
    """capstan-article, table of ratios: friction 0.6, five turns, 153 552 935, all digits."""
    assert float(friction_ratio(0.6, 5 * 2 * pi)) == pytest.approx(153552935, rel=1e-8)


@pytest.mark.parametrize(
    ("friction", "degrees", "ratio"),
    [
        (0.3, 180, 2.566332395),
        (0.3, 360, 6.586061963),
        (0.2, 90, 1.369107771),
        (0.15, 270, 2.027611191),
    ],
)
def test_cord_round_a_ring(friction: float, degrees: float, ratio: float) -> None:
    """capstan-article, its formula; the figures are computed from it."""
    assert float(friction_ratio(friction, radians(degrees))) == pytest.approx(ratio, rel=1e-6)


def test_shallow_edge() -> None:
    """catenary-page, its formulas; span 1 m, sag 100 mm, 2 N/m."""
    edge = HangingEdge.of_sag(1.0, 0.1)
    assert edge.parameter_m * 1000 == pytest.approx(1266.32436, rel=1e-7)
    assert edge.length_m * 1000 == pytest.approx(1026.186868, rel=1e-7)
    assert edge.sideways_pull(2.0) == pytest.approx(2.532648721, rel=1e-7)
    assert edge.greatest_pull(2.0) == pytest.approx(2.732648721, rel=1e-7)


def test_deep_edge() -> None:
    """catenary-page, its formulas; span 1 m, sag 300 mm."""
    edge = HangingEdge.of_sag(1.0, 0.3)
    assert edge.parameter_m * 1000 == pytest.approx(459.4470701, rel=1e-7)
    assert edge.length_m * 1000 == pytest.approx(1209.410174, rel=1e-7)


def test_edge_a_tenth_longer_than_its_span() -> None:
    """catenary-page, its formulas; 1.1 m of cloth over 1 m."""
    edge = HangingEdge.of_length(1.0, 1.1)
    assert edge.parameter_m * 1000 == pytest.approx(654.9639476, rel=1e-7)
    assert edge.sag_m * 1000 == pytest.approx(200.3007907, rel=1e-7)


def test_length_on_a_roll() -> None:
    """roll-length-calculator, worked example: 5 in over 2 in at 0.011 in, 1499.39 in."""
    roll = tape(2 * INCH, 0.011 * INCH)
    turns = (5 - 2) / 2 / 0.011
    assert float(roll.length(turns)) / INCH == pytest.approx(1499.39, rel=1e-5)


def test_cloth_wound_on_a_tube_as_rings() -> None:
    """roll-length-page, annulus rule: 1.5 m of 0.6 mm on 38 mm."""
    roll = tape(0.038, 0.0006)
    assert 2000 * float(roll.arm(1.5)) == pytest.approx(50.89121329, rel=1e-6)
    assert float(roll.turns(1.5)) == pytest.approx(10.74267774, rel=1e-6)


def test_cloth_wound_on_a_tube_as_a_spiral() -> None:
    """Geometry: the same cloth as a spiral whose centre line starts half a thickness up.

    Integrated numerically for the example; the closed form leaves out the slope of the
    spiral, a share of 1e-5.
    """
    roll = tape(0.038 + 0.0006, 0.0006)
    assert float(roll.turns(1.5)) == pytest.approx(10.61723141, rel=1.2e-5)
    outermost = 2000 * float(roll.arm(1.5)) + 0.6
    assert outermost == pytest.approx(51.9406777, rel=1.2e-5)


def test_tape_wound_on_itself() -> None:
    """Geometry, rings of one thickness each, pi (d n + t n^2): ten turns of 0.5 mm on 20 mm."""
    assert 1000 * float(tape(0.020, 0.0005).length(10)) == pytest.approx(785.3981634, rel=1e-8)


def test_cord_wound_side_by_side() -> None:
    """Geometry, a helix on the cord's centre line: ten turns of 1.4 mm on 38 mm."""
    cord = CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=0)
    assert 1000 * float(cord.length(10)) == pytest.approx(1237.866677, rel=1e-8)
