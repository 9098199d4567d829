"""Sags against published beam formulas and the sections they are computed with.

E of 6063 aluminium 68.9 GPa: aluminium-6063-data. Steel 200 GPa: from memory. Eastern white
pine 8.5 GPa: wood-handbook-2010 as quoted by white-pine-quote.
"""

from __future__ import annotations

from math import sqrt

import pytest

from foldwright.core.facts.constants import GRAVITY
from foldwright.core.lift.bending import (
    Beam,
    HungBar,
    PointLoad,
    rectangle_second_moment,
    tube_second_moment,
)

GRAVITY_N_KG = GRAVITY.value
ALUMINIUM_PA = 68.9e9
SPAN_M = 1.8
TUBE_M4 = tube_second_moment(0.038, 0.0015)
TUBE = Beam(span_m=SPAN_M, rigidity_n_m2=ALUMINIUM_PA * TUBE_M4)


def millimetres(sag_m: float) -> float:
    return sag_m * 1000


def test_second_moment_of_a_tube() -> None:
    """Geometry: 38 mm outside, 1.5 mm wall, 28 692.11662 mm4."""
    assert pytest.approx(28692.11662, rel=1e-7) == TUBE_M4 * 1e12


def test_spread_load() -> None:
    """beam-page, 5 w L^4/384 E I: 3 kg over the span, then the tube's own 0.4644 kg/m."""
    load = 3 * GRAVITY_N_KG / SPAN_M
    own = 0.464405934 * GRAVITY_N_KG
    assert millimetres(TUBE.greatest_sag([], load).sag_m) == pytest.approx(1.130098807, rel=1e-6)
    assert millimetres(TUBE.greatest_sag([], own).sag_m) == pytest.approx(0.3148947551, rel=1e-6)
    both = TUBE.greatest_sag([], load + own)
    assert millimetres(both.sag_m) == pytest.approx(1.444993562, rel=1e-6)


def test_spread_load_on_steel() -> None:
    """beam-page; steel 200 GPa from memory."""
    steel = Beam(span_m=SPAN_M, rigidity_n_m2=200e9 * TUBE_M4)
    sag = steel.greatest_sag([], 3 * GRAVITY_N_KG / SPAN_M).sag_m
    assert millimetres(sag) == pytest.approx(0.3893190389, rel=2e-6)


def test_centre_load() -> None:
    """beam-page, P L^3/48 E I: 3 kg in the middle."""
    sag = TUBE.greatest_sag([PointLoad(load_n=3 * GRAVITY_N_KG, at_m=SPAN_M / 2)])
    assert millimetres(sag.sag_m) == pytest.approx(1.808158091, rel=1e-6)
    assert sag.at_m == pytest.approx(SPAN_M / 2, abs=1e-4)


def test_two_loads_at_the_quarters() -> None:
    """structural-handbook, P a (3 L^2 - 4 a^2)/24 E I, from memory: 1.5 kg at each quarter."""
    each = 1.5 * GRAVITY_N_KG
    loads = [PointLoad(load_n=each, at_m=SPAN_M * share) for share in (0.25, 0.75)]
    sag = TUBE.greatest_sag(loads)
    assert millimetres(sag.sag_m) == pytest.approx(1.243108687, rel=1e-6)


def test_one_load_off_centre() -> None:
    """off-centre-beam-page: 20 N at 600 mm; the greatest sag lies beyond the load."""
    load = PointLoad(load_n=20.0, at_m=0.6)
    worst = TUBE.greatest_sag([load])
    assert millimetres(float(TUBE.sag_under(load, 0.6))) == pytest.approx(0.9712240307, rel=1e-6)
    assert millimetres(worst.sag_m) == pytest.approx(1.0573348, rel=1e-6)
    assert SPAN_M - worst.at_m == pytest.approx(0.9797958971, abs=1e-4)
    assert SPAN_M - worst.at_m == pytest.approx(sqrt((SPAN_M**2 - 0.6**2) / 3), abs=1e-4)
    assert millimetres(float(TUBE.sag_under(load, 0.9))) == pytest.approx(1.047100908, rel=1e-6)


@pytest.mark.parametrize(
    ("breadth", "height", "expected"),
    [(0.01905, 0.0381, 1.395793528), (0.0381, 0.01905, 5.583174112)],
    ids=["on edge", "flat"],
)
def test_pine_board_with_a_centre_load(breadth: float, height: float, expected: float) -> None:
    """beam-page; white-pine-quote: 50 N on 1 m of 19.05 by 38.1 mm pine."""
    board = Beam(span_m=1.0, rigidity_n_m2=8.5e9 * rectangle_second_moment(breadth, height))
    sag = board.greatest_sag([PointLoad(load_n=50.0, at_m=0.5)])
    assert millimetres(sag.sag_m) == pytest.approx(expected, rel=1e-6)


def test_interior_span_of_a_long_bar() -> None:
    """structural-handbook, continuous beam, from memory: interior spans near w L^4/384 E I.

    Of nine equal spans the middle one is taken; the neighbours' ends are not quite level,
    so 2 % is left between the two.
    """
    bar = HungBar(
        cords_m=tuple(0.3 * place for place in range(10)), length_m=2.7, rigidity_n_m2=3.0
    )
    moments = bar.cord_moments(4.0)
    beam = Beam(span_m=0.3, rigidity_n_m2=3.0)
    middle = float(beam.sag_spread(4.0, 0.15)) + (moments[4] + moments[5]) * 0.3**2 / (16 * 3.0)
    assert middle == pytest.approx(4.0 * 0.3**4 / (384 * 3.0), rel=2e-2)


def test_end_span_of_a_long_bar() -> None:
    """structural-handbook, from memory: an end span sags w L^4/145 to w L^4/185 over E I."""
    bar = HungBar(
        cords_m=tuple(0.3 * place for place in range(10)), length_m=2.7, rigidity_n_m2=3.0
    )
    worst = bar.greatest_sag(4.0)
    whole = 4.0 * 0.3**4 / 3.0
    assert whole / 185 < worst.sag_m < whole / 145
    assert worst.at_m < 0.3 or worst.at_m > 2.4
