"""Bar after bar filled with the most worth; pieces that were hard to place are worth more next."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from foldwright.core.stock.filling import Filled
from foldwright.core.stock.whole import Whole, coarse
from foldwright.core.stock.worth import Loading, Reals

PASSES = 40  # it learns little after that
LONG_IS_WORTH = 1.03  # the power by which a long piece is worth more than its length
KEPT = 0.5  # part of a piece's worth that stands from one pass to the next


def filled_by_worth(whole: Whole) -> Iterator[list[Filled] | None]:
    """Fill bars pass after pass, each time with the worths that the pass before it taught.

    Takes: an order in whole units.

    Gives: for each pass bars that hold every piece, or None where the limited bars ran out.

    Holds for: up to a few hundred different sizes.

    Source: derived here.

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> sizes = {"sizes": (6, 5, 4), "counts": (1, 2, 1), "names": (("a",), ("b", "c"), ("d",))}
    >>> [len(bars) for bars in filled_by_worth(Whole(sources=(bar,), **sizes))][:1]
    [2]
    """
    up, _, rooms = coarse(whole)
    worths = np.power(np.array(up, dtype=float), LONG_IS_WORTH)
    for _ in range(PASSES):
        bars = _one_pass(whole, up, rooms, worths)
        yield bars
        if bars is not None:
            worths = _learnt(whole, up, worths, bars)


def _one_pass(
    whole: Whole, up: tuple[int, ...], rooms: tuple[int, ...], worths: Reals
) -> list[Filled] | None:
    left, bars = list(whole.counts), []
    stocked = [source.limit for source in whole.sources]
    while any(left):
        loading = Loading(up, tuple(left), max(rooms), worths)
        source = _best_source(whole, rooms, stocked, loading)
        if source is None:
            return None
        filling = loading.pieces(rooms[source])
        counts = tuple((int(n), int(filling[n])) for n in np.flatnonzero(filling))
        times = min(left[number] // count for number, count in counts)
        if (limit := stocked[source]) is not None:
            times = min(times, limit)
            stocked[source] = limit - times
        for number, count in counts:
            left[number] -= times * count
        bars += [Filled(source=source, counts=counts)] * times
    return bars


def _best_source(
    whole: Whole, rooms: tuple[int, ...], stocked: list[int | None], loading: Loading
) -> int | None:
    """Give the bar that costs least for the worth that it would hold; the rack costs nothing."""
    useful = [
        number
        for number, room in enumerate(rooms)
        if stocked[number] != 0 and loading.best[room] > 0
    ]
    paid = {n: whole.sources[n].cost / float(loading.best[rooms[n]]) for n in useful}
    return min(useful, key=lambda n: paid[n], default=None)


def _learnt(whole: Whole, up: tuple[int, ...], worths: Reals, bars: list[Filled]) -> Reals:
    """Raise the worth of pieces from bars that were filled badly for their cost."""
    dearness = np.zeros(len(up))
    for bar in bars:
        held = sum(up[number] * count for number, count in bar.counts)
        for number, _ in bar.counts:
            dearness[number] = max(dearness[number], whole.sources[bar.source].cost / held)
    paid = dearness[dearness > 0]
    usual = float(np.median(paid)) if paid.size else 1.0
    scale = np.where(dearness > 0, dearness / usual, 1.0)
    taught: Reals = np.power(np.array(up, dtype=float), LONG_IS_WORTH) * scale
    return KEPT * worths + (1 - KEPT) * taught
