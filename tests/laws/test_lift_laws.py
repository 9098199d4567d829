"""Laws that every balance of load and spring keeps, whatever the shade."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from tests.core.lift.worked import LIKELIEST, case
from tests.laws.shades import between, panels

from foldwright.core.lift.balance import Verdict
from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.case_answer import CaseWindow
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.friction import Stand
from foldwright.core.lift.raising import likeliest_stand
from foldwright.core.lift.sampling import Draw
from foldwright.core.lift.span import Reals, Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.lift.window import chance, recommend
from foldwright.core.weigh.curve import LoadCurve

CLOSE = 1e-9


@st.composite
def cord_cases(draw: st.DrawFn) -> LiftCase:
    """Draw a shade on cords with a spring of any size."""
    rate = draw(between(0.01, 0.2))
    return replace(
        case(),
        load=draw(panels()),
        tube_outside_m=draw(between(0.019, 0.06)),
        cord_diameter_m=draw(between(0.0007, 0.003)),
        spring=SpringCase(rate_n_m_turn=rate, greatest_torque_n_m=rate * draw(between(5, 60))),
        constant_friction_n_m=draw(between(0.0, 0.1)),
        load_friction=draw(between(0.0, 0.4)),
        spring_hysteresis=draw(between(0.0, 0.2)),
        hand_force_limit_n=draw(between(10, 90)),
    )


def window(given_case: LiftCase) -> CaseWindow:
    found = answer_case(given_case, LIKELIEST).window
    assert found is not None
    return found


def least(given_case: LiftCase) -> float:
    return window(given_case).least_turns.likely


def rate_of(given_case: LiftCase) -> float:
    assert given_case.spring is not None
    assert isinstance(given_case.spring.rate_n_m_turn, float)
    return given_case.spring.rate_n_m_turn


def number(value: float | Span | None) -> float:
    assert isinstance(value, float)
    return value


@given(cord_cases(), between(0.01, 10))
def test_a_heavier_bar_never_lowers_the_lift_limit_and_eases_the_pull(
    shade: LiftCase, more_n: float
) -> None:
    heavier = replace(shade, load=replace(shade.load, bar_n=shade.load.bar_n + more_n), turns=10.0)
    before, after = window(replace(shade, turns=10.0)), window(heavier)
    assert after.least_turns.likely > before.least_turns.likely
    assert after.hand_force_n.likely < before.hand_force_n.likely


@given(cord_cases(), between(0.01, 10))
def test_a_heavier_bar_never_opens_a_window(shade: LiftCase, more_n: float) -> None:
    heavier = replace(shade, load=replace(shade.load, bar_n=shade.load.bar_n + more_n))
    before, after = window(shade), window(heavier)
    for limit in ("most_by_spring", "most_by_hand"):
        room_before = getattr(before, limit).likely - before.least_turns.likely
        room_after = getattr(after, limit).likely - after.least_turns.likely
        assert room_after < room_before


@given(cord_cases(), between(0.01, 0.3))
def test_more_friction_asks_for_more_turns(shade: LiftCase, more: float) -> None:
    rubbing = replace(shade, load_friction=number(shade.load_friction) + more)
    assert least(rubbing) > least(shade)
    sticking = replace(shade, constant_friction_n_m=number(shade.constant_friction_n_m) + more)
    assert least(sticking) > least(shade)


@given(cord_cases(), between(1.01, 1.5))
def test_a_longer_arm_asks_for_more_turns(shade: LiftCase, factor: float) -> None:
    assert least(replace(shade, tube_outside_m=shade.tube_outside_m * factor)) > least(shade)


@given(cord_cases(), between(1.01, 2))
def test_a_stiffer_spring_asks_for_fewer_turns(shade: LiftCase, factor: float) -> None:
    assert shade.spring is not None
    stiffer = replace(shade.spring, rate_n_m_turn=rate_of(shade) * factor)
    assert least(replace(shade, spring=stiffer)) == pytest.approx(least(shade) / factor, rel=CLOSE)


@given(cord_cases())
def test_the_hand_limit_gives_its_force_back(shade: LiftCase) -> None:
    most = window(shade).most_by_hand.likely
    assume(most >= 0)
    pull = window(replace(shade, turns=most)).hand_force_n.likely
    assert pull == pytest.approx(shade.hand_force_limit_n, rel=1e-6)


@given(cord_cases())
def test_the_energy_of_a_free_release_at_the_least_turns(shade: LiftCase) -> None:
    """It is what the load lacks to its greatest on the way, and what the travel unwinds."""
    bare = replace(shade, load_margin=0.0)
    found = window(replace(bare, turns=least(bare)))
    curve, travel = LoadCurve.of(shade.load), shade.load.travel_m
    answer = answer_case(bare, LIKELIEST)
    lacking = answer.load_raised_n.likely * travel - float(curve.energy(travel))
    unwound = np.pi * rate_of(shade) * answer.travel_turns.likely**2
    energy = (1 + number(shade.load_friction)) * lacking + (
        1 - number(shade.spring_hysteresis)
    ) * unwound
    assert energy > 0
    assert found.arrival_energy_j.likely == pytest.approx(energy, rel=CLOSE)


@given(cord_cases(), st.integers(2, 4))
def test_springs_side_by_side_add_rate_and_torque(shade: LiftCase, count: int) -> None:
    assert shade.spring is not None
    together = replace(
        shade.spring,
        rate_n_m_turn=rate_of(shade) * count,
        greatest_torque_n_m=number(shade.spring.greatest_torque_n_m) * count,
    )
    one, many = replace(shade, spring=together), replace(shade, springs_side_by_side=count)
    assert window(many).least_turns.likely == pytest.approx(least(one), rel=CLOSE)
    for limit in ("most_by_spring", "most_by_hand"):
        expected = getattr(window(one), limit).likely
        assert getattr(window(many), limit).likely == pytest.approx(expected, rel=CLOSE, abs=CLOSE)


def stand(shade: LiftCase, share: float, turns: float) -> Stand:
    raises = np.array([share * shade.load.travel_m])
    return likeliest_stand(shade, raises, rate_of(shade), turns)


@given(cord_cases(), between(0, 1), between(0, 30))
def test_pulling_down_and_easing_up_tell_spring_from_friction(
    shade: LiftCase, share: float, turns: float
) -> None:
    at = stand(shade, share, turns)
    middle, half = (at.hand_down_n + at.hand_up_n) / 2, (at.hand_down_n - at.hand_up_n) / 2
    assert middle == pytest.approx(at.torque_n_m / at.arm_m - at.load_n, rel=1e-9, abs=1e-9)
    rubbed = at.spring_hysteresis * at.torque_n_m + at.constant_friction_n_m
    assert half == pytest.approx(rubbed / at.arm_m + at.load_friction * at.load_n, rel=1e-9)


@given(cord_cases(), between(0, 0.45), between(0.55, 1), between(0, 30))
def test_two_heights_tell_the_rate(shade: LiftCase, low: float, high: float, turns: float) -> None:
    below, above = stand(shade, low, turns), stand(shade, high, turns)
    pulls = [float((at.hand_down_n + at.hand_up_n + 2 * at.load_n)[0] / 2) for at in (below, above)]
    travelled = (high - low) * answer_case(shade, LIKELIEST).travel_turns.likely
    rate = float(below.arm_m[0]) * (pulls[0] - pulls[1]) / travelled
    assert rate == pytest.approx(rate_of(shade), rel=1e-6)


@given(cord_cases(), between(0.1, 0.9))
def test_a_guided_stall_tells_the_turns_that_are_missing(shade: LiftCase, share: float) -> None:
    """Wound so that it stalls there, it lacks what the rest of the way asks for."""
    bare = replace(shade, load_margin=0.0)
    answer = answer_case(bare, LIKELIEST)
    at = stand(bare, share, 0.0)
    lost = 1 - number(bare.spring_hysteresis)
    rubbed = 1 + number(bare.load_friction)
    arm, load = float(at.arm_m[0]), float(at.load_n[0])
    to_go = (1 - share) * answer.travel_turns.likely
    still = number(bare.constant_friction_n_m)
    wound = (arm * load * rubbed + still) / (rate_of(bare) * lost) - to_go
    more = arm * rubbed * (answer.load_raised_n.likely - load) / (rate_of(bare) * lost)
    assert wound + to_go + more == pytest.approx(least(bare), rel=1e-9, abs=1e-9)


@given(cord_cases(), between(0, 1), between(0, 30))
def test_friction_alone_holds_within_its_band(shade: LiftCase, share: float, turns: float) -> None:
    at = stand(shade, share, turns)
    surplus = float(at.torque_n_m[0] / at.arm_m[0] - at.load_n[0])
    held = float(at.spring_hysteresis * at.torque_n_m[0] + at.constant_friction_n_m)
    band = held / float(at.arm_m[0]) + float(at.load_friction * at.load_n[0])
    assume(abs(abs(surplus) - band) > 1e-6)
    assert bool(at.stays[0]) == (abs(surplus) <= band)


@given(between(0, 5), between(0, 1), between(0, 1))
def test_a_span_keeps_its_middle_ninety_per_cent(likely: float, below: float, above: float) -> None:
    span = Span(likely=likely, low=likely * below, high=likely * (1 + above))
    found = span.at(np.array([0.05, 0.5, 0.95]))
    assert found == pytest.approx([span.low, span.likely, span.high], abs=1e-9)
    assert np.all(np.diff(span.at(np.linspace(0.001, 0.999, 99))) >= 0)


def limits(values: list[tuple[float, float]]) -> tuple[Reals, Reals]:
    pairs = np.array(values, dtype=np.float64)
    return pairs[:, 0], pairs[:, 1]


TRIALS = st.lists(st.tuples(between(-5, 40), between(-5, 60)), min_size=1, max_size=60)


@given(TRIALS, st.sampled_from([0.25, 0.5, 1.0]))
def test_no_step_does_better_than_the_one_recommended(
    values: list[tuple[float, float]], step: float
) -> None:
    lower, upper = limits(values)
    choice = recommend(lower, upper, step)
    steps = step * np.arange(1, 200)
    best = max(chance(lower, upper, float(turns)) for turns in steps)
    assert choice.turns >= step
    assert choice.chance == pytest.approx(chance(lower, upper, choice.turns))
    assert choice.certain or choice.chance == pytest.approx(best)


@given(st.lists(st.tuples(between(1, 12), between(8, 60)), min_size=40, max_size=200))
def test_what_is_certain_satisfies_nine_of_ten(values: list[tuple[float, float]]) -> None:
    choice = recommend(*limits(values), 0.5)
    if choice.certain:
        assert choice.chance >= 0.88  # two tails of a twentieth, and a trial at each end


@given(cord_cases(), between(0.0, 0.3))
def test_the_likeliest_stays_within_its_range(shade: LiftCase, spread: float) -> None:
    draws = np.random.default_rng(7).random((400, 16))
    loose = answer_case(replace(shade, cloth_mass_spread=spread), draws).window
    assert loose is not None
    assert loose.least_turns.low <= loose.least_turns.likely <= loose.least_turns.high
    exact = window(shade).least_turns
    assert loose.least_turns.likely == pytest.approx(exact.likely, rel=CLOSE)


@given(cord_cases(), between(0.02, 0.3))
def test_an_uncertain_bar_is_felt_at_the_bottom_and_at_the_top(
    shade: LiftCase, spread: float
) -> None:
    bar_n = shade.load.bar_n + 1.0
    draws = np.full((3, 16), 0.5)
    draws[:, Draw.BAR] = (0.05, 0.5, 0.95)
    answer = answer_case(
        replace(shade, load=replace(shade.load, bar_n=bar_n), bar_mass_spread=spread), draws
    )
    for load in (answer.load_lowered_n, answer.load_raised_n):
        assert load.high - load.low == pytest.approx(2 * spread * bar_n, rel=1e-6)


@given(cord_cases(), st.sampled_from(Brake), st.sampled_from([Lock.ONE_WAY, Lock.UNKNOWN]))
def test_what_is_not_known_is_asked_unless_nothing_can_rescue_it(
    shade: LiftCase, brake: Brake, lock: Lock
) -> None:
    answer = answer_case(replace(shade, brake=brake, lock=lock), LIKELIEST)
    assert answer.window is not None
    unknown = Brake.UNKNOWN is brake or Lock.UNKNOWN is lock
    fits = answer.window.verdict is not Verdict.NOTHING_FITS
    assert (answer.verdict is Verdict.ASK) == (unknown and fits)
