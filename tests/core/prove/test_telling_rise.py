"""The rise as it is told: likeliest and range, forces at every height, and where it ends."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.stats import qmc
from tests.core.lift.worked import B, case, wound
from tests.core.prove.rises import RATE_B, worked

from foldwright.core.lift.choices import Brake
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.prove.advice import RiseTold
from foldwright.core.prove.learning import learn
from foldwright.core.prove.letting_go import likeliest_shade
from foldwright.core.prove.rising import End, Folding, rise
from foldwright.core.prove.telling_rise import tell_rise
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show, tell

DRAWS = qmc.Sobol(16, seed=1).random(256)
EXACT = replace(
    case(wound(B)),
    brake=Brake.FITTED,
    brake_drag_n_m_s=0.012,
    turning_inertia_kg_m2=1.5e-4,
)
LOOSE = replace(EXACT, spring=SpringCase(rate_n_m_turn=Span.within(RATE_B, 0.09)))


def told(given: LiftCase, turns: float, from_m: float = 0.0) -> RiseTold:
    return tell_rise(learn(given, (), DRAWS), turns, from_m)


@pytest.fixture(scope="module")
def loose() -> RiseTold:
    return told(LOOSE, 13.0)


def test_the_likeliest_case_is_the_worked_example_let_go() -> None:
    """3.49 s and 1.07 m/s, frozen among the golden figures."""
    found = rise(likeliest_shade(EXACT, 11.0), 0.0, Folding.HARSH)
    expected = rise(worked(brake_drag_n_m_s=0.012), 0.0, Folding.HARSH)
    assert found.duration_s == pytest.approx(expected.duration_s, rel=1e-9)
    assert found.top_speed_m_s == pytest.approx(expected.top_speed_m_s, rel=1e-9)


def test_every_figure_lies_in_its_range_and_says_why(loose: RiseTold) -> None:
    for name in loose.__dataclass_fields__:
        figure = getattr(loose, name)
        if name == "curve":
            continue
        assert "{" not in tell(figure, System.INCH)
        assert show(figure, System.METRIC)
        if figure.low is not None:
            assert figure.low <= figure.value <= figure.high


def test_the_hand_forces_have_their_ranges_at_every_height(loose: RiseTold) -> None:
    curve = loose.curve
    for low, middle, high in (
        (curve.hand_down_low_n, curve.hand_down_n, curve.hand_down_high_n),
        (curve.hand_up_low_n, curve.hand_up_n, curve.hand_up_high_n),
    ):
        assert np.all(np.array(low) <= np.array(middle))
        assert np.all(np.array(middle) <= np.array(high))
    assert all(down > up for down, up in zip(curve.hand_down_n, curve.hand_up_n, strict=True))
    assert curve.hand_down_n[0] == loose.hand_force_down.value
    assert curve.hand_up_n[-1] == loose.hand_force_up.value


def test_more_turns_rise_sooner_and_arrive_faster(loose: RiseTold) -> None:
    more = told(LOOSE, 15.0)
    assert more.rise_time.value < loose.rise_time.value
    assert more.arrival_speed.value > loose.arrival_speed.value


def test_too_few_turns_stall_on_the_way() -> None:
    few = told(LOOSE, 7.0)
    assert few.ending.value == End.STALLS.value
    assert few.end_raise.value.in_metres < EXACT.load.travel_m
    assert few.arrival_speed.value == 0.0


def test_from_half_way_it_takes_less_time(loose: RiseTold) -> None:
    half = told(LOOSE, 13.0, 0.7)
    assert half.curve.raise_m[0] == 0.7
    assert half.rise_time.value < loose.rise_time.value


def test_too_high_with_too_few_turns_it_does_not_move() -> None:
    stays = told(LOOSE, 4.0, 1.3)
    assert stays.ending.value == End.STAYS.value
    assert stays.rise_time.value == 0.0


@pytest.mark.parametrize("from_m", [-0.1, 1.407, 2.0])
def test_it_cannot_be_let_go_beyond_its_travel(from_m: float) -> None:
    with pytest.raises(ValueError, match="let go between 0 and its stop"):
        told(LOOSE, 13.0, from_m)


def test_without_a_brake_it_is_said_to_be_guided() -> None:
    free = told(replace(LOOSE, brake=Brake.NONE), 13.0)
    assert "guide it" in tell(free.ending, System.METRIC)


def test_side_by_side_springs_brake_together() -> None:
    one = told(EXACT, 22.0)
    half = SpringCase(rate_n_m_turn=RATE_B / 2)
    two = told(replace(EXACT, spring=half, springs_side_by_side=2, brake_drag_n_m_s=0.006), 22.0)
    assert two.rise_time.value == pytest.approx(one.rise_time.value, rel=1e-6)


def test_speeds_are_told_by_the_harder_folding_and_ends_by_the_careful_one() -> None:
    """The worked example without a brake: 4.50 m/s at the stop, or 4.13 by the careful count."""
    free = told(replace(EXACT, brake=Brake.NONE), 11.0)
    assert free.arrival_speed.value == pytest.approx(4.50, abs=0.12)
