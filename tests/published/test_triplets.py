"""Triplets with an optimum known by construction.

Made as “A hybrid grouping genetic algorithm for bin packing”, Journal of Heuristics 2 (1996),
describes them: bars filled without waste by three pieces each, so that no plan can do with
fewer bars than a third of the pieces.
"""

from __future__ import annotations

import pytest
from benchmarks.stock import SECONDS_FOR_TRIPLETS, order_of, timed, triplets


@pytest.mark.parametrize(("size", "seed"), [(60, 1), (60, 2), (120, 1), (249, 1)])
def test_a_third_of_the_pieces_is_found_and_proved(size: int, seed: int) -> None:
    """triplets-1996: the optimum is a third of the pieces, by construction."""
    plan, _ = timed(order_of(triplets(size, seed), bar=1000), SECONDS_FOR_TRIPLETS)
    assert len(plan.bars) == size // 3
    assert plan.proven


def test_triplets_fill_their_bars_without_waste() -> None:
    """triplets-1996: three pieces to a bar, each between a quarter and a half of it."""
    pieces = triplets(60, 1)
    assert len(pieces) == 60
    assert sum(pieces) == 20 * 1000
    assert min(pieces) >= 250
    assert max(pieces) <= 490
