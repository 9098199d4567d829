"""Lists of ways to fill a bar: all there are, or those tight enough for the fewest bars."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator

from foldwright.core.stock.bounding import Column
from foldwright.core.stock.whole import Whole

MOST_LOOKS = 400_000  # listing more than this takes longer than choosing among the rest

FEW_LOOKS = 20_000  # the proof by all columns is for small orders

Pieces = tuple[int, ...]  # size numbers, longest first


def tight_columns(whole: Whole, least_bars: int) -> list[Column] | None:
    """List every filling that a plan with the least number of bars could use.

    In such a plan no bar may waste more than all bars together can.

    Takes: an order on bars of one length only; the proven least number of bars.

    Gives: the fillings, or None where there are too many to list.

    Holds for: bars that hold few pieces each.

    Source: derived here.

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> whole = Whole(sizes=(6, 4), counts=(1, 1), names=(("a",), ("b",)), sources=(bar,))
    >>> tight_columns(whole, 1)
    [(0, (1, 1))]
    """
    needed = sum(size * count for size, count in zip(whole.sizes, whole.counts, strict=True))
    room = whole.sources[0].room
    search = _Search(whole, room, room * least_bars - needed, MOST_LOOKS)
    found = list(search.fillings())
    return None if search.given_up else [(0, filling) for filling in found]


def every_column(whole: Whole) -> list[Column] | None:
    """List every way to fill a bar to which no piece can be added.

    Takes: an order in whole units.

    Gives: the ways for each source, or None where there are too many to list.

    Holds for: small orders; what is proven with them is proven of every plan.

    Source: derived here.

    >>> from foldwright.core.stock.whole import Source
    >>> bar = Source(name="b", room=10, cost=1.0, limit=None, from_rack=False)
    >>> whole = Whole(sizes=(6, 4), counts=(1, 2), names=(("a",), ("b", "b")), sources=(bar,))
    >>> sorted(every_column(whole))
    [(0, (0, 2)), (0, (1, 1))]
    """
    found: list[Column] = []
    for number, source in enumerate(whole.sources):
        search = _Search(whole, source.room, source.room, FEW_LOOKS)
        found += [(number, filling) for filling in search.fillings() if any(filling)]
        if search.given_up:
            return None
    return found


class _Search:
    """A walk through fillings, longest piece first, that turns back where waste is certain."""

    def __init__(self, whole: Whole, room: int, waste: int, most_looks: int) -> None:
        self.room, self.waste = room, waste
        self.most_looks = most_looks
        self.sizes, self.counts = whole.sizes, whole.counts
        self.rising = [-size for size in whole.sizes]
        self.looks = 0

    @property
    def given_up(self) -> bool:
        """Tell whether the walk was ended before it had seen everything."""
        return self.looks > self.most_looks

    def fillings(self) -> Iterator[tuple[int, ...]]:
        """Give every tight filling as counts of each size."""
        stack: list[tuple[Pieces, int]] = [((), self.room)]
        while stack and not self.given_up:
            self.looks += 1
            pieces, left = stack.pop()
            longer = [
                ((*pieces, number), left - self.sizes[number])
                for number in self._next(pieces, left)
            ]
            stack.extend(longer)
            if left <= self.waste and not longer:
                yield self._counted(pieces)

    def _next(self, pieces: Pieces, left: int) -> Iterator[int]:
        """Give the sizes that may come next: none longer, and none that is sure to waste."""
        first = max(pieces[-1] if pieces else 0, bisect_left(self.rising, -left))
        last_piece = left < 2 * self.sizes[-1]
        end = bisect_right(self.rising, self.waste - left) if last_piece else len(self.sizes)
        for number in range(first, end):
            if pieces.count(number) < self.counts[number]:
                yield number

    def _counted(self, pieces: Pieces) -> tuple[int, ...]:
        held = [0] * len(self.sizes)
        for number in pieces:
            held[number] += 1
        return tuple(held)
