"""Places in the repeat looked at in turn, going on where the last look ended."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Generic, TypeVar

from foldwright.core.cloth.level import Level

S = TypeVar("S")


class Rounds(Generic[S]):
    """Starts of cut lengths, one after another and round again."""

    def __init__(self, starts: Sequence[S]) -> None:
        self._starts, self._next = starts, 0

    def look(
        self, look_from: Callable[[S], tuple[list[Level], float]], enough: float
    ) -> tuple[list[Level], float | None]:
        """Look from each start, until enough is found.

        Takes: what gives cut lengths from a start, and their greatest worth per cost; how many
        cut lengths are enough to stop at.

        Gives: the cut lengths; and the greatest worth per cost, at least 1, None if not all
        starts were looked from.

        Source: derived here.
        """
        found: list[Level] = []
        factor = 1.0
        for _ in self._starts:
            if len(found) >= enough:
                return found, None
            start = self._starts[self._next]
            self._next = (self._next + 1) % len(self._starts)
            levels, ratio = look_from(start)
            found += levels
            factor = max(factor, ratio)
        return found, factor
