"""The job as if no piece had to follow the repeat: what it takes at least, and its cut lengths.

Where rooms may start anywhere, a plan can come close to this; and no plan can be under it,
since it leaves out a rule and nothing else.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import replace

from foldwright.core.cloth.choosing.bounding import finder_of
from foldwright.core.cloth.choosing.model import Choice
from foldwright.core.cloth.choosing.searching import search
from foldwright.core.cloth.columns import columns_of
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.level import Level, each_piece_once
from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.cloth.whole import Cloth

Beside = tuple[tuple[str, int], ...]
"""The pieces of one cut length by name, each with its left edge in whole units."""


def without_repeat(cloth: Cloth) -> Cloth:
    """Forget that pieces follow the repeat along; what they ask across stays.

    Takes: a cloth.

    Gives: a cloth that whatever can be cut from the first can be cut from too.

    Source: derived here.
    """
    kinds = tuple(replace(kind, along=None) for kind in cloth.kinds)
    return replace(cloth, kinds=kinds, repeat=0, shift=0, drops=1)


class PlainSearch:
    """A search of the job without its repeat; `prove` is told each length that it proves."""

    def __init__(
        self, cloth: Cloth, prove: Callable[[float], None], seconds_left: Callable[[], float]
    ) -> None:
        self.cloth, self.prove, self._seconds_left = cloth, prove, seconds_left
        self.levels: Sequence[Level] = first_fit(cloth)
        self.least = 0.0

    def run(self) -> None:
        """Search until the shortest is proven or the time is used."""
        search(finder_of(self.cloth), self.levels, _Told(self))

    @property
    def taken(self) -> int:
        """Give what the best cut lengths take, one close behind the other."""
        begin = min(bolt.begin for bolt in self.cloth.bolts) - self.cloth.spare
        return begin + sum(level.length + self.cloth.spare for level in self.levels)

    def take(self, levels: Sequence[Level]) -> None:
        """Keep cut lengths if they take less."""
        known, before = self.levels, self.taken
        self.levels = each_piece_once(self.cloth, levels)
        if self.taken >= before:
            self.levels = known

    def seconds_left(self) -> float:
        """Give the seconds left; none once nothing shorter is possible."""
        shortest = (self.taken - self.cloth.grain) / self.cloth.per_mm
        return 0.0 if self.least > shortest else self._seconds_left()

    def beside(self, order: ClothOrder) -> list[Beside]:
        """Name the pieces of each cut length, of as few rooms together as may be."""
        rooms = {piece.name: piece.room for piece in order.pieces}
        waiting = [list(kind.names) for kind in self.cloth.kinds]
        return [_named(level, waiting, rooms) for level in self.levels]


class _Told:
    """The search's watch."""

    def __init__(self, plain: PlainSearch) -> None:
        self.plain = plain

    def offer(self, levels: Sequence[Level]) -> None:
        self.plain.take(levels)

    def prove(self, least: float) -> None:
        self.plain.least = max(self.plain.least, least)
        self.plain.prove(least)

    def choice(self) -> Choice:
        plain = self.plain
        ways = [columns_of(plain.cloth, level) for level in plain.levels]
        columns = [way[0] for way in ways[:-1]] + [ways[-1][-1]]
        return Choice(columns, [], plain.taken / plain.cloth.per_mm)

    def worth(self) -> float:
        return (self.plain.taken - self.plain.cloth.grain) / self.plain.cloth.per_mm

    def seconds_left(self) -> float:
        return self.plain.seconds_left()


def _named(level: Level, waiting: list[list[str]], rooms: dict[str, str]) -> Beside:
    """Take a piece for each strip: of the room that most of the cut length's pieces can be of."""
    could = Counter(
        room for kind in level.counts for room in {rooms[name] for name in waiting[kind]}
    )
    named = []
    for strip in level.strips:
        names = waiting[strip.kind]
        best = max(range(len(names)), key=lambda n: (could[rooms[names[n]]], -n))
        named.append((names.pop(best), strip.left))
    return tuple(named)


def beside_of(plan: ClothPlan, units: int) -> list[Beside]:
    """Give the pieces of each cut length of a plan.

    Takes: a plan; how many whole units a nanometre has.

    Gives: the pieces by name with their left edges, from the first cut length to the last.

    Source: derived here.
    """
    across = {each.piece: each.across.nanometres * units for each in plan.placements}
    return [tuple((name, across[name]) for name in level.pieces) for level in plan.levels]
