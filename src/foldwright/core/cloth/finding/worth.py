"""The most worth that one cut length can hold side by side, where any place across will do."""

from __future__ import annotations

from collections import Counter

import numpy as np
from numpy.typing import NDArray

Reals = NDArray[np.float64]
HAIR = 1e-9


class Loading:
    """The best loading of every width up to the cloth's, as kinds are allowed one by one.

    Each is known twice: of pieces of which none is first, and of some of which one is. First
    are the pieces whose heads lie at the start of the cut length.
    """

    def __init__(self, room: int, most_lots: int) -> None:
        self.room = room
        self._tables = np.full((most_lots + 1, 2, room + 1), -np.inf)
        self._tables[0, 0] = 0.0
        self._tried = np.zeros((2, room + 1))
        self._lots: list[tuple[int, int, int, bool]] = []

    def clear(self) -> None:
        """Allow nothing."""
        self._lots.clear()

    @property
    def mark(self) -> int:
        """Give a mark for what is allowed so far."""
        return len(self._lots)

    def best(self, mark: int) -> Reals:
        """Give the most worth in every width, of what was allowed at a mark."""
        row: Reals = self._tables[mark].max(axis=0)
        return row

    def worth(self, marks: list[int], rooms: list[int], *, first: list[bool]) -> Reals:
        """Give the most worth of each room, of what was allowed at each mark.

        Where no `first` is there yet, one must be among it.
        """
        with_one = self._tables[marks, 1, rooms]
        without = np.where(first, self._tables[marks, 0, rooms], -np.inf)
        most: Reals = np.maximum(with_one, without)
        return most

    def allow(self, kind: int, width: int, count: int, worth: float, *, first: bool) -> None:
        """Allow up to `count` pieces of a kind, in lots of 1, 2, 4 … and a rest."""
        left, pieces = min(count, self.room // width), 1
        while left > 0 and worth > HAIR:
            pieces = min(pieces, left)
            self._try(pieces * width, pieces * worth, first=first)
            self._lots.append((kind, pieces, pieces * width, first))
            left -= pieces
            pieces *= 2

    def _try(self, width: int, worth: float, *, first: bool) -> None:
        number = len(self._lots)
        before, after, tried = self._tables[number], self._tables[number + 1], self._tried
        np.add(before[:, :-width], worth, out=tried[:, width:])
        after[:, :width] = before[:, :width]
        if first:
            after[0, width:] = before[0, width:]
            np.maximum(tried[0, width:], tried[1, width:], out=tried[1, width:])
            np.maximum(before[1, width:], tried[1, width:], out=after[1, width:])
        else:
            np.maximum(before[:, width:], tried[:, width:], out=after[:, width:])

    def pieces(self, mark: int, room: int, *, first: bool) -> Counter[int]:
        """Give how many pieces of each kind make up the best loading of a room at a mark."""
        found = Counter[int]()
        one = int(not first or self._tables[mark, 1, room] > self._tables[mark, 0, room])
        for number in range(mark, 0, -1):
            if self._tables[number, one, room] > self._tables[number - 1, one, room]:
                kind, pieces, width, is_first = self._lots[number - 1]
                found[kind] += pieces
                room -= width
                before = self._tables[number - 1, :, room]
                one = int(before[1] > before[0]) if is_first and one else one
        return found


def lots_in(count: int) -> int:
    """Give how many lots a count is split into.

    >>> [lots_in(count) for count in (0, 1, 2, 3, 4)]
    [0, 1, 2, 2, 3]
    """
    return count.bit_length()
