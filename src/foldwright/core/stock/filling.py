"""One bar at a time: fill it with the longest pieces that still fit."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from foldwright.core.stock.whole import Whole


@dataclass(frozen=True, kw_only=True, slots=True)
class Filled:
    """One bar of the source numbered `source`, holding `counts[i]` pieces of each size i."""

    source: int
    counts: tuple[tuple[int, int], ...]  # (size number, how many), longest first


class Remaining:
    """How many pieces of each size are still to be cut; finds the next size not used up."""

    def __init__(self, whole: Whole, counts: Sequence[int]) -> None:
        self.rising = [-size for size in whole.sizes]
        self.sizes = whole.sizes
        self.left = list(counts)
        self.pieces = sum(self.left)
        self._next = [number + (not count) for number, count in enumerate([*self.left, 1])]

    def longest(self, room: int, start: int) -> int:
        """Give the number of the longest size that fits the room and is left, from `start` on."""
        return self._find(max(start, bisect_left(self.rising, -room)))

    def take(self, filled: Filled) -> None:
        """Cut the pieces of one bar."""
        for number, count in filled.counts:
            self.left[number] -= count
            self.pieces -= count
            if not self.left[number]:
                self._next[number] = number + 1

    def _find(self, number: int) -> int:
        root = number
        while self._next[root] != root:
            root = self._next[root]
        while self._next[number] != root and number != root:
            self._next[number], number = root, self._next[number]
        return root


def fill(remaining: Remaining, source: int, room: int) -> Filled:
    """Fill one bar, longest first, without cutting anything yet."""
    counts: list[tuple[int, int]] = []
    number = remaining.longest(room, 0)
    while number < len(remaining.sizes):
        count = min(remaining.left[number], room // remaining.sizes[number])
        counts.append((number, count))
        room -= count * remaining.sizes[number]
        number = remaining.longest(room, number + 1)
    return Filled(source=source, counts=tuple(counts))


def longest_first(whole: Whole) -> list[Filled] | None:
    """Fill bars one after another, the rack first and then the bar that wastes least money.

    Takes: an order in whole units.

    Gives: filled bars that hold every piece, or None where the limited bars run out.

    Holds for: tens of thousands of pieces; each costs a search among the sizes.

    Source: common practice (longest first).

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> whole = Whole(sizes=(6, 4), counts=(1, 1), names=(("a",), ("b",)), sources=(bar,))
    >>> longest_first(whole)
    [Filled(source=0, counts=((0, 1), (1, 1)))]
    """
    remaining, bars = Remaining(whole, whole.counts), []
    stocked = [source.limit for source in whole.sources]
    while remaining.pieces:
        tried = [
            fill(remaining, number, source.room)
            for number, source in enumerate(whole.sources)
            if stocked[number] != 0
        ]
        tried = [bar for bar in tried if bar.counts]
        if not tried:
            return None
        best = min(tried, key=lambda bar: _cost_per_length(whole, bar))
        stocked[best.source] = _one_less(stocked[best.source])
        remaining.take(best)
        bars.append(best)
    return bars


def _cost_per_length(whole: Whole, bar: Filled) -> tuple[float, int]:
    source = whole.sources[bar.source]
    used = sum(whole.sizes[number] * count for number, count in bar.counts)
    return source.cost / used, source.room - used


def _one_less(limit: int | None) -> int | None:
    return None if limit is None else limit - 1


def cost_of(whole: Whole, bars: list[Filled]) -> float:
    """Give what the bars cost; the rack is paid for."""
    return sum(whole.sources[bar.source].cost for bar in bars)
