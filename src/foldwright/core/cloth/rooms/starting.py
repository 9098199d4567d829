"""Where free rooms start, so that given cut lengths follow one another with least lost.

A cut length is an arc on the circle of the repeat, from where it starts to where the next
could. A round trip over all of them loses at least the gaps between ends and starts, which
follow from how many more have ended than started at each place; one trip less its longest
gap is a roll. That is quick to tell for many places of a room at once.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from foldwright.core.cloth.level import Level, Strip, level_of
from foldwright.core.cloth.order import ClothOrder
from foldwright.core.cloth.rooms.free_rooms import Starts, rooms_to_settle
from foldwright.core.cloth.rooms.without_repeat import Beside
from foldwright.core.cloth.whole import Cloth

Whole = NDArray[np.int64]
Mask = NDArray[np.bool_]
NEVER = np.int64(2**60)
MOST_PLACES = 400
"""Places tried for one room at a time; of more, so many drawn."""
LOOSENED = 2
"""Rooms that are put elsewhere, when no single one can be moved to advantage."""
VAIN = 60
"""How often rooms are loosened without gain, until the search is done."""
TAKES_MORE = 0.05
"""How much of a repeat more, about, is taken on to get away from where nothing helps."""


class CutTogether:
    """Given cut lengths of a cloth whose free rooms may start anywhere."""

    def __init__(self, order: ClothOrder, cloth: Cloth, beside: Sequence[Beside]) -> None:
        """Take the cloth with all rooms at the origin, and what is cut together."""
        self.cloth, self.rooms = cloth, rooms_to_settle(order)
        rooms = {piece.name: piece.room for piece in order.pieces}
        kinds = {name: number for number, kind in enumerate(cloth.kinds) for name in kind.names}
        ruled = [some for some in beside if _ruled(cloth, kinds, some)]
        shape = len(ruled), max((len(some) for some in ruled), default=0)
        self.room = np.zeros(shape, dtype=np.int64)
        self.behind = np.zeros(shape, dtype=np.int64)
        self.lengths = np.zeros(shape, dtype=np.int64)
        self.follows = np.zeros(shape, dtype=np.bool_)
        numbers = {room: number for number, room in enumerate(self.rooms)}
        for row, some in enumerate(ruled):
            for column, (name, left) in enumerate(some):
                kind = cloth.kinds[kinds[name]]
                self.lengths[row, column] = kind.length
                if kind.along is not None:
                    self.follows[row, column] = True
                    self.room[row, column] = numbers.get(rooms[name], len(numbers))
                    self.behind[row, column] = _phase(cloth, kinds[name], left)
        self.of_room = [
            np.nonzero((self.follows & (self.room == number)).any(axis=1))[0]
            for number in range(len(self.rooms))
        ]

    def arcs(self, starts: Whole, rows: Whole) -> tuple[Whole, Whole]:
        """Give where cut lengths start and how long they are, each begun by its best piece.

        `starts` has a row for each try, and a column for each room and one for the others.
        """
        repeat, follows = self.cloth.repeat, self.follows[rows]
        phases = (starts[:, self.room[rows]] + self.behind[rows]) % repeat
        behind = (phases[:, :, None, :] - phases[:, :, :, None]) % repeat
        behind = np.where(follows[:, None, :], behind, 0)
        reach = (behind + self.lengths[rows][:, None, :]).max(axis=3)
        reach = np.where(follows, reach, NEVER)
        first = reach.argmin(axis=2)[:, :, None]
        begin = np.take_along_axis(phases, first, axis=2)[:, :, 0]
        return begin, np.take_along_axis(reach, first, axis=2)[:, :, 0]

    def taken(self, begin: Whole, length: Whole) -> Whole:
        """Give what each try takes: the cut lengths, and what is lost between them."""
        lost = _lost(begin, begin + length + self.cloth.spare, self.cloth.repeat)
        total: Whole = length.sum(axis=1) + lost
        return total

    def places(self, starts: Whole, number: int) -> Whole:
        """Give where a room meets another end to end, or starts or ends as it does."""
        own = self._edges(starts, self.follows & (self.room == number))
        others = self._edges(starts, self.follows & (self.room != number))
        shifts = (others[:, None] - own[None, :]).ravel()
        return np.unique((starts[number] + shifts) % self.cloth.repeat)

    def _edges(self, starts: Whole, some: Mask) -> Whole:
        heads = starts[self.room[some]] + self.behind[some]
        ends = heads + self.lengths[some] + self.cloth.spare
        return np.unique(np.concatenate([heads, ends]) % self.cloth.repeat)


def _ruled(cloth: Cloth, kinds: dict[str, int], some: Beside) -> bool:
    return any(cloth.kinds[kinds[name]].along is not None for name, _ in some)


def _phase(cloth: Cloth, number: int, left: int) -> int:
    """Give where in the repeat a piece must start that lies so far from the left."""
    kind = cloth.kinds[number]
    drop = 0 if kind.across is None or not cloth.period else (left - kind.across) // cloth.period
    return ((kind.along or 0) + drop % cloth.drops * cloth.shift) % cloth.repeat


def _lost(begin: Whole, end: Whole, repeat: int) -> Whole:
    """Give, for each row of arcs, the gaps of the best round trip less the longest one."""
    places = np.concatenate([begin % repeat, end % repeat], axis=1)
    moves = np.concatenate([-np.ones_like(begin), np.ones_like(end)], axis=1)
    order = np.argsort(places, axis=1, kind="stable")
    places = np.take_along_axis(places, order, axis=1)
    flow = np.cumsum(np.take_along_axis(moves, order, axis=1), axis=1)
    after = np.concatenate([places[:, 1:], places[:, :1] + repeat], axis=1)
    wide = after > places
    flow -= np.where(wide, flow, NEVER).min(axis=1)[:, None]
    gaps = (flow * (after - places)).sum(axis=1)
    empty = np.where(wide & (flow == 0), after, -NEVER)
    twice = np.concatenate([empty, np.where(empty >= 0, empty + repeat, -NEVER)], axis=1)
    ends = np.concatenate([after, after + repeat], axis=1)
    longest = (ends - np.maximum.accumulate(twice, axis=1))[:, places.shape[1] :].max(axis=1)
    lost: Whole = gaps - np.minimum(longest, repeat)
    return lost


def better_starts(
    together: CutTogether,
    starts: Starts,
    chance: np.random.Generator,
    go_on: Callable[[], bool],
) -> Iterator[tuple[Starts, int]]:
    """Look for starts of the free rooms with which given cut lengths take less.

    Takes: the cut lengths; starts to begin with; where to draw from; whether to go on.

    Gives: better and better starts with what they take, in units.

    Source: derived here.
    """
    search = _Search(together, starts, chance, go_on)
    least, vain = int(NEVER), 0
    while vain < VAIN and go_on():
        search.descend()
        vain += 1
        if search.taken < least:
            least, vain = search.taken, 0
            yield search.starts(), least
        search.loosen()


class _Search:
    """Rooms moved one after another, and some loosened when nothing helps."""

    def __init__(
        self,
        together: CutTogether,
        starts: Starts,
        chance: np.random.Generator,
        go_on: Callable[[], bool],
    ) -> None:
        self.together, self.chance, self.go_on = together, chance, go_on
        self.now = np.array([*(starts.get(room, 0) for room in together.rooms), 0], dtype=np.int64)
        self._measure()
        self.kept, self.kept_taken = self.now, self.taken

    def _measure(self) -> None:
        rows = np.arange(len(self.together.lengths))
        self.begin, self.length = self.together.arcs(self.now[None], rows)
        self.taken = int(self.together.taken(self.begin, self.length)[0])

    def starts(self) -> Starts:
        """Give the starts by room."""
        return dict(zip(self.together.rooms, self.now[:-1].tolist(), strict=True))

    def descend(self) -> None:
        """Move rooms to where least is taken, until none can be moved to advantage."""
        vain = 0
        while vain < len(self.together.rooms):
            for number in self.chance.permutation(len(self.together.rooms)):
                if not self.go_on():
                    return
                vain = 0 if self._move(int(number)) else vain + 1

    def _move(self, number: int) -> bool:
        """Move one room to its best place; tell whether that helped."""
        places = self.together.places(self.now, number)
        if len(places) > MOST_PLACES:
            places = self.chance.choice(places, MOST_PLACES, replace=False)
        if not len(places):
            return False
        tried = np.repeat(self.now[None], len(places), axis=0)
        tried[:, number] = places
        rows = self.together.of_room[number]
        begin = np.repeat(self.begin, len(places), axis=0)
        length = np.repeat(self.length, len(places), axis=0)
        begin[:, rows], length[:, rows] = self.together.arcs(tried, rows)
        taken = self.together.taken(begin, length)
        best = int(taken.argmin())
        if taken[best] >= self.taken:
            return False
        self.now, self.taken = tried[best], int(taken[best])
        self.begin, self.length = begin[[best]], length[[best]]
        return True

    def loosen(self) -> None:
        """Keep where the rooms are now unless it takes too much more; put a few elsewhere."""
        more = TAKES_MORE * self.together.cloth.repeat * self.chance.exponential()
        if self.taken <= self.kept_taken + more:
            self.kept, self.kept_taken = self.now, self.taken
        self.now = self.kept.copy()
        count = len(self.together.rooms)
        for number in self.chance.choice(count, size=min(LOOSENED, count), replace=False):
            places = self.together.places(self.now, int(number))
            if len(places):
                self.now[number] = self.chance.choice(places)
        self._measure()


def cut_lengths(cloth: Cloth, beside: Sequence[Beside]) -> list[Level]:
    """Give the shortest cut lengths for pieces that lie side by side, whose rooms start somewhere.

    Takes: the cloth, with where its rooms start; the pieces of each cut length.

    Gives: a cut length for each.

    Source: derived here.
    """
    kinds = {name: number for number, kind in enumerate(cloth.kinds) for name in kind.names}
    return [_shortest(cloth, [(kinds[name], left) for name, left in some]) for some in beside]


def _shortest(cloth: Cloth, some: Sequence[tuple[int, int]]) -> Level:
    phases = {
        (number, left): _phase(cloth, number, left)
        for number, left in some
        if cloth.kinds[number].along is not None
    }
    tried = []
    for start in sorted(set(phases.values())) or [0]:
        behind = {key: (phase - start) % cloth.repeat for key, phase in phases.items()}
        strips = [Strip(*key, behind.get(key, 0)) for key in some]
        tried.append(level_of(cloth, start, strips))
    return min(tried, key=lambda level: level.length)
