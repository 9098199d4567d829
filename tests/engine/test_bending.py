"""Closed-form sags against bending moments integrated twice by scipy."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.integrate import cumulative_simpson

from foldwright.core.lift.bending import Beam, HungBar, PointLoad, tube_second_moment

Samples = NDArray[np.float64]
PLACES = 60_001


def sag_by_integration(
    places: Samples, moment: Samples, rigidity: float, supports: tuple[float, float]
) -> Samples:
    """Integrate the curvature twice, then tilt the line back onto its two supports."""
    slope = cumulative_simpson(-moment / rigidity, x=places, initial=0.0)
    line = cumulative_simpson(slope, x=places, initial=0.0)
    left, right = (float(np.interp(at, places, line)) for at in supports)
    lean = (right - left) / (supports[1] - supports[0])
    return line - left - lean * (places - supports[0])


def moments(places: Samples, forces: list[tuple[float, float]], spread: float) -> Samples:
    """Sum the moments of upward forces (place, N) and of a spread load to the left."""
    lifted = sum(force * np.maximum(places - at, 0.0) for at, force in forces)
    return np.asarray(lifted - spread * places**2 / 2)


@pytest.mark.parametrize(
    ("loads", "spread"),
    [
        ([(0.6, 20.0)], 0.0),
        ([(0.06, 3.6), (0.39, 3.6), (0.73, 3.6), (1.06, 3.6)], 3.67),
        ([(0.1, 9.0), (1.5, 2.0)], 5.0),
    ],
)
def test_a_tube_sags_as_its_bending_moment_says(
    loads: list[tuple[float, float]], spread: float
) -> None:
    span, rigidity = 1.8, 68.9e9 * tube_second_moment(0.038, 0.0012)
    places = np.linspace(0.0, span, PLACES)
    left = spread * span / 2 + sum(load * (span - at) / span for at, load in loads)
    forces = [(0.0, left), *((at, -load) for at, load in loads)]
    sag = sag_by_integration(places, moments(places, forces, spread), rigidity, (0.0, span))
    worst = Beam(span_m=span, rigidity_n_m2=rigidity).greatest_sag(
        [PointLoad(load_n=load, at_m=at) for at, load in loads], spread
    )
    assert worst.sag_m == pytest.approx(sag.max(), rel=1e-6)
    assert worst.at_m == pytest.approx(places[sag.argmax()], abs=2e-4)


@pytest.mark.parametrize(
    ("cords", "length"),
    [
        ((0.1, 0.5), 0.6),
        ((0.05, 0.4, 0.75), 0.8),
        ((0.02, 0.35, 0.6, 1.1), 1.3),
        ((0.3, 0.5), 0.8),
        ((0.25, 0.4, 0.5), 0.8),
    ],
)
def test_a_bar_on_its_cords_sags_as_its_bending_moment_says(
    cords: tuple[float, ...], length: float
) -> None:
    spread, rigidity = 4.0, 3.1
    places = np.linspace(0.0, length, PLACES)
    outer = (cords[0], cords[-1])

    def sag(inner: Samples) -> Samples:
        """Give the sag when the inner cords pull with given forces."""
        turning = spread * length * (length / 2 - outer[0])
        turning -= sum(f * (at - outer[0]) for at, f in zip(cords[1:-1], inner, strict=True))
        right = turning / (outer[1] - outer[0])
        left = spread * length - right - sum(inner)
        pulls = [(cords[0], left), *zip(cords[1:-1], inner, strict=True), (cords[-1], right)]
        return sag_by_integration(places, moments(places, pulls, spread), rigidity, outer)

    def at_inner(inner: Samples) -> Samples:
        return np.interp(cords[1:-1], places, sag(inner))

    count = len(cords) - 2
    bare = at_inner(np.zeros(count))
    columns = [at_inner(unit) - bare for unit in np.eye(count)]
    inner = np.linalg.solve(np.array(columns).T, -bare) if count else np.zeros(0)
    expected = sag(inner).max()
    bar = HungBar(cords_m=cords, length_m=length, rigidity_n_m2=rigidity)
    assert bar.greatest_sag(spread).sag_m == pytest.approx(expected, rel=2e-5)
