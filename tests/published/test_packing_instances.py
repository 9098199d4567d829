"""Published packing instances, planned as cloth: a length off the roll, then split across it.

One unit of an instance is 100 mm, and no piece may be turned. Most published optima need more
than these two stages of cuts: no plan and no bound undercuts those, and a published model of two
stages, on another engine, finds the same least.
"""

from __future__ import annotations

from itertools import product

import pytest
from tests.engine.level_model import least_by_levels

from foldwright.core.cloth.order import Buying, ClothOrder, ClothPiece, ClothPlan
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import Length

UNIT = Length.mm(100)
Counts = tuple[int, ...]

# guillotine-cutting-1977, first example: a sheet of 15 by 10; along, across, most of it, value
ALONG, ACROSS = 15, 10
KINDS = (
    (8, 4, 2, 66),
    (3, 7, 1, 35),
    (8, 2, 3, 24),
    (3, 4, 5, 17),
    (3, 3, 2, 11),
    (3, 2, 2, 8),
    (2, 1, 1, 2),
)
BEST_VALUE = 244
BEST_COUNTS = (2, 1, 1, 2, 1, 1, 0)

# strip-packing-2001, first class: strips 20 wide, pieces as across, along; each packs in 20
PACKED_IN = 20
STRIPS = {
    "first": "2x12 7x12 8x6 3x6 3x5 5x5 3x12 3x7 5x7 2x6 3x2 4x2 3x4 4x4 9x2 11x2",
    "second": "4x1 4x5 9x4 3x5 3x9 1x4 5x3 4x1 5x5 7x2 9x3 3x13 2x8 15x4 5x4 10x6 7x2",
    "third": "4x14 5x2 2x2 9x7 5x5 2x5 7x7 3x5 6x5 3x2 6x2 4x6 6x3 10x3 6x3 10x3",
}


def planned(sizes: list[tuple[int, int]], across: int) -> ClothPlan:
    pieces = tuple(
        ClothPiece(
            name=str(number),
            shade=str(number),
            room="",
            layer="face",
            width=UNIT * wide,
            length=UNIT * long,
        )
        for number, (wide, long) in enumerate(sizes)
    )
    buying = Buying(usable_width=UNIT * across, increment=UNIT)
    order = ClothOrder(pieces=pieces, buying=buying)
    plan = plan_cloth(order, time_given_s=10.0, clock=lambda: 0.0).result
    assert plan is not None
    return plan


def worth(counts: Counts) -> int:
    return sum(count * value for count, (*_, value) in zip(counts, KINDS, strict=True))


def area(counts: Counts) -> int:
    return sum(count * long * wide for count, (long, wide, *_) in zip(counts, KINDS, strict=True))


def cut_from_the_roll(counts: Counts) -> ClothPlan:
    return planned(
        [(wide, long) for n, (long, wide, *_) in zip(counts, KINDS, strict=True) for _ in range(n)],
        ACROSS,
    )


def least_worth_more() -> list[Counts]:
    """Give what is worth more than the best and could fit by area, less a piece no longer."""
    choices = product(*(range(most + 1) for _, _, most, _ in KINDS))
    more = [c for c in choices if worth(c) > BEST_VALUE and area(c) <= ALONG * ACROSS]
    spared = [min(k[3] for n, k in zip(c, KINDS, strict=True) if n) for c in more]
    return [c for c, least in zip(more, spared, strict=True) if worth(c) - least <= BEST_VALUE]


def test_the_best_value_of_the_sheet_is_cut_in_two_stages() -> None:
    """guillotine-cutting-1977: 244; by its area it takes 14 of the 15, and 14 are proved."""
    assert worth(BEST_COUNTS) == BEST_VALUE
    assert area(BEST_COUNTS) == 14 * ACROSS
    plan = cut_from_the_roll(BEST_COUNTS)
    assert plan.bought == UNIT * 14
    assert plan.proven


@pytest.mark.parametrize("counts", least_worth_more(), ids=str)
def test_nothing_of_more_value_is_cut_from_the_sheet(counts: Counts) -> None:
    """guillotine-cutting-1977: 244 is the most, so all that is worth more takes more than 15."""
    plan = cut_from_the_roll(counts)
    assert plan.bought > UNIT * ALONG
    assert plan.bound > UNIT * ALONG


def sizes_of(strip: str) -> list[tuple[int, int]]:
    sizes = [tuple(map(int, size.split("x"))) for size in strip.split()]
    return [(wide, long) for wide, long in sizes]


@pytest.mark.parametrize("strip", STRIPS.values(), ids=STRIPS)
def test_no_plan_is_shorter_than_a_strip_without_waste(strip: str) -> None:
    """strip-packing-2001: 20 without waste; level-packing-2004: the least in two stages."""
    sizes = sizes_of(strip)
    assert sum(wide * long for wide, long in sizes) == 20 * PACKED_IN
    plan = planned(sizes, 20)
    assert plan.proven
    assert plan.bought == UNIT * least_by_levels(sizes, 20)
    assert plan.bought >= plan.bound >= UNIT * PACKED_IN
