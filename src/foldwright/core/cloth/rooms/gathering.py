"""Which pieces of which rooms could share a cut length, in a plan that is worth finding."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from foldwright.core.cloth.choosing.model import Frame
from foldwright.core.cloth.choosing.pricing import price
from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.finding.side_by_side import SideBySide
from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.rooms.free_rooms import rooms_to_settle
from foldwright.core.cloth.whole import Cloth, Kind

A_HAIR = 1e-6  # mm
Together = tuple[tuple[int, int], ...]
"""Kinds in one cut length, the longest first, and how many of each."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Rooms:
    """The pieces that follow the repeat, kinds of one room each.

    `plain` is their cloth without a repeat and without rules across. A room is told by its
    number, the one with most cloth first; all rooms whose start is given are one.
    """

    plain: Cloth
    repeat: int
    names: tuple[tuple[str, ...], ...]
    room: tuple[int, ...]
    behind: tuple[int, ...]
    """How far behind its room's start in the repeat each kind must start."""


def rooms_of(order: ClothOrder, cloth: Cloth) -> Rooms | None:
    """Give the pieces that follow the repeat by rooms.

    Takes: the order; its whole cloth, with all rooms at the origin.

    Gives: the rooms; None where a piece may start on several drops of the pattern.

    Source: derived here.
    """
    if not cloth.repeat or cloth.drops > 1:
        return None
    free, of_piece = set(rooms_to_settle(order)), {piece.name: piece.room for piece in order.pieces}
    alike: dict[tuple[str, int, int, int], list[str]] = {}
    area: dict[str, int] = {}
    for kind in cloth.kinds:
        for name in kind.names if kind.along is not None else ():
            room = of_piece[name] if of_piece[name] in free else ""
            alike.setdefault((room, kind.length, kind.width, kind.along or 0), []).append(name)
            area[room] = area.get(room, 0) + kind.width * kind.length
    rooms = sorted(area, key=lambda room: (-area[room], room))
    keys = sorted(alike, key=lambda key: (-key[1], -key[2], rooms.index(key[0]), key[3]))
    kinds = tuple(_kind(alike[key], key[1], key[2]) for key in keys)
    return Rooms(
        plain=replace(cloth, kinds=kinds, repeat=0, shift=0),
        repeat=cloth.repeat,
        names=tuple((room,) if room in free else () for room in rooms),
        room=tuple(rooms.index(key[0]) for key in keys),
        behind=tuple(key[3] for key in keys),
    )


def _kind(names: Sequence[str], length: int, width: int) -> Kind:
    return Kind(
        names=tuple(names),
        width=width,
        length=length,
        across=None,
        along=None,
        hidden=(0, 0, 0, 0),
        most=len(names),
    )


def all_together(
    rooms: Rooms, worth: float, most: int, go_on: Callable[[], bool]
) -> list[Together] | None:
    """List every set of pieces that a cut length could hold in a plan worth finding.

    Takes: the rooms; the greatest length (mm) that is worth finding; how many sets at most;
    whether to go on.

    Gives: the sets, or None if they are too many. Without the repeat a plan takes at least
    what is proven there and, besides, what each of its cut lengths is longer than it is
    worth at those prices; so a set that is too much longer is in no plan worth finding.

    Source: derived here; cutting-stock-1961 for the prices.
    """
    cloth = rooms.plain
    priced = price(Frame(cloth), Pool(cloth, first_fit(cloth)), SideBySide(cloth), go_on)
    spared = min(cloth.spare / cloth.per_mm, float(priced.prices.places[0]))
    gap = worth - priced.least - spared + A_HAIR
    found: list[Together] = []
    for some in _Gathering(cloth, priced.prices.pieces.tolist(), gap).run():
        found.append(some)
        if len(found) > most:
            return None
    return found


class _Gathering:
    """All sets that are at most so much longer than they are worth."""

    def __init__(self, cloth: Cloth, worth: list[float], gap: float) -> None:
        self.cloth, self.worth, self.gap = cloth, worth, gap
        # Widths are counted in whole millimetres, rounded down, so that no set is missed.
        self.widths = [max(1, kind.width // cloth.per_mm) for kind in cloth.kinds]
        self.room = cloth.width // cloth.per_mm
        self.best = self._best_of_shorter()

    def _best_of_shorter(self) -> list[NDArray[np.float64]]:
        """Give the most worth in every width, of each kind and all behind it."""
        best = [np.zeros(self.room + 1)]
        for number in range(len(self.widths) - 1, -1, -1):
            table, width = best[-1].copy(), self.widths[number]
            for _ in range(min(self.cloth.kinds[number].count, self.room // width)):
                more = table[:-width] + self.worth[number]
                table[width:] = np.maximum(table[width:], more)
            best.append(table)
        return best[::-1]

    def run(self) -> Iterator[Together]:
        """Give sets by their longest kind."""
        for number, kind in enumerate(self.cloth.kinds):
            least = kind.length / self.cloth.per_mm - self.gap
            width = self.widths[number]
            for count in range(1, min(kind.count, self.room // width) + 1):
                left, value = self.room - count * width, count * self.worth[number]
                yield from self._more(((number, count),), number + 1, left, value, least)

    def _more(
        self, some: Together, number: int, left: int, value: float, least: float
    ) -> Iterator[Together]:
        """Add kinds from a number on, as long as the set can be worth enough."""
        if value + self.best[number][left] < least:
            return
        if number == len(self.widths):
            yield some
            return
        width = self.widths[number]
        for count in range(min(self.cloth.kinds[number].count, left // width) + 1):
            added = (*some, (number, count)) if count else some
            worth = value + count * self.worth[number]
            yield from self._more(added, number + 1, left - count * width, worth, least)
