"""The offcut rack first: what it can take is not cut from a bar that is bought."""

from __future__ import annotations

from foldwright.core.stock.filling import Filled, Remaining, fill
from foldwright.core.stock.whole import Whole


def rack_first(whole: Whole, bars: list[Filled]) -> list[Filled]:
    """Move pieces from bars that are bought to offcuts that lie unused.

    Takes: an order in whole units; bars that hold every piece.

    Gives: bars that cost no more; the emptiest bar gives its pieces first, so that what is
    left of it is long.

    Source: common practice (the rack first).

    >>> from foldwright.core.stock.whole import Source
    >>> rack = Source(name="r", room=6, cost=0.0, limit=1, from_rack=True)
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> whole = Whole(sizes=(6, 4), counts=(1, 1), names=(("a",), ("b",)), sources=(rack, bar))
    >>> rack_first(whole, [Filled(source=1, counts=((0, 1), (1, 1)))])
    [Filled(source=0, counts=((0, 1),)), Filled(source=1, counts=((1, 1),))]
    """
    used = {bar.source for bar in bars}
    kept = [bar for bar in bars if whole.sources[bar.source].from_rack]
    bought = [bar for bar in bars if not whole.sources[bar.source].from_rack]
    bought.sort(key=lambda bar: _held(whole, bar))
    for number, source in enumerate(whole.sources):
        if source.from_rack and number not in used:
            moved = fill(_in_all(whole, bought), number, source.room)
            bought = _without(bought, moved)
            kept += [moved] if moved.counts else []
    return [*kept, *bought]


def _held(whole: Whole, bar: Filled) -> int:
    return sum(whole.sizes[number] * count for number, count in bar.counts)


def _in_all(whole: Whole, bars: list[Filled]) -> Remaining:
    """Count the pieces on some bars as if they were still to be cut."""
    counts = [0] * len(whole.sizes)
    for bar in bars:
        for number, count in bar.counts:
            counts[number] += count
    return Remaining(whole, counts)


def _without(bars: list[Filled], moved: Filled) -> list[Filled]:
    """Take pieces off the first bars that hold them."""
    left, kept = dict(moved.counts), []
    for bar in bars:
        counts = []
        for number, count in bar.counts:
            taken = min(count, left.get(number, 0))
            left[number] = left.get(number, 0) - taken
            if count > taken:
                counts.append((number, count - taken))
        if counts:
            kept.append(Filled(source=bar.source, counts=tuple(counts)))
    return kept
