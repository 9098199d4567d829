"""Small cutting jobs of every family, against a solver that tries every way on a grid."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from tests.engine.exhaustive_cloth import least_cloth

from foldwright.core.cloth.choosing.bounding import bound_by_next_starts
from foldwright.core.cloth.dividing import divisions
from foldwright.core.cloth.order import Buying, ClothOrder, ClothPiece, Flaw, Pattern, Roll
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO, Length

STEP = Length.mm(100)
FAMILIES = (
    "plain",
    "railroaded",
    "repeat",
    "centred",
    "half drop",
    "third drop",
    "mixed",
    "mixed half drop",
    "free rooms",
    "flaws",
    "lots",
    "widths",
    "patterned rolls",
    "sides apart",
    "some follow the repeat",
)


def steps(count: int) -> Length:
    return STEP * int(count)


def job(family: str, seed: int) -> ClothOrder:
    """Draw a job of up to six pieces on a cloth of ten steps."""
    chance = np.random.default_rng([FAMILIES.index(family), seed])
    count = int(chance.integers(2, 6))
    pieces = [
        ClothPiece(
            name=str(n),
            shade=str(n),
            room=str(int(chance.integers(2))),
            layer="face",
            width=steps(chance.integers(1, 11)),
            length=steps(chance.integers(3, 12)),
            phase_along=ZERO,
        )
        for n in range(count)
    ]
    sold = Buying(usable_width=steps(10), increment=STEP, start_allowance=steps(1))
    order = ClothOrder(pieces=tuple(pieces), buying=sold, spare=steps(chance.integers(2)))
    return _of(family, order, chance)


def _of(  # noqa: PLR0911 - one way out for each family
    family: str, order: ClothOrder, chance: np.random.Generator
) -> ClothOrder:
    pieces = order.pieces
    along = steps(chance.integers(3, 8))
    match family:
        case "railroaded":
            some = tuple(
                replace(p, phase_along=None, length=min(p.length, steps(10))) for p in pieces
            )
            return replace(order, pieces=some, railroaded=some)
        case "repeat":
            return replace(order, pattern=Pattern(vertical_repeat=along))
        case "centred" | "half drop" | "third drop" | "mixed half drop":
            drop = {"centred": Fraction(0), "third drop": Fraction(1, 3)}.get(
                family, Fraction(1, 2)
            )
            if family != "centred":
                along = steps(6)
            pattern = Pattern(vertical_repeat=along, horizontal_repeat=steps(3), drop_fraction=drop)
            some = tuple(
                replace(
                    p,
                    width=min(p.width, steps(7)),
                    phase_across=steps(chance.integers(3)),
                    phase_along=-p.length
                    if family == "mixed half drop" and chance.random() < 0.5
                    else ZERO,
                )
                for p in pieces
            )
            return replace(order, pieces=some, pattern=pattern)
        case "mixed":
            some = tuple(replace(p, phase_along=steps(chance.integers(7))) for p in pieces)
            return replace(order, pieces=some, pattern=Pattern(vertical_repeat=along))
        case "free rooms":
            free = frozenset({"1"})
            return replace(order, pattern=Pattern(vertical_repeat=along), free_rooms=free)
        case "some follow the repeat":
            some = (replace(pieces[0], phase_along=None), *pieces[1:])
            return replace(order, pieces=some, pattern=Pattern(vertical_repeat=along))
        case "sides apart":
            left = replace(pieces[0], width=min(pieces[0].width, steps(5)))
            sides = replace(left, side_partner="R"), replace(left, name="R", side_partner="0")
            return replace(order, pieces=(*sides, *pieces[1:4]), sides_share=False)
        case "flaws" | "lots" | "widths" | "patterned rolls":
            return _in_hand(family, order, chance, along)
        case _:
            return order


def _in_hand(
    family: str, order: ClothOrder, chance: np.random.Generator, along: Length
) -> ClothOrder:
    patterned = family == "patterned rolls"
    rolls = tuple(
        Roll(
            name=name,
            lot=name if family == "lots" else "",
            usable_width=steps(10 + number * (family == "widths")),
            length=steps(45),
            head_loss=steps(chance.integers(2)),
            origin_along=steps(chance.integers(5)) if patterned else ZERO,
            flaws=tuple(
                Flaw(
                    along=steps(chance.integers(30)),
                    across=steps(chance.integers(9)),
                    length=STEP,
                    width=STEP,
                )
                for _ in range(3 if family == "flaws" else 0)
            ),
        )
        for number, name in enumerate("ab")
    )
    pieces = tuple(
        replace(p, hidden_head=STEP, phase_along=ZERO if patterned else None)
        for p in order.pieces[:4]
    )
    pattern = Pattern(vertical_repeat=along) if patterned else Pattern()
    return replace(order, pieces=pieces, buying=None, rolls=rolls, pattern=pattern)


@pytest.mark.parametrize("seed", range(4))
@pytest.mark.parametrize("family", FAMILIES)
def test_a_small_job_takes_the_least_that_any_way_takes(family: str, seed: int) -> None:
    order = job(family, seed)
    least = steps(least_cloth(order, STEP))
    plan = plan_cloth(order, time_given_s=60.0, clock=lambda: 0.0).result
    assert plan is not None
    assert plan.bound <= least <= plan.bought
    assert plan.bought == least


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("family", ["mixed", "half drop", "mixed half drop"])
def test_the_quick_bound_of_mixed_starts_holds(family: str, seed: int) -> None:
    order = job(family, seed)
    (cloth,) = next(iter(divisions(order, {}, turned=False)))
    least = least_cloth(order, STEP) * STEP.in_millimetres
    assert bound_by_next_starts(cloth, lambda: True) <= least + 1e-6
