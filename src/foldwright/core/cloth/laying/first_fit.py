"""A plan at once: the longest piece first, each in the first cut length that has room."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from foldwright.core.cloth.level import Level, Strip, distance, level_of, spots
from foldwright.core.cloth.whole import Cloth, Kind

ANYWHERE = -1


def first_fit(cloth: Cloth, numbers: Iterable[int] | None = None) -> list[Level]:
    """Fill cut lengths with the longest piece first, none longer for what joins it later.

    Takes: the cloth; the kinds to cut, one number a piece, by default all.

    Gives: cut lengths that hold every piece once.

    Source: common practice (longest first, side by side).
    """
    if numbers is None:
        numbers = (n for n, kind in enumerate(cloth.kinds) for _ in kind.names)
    waiting = sorted(numbers, key=lambda number: _urgency(cloth, cloth.kinds[number]))
    opened = _Opened(cloth, len(waiting))
    for number in waiting:
        if not opened.join(number):
            opened.begin(number)
    return opened.levels()


def _urgency(cloth: Cloth, kind: Kind) -> tuple[bool, int, int, int]:
    return kind.along is None, -distance(cloth, kind.along, kind.length), -kind.width, -kind.length


class _Opened:
    """Cut lengths still being filled."""

    def __init__(self, cloth: Cloth, most: int) -> None:
        self.cloth = cloth
        self.strips: list[list[Strip]] = []
        self.starts = np.full(most, ANYWHERE, dtype=np.int64)
        self.limits = np.zeros(most, dtype=np.int64)
        self.free = np.zeros(most, dtype=np.int64)
        self.full = [0] * len(cloth.kinds)  # for each kind: cut lengths known to have no room

    def levels(self) -> list[Level]:
        """Give the cut lengths, no longer than they need be."""
        return [
            level_of(self.cloth, max(int(start), 0), strips)
            for start, strips in zip(self.starts, self.strips, strict=False)
        ]

    def begin(self, number: int) -> None:
        """Open a cut length for a piece, at its first place across."""
        kind, level = self.cloth.kinds[number], len(self.strips)
        left, drop = next(spots(self.cloth, kind, ()))
        start = None
        if kind.along is not None:
            start = (kind.along + (drop or 0) * self.cloth.shift) % self.cloth.repeat
            self.starts[level] = start
        self.strips.append([Strip(number, left, 0)])
        self.limits[level] = distance(self.cloth, start, kind.length)
        self.free[level] = self.cloth.width - kind.width

    def join(self, number: int) -> bool:
        """Put a piece into the first cut length with room; tell whether there was one."""
        kind, count = self.cloth.kinds[number], len(self.strips)
        behind = self._behind(kind, count)
        fits = behind.min(axis=0) + kind.length + self.cloth.spare <= self.limits[:count]
        fits[: self.full[number]] = False
        for level in np.nonzero(fits & (self.free[:count] >= kind.width))[0]:
            self.full[number] = int(level)
            if self._place(int(level), number, behind[:, level]):
                return True
        self.full[number] = count
        return False

    def _behind(self, kind: Kind, count: int) -> NDArray[np.int64]:
        """Give, for each drop and cut length, how far behind its start the kind must lie."""
        starts = self.starts[:count]
        if kind.along is None:
            return np.zeros((1, count), dtype=np.int64)
        phases = np.array(self.cloth.starts(kind), dtype=np.int64)[:, None]
        behind = (phases - starts) % self.cloth.repeat
        return np.where(starts == ANYWHERE, np.iinfo(np.int64).max // 4, behind)

    def _place(self, level: int, number: int, behind: NDArray[np.int64]) -> bool:
        cloth, kind, strips = self.cloth, self.cloth.kinds[number], self.strips[level]
        if not may_join(cloth, number, (strip.kind for strip in strips)):
            return False
        taken = [(strip.left, strip.left + cloth.kinds[strip.kind].width) for strip in strips]
        for left, drop in spots(cloth, kind, taken):
            back = int(behind.min() if drop is None else behind[drop % len(behind)])
            if back + kind.length + cloth.spare <= self.limits[level]:
                strips.append(Strip(number, left, back))
                self.free[level] -= kind.width
                return True
        return False


def may_join(cloth: Cloth, number: int, others: Iterable[int]) -> bool:
    """Tell whether one more of a kind may lie beside others, where sides are kept apart."""
    kind = cloth.kinds[number]
    alike = sum(other in (number, kind.partner) for other in others)
    return alike < kind.most
