"""Pieces exchanged between cut lengths, first freely and then ever more choosily.

A piece changes places with one of another cut length, or moves to where there is room. What
counts is the cloth taken, and a little the room left over: one wide rest is worth more than
several narrow ones, since it can take a piece one day. Exchanges that lose something are
taken too, the less often the more they lose and the longer this has gone on.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from foldwright.core.cloth.laying.first_fit import may_join
from foldwright.core.cloth.level import Level, Strip, distance, level_of
from foldwright.core.cloth.whole import Cloth

FREE, CHOOSY = 0.008, 0.0025  # parts of a piece's length that are lost lightly: at first, at last
ROOM_WORTH = 0.7  # mm of length for a millimetre of room in the only cut length that has room
AT_ONCE = 700  # pieces that are looked at for one exchange
DRAWN = 100_000
ASK_EVERY = 1_000

Reals = NDArray[np.float64]


def can_exchange(cloth: Cloth) -> bool:
    """Tell whether pieces may lie anywhere across and all start alike in the repeat.

    Takes: the cloth.

    Gives: whether `exchanged` holds for it.

    Source: derived here.
    """
    return not cloth.in_places and len(cloth.phases) == 1 and not cloth.loose


def exchanged(
    cloth: Cloth,
    levels: Sequence[Level],
    chance: np.random.Generator,
    steps: int,
    go_on: Callable[[], bool],
) -> list[Level]:
    """Look for better cut lengths by exchanging pieces.

    Takes: a cloth that `can_exchange`; cut lengths; where to draw from; how many pieces to
    try to exchange; whether to go on.

    Gives: the best cut lengths found, with the same pieces.

    Source: annealing-1983.
    """
    exchange = _Exchange(cloth, levels, chance)
    warmth = np.geomspace(FREE, CHOOSY, steps) * exchange.mean_length
    for number, each in enumerate(warmth):
        if number % ASK_EVERY == 0 and not go_on():
            break
        exchange.step(float(each))
    return exchange.best_levels()


class _Exchange:
    """Pieces in their cut lengths, and in each cut length an empty place without a width."""

    def __init__(self, cloth: Cloth, levels: Sequence[Level], chance: np.random.Generator) -> None:
        self.cloth, self.chance = cloth, chance
        self.kinds = [strip.kind for level in levels for strip in level.strips]
        count, places = len(self.kinds), len(levels) + 1
        inside = [n for n, level in enumerate(levels) for _ in level.strips] + [*range(places)]
        self.members: list[set[int]] = [set() for _ in range(places)]
        self.width = np.array([cloth.kinds[k].width for k in self.kinds] + [0] * places, float)
        self.taken = np.array([self._takes(k) for k in self.kinds] + [0] * places, float)
        self.inside = np.array(inside)
        self.width /= cloth.per_mm
        self.taken /= cloth.per_mm
        self.mean_length = float(self.taken[:count].mean())
        self._shuffle()
        self.room = np.full(places, cloth.width / cloth.per_mm)
        self.longest = np.zeros(places)
        self.beside = np.zeros(len(self.inside))  # the longest of the others in the cut length
        for number, place in enumerate(self.inside):
            self.members[place].add(number)
            self.room[place] -= self.width[number]
        for place in range(places):
            self._look_at(place)
        self.total = self.least = float(self.longest.sum())
        self.best = self.inside.copy()
        self._draw()

    def _takes(self, kind: int) -> int:
        start = self.cloth.phases[0] if self.cloth.repeat else None
        return distance(self.cloth, start, self.cloth.kinds[kind].length)

    def _shuffle(self) -> None:
        """Mix the order, so that any stretch of it is a fair sample."""
        order = self.chance.permutation(len(self.inside))
        kinds = [*self.kinds, *[-1] * (len(order) - len(self.kinds))]
        self.kinds = [kinds[number] for number in order]
        self.pieces = np.flatnonzero(np.array(self.kinds) >= 0)
        self.width, self.taken = self.width[order], self.taken[order]
        self.inside = self.inside[order]

    def _draw(self) -> None:
        """Draw chances ahead for many steps."""
        count = len(self.inside)
        self._gumbel = self.chance.gumbel(size=DRAWN)
        self._who = iter(self.chance.choice(self.pieces, size=DRAWN).tolist())
        self._from = iter(self.chance.integers(max(1, count - AT_ONCE + 1), size=DRAWN).tolist())
        self._luck = iter(self.chance.integers(DRAWN - AT_ONCE, size=DRAWN).tolist())

    def _look_at(self, place: int) -> None:
        """Find the longest piece of a cut length, and for each piece the longest beside it."""
        longest = second = 0.0
        for number in self.members[place]:
            length = self.taken[number]
            if length > longest:
                longest, second = length, longest
            elif length > second:
                second = length
        self.longest[place] = longest
        for number in self.members[place]:
            self.beside[number] = second if self.taken[number] == longest else longest

    def step(self, warmth: float) -> None:
        """Draw a piece, and exchange it with what suits best, or with nothing."""
        piece = next(self._who, None)
        if piece is None:
            self._draw()
            piece = next(self._who)
        first, luck = next(self._from), next(self._luck)
        other, change = self._partner(piece, first, luck, warmth)
        if other is None or not self._may(piece, other):
            return
        self._swap(piece, other)
        self.total += change
        if self.total < self.least - 1e-6:
            self.least, self.best = self.total, self.inside.copy()

    def _partner(
        self, piece: int, first: int, luck: int, warmth: float
    ) -> tuple[int | None, float]:
        """Give what to exchange a piece with and what that changes (mm), as chance has it."""
        some = slice(first, first + AT_ONCE)
        here, inside = self.inside[piece], self.inside[some]
        wider, room, room_here = self.width[some] - self.width[piece], self.room, self.room[here]
        fits = (wider <= room_here) & (-wider <= room[inside]) & (inside != here)
        found = np.flatnonzero(fits)
        if not len(found):
            return None, 0.0
        others, inside, wider = found + first, inside[found], wider[found]
        change = (
            np.maximum(self.beside[piece], self.taken[others])
            + np.maximum(self.beside[others], self.taken[piece])
            - self.longest[here]
            - self.longest[inside]
        )
        gathered = 2 * wider * (wider + room[inside] - room_here)
        loss = change - ROOM_WORTH / self._width_mm * gathered
        ranks = loss / warmth - self._gumbel[luck : luck + len(found)]
        best = int(ranks.argmin())
        if ranks[best] > -self._gumbel[luck + len(found)]:
            return None, 0.0
        return int(others[best]), float(change[best])

    @property
    def _width_mm(self) -> float:
        return self.cloth.width / self.cloth.per_mm

    def _may(self, piece: int, other: int) -> bool:
        """Tell whether each may lie beside what the other leaves behind."""
        return self._may_come(piece, other) and self._may_come(other, piece)

    def _may_come(self, piece: int, instead_of: int) -> bool:
        if self.kinds[piece] < 0:
            return True
        stay = self.members[self.inside[instead_of]] - {instead_of}
        return may_join(self.cloth, self.kinds[piece], (self.kinds[n] for n in stay))

    def _swap(self, piece: int, other: int) -> None:
        here, there = int(self.inside[piece]), int(self.inside[other])
        wider = self.width[other] - self.width[piece]
        self.room[here] -= wider
        self.room[there] += wider
        self._move(piece, here, there)
        if self.kinds[other] >= 0:
            self._move(other, there, here)
        self._look_at(here)
        self._look_at(there)

    def _move(self, piece: int, here: int, there: int) -> None:
        self.members[here].remove(piece)
        self.members[there].add(piece)
        self.inside[piece] = there

    def best_levels(self) -> list[Level]:
        """Give the best cut lengths there were."""
        rows: dict[int, list[int]] = {}
        for number in self.pieces:
            rows.setdefault(int(self.best[number]), []).append(self.kinds[number])
        return [self._level(kinds) for _, kinds in sorted(rows.items())]

    def _level(self, kinds: Sequence[int]) -> Level:
        lefts = np.cumsum([0, *(self.cloth.kinds[kind].width for kind in kinds)])
        strips = (Strip(k, int(left), 0) for k, left in zip(kinds, lefts, strict=False))
        return level_of(self.cloth, self.cloth.phases[0], strips)
