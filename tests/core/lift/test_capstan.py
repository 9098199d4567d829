"""Friction of cords round the tube and in their rings."""

from __future__ import annotations

from math import pi

import pytest

from foldwright.core.lift.capstan import friction_ratio


def test_without_friction_or_bend_both_sides_pull_alike() -> None:
    assert float(friction_ratio(0.0, pi)) == 1.0
    assert float(friction_ratio(0.3, 0.0)) == 1.0


def test_bends_one_after_another_multiply() -> None:
    whole = friction_ratio(0.2, 1.5)
    assert float(whole) == pytest.approx(float(friction_ratio(0.2, 0.5) * friction_ratio(0.2, 1.0)))


def test_three_safety_wraps_hold_many_times_their_load() -> None:
    """Friction 0.2: three wraps 43 to 1, one wrap 3.5 to 1; worked by hand."""
    assert float(friction_ratio(0.2, 3 * 2 * pi)) == pytest.approx(43, abs=0.5)
    assert float(friction_ratio(0.2, 2 * pi)) == pytest.approx(3.5, abs=0.05)
