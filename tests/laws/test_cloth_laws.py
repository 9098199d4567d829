"""What holds for every plan of cloth, whatever the job."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import count

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    ClothPlan,
    Flaw,
    Pattern,
    Roll,
)
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO, Length

FEW = settings(max_examples=10, deadline=None)
SIZES = st.tuples(st.integers(100, 1400), st.integers(300, 2500), st.booleans())


def mm(value: float) -> Length:
    return Length.mm(Fraction(value))


def piece(number: int, width: int, length: int, *, at_sill: bool) -> ClothPiece:
    return ClothPiece(
        name=str(number),
        shade=str(number),
        room="den",
        layer="face",
        width=mm(width),
        length=mm(length),
        phase_along=-mm(length) if at_sill else ZERO,
    )


@st.composite
def orders(draw: st.DrawFn) -> ClothOrder:
    sizes = draw(st.lists(SIZES, min_size=1, max_size=7))
    repeat = draw(st.sampled_from([0, 320, 641]))
    return ClothOrder(
        pieces=tuple(piece(n, w, h, at_sill=s) for n, (w, h, s) in enumerate(sizes)),
        pattern=Pattern(vertical_repeat=mm(repeat)),
        buying=Buying(usable_width=mm(1400), increment=mm(1), start_allowance=mm(repeat + 50)),
        spare=mm(draw(st.sampled_from([0, 20]))),
    )


def planned(order: ClothOrder) -> ClothPlan:
    ticks = count()
    plan = plan_cloth(order, time_given_s=1.0, clock=lambda: next(ticks) * 0.02).result
    assert plan is not None
    assert faults_of(plan, order) == ()
    assert plan.bound <= plan.bought
    return plan


@FEW
@given(orders())
def test_a_shade_more_never_shortens_a_plan(order: ClothOrder) -> None:
    fewer = planned(order)
    one_more = piece(99, 700, 1200, at_sill=False)
    more = planned(replace(order, pieces=(*order.pieces, one_more)))
    assert more.bought >= fewer.bound
    if fewer.proven:
        assert more.bought >= fewer.bought


@FEW
@given(orders(), st.sampled_from([2, 3]))
def test_twice_the_size_takes_twice_the_cloth(order: ClothOrder, times: int) -> None:
    assert order.buying is not None
    sold = order.buying
    large = replace(
        order,
        pieces=tuple(
            replace(
                each,
                width=each.width * times,
                length=each.length * times,
                phase_along=None if each.phase_along is None else each.phase_along * times,
            )
            for each in order.pieces
        ),
        pattern=Pattern(vertical_repeat=order.pattern.vertical_repeat * times),
        spare=order.spare * times,
        buying=Buying(
            usable_width=sold.usable_width * times,
            increment=sold.increment * times,
            start_allowance=sold.start_allowance * times,
        ),
    )
    once, again = planned(order), planned(large)
    if once.proven and again.proven:
        assert again.bought == once.bought * times
    assert again.bought >= once.bound * times
    assert again.bound <= once.bought * times


FLAWS = st.tuples(st.integers(0, 9000), st.integers(0, 1300))


def in_hand(order: ClothOrder, flaws: list[tuple[int, int]]) -> ClothOrder:
    marked = tuple(
        Flaw(along=mm(along), across=mm(across), length=mm(40), width=mm(60))
        for along, across in flaws
    )
    roll = Roll(name="1", lot="", usable_width=mm(1400), length=mm(60_000), flaws=marked)
    return replace(order, buying=None, rolls=(roll,))


@FEW
@given(orders(), st.lists(FLAWS, min_size=1, max_size=4))
def test_more_flaws_never_shorten_a_plan(order: ClothOrder, flaws: list[tuple[int, int]]) -> None:
    sound, flawed = planned(in_hand(order, [])), planned(in_hand(order, flaws))
    assert flawed.bought >= sound.bound
    if sound.proven:
        assert flawed.bought >= sound.bought


@FEW
@given(orders())
def test_a_free_room_never_takes_more_than_it_would_if_its_start_were_given(
    order: ClothOrder,
) -> None:
    free = planned(replace(order, free_rooms=frozenset({"den"})))
    assert free.bound <= planned(order).bought


@pytest.mark.parametrize("seed", range(8))
def test_a_sheet_cut_edge_to_edge_is_put_together_again(seed: int) -> None:
    """Cut at random over the full width and then along: the least is the sheet, by its area."""
    chance = np.random.default_rng(seed)
    pieces: list[ClothPiece] = []
    total = 0
    for _ in range(int(chance.integers(3, 9))):
        length, left = int(chance.integers(400, 2500)), 1400
        total += length
        while left:
            width = min(left, int(chance.integers(200, 1401)))
            width = left if left - width < 200 else width
            left -= width
            pieces.append(piece(len(pieces), width, length, at_sill=False))
    order = ClothOrder(pieces=tuple(pieces), buying=Buying(usable_width=mm(1400), increment=mm(1)))
    plan = planned(order)
    assert plan.bought == mm(total)
    assert plan.proven
