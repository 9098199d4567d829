"""From a shade and its records to the plain numbers of its lift."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

import pytest
from tests.core.lift.bench import SHOP, Shade, lifted, made_of, mm, named

from foldwright.core.facts.records import Cord
from foldwright.core.lift.case import LiftCase
from foldwright.core.lift.judging import bare_case, judge
from foldwright.core.lift.span import Span


def plain(shade: Shade) -> LiftCase:
    case = bare_case(shade.order)
    assert case is not None
    return case


def test_one_cloth_spreads_as_its_sheet_says() -> None:
    assert plain(made_of(lining="")).cloth_mass_spread == pytest.approx(0.05, rel=1e-6)


def test_two_cloths_spread_each_for_itself() -> None:
    shade = Shade()
    face, lining = (layer.value for layer in shade.order.weights.layers)
    together = hypot(0.05 * face, 0.05 * lining) / (face + lining)
    assert plain(shade).cloth_mass_spread == pytest.approx(together, rel=1e-6)


def test_a_release_asks_for_its_pull_and_one_ratchet_pitch() -> None:
    shade = Shade()
    habits = shade.habits
    together = habits.release_turns.value + habits.lock_pitch_turns.value
    assert plain(shade).release_turns == pytest.approx(together)


@pytest.mark.parametrize(("asked", "limit"), [(None, 50.0), (22.2, 22.2)])
def test_the_pull_asked_for_goes_before_the_house_limit(asked: float | None, limit: float) -> None:
    assert plain(lifted(hand_force_limit_n=asked)).hand_force_limit_n == limit


def test_a_braid_that_flattens_gives_a_range() -> None:
    flat = Cord(name="cord", diameter=mm("1.4"), diameter_low=mm("1.1"), diameter_high=mm("1.5"))
    shop = replace(SHOP, cords=named(flat))  # type: ignore[arg-type]
    found = plain(replace(Shade(), shop=shop)).cord_diameter_m
    assert found == Span(likely=0.0014, low=0.0011, high=0.0015)


def test_the_tube_counts_with_what_moves() -> None:
    tube = SHOP.tubes["tube 38"]
    length = (Shade().order.size.board_length.value - mm(34)).in_metres
    inertia = tube.line_mass_kg_m * length * ((0.038 - 0.0012) / 2) ** 2
    assert plain(Shade()).turning_inertia_kg_m2 == pytest.approx(inertia)


def test_a_spring_brings_its_rate_and_its_brake() -> None:
    judged = judge(Shade().order, SHOP.springs["soft, braked"])
    assert judged is not None
    assert judged.case.brake_drag_n_m_s == 0.012
    assert judged.case.spring is not None
    assert judged.case.spring.greatest_turns == 36


def test_without_a_tube_or_a_cord_there_is_no_case() -> None:
    assert bare_case(made_of(tube="").order) is None
    assert judge(made_of(cord="").order, SHOP.springs["soft"]) is None
