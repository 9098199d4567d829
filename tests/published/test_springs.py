"""Springs against published worked examples, and against a textbook example from memory."""

from __future__ import annotations

from math import pi

import pytest

from foldwright.core.facts.wire import (
    NEWER_INCH,
    NEWER_METRIC,
    OLDER_INCH,
    OLDER_METRIC,
    WireStrength,
)
from foldwright.core.lift.wire import (
    WireSpring,
    inner_fibre_factor,
    legs_as_coils,
    tensile_strength,
)

INCH = 0.0254
POUND_FORCE = 0.45359237 * 9.80665
POUND_INCH = POUND_FORCE * INCH
PSI = POUND_FORCE / INCH**2
MPA = 1e6


def test_rate_in_inch_units() -> None:
    """spring-rate-page, worked example: 2.988 lbf in/turn, printed to four figures."""
    spring = WireSpring(wire_m=0.035 * INCH, mean_coil_m=0.465 * INCH, body_coils=3)
    assert spring.rate(30e6 * PSI) / POUND_INCH == pytest.approx(2.988, rel=1e-4)


def test_rate_in_millimetres() -> None:
    """spring-calculator-page, worked example: 8.5185 N mm per degree."""
    spring = WireSpring(wire_m=0.002, mean_coil_m=0.020, body_coils=5)
    rate = spring.rate(207_000 * MPA) * 1000
    assert rate == pytest.approx(3066.666667, rel=1e-4)
    assert rate / 360 == pytest.approx(8.518518519, rel=1e-4)


def test_rate_of_the_same_spring_by_bending_alone() -> None:
    """spring-exercise, the 64 D N form per radian; the figure is computed from it."""
    spring = WireSpring(wire_m=0.002, mean_coil_m=0.020, body_coils=5)
    elastic = spring.elastic_rate(207_000 * MPA)
    per_radian = 207_000 * MPA * 0.002**4 / (64 * 0.020 * 5)
    assert elastic == pytest.approx(2 * pi * per_radian)
    assert elastic * 1000 == pytest.approx(3251.548396, rel=1e-6)
    assert elastic / spring.rate(207_000 * MPA) == pytest.approx(1.060287521, rel=1e-6)


def test_both_published_rates_lie_in_the_range_of_a_measured_spring() -> None:
    """spring-calculator-page uses 10.8, spring-exercise the exact form: one range holds both."""
    spring = WireSpring(wire_m=0.002, mean_coil_m=0.020, body_coils=5)
    found = spring.rate_range(207_000 * MPA, 207_000 * MPA, 207_000 * MPA)
    assert (found.rate * 1000, found.high * 1000) == pytest.approx((3066.67, 3251.55), rel=1e-5)
    assert found.low == found.rate


@pytest.mark.parametrize(("index", "factor"), [(8, 1.102678571), (10, 1.080555556)])
def test_inner_fibre_factor(index: float, factor: float) -> None:
    """spring-stress-page, its formula; the page misprints 1.106 for an index of 8."""
    assert inner_fibre_factor(index) == pytest.approx(factor, rel=1e-9)


def test_stress_at_the_inside_of_the_coil() -> None:
    """spring-stress-page and spring-exercise, the formula; 1 N.m on 2 mm wire at 20 mm."""
    spring = WireSpring(wire_m=0.002, mean_coil_m=0.020, body_coils=5)
    assert spring.stress(1.0) / MPA == pytest.approx(1375.806064, rel=1e-6)
    nominal = spring.stress(1.0) / inner_fibre_factor(10)
    assert nominal / MPA == pytest.approx(1273.239545, rel=1e-6)
    assert spring.greatest_torque(1375.806064 * MPA) == pytest.approx(1.0, rel=1e-6)


def test_wire_strength_of_the_older_metric_set() -> None:
    """wire-strength-exercise, problem 141: 1492 MPa at 7.25 mm, printed to four figures."""
    assert tensile_strength(0.00725, OLDER_METRIC) / MPA == pytest.approx(1492, rel=1e-3)


@pytest.mark.parametrize(
    ("strength", "expected"),
    [
        (OLDER_METRIC, (1855, 1840, 1825)),
        (OLDER_INCH, (1957, 1941, 1925)),
        (NEWER_METRIC, (2015, 2000, 1985)),
        (NEWER_INCH, (2018, 2003, 1989)),
    ],
    ids=lambda value: getattr(value, "name", ""),
)
def test_four_sets_disagree_about_one_wire(
    strength: WireStrength, expected: tuple[int, ...]
) -> None:
    """wire-strength-page (older) and from memory (newer): 1.9, 2.0 and 2.1 mm, to 1 MPa."""
    found = tuple(tensile_strength(mm / 1000, strength) / MPA for mm in (1.9, 2.0, 2.1))
    assert found == pytest.approx(expected, abs=1.0)


class TestTextbookSpringWithLegs:
    """mechanical-design-textbook, torsion spring over a rod: inputs and results from memory.

    Its rounded results are 1.115, 7.55 lbf in, 4.657, 29.2 lbf in/turn, 0.258 turn and
    0.022 in; 19/32 in is that spring's outside diameter, 0.521 in the mean.
    """

    spring = WireSpring(
        wire_m=0.072 * INCH, mean_coil_m=0.521 * INCH, body_coils=4.25, legs_m=2.0 * INCH
    )
    stiffness_pa = 28.5e6 * PSI
    allowable_pa = 0.78 * tensile_strength(0.072 * INCH, NEWER_INCH)

    def test_index_and_factor(self) -> None:
        assert self.spring.spring_index == pytest.approx(7.236111111, rel=1e-9)
        assert inner_fibre_factor(self.spring.spring_index) == pytest.approx(1.115, abs=5e-4)

    def test_strength_and_torque(self) -> None:
        strength = tensile_strength(0.072 * INCH, NEWER_INCH)
        assert strength / (1000 * PSI) == pytest.approx(294.3627459, rel=1e-5)
        torque = self.spring.greatest_torque(self.allowable_pa) / POUND_INCH
        assert torque == pytest.approx(7.55, abs=5e-3)

    def test_active_coils(self) -> None:
        assert self.spring.active_coils == pytest.approx(4.657, abs=5e-4)
        assert legs_as_coils(2.0, 0.521) == pytest.approx(4.657306316 - 4.25, rel=1e-6)

    def test_rate_and_turns(self) -> None:
        rate = self.spring.rate(self.stiffness_pa)
        assert rate / POUND_INCH == pytest.approx(29.2, abs=0.05)
        assert rate == pytest.approx(3.302164444, rel=1e-5)
        turns = self.spring.greatest_torque(self.allowable_pa) / rate
        assert turns == pytest.approx(0.258, abs=5e-4)

    def test_clearance_on_the_rod(self) -> None:
        wound = self.spring.wound_mean_coil(0.2582424905) / INCH
        assert wound == pytest.approx(0.4936288268, rel=1e-6)
        assert wound - 0.072 - 0.4 == pytest.approx(0.022, abs=5e-4)
