"""Cut lengths counted in whole repeats, wherever rooms start.

Say a room starts somewhere in the first repeat. Each of its pieces then lies there, so far
behind as it must, and a whole number of repeats on. From the start of one cut length to that
of the next it is a whole number of repeats, and the way from where the first's room starts
to where the next's does. On a round trip over all cut lengths of a roll these ways cancel:
it takes whole repeats, and the roll that many less the gap which closes the trip. How many
repeats one cut length takes is settled by conditions, "this room starts at least so far
behind that one", and nothing else of where rooms start matters.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from foldwright.core.cloth.rooms.gathering import Rooms, Together

Mark = tuple[int, int]
"""A room's number, and how far behind its start."""


@dataclass(frozen=True, order=True, slots=True)
class Condition:
    """The room `after` starts at least so far behind the room `before`; both in one repeat."""

    before: int
    after: int
    least: int


@dataclass(frozen=True, slots=True)
class Bar:
    """A piece that the next cut length must wait for, and how far off that next one is.

    It is `gap` off, and the way from this piece's room to the next cut length's.
    """

    room: int
    gap: int


@dataclass(frozen=True, slots=True)
class Turn:
    """A cut length from its first piece's mark to the mark of the next, so many repeats on."""

    together: int
    start: Mark
    end: Mark
    repeats: int
    conditions: tuple[Condition, ...]
    bars: tuple[Bar, ...]


def widest(rooms: Rooms, before: int, after: int) -> tuple[int, int]:
    """Give how far at least and at most a room starts behind another; the first is at zero."""
    most = rooms.repeat - 1
    if before == after:
        return 0, 0
    return (0 if before == 0 else -most), (0 if after == 0 else most)


def turns_of(rooms: Rooms, sets: Sequence[Together], most: int) -> list[Turn] | None:
    """Give every way to cut each set of pieces, one for every number of repeats.

    Takes: the rooms; the sets of pieces; how many ways at most.

    Gives: the ways, or None if they are too many.

    Source: derived here.
    """
    turns: list[Turn] = []
    marks = sorted(set(zip(rooms.room, rooms.behind, strict=True)))
    for number, some in enumerate(sets):
        turns += _turns_of_set(rooms, number, some, marks)
        if len(turns) > most:
            return None
    return turns


def _turns_of_set(rooms: Rooms, number: int, some: Together, marks: list[Mark]) -> Iterator[Turn]:
    lengths: dict[Mark, int] = {}
    for kind, _ in some:
        mark = rooms.room[kind], rooms.behind[kind]
        lengths[mark] = max(lengths.get(mark, 0), rooms.plain.kinds[kind].length)
    for start in lengths:
        for repeats_in, inside in _inside(rooms, start, list(lengths)):
            for end in marks:
                yield from _onward(rooms, (number, start, end), (lengths, repeats_in), inside)


def _inside(
    rooms: Rooms, start: Mark, marks: Sequence[Mark]
) -> Iterator[tuple[dict[Mark, int], list[Condition]]]:
    """Give how many repeats on the pieces of each mark lie, none before the start."""
    ways = [list(_behind(rooms, start, mark)) for mark in marks]
    for chosen in product(*ways):
        conditions = [condition for _, condition in chosen if condition is not None]
        yield {mark: on for mark, (on, _) in zip(marks, chosen, strict=True)}, conditions


def _behind(rooms: Rooms, start: Mark, mark: Mark) -> Iterator[tuple[int, Condition | None]]:
    """Give so many repeats on as may do, with what must hold, until nothing must."""
    for on in range(3):
        condition = Condition(start[0], mark[0], start[1] - mark[1] - rooms.repeat * on)
        low, high = widest(rooms, condition.before, condition.after)
        if condition.least <= low:
            yield on, None
            return
        if condition.least <= high:
            yield on, condition


def _onward(
    rooms: Rooms,
    way: tuple[int, Mark, Mark],
    pieces: tuple[dict[Mark, int], dict[Mark, int]],
    inside: list[Condition],
) -> Iterator[Turn]:
    """Give the turn for each number of repeats to the next cut length, until nothing must hold."""
    number, start, end = way
    lengths, repeats_in = pieces
    repeats = 0
    while True:
        bars = tuple(
            Bar(
                mark[0],
                end[1]
                + rooms.repeat * (repeats - repeats_in[mark])
                - (mark[1] + length + rooms.plain.spare),
            )
            for mark, length in lengths.items()
        )
        asked = [Condition(bar.room, end[0], -bar.gap) for bar in bars]
        ranges = [widest(rooms, each.before, each.after) for each in asked]
        if all(each.least <= high for each, (_, high) in zip(asked, ranges, strict=True)):
            needed = [
                each for each, (low, _) in zip(asked, ranges, strict=True) if each.least > low
            ]
            both = tuple(sorted({*inside, *needed}))
            yield Turn(number, start, end, repeats, both, bars)
            if not needed:
                return
        repeats += 1
