"""The shop learns: shrunk towards the sheet, no belief counted twice, batches judged fairly."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from benchmarks.simulated_bench import TrueShade, some_case
from scipy.stats import qmc

from foldwright.core.facts.shop_learning import BATCH_ALARM
from foldwright.core.lift.span import Span, span_of
from foldwright.core.prove.learning import learn
from foldwright.core.prove.pooling import Found, Kinds, judge_batch, pool
from foldwright.core.prove.shop_record import Made, ShopResult, expect, result_of
from foldwright.core.prove.telling_record import (
    batch_warnings,
    compare,
    share_as_expected,
    tell_kind,
)
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill

DRAWS = qmc.Sobol(16, seed=1).random(1024)
KINDS = Kinds(kind_spread=0.06, piece_spread=0.035)
CASE = some_case(np.random.default_rng(3))
MADE = Made(spring="soft 2", batch="07", line="cord", bracket="end", cloth_class="linen")
TEN = Span(likely=10.0, low=8.0, high=12.0)


def result(rate: float, batch: str = "07", error: float = 0.02) -> ShopResult:
    return ShopResult(
        made=replace(MADE, batch=batch),
        expected_turns=TEN,
        found_turns=TEN,
        rate=Found(value=rate, error=error),
    )


def test_pooling_is_the_conjugate_normal_step() -> None:
    """One piece, by hand: weights 1/0.06² and 1/(0.035² + 0.02²)."""
    pooled = pool([Found(value=0.10, error=0.02)], KINDS)
    sheet, piece = 1 / 0.06**2, 1 / (0.035**2 + 0.02**2)
    assert pooled.middle == pytest.approx(0.10 * piece / (sheet + piece))
    assert pooled.error == pytest.approx((sheet + piece) ** -0.5)
    assert pooled.trust == pytest.approx(piece / (sheet + piece))


def test_without_pieces_the_sheet_stands() -> None:
    pooled = pool([], KINDS)
    assert (pooled.middle, pooled.trust) == (0.0, 0.0)
    assert pooled.spread == pytest.approx(np.hypot(0.06, 0.035))


def test_pooled_ranges_hold_the_next_piece() -> None:
    """Two thousand seeded kinds of one to twelve pieces: nine in ten next pieces lie inside."""
    chance, inside = np.random.default_rng(4), []
    for _ in range(2000):
        kind = chance.normal(0, KINDS.kind_spread)
        errors = chance.uniform(0.01, 0.04, int(chance.integers(1, 13)))
        pieces = kind + chance.normal(0, KINDS.piece_spread, errors.size)
        found = [
            Found(value=float(value), error=float(error))
            for value, error in zip(chance.normal(pieces, errors), errors, strict=True)
        ]
        pooled = pool(found, KINDS)
        following = kind + chance.normal(0, KINDS.piece_spread)
        inside.append(abs(following - pooled.middle) < 1.645 * pooled.spread)
    assert np.mean(inside) == pytest.approx(0.90, abs=0.02)


def test_pieces_that_differ_more_widen_the_spread() -> None:
    alike = pool([Found(value=0.0, error=0.01)] * 10, KINDS).piece_spread
    unlike = [Found(value=(-1) ** place * 0.12, error=0.01) for place in range(10)]
    assert alike < KINDS.piece_spread < pool(unlike, KINDS).piece_spread


def false_alarms(looks: int, batches: int) -> tuple[float, float]:
    """Look at sound batches after each piece: alarms for each look, and for each batch."""
    chance, each, any_ = np.random.default_rng(9), [], []
    for _ in range(batches):
        kind = chance.normal(0, KINDS.kind_spread)
        values = chance.normal(kind, np.hypot(KINDS.piece_spread, 0.02), looks + 12)
        found = [Found(value=float(value), error=0.02) for value in values]
        tests = [
            judge_batch(found[12:][:count], found[:12], KINDS) for count in range(2, looks + 1)
        ]
        alarms = [test.differs for test in tests if test]
        each.append(np.mean(alarms))
        any_.append(any(alarms))
    return float(np.mean(each)), float(np.mean(any_))


def test_a_sound_batch_is_seldom_warned_of() -> None:
    """The stated rate: one look in a thousand, and at most one batch of a hundred."""
    look, batch = false_alarms(10, 1500)
    assert look <= 2 * BATCH_ALARM.value
    assert batch <= 0.01


def test_a_batch_a_tenth_softer_is_found_within_five_springs() -> None:
    chance, caught = np.random.default_rng(2), []
    for _ in range(200):
        before = [Found(value=float(v), error=0.02) for v in chance.normal(0, 0.04, 12)]
        soft = [Found(value=float(v), error=0.02) for v in chance.normal(np.log(0.9), 0.04, 5)]
        test = judge_batch(soft, before, KINDS)
        caught.append(test is not None and test.differs)
    assert np.mean(caught) > 0.6


def test_one_spring_tells_no_batch() -> None:
    assert judge_batch([Found(value=-0.5, error=0.01)], [Found(value=0, error=0.01)], KINDS) is None


def test_the_warning_says_how_much_and_how_often_it_is_false() -> None:
    record = [*(result(0.0, "06") for _ in range(8)), *(result(-0.16) for _ in range(4))]
    (finding,) = batch_warnings(record, "soft 2", "07")
    for system in System:
        told = fill(finding.sentence, finding.figures, system)
        assert "softer" in told
        assert "0.1 %" in told
        assert "{" not in told
    assert (
        batch_warnings(record, "soft 2", "06") != ()
    )  # it differs from the others as they from it
    assert batch_warnings(record, "another", "07") == ()
    assert batch_warnings([result(0.0)] * 9, "soft 2", "07") == ()


def test_what_the_bench_said_is_taken_without_the_expectation() -> None:
    """A thousand-fold repeated belief must not grow: the bench's own word comes back."""
    chance = np.random.default_rng(5)
    true = TrueShade.drawn(CASE, chance)
    draws = qmc.Sobol(16, seed=1).random(8192)
    seen = [true.spring_torque(15.0, chance)]
    told = result_of(learn(CASE, (), draws), learn(CASE, seen, draws), MADE)
    assert CASE.spring is not None
    likely = span_of(CASE.spring.rate_n_m_turn or 0).likely
    assert told.rate is not None
    assert told.rate.value == pytest.approx(np.log(seen[0].torque_n_m / 15 / likely), abs=0.004)
    assert told.rate.error == pytest.approx(0.02, abs=0.004)


def test_a_silent_bench_leaves_no_result() -> None:
    before = learn(CASE, (), DRAWS)
    told = result_of(before, before, MADE)
    assert (told.rate, told.weight, told.load_friction, told.constant_friction) == (None,) * 4
    assert told.as_expected


def test_an_empty_record_moves_nothing() -> None:
    assert expect(CASE, MADE, ()) == CASE
    assert expect(CASE, replace(MADE, spring="x"), [result(0.1)]) == CASE


def test_the_next_shade_is_expected_better_at_once() -> None:
    """Springs 8 % stiffer than their sheet: after ten shades the rate is expected where it is."""
    chance = np.random.default_rng(6)
    assert CASE.spring is not None
    sheet = span_of(CASE.spring.rate_n_m_turn or 0)
    stiff = replace(CASE, spring=replace(CASE.spring, rate_n_m_turn=sheet.times(1.08)))
    record = []
    for _ in range(10):
        true = TrueShade.drawn(stiff, chance)
        seen = [true.spring_torque(15.0, chance), true.weighed(chance), true.scale(9, 0.3, chance)]
        record.append(result_of(learn(CASE, (), DRAWS), learn(CASE, seen, DRAWS), MADE))
    moved = expect(CASE, MADE, record)
    assert moved.spring is not None
    rate = span_of(moved.spring.rate_n_m_turn or 0)
    assert rate.likely / sheet.likely == pytest.approx(1.08, abs=0.04)
    friction = span_of(moved.load_friction)
    usual = span_of(CASE.load_friction)
    assert friction.high / friction.low < usual.high / usual.low


def test_expected_and_found_stand_side_by_side() -> None:
    told = compare(result(0.0))
    assert (told.expected.low, told.found.value) == (8.0, 10.0)
    far = replace(result(0.0), found_turns=Span.exact(13.0))
    assert share_as_expected([result(0.0), far]).value == 0.5


def test_a_kind_is_told_by_its_sheet() -> None:
    told = tell_kind("soft 2", [result(0.08) for _ in range(6)])
    assert told.pieces == 6
    assert 1.05 < told.rate_by_sheet.value < 1.08
    assert told.trust.value > 0.8
