"""A cut length as one choice of the covering model: what it costs and where it leads."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable
from dataclasses import dataclass, field

from foldwright.core.cloth.level import Level, distance
from foldwright.core.cloth.whole import Cloth

NOWHERE = -1


@dataclass(frozen=True, slots=True)
class Column:
    """A cut length from one place in the repeat to the next; `end` NOWHERE is last on its roll.

    `start` NOWHERE is a cut length without a rule along: it may lie anywhere.
    """

    start: int
    end: int
    cost: int
    level: Level = field(compare=False)
    counts: tuple[tuple[int, int], ...]  # kind and how many


def columns_of(cloth: Cloth, level: Level) -> tuple[Column, ...]:
    """Give a cut length as one among others and as the last of a roll.

    Takes: the cloth; a cut length.

    Gives: the choices, one only where it may start anywhere in a cloth that has rules.

    Source: derived here.
    """
    counts = tuple(sorted(level.counts.items()))
    far = distance(cloth, level.start, level.length)
    if level.start is None and cloth.repeat:
        return (Column(NOWHERE, NOWHERE, far, level, counts),)
    start = place_in(cloth, level.start or 0)
    end = place_in(cloth, (level.start or 0) + far)
    return (
        Column(start, end, far, level, counts),
        Column(start, NOWHERE, level.length, level, counts),
    )


def place_in(cloth: Cloth, position: int) -> int:
    """Give the number of the place in the repeat that a position falls on."""
    return bisect_left(cloth.phases, position % cloth.repeat) if cloth.repeat else 0


class Pool:
    """Choices found so far, each once: the cheapest for the same pieces and the same way."""

    def __init__(self, cloth: Cloth, levels: Iterable[Level] = ()) -> None:
        self.cloth = cloth
        self.columns: list[Column] = []
        self._known: set[Column] = set()
        for level in levels:
            self.add(level)

    def add(self, level: Level) -> int:
        """Keep a cut length; give how many choices are new."""
        fresh = [c for c in columns_of(self.cloth, level) if c not in self._known]
        self._known.update(fresh)
        self.columns.extend(fresh)
        return len(fresh)
