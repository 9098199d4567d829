"""Hanging hems against chains of rigid links, balanced link by link (numpy and scipy).

Each link of a chain leans so that the pull along it carries all that hangs below it; the level
part of the pull is found by a general-purpose root finder so that the links span the columns.
With its weight in equal links the chain stands for a hem that carries itself, a catenary; with
equal weights at equal distances across, for a hem that carries cloth hung evenly, a parabola.
Nothing of the project's formulas is used. 2000 links leave less than one part in a million.
"""

from __future__ import annotations

from math import hypot

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import brentq, minimize

from foldwright.core.design.hanging import EvenlyHungEdge, HangingEdge

Samples = NDArray[np.float64]

LINKS = 2000
SHARE = 1e-6
SLACKS = [0.001, 0.01, 0.05, 0.15, 0.6]


def upright_pulls(weight_n: float) -> Samples:
    """Give the upright part of the pull in each link, from the left end, least in the middle."""
    return weight_n * ((LINKS - 1) / 2 - np.arange(LINKS)) / LINKS


def heavy_chain_sag(span_m: float, length_m: float) -> float:
    """Hang a chain of equal heavy links, and give how far its middle hangs below its ends."""
    upright, link = upright_pulls(1.0), length_m / LINKS

    def too_wide(level: float) -> float:
        return float((link * level / np.hypot(level, upright)).sum()) - span_m

    level = float(brentq(too_wide, 1e-6, 1e4, xtol=1e-15))
    falls = link * upright / np.hypot(level, upright)
    return float(np.cumsum(falls).max())


def loaded_thread_sag(span_m: float, length_m: float) -> float:
    """Hang equal weights on a thread at equal distances across, and give its sag."""
    upright, step = upright_pulls(1.0), span_m / LINKS

    def too_long(level: float) -> float:
        return float(np.hypot(step, step * upright / level).sum()) - length_m

    level = float(brentq(too_long, 1e-4, 1e4, xtol=1e-15))
    return float(np.cumsum(step * upright / level).max())


@pytest.mark.parametrize("slack", SLACKS)
def test_a_hem_that_carries_itself_hangs_as_the_heavy_chain(slack: float) -> None:
    sag = HangingEdge.of_length(1.0, 1.0 + slack).sag_m
    assert sag == pytest.approx(heavy_chain_sag(1.0, 1.0 + slack), rel=SHARE)


@pytest.mark.parametrize("slack", SLACKS)
def test_a_hem_that_carries_hung_cloth_hangs_as_the_loaded_thread(slack: float) -> None:
    sag = EvenlyHungEdge.of_length(1.0, 1.0 + slack).sag_m
    assert sag == pytest.approx(loaded_thread_sag(1.0, 1.0 + slack), rel=SHARE)


@pytest.mark.parametrize("sag", [0.02, 0.1, 0.3])
def test_dip_and_draw_in_of_a_hem_agree_with_the_heavy_chain(sag: float) -> None:
    """A hem of 1 m whose sides draw in until it dips so far."""
    edge = HangingEdge.of_length_and_sag(1.0, sag)
    assert heavy_chain_sag(edge.span_m, 1.0) == pytest.approx(sag, rel=SHARE)
    thread = EvenlyHungEdge.of_length_and_sag(1.0, sag)
    assert loaded_thread_sag(thread.span_m, 1.0) == pytest.approx(sag, rel=SHARE)


def test_the_balanced_chain_lies_lowest_of_all() -> None:
    """A chain of six links, settled by an optimiser from its energy alone, hangs the same."""
    links, span, length = 6, 1.0, 1.2

    def joints(leans: Samples) -> Samples:
        steps = length / links * np.array([np.cos(leans), np.sin(leans)])
        return np.concatenate((np.zeros((2, 1)), np.cumsum(steps, axis=1)), axis=1)

    def height(leans: Samples) -> float:
        ups = joints(leans)[1]
        return float((ups[:-1] + ups[1:]).mean() / 2)

    found = minimize(
        height,
        np.linspace(-1, 1, links),
        method="SLSQP",
        constraints={"type": "eq", "fun": lambda leans: joints(leans)[:, -1] - (span, 0)},
        options={"ftol": 1e-14, "maxiter": 500},
    )
    upright = np.array([(links - 1) / 2 - number for number in range(links)]) / links
    leans = -found.x
    level = upright[0] / np.tan(leans[0])
    assert np.tan(leans) * level == pytest.approx(upright, abs=1e-5)


def test_the_two_curves_can_be_told_apart() -> None:
    heavy, evenly = (kind.of_length(1.0, 1.15).sag_m for kind in (HangingEdge, EvenlyHungEdge))
    assert abs(heavy - evenly) > 1000 * SHARE * heavy


def test_the_pull_on_the_columns_is_that_of_the_end_links() -> None:
    """The level pull of the parabola and of the catenary, against the slope of the end link."""
    thread = EvenlyHungEdge.of_length(1.0, 1.05)
    slope = 4 * thread.sag_m / thread.span_m
    assert thread.sideways_pull(3.0) == pytest.approx(1.5 / slope)
    chain = HangingEdge.of_length(1.0, 1.05)
    along = hypot(chain.sideways_pull(3.0 / chain.length_m), 1.5)
    assert chain.greatest_pull(3.0 / chain.length_m) == pytest.approx(along)
