"""Springs from their wire, against figures worked by hand."""

from __future__ import annotations

import pytest

from foldwright.core.facts.wire import NEWER_METRIC, OLDER_METRIC, WireStrength
from foldwright.core.lift.wire import WireSpring, inner_fibre_factor, tensile_strength

STIFFNESS_PA = 206e9
SHARE = 0.55


def spring(wire_mm: float, coils: float) -> WireSpring:
    return WireSpring(wire_m=wire_mm / 1000, mean_coil_m=0.0225, body_coils=coils)


def strongest(wire_mm: float, coils: float, strength: WireStrength) -> float:
    allowable = SHARE * tensile_strength(wire_mm / 1000, strength)
    return spring(wire_mm, coils).greatest_torque(allowable)


@pytest.mark.parametrize(
    ("wire_mm", "coils", "rate", "elastic"),
    [
        (1.9, 200, 0.055239, 0.058569),
        (2.1, 440, 0.037470, 0.039729),
        (2.1, 480, 0.034348, 0.036418),
    ],
)
def test_rates_worked_by_hand(wire_mm: float, coils: float, rate: float, elastic: float) -> None:
    found = spring(wire_mm, coils)
    assert found.rate(STIFFNESS_PA) == pytest.approx(rate, abs=1e-6)
    assert found.elastic_rate(STIFFNESS_PA) == pytest.approx(elastic, abs=1e-6)


@pytest.mark.parametrize(
    ("wire_mm", "index", "factor"), [(1.9, 11.842, 1.06723), (2.1, 10.714, 1.07480)]
)
def test_index_and_factor_worked_by_hand(wire_mm: float, index: float, factor: float) -> None:
    assert spring(wire_mm, 440).spring_index == pytest.approx(index, abs=5e-4)
    assert inner_fibre_factor(index) == pytest.approx(factor, abs=1e-5)


@pytest.mark.parametrize(
    ("wire_mm", "coils", "strength", "torque", "turns"),
    [
        (1.9, 200, OLDER_METRIC, 0.6439, 11.66),
        (2.1, 440, OLDER_METRIC, 0.8493, 22.66),
        (2.1, 480, OLDER_METRIC, 0.8493, 24.73),
        (1.9, 200, NEWER_METRIC, 0.6991, 12.66),
        (2.1, 440, NEWER_METRIC, 0.9238, 24.65),
        (2.1, 480, NEWER_METRIC, 0.9238, 26.89),
    ],
)
def test_strengths_worked_by_hand(
    wire_mm: float, coils: float, strength: WireStrength, torque: float, turns: float
) -> None:
    found = strongest(wire_mm, coils, strength)
    assert found == pytest.approx(torque, abs=6e-5)
    assert found / spring(wire_mm, coils).rate(STIFFNESS_PA) == pytest.approx(turns, abs=6e-3)


def test_more_coils_are_softer_but_not_stronger() -> None:
    assert strongest(2.1, 440, OLDER_METRIC) == strongest(2.1, 480, OLDER_METRIC)
    assert spring(2.1, 480).rate(STIFFNESS_PA) < spring(2.1, 440).rate(STIFFNESS_PA)


@pytest.mark.parametrize(
    ("wire_mm", "coils", "turns", "body_mm"),
    [(1.9, 200, 11.66, 404), (2.1, 440, 22.66, 974), (2.1, 480, 24.73, 1062)],
)
def test_a_wound_body_grows_by_a_wire_for_each_turn(
    wire_mm: float, coils: float, turns: float, body_mm: float
) -> None:
    found = spring(wire_mm, coils)
    assert 1000 * found.wound_body(turns) == pytest.approx(body_mm, abs=0.5)
    assert found.turns_in_pocket(found.wound_body(turns)) == pytest.approx(turns)


def test_a_wound_coil_closes_on_its_arbor() -> None:
    found = spring(2.1, 440)
    turns = found.turns_on_arbor(0.016)
    inside = found.wound_mean_coil(turns) - 0.0021
    assert inside == pytest.approx(1.1 * 0.016)
    assert found.wound_mean_coil(0.0) == pytest.approx(0.0225)


def test_legs_soften_a_spring_and_share_its_turns() -> None:
    plain = WireSpring(wire_m=0.002, mean_coil_m=0.02, body_coils=5)
    legged = WireSpring(wire_m=0.002, mean_coil_m=0.02, body_coils=5, legs_m=0.06)
    assert legged.rate(STIFFNESS_PA) < plain.rate(STIFFNESS_PA)
    assert legged.wound_body(1.0) < plain.wound_body(1.0)
    assert legged.turns_in_pocket(legged.wound_body(1.0)) == pytest.approx(1.0)


def test_the_range_of_a_rate_spans_both_constants_and_both_moduli() -> None:
    found = spring(2.1, 440).rate_range(207e9, 190e9, 207e9)
    assert found.low == pytest.approx(found.rate * 190 / 207)
    assert found.high == pytest.approx(found.rate * 1.0603, rel=1e-4)
