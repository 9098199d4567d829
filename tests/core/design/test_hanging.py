"""Hems that hang between their columns."""

from __future__ import annotations

from math import sqrt

import pytest

from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge


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


@pytest.mark.parametrize(
    ("sag", "parabola", "catenary", "series"),
    [(0.15, 1.05712, 1.05767, 1.06000), (0.25, 1.14779, 1.15079, 1.16667)],
)
def test_hem_over_span_of_both_curves_and_of_the_series(
    sag: float, parabola: float, catenary: float, series: float
) -> None:
    """Own arithmetic: closed forms of the two curves, and 1 + 8/3 of the square of sag over span.

    The series is the rule of thumb: 0.3 % too long at a sag of 0.15 of the span, 1.6 % at 0.25.
    """
    assert EvenlyHungEdge(span_m=1.0, sag_m=sag).length_m == pytest.approx(parabola, abs=5e-6)
    assert HangingEdge.of_sag(1.0, sag).length_m == pytest.approx(catenary, abs=5e-6)
    assert 1 + 8 / 3 * sag**2 == pytest.approx(series, abs=5e-6)


@pytest.mark.parametrize(("sag", "share"), [(0.15, 0.670), (0.25, 0.676)])
def test_a_hem_hangs_two_thirds_of_its_sag_low_in_the_mean(sag: float, share: float) -> None:
    """Own arithmetic: 2/3 for the parabola, a little more for the catenary; within 0.001."""
    edge = HangingEdge.of_sag(1.0, sag)
    places = [(number + 0.5) / 2000 - 0.5 for number in range(2000)]
    low = [sag - edge.height_at(place) for place in places]
    assert sum(low) / len(low) / sag == pytest.approx(share, abs=0.001)


@pytest.mark.parametrize("dip", [0.01, 0.05, 0.1, 0.2, 0.3, 0.4])
def test_a_deeper_dip_draws_in_more_and_the_catenary_always_most(dip: float) -> None:
    """A hem of 1 m: what its ends draw in, by either curve, grows faster than the dip."""
    drawn = [
        [1.0 - kind.of_length_and_sag(1.0, each).span_m for each in (dip, dip * 1.1)]
        for kind in (EvenlyHungEdge, HangingEdge)
    ]
    assert drawn[0][0] < drawn[1][0]
    assert all(deeper > 1.1 * shallow > 0 for shallow, deeper in drawn)
