"""Where free rooms start for given cut lengths, against trying every start on a grid."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from benchmarks.cloth_jobs import order
from tests.core.cloth.orders import mm, piece, to_buy

from foldwright.core.cloth.choosing.bounding import bound_without_repeat
from foldwright.core.cloth.dividing import divisions, whole_cloth
from foldwright.core.cloth.example import PLAN
from foldwright.core.cloth.laying.laying_out import lay_out
from foldwright.core.cloth.order import ClothOrder, Pattern
from foldwright.core.cloth.rooms.starting import CutTogether, better_starts, cut_lengths
from foldwright.core.cloth.rooms.without_repeat import (
    Beside,
    PlainSearch,
    beside_of,
    without_repeat,
)

STEP = 1_000_000  # a millimetre in units
REPEAT = 9


def job(seed: int) -> tuple[ClothOrder, list[Beside]]:
    """Draw pieces of three rooms on a repeat of nine steps, side by side in twos."""
    chance = np.random.default_rng(seed)
    drawn = [
        piece(
            str(number),
            10,
            int(chance.integers(5, 30)),
            room=str(int(chance.integers(3))),
            phase_along=mm(int(chance.integers(2)) * 4) if chance.random() < 0.9 else None,
        )
        for number in range(8)
    ]
    asked = to_buy(
        *drawn,
        width=20,
        pattern=Pattern(vertical_repeat=mm(REPEAT)),
        free_rooms=frozenset("01"),
        spare=mm(int(chance.integers(2))),
    )
    return asked, [((str(n), 0), (str(n + 1), 10 * STEP)) for n in range(0, 8, 2)]


def taken(asked: ClothOrder, beside: list[Beside], starts: dict[str, int]) -> int:
    (cloth,) = next(iter(divisions(asked, starts, turned=False)))
    layout = lay_out(cloth, cut_lengths(cloth, beside), 1)
    assert layout is not None
    return layout.rank[0]


@pytest.mark.parametrize("seed", range(12))
def test_rooms_start_where_given_cut_lengths_take_the_least_of_all_starts(seed: int) -> None:
    asked, beside = job(seed)
    together = CutTogether(asked, whole_cloth(asked, {}, turned=False), beside)
    tried = [
        taken(asked, beside, {"0": one * STEP, "1": other * STEP})
        for one, other in product(range(REPEAT), repeat=2)
    ]
    chance = np.random.default_rng(0)
    found = [
        taken(asked, beside, dict(starts))
        for starts, _ in better_starts(together, {}, chance, lambda: True)
    ]
    assert min(found) == min(tried)


@pytest.mark.parametrize("seed", range(4))
def test_what_is_told_to_be_taken_is_what_the_layout_takes(seed: int) -> None:
    asked = order("free rooms", 20, seed)
    cloth = whole_cloth(asked, {}, turned=False)
    plain = PlainSearch(without_repeat(cloth), lambda _: None, lambda: 0.0)
    beside = plain.beside(asked)
    together = CutTogether(asked, cloth, beside)
    chance = np.random.default_rng(0)
    *_, (starts, told) = better_starts(together, {}, chance, lambda: True)
    between = (len(beside) - 1) * cloth.spare + cloth.bolts[0].begin
    assert told + between == taken(asked, beside, dict(starts))


def test_each_piece_is_named_once() -> None:
    asked = order("free rooms", 20, 1)
    cloth = without_repeat(whole_cloth(asked, {}, turned=False))
    beside = PlainSearch(cloth, lambda _: None, lambda: 0.0).beside(asked)
    named = [name for some in beside for name, _ in some]
    assert sorted(named) == sorted(each.name for each in asked.pieces)


def test_without_its_repeat_a_job_is_proven_to_take_more_than_the_relaxed_model_tells() -> None:
    cloth = whole_cloth(order("free rooms", 8, 1), {}, turned=False)
    proven: list[float] = []
    plain = PlainSearch(without_repeat(cloth), proven.append, lambda: 1.0)
    plain.run()
    quick = bound_without_repeat(cloth, lambda: True)
    assert max(proven) > quick * 1.03
    assert max(proven) <= plain.taken / cloth.per_mm + 1e-3


def test_cut_lengths_of_a_plan_are_read_back() -> None:
    edge = 300 * STEP
    assert beside_of(PLAN, 1) == [
        (("1 face centre", 0),),
        (("1 face left", 0), ("1 face right", edge)),
    ]
