"""The bound for rooms that may start anywhere, against every start and every order on a grid."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from benchmarks.cloth_jobs import order
from tests.engine.exhaustive_cloth import NEVER, least_cloth

from foldwright.core.cloth.dividing import whole_cloth
from foldwright.core.cloth.order import Buying, ClothOrder, ClothPiece, Flaw, Pattern, Roll
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.cloth.rooms.gathering import rooms_of
from foldwright.core.cloth.rooms.narrowing import narrowed
from foldwright.core.cloth.rooms.without_repeat import PlainSearch, without_repeat
from foldwright.core.quantity.length import ZERO, Length

STEP = Length.mm(100)
FAR = 5_000.0  # mm above the least, so that worse plans are listed too
FAMILIES = ("to buy", "some unruled", "one given", "centred", "two rolls", "flaws")


def steps(count: int) -> Length:
    return STEP * int(count)


def job(family: str, seed: int) -> ClothOrder:
    """Draw three or four pieces of two or three rooms, from the head or from the sill."""
    chance = np.random.default_rng([FAMILIES.index(family), seed])
    repeat = int(chance.integers(2, 5))
    pieces = tuple(_piece(family, number, chance) for number in range(int(chance.integers(3, 5))))
    asked = ClothOrder(
        pieces=pieces,
        pattern=Pattern(
            vertical_repeat=steps(repeat),
            horizontal_repeat=steps(3) if family == "centred" else ZERO,
        ),
        spare=steps(chance.integers(2)),
        free_rooms=frozenset("01" if family == "one given" else "012"),
        buying=Buying(usable_width=steps(6), increment=STEP),
    )
    if family not in {"two rolls", "flaws"}:
        return asked
    rolls = tuple(
        Roll(
            name=name,
            lot="",
            usable_width=steps(6),
            length=steps(45),
            origin_along=steps(chance.integers(repeat)),
            flaws=(Flaw(along=steps(chance.integers(15)), across=ZERO, length=STEP, width=STEP),)
            if family == "flaws"
            else (),
        )
        for name in ("ab" if family == "two rolls" else "a")
    )
    return replace(asked, buying=None, rolls=rolls)


def _piece(family: str, number: int, chance: np.random.Generator) -> ClothPiece:
    length = steps(chance.integers(2, 10))
    unruled = family == "some unruled" and number == 0
    return ClothPiece(
        name=str(number),
        shade=str(number),
        room=str(number % 3),
        layer="face",
        width=steps(chance.integers(1, 5)),
        length=length,
        phase_across=steps(chance.integers(3)) if family == "centred" else None,
        phase_along=None if unruled else -length if chance.random() < 1 / 3 else ZERO,
        lot_group="",
    )


@pytest.mark.parametrize("seed", range(3))
@pytest.mark.parametrize("family", FAMILIES)
def test_no_start_and_no_order_takes_less_than_the_bound(family: str, seed: int) -> None:
    asked = job(family, seed)
    least = least_cloth(asked, STEP)
    assert least < NEVER
    rooms = rooms_of(asked, whole_cloth(asked, {}, turned=False))
    assert rooms is not None
    most_rolls = 1 if asked.buying else len(asked.rolls)
    search = narrowed(rooms, most_rolls, least * STEP.in_millimetres + FAR, lambda: True)
    assert search is not None
    assert search.bound <= least * STEP.in_millimetres
    search.run(lambda: 1.0)
    assert search.bound <= least * STEP.in_millimetres
    if family == "to buy":
        assert search.bound == pytest.approx(least * STEP.in_millimetres, abs=0.01)


@pytest.mark.parametrize("seed", [0, 2, 7])
def test_the_bound_knows_the_repeat_of_several_rooms_together(seed: int) -> None:
    asked = order("free rooms", 8, seed)
    cloth = whole_cloth(asked, {}, turned=False)
    plain = PlainSearch(without_repeat(cloth), lambda _: None, lambda: 1.0)
    plain.run()
    plan = plan_cloth(asked, time_given_s=60.0, clock=lambda: 0.0).result
    assert plan is not None
    assert plan.proven
    assert plan.bound.in_millimetres > plain.taken / cloth.per_mm + 500


@pytest.mark.parametrize("seed", range(12))
def test_no_plan_is_under_the_bound_however_early_the_narrowing_ends(seed: int) -> None:
    asked = order("free rooms", 5, seed)
    rooms = rooms_of(asked, whole_cloth(asked, {}, turned=False))
    plan = plan_cloth(asked, time_given_s=60.0, clock=lambda: 0.0).result
    assert plan is not None
    assert rooms is not None
    used = sum(use.used.in_millimetres for use in plan.rolls)
    search = narrowed(rooms, 1, used + FAR / 10, lambda: True)
    for _ in range(20) if search else ():
        assert search is not None
        assert search.bound <= used
        ticks = iter([1.0])
        search.run(lambda: next(ticks, 0.0))  # noqa: B023 - asked at once
