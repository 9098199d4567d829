"""Sags of tube, bar and board of one shade, against figures worked by hand."""

from __future__ import annotations

import pytest

from foldwright.core.lift.bending import (
    Beam,
    HungBar,
    PointLoad,
    lowest,
    rectangle_second_moment,
    tube_second_moment,
)

ALUMINIUM_PA = 68.9e9


def test_a_tube_under_four_cords_and_its_own_weight() -> None:
    second_moment = tube_second_moment(0.038, 0.0012)
    assert second_moment * 1e12 == pytest.approx(23_510, abs=1)
    tube = Beam(span_m=1.16, rigidity_n_m2=ALUMINIUM_PA * second_moment)
    assert tube.rigidity_n_m2 == pytest.approx(1619.8, abs=0.1)
    loads = [PointLoad(load_n=3.6227, at_m=at) for at in (0.060, 0.3933, 0.7267, 1.060)]
    worst = tube.greatest_sag(loads, 3.673)
    assert worst.sag_m * 1000 == pytest.approx(0.2123, abs=5e-5)
    assert tube.span_m / worst.sag_m == pytest.approx(5464, abs=2)


def test_a_flat_bar_between_two_cords() -> None:
    rigidity = ALUMINIUM_PA * rectangle_second_moment(0.020, 0.003)
    bar = HungBar(cords_m=(0.0, 1 / 3), length_m=1 / 3, rigidity_n_m2=rigidity)
    just_lifted, whole_stack = 3.7299 / 1.2, 14.4909 / 1.2
    assert bar.greatest_sag(just_lifted).sag_m * 1000 == pytest.approx(0.161, abs=5e-4)
    assert bar.greatest_sag(whole_stack).sag_m * 1000 == pytest.approx(0.63, abs=5e-3)


@pytest.mark.parametrize(
    ("breadth", "height", "sag_mm"), [(0.050, 0.019, 2.78), (0.019, 0.050, 0.40)]
)
def test_a_board_flat_and_on_edge(breadth: float, height: float, sag_mm: float) -> None:
    board = Beam(span_m=1.16, rigidity_n_m2=6e9 * rectangle_second_moment(breadth, height))
    sag = board.greatest_sag([], 23.44 / 1.16)
    assert sag.sag_m * 1000 == pytest.approx(sag_mm, abs=5e-3)
    assert sag.at_m == pytest.approx(0.58, abs=1e-4)


@pytest.mark.parametrize("overhang", [0.0, 0.05, 0.1])
def test_a_bar_with_overhanging_ends_sags_less_between_its_cords(overhang: float) -> None:
    """Load L^4/384 E I times 5 - 24 (overhang/span)^2."""
    span, load, rigidity = 0.4, 4.0, 3.0
    bar = HungBar(
        cords_m=(overhang, overhang + span), length_m=span + 2 * overhang, rigidity_n_m2=rigidity
    )
    middle = load * span**4 / (384 * rigidity) * (5 - 24 * (overhang / span) ** 2)
    worst = bar.greatest_sag(load)
    assert worst.sag_m == pytest.approx(middle, rel=1e-9)
    assert worst.at_m == pytest.approx(overhang + span / 2, abs=1e-5)


def test_ends_that_overhang_far_sag_most() -> None:
    bar = HungBar(cords_m=(0.3, 0.5), length_m=0.8, rigidity_n_m2=3.0)
    worst = bar.greatest_sag(4.0)
    assert worst.at_m in {0.0, 0.8}
    assert worst.sag_m > 0


def test_ends_of_unequal_overhang_are_told_apart() -> None:
    """Mirrored, the same bar sags as much at its other end."""
    bar = HungBar(cords_m=(0.35, 0.55), length_m=0.8, rigidity_n_m2=3.0)
    mirrored = HungBar(cords_m=(0.25, 0.45), length_m=0.8, rigidity_n_m2=3.0)
    assert bar.greatest_sag(4.0).at_m == 0.0
    assert mirrored.greatest_sag(4.0).at_m == 0.8
    assert bar.greatest_sag(4.0).sag_m == pytest.approx(mirrored.greatest_sag(4.0).sag_m)


def test_the_search_finds_a_sharp_maximum() -> None:
    found = lowest(lambda place: -abs(place - 0.123456), 0.0, 1.0)
    assert found.at_m == pytest.approx(0.123456, abs=1e-5)
