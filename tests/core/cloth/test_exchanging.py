"""Pieces exchanged between cut lengths: the same pieces, never more cloth, sides kept apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import numpy as np
import pytest
from benchmarks.cloth_jobs import order
from tests.core.cloth.orders import mm, piece, to_buy

from foldwright.core.cloth.choosing.exchanging import can_exchange, exchanged
from foldwright.core.cloth.dividing import whole_cloth
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.level import Level, distance
from foldwright.core.cloth.order import Pattern
from foldwright.core.cloth.whole import Cloth


def taken(cloth: Cloth, levels: Sequence[Level]) -> int:
    return sum(distance(cloth, level.start, level.length) for level in levels)


def pieces(levels: Sequence[Level]) -> Counter[int]:
    return sum((level.counts for level in levels), start=Counter())


def better(cloth: Cloth, levels: list[Level], steps: int) -> list[Level]:
    return exchanged(cloth, levels, np.random.default_rng(1), steps, lambda: True)


@pytest.mark.parametrize("family", ["plain", "vertical repeat", "stock with flaws"])
def test_pieces_stay_the_same_and_fit_and_less_is_taken(family: str) -> None:
    cloth = whole_cloth(order(family, 120, 2), {}, turned=False)
    levels = first_fit(cloth)
    found = better(cloth, levels, 20_000)
    assert pieces(found) == pieces(levels)
    for level in found:
        assert sum(cloth.kinds[strip.kind].width for strip in level.strips) <= cloth.width
    assert taken(cloth, found) < taken(cloth, levels)


def test_cloth_that_was_cut_without_waste_is_put_together_again() -> None:
    chance = np.random.default_rng(3)
    cuts = chance.choice(range(150, 1250, 7), 12, replace=False)
    widths = [part for cut in cuts for part in (cut, 1400 - cut)]
    some = [piece(f"{n}", int(width), 1200 + 100 * (n // 6)) for n, width in enumerate(widths)]
    cloth = whole_cloth(to_buy(*some), {}, turned=False)
    in_vain = [level for kind in range(len(cloth.kinds)) for level in first_fit(cloth, [kind])]
    found = better(cloth, in_vain, 60_000)
    assert len(found) == 12
    assert taken(cloth, found) == 3 * sum(mm(1200 + 100 * n).nanometres for n in range(4))


def test_sides_that_are_kept_apart_stay_apart() -> None:
    left = piece("L", 300, 1000, shade="A", side_partner="R")
    right = replace(left, name="R", side_partner="L")
    other = piece("O", 1300, 1000)
    asked = to_buy(left, right, other, width=1300, sides_share=False)
    cloth = whole_cloth(asked, {}, turned=False)
    found = better(cloth, first_fit(cloth), 2_000)
    partners = [kind for kind in range(len(cloth.kinds)) if cloth.kinds[kind].width == 300_000_000]
    assert all(sum(level.counts[kind] for kind in partners) < 2 for level in found)


def test_pieces_with_a_place_across_or_several_phases_are_left_alone() -> None:
    assert can_exchange(whole_cloth(order("vertical repeat", 8, 1), {}, turned=False))
    for family in ("straight, centred", "mixed head and sill"):
        assert not can_exchange(whole_cloth(order(family, 8, 1), {}, turned=False))
    loose = to_buy(
        piece("1", 400, 900, phase_along=mm(100)),
        piece("2", 400, 900),
        pattern=Pattern(vertical_repeat=mm(300)),
    )
    assert not can_exchange(whole_cloth(loose, {}, turned=False))
