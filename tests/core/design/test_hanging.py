"""Hems that hang between their columns."""

from __future__ import annotations

from math import sqrt

import pytest

from foldwright.core.design.hanging import HangingEdge


@pytest.mark.parametrize("sag", [0.001, 0.02, 0.15, 0.6])
def test_an_edge_found_by_its_sag_is_found_again_by_its_length(sag: float) -> None:
    edge = HangingEdge.of_sag(0.3, sag)
    assert edge.sag_m == pytest.approx(sag, rel=1e-9)
    again = HangingEdge.of_length(0.3, edge.length_m)
    assert again.sag_m == pytest.approx(sag, rel=1e-4)
    assert again.length_m == pytest.approx(edge.length_m, rel=1e-12)


def test_a_flat_edge_is_a_parabola() -> None:
    """Sag by the root of 3/8 of span times slack, good while the sag is small."""
    edge = HangingEdge.of_length(0.3, 0.3 + 0.0003)
    assert edge.sag_m == pytest.approx(sqrt(3 / 8 * 0.3 * 0.0003), rel=1e-3)


def test_the_ends_carry_half_the_weight_each() -> None:
    edge = HangingEdge.of_sag(1.0, 0.2)
    upright = sqrt(edge.greatest_pull(2.0) ** 2 - edge.sideways_pull(2.0) ** 2)
    assert upright == pytest.approx(2.0 * edge.length_m / 2)
