"""Cut lengths laid out past flaws: beside a narrow piece, below a short one, or close before."""

from __future__ import annotations

import numpy as np
import pytest
from benchmarks.cloth_jobs import order
from tests.core.cloth.orders import mm, piece, roll

from foldwright.core.cloth.dividing import whole_cloth
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.laying.passing import in_one_phase, lay_past_flaws
from foldwright.core.cloth.laying.placing import Laid
from foldwright.core.cloth.order import ClothOrder, ClothPiece, Flaw, Pattern, Roll


def flaw(along: float, across: float, length: float = 20, width: float = 20) -> Flaw:
    return Flaw(along=mm(along), across=mm(across), length=mm(length), width=mm(width))


def laid_out(
    pieces: tuple[ClothPiece, ...], *rolls: Roll, **more: object
) -> list[tuple[str, float, float, float]]:
    """Give roll, start, and what is lost to repeat and flaw, of each cut length in mm."""
    cloth = whole_cloth(ClothOrder(pieces=pieces, rolls=rolls, **more), {}, turned=False)  # type: ignore[arg-type]
    found = lay_past_flaws(cloth, first_fit(cloth))
    assert found is not None
    return [(each.bolt.name, *_in_mm(each, cloth.per_mm)) for each in found]


def _in_mm(each: Laid, per_mm: int) -> tuple[float, float, float]:
    return each.start / per_mm, each.repeat_loss / per_mm, each.flaw_loss / per_mm


def test_a_flaw_lies_beside_a_narrow_piece_and_costs_nothing() -> None:
    full, narrow = piece("full", 1400, 900), piece("narrow", 1300, 1000)
    assert laid_out((full, narrow), roll("a", 1900, flaws=(flaw(1200, 1350),))) == [
        ("a", 0, 0, 0),
        ("a", 900, 0, 0),
    ]
    assert laid_out((full, narrow), roll("a", 1900, flaws=(flaw(300, 1350),))) == [
        ("a", 0, 0, 0),
        ("a", 1000, 0, 0),
    ]


def test_a_flaw_lies_below_a_short_piece_and_costs_nothing() -> None:
    tall, short = piece("tall", 700, 1500), piece("short", 700, 1000)
    assert laid_out((tall, short), roll("a", 1500, flaws=(flaw(1200, 300),))) == [("a", 0, 0, 0)]


def test_what_ends_nearest_before_a_flaw_is_laid_there() -> None:
    pieces = tuple(piece(str(length), 1400, length) for length in (1100, 1000, 900, 600))
    found = laid_out(pieces, roll("a", 5000, flaws=(flaw(2010, 700),)))
    assert [each[3] for each in found] == [0, 0, 30, 0]
    assert sum(each[1] < 2010 for each in found) == 2


def test_a_flaw_in_what_is_spared_between_two_cut_lengths_costs_nothing() -> None:
    pieces = tuple(piece(str(n), 1400, 1000) for n in range(2))
    spoilt = roll("a", 2020, flaws=(flaw(1001, 700, length=5),))
    found = laid_out(pieces, spoilt, spare=mm(20))
    assert found == [("a", 0, 0, 0), ("a", 1020, 0, 0)]


def test_behind_a_flaw_the_next_start_is_where_the_pattern_stands_right() -> None:
    one = piece("1", 1400, 1000, phase_along=mm(100))
    pattern = Pattern(vertical_repeat=mm(400))
    spoilt = roll("a", 5000, flaws=(flaw(500, 700, length=100),))
    assert laid_out((one,), spoilt, pattern=pattern) == [("a", 900, 100, 800)]


def test_the_roll_whose_next_flaw_costs_least_is_gone_on_with() -> None:
    pieces = tuple(piece(str(n), 1400, 1000) for n in range(3))
    dear = roll("dear", 9000, flaws=(flaw(1500, 700),))
    cheap = roll("cheap", 9000, flaws=(flaw(1001, 700),))
    assert {each[0] for each in laid_out(pieces, dear, cheap)} == {"cheap"}
    assert sum(each[3] for each in laid_out(pieces, dear, cheap)) == pytest.approx(21)


def test_what_does_not_fit_is_said() -> None:
    one = ClothOrder(pieces=(piece("1", 1400, 1000),), rolls=(roll("a", 900),))
    cloth = whole_cloth(one, {}, turned=False)
    assert lay_past_flaws(cloth, first_fit(cloth)) is None


@pytest.mark.parametrize("again", range(4))
def test_of_many_shades_on_flawed_rolls_hardly_anything_is_lost(again: int) -> None:
    cloth = whole_cloth(order("stock with flaws", 200, 1), {}, turned=False)
    levels = first_fit(cloth)
    chance = np.random.default_rng(again) if again else None
    laid = lay_past_flaws(cloth, levels, chance)
    assert laid is not None
    assert sorted(map(_pieces, laid)) == sorted(tuple(sorted(v.counts.items())) for v in levels)
    lost = sum(each.flaw_loss for each in laid)
    assert lost < 0.003 * sum(level.length for level in levels)


def _pieces(laid: Laid) -> tuple[tuple[int, int], ...]:
    return tuple(sorted(laid.level.counts.items()))


def test_cut_lengths_of_several_phases_are_left_to_a_search() -> None:
    pattern = Pattern(vertical_repeat=mm(400))
    some = tuple(piece(str(n), 1400, 1000, phase_along=mm(100 * n)) for n in range(2))
    cloth = whole_cloth(
        ClothOrder(pieces=some, pattern=pattern, rolls=(roll("a", 9000),)), {}, turned=False
    )
    levels = first_fit(cloth)
    assert not in_one_phase(cloth, levels)
    assert not in_one_phase(cloth, levels[:1])
    plain = whole_cloth(ClothOrder(pieces=some, rolls=(roll("a", 9000),)), {}, turned=False)
    assert in_one_phase(plain, first_fit(plain))
