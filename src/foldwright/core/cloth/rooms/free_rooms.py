"""Where in the repeat each free room starts, so that rooms follow one another without a gap.

The pieces of a free room agree among themselves; whether the room starts at the motif or
between two matters to nobody. In a best plan some room begins just where a piece of another
ends, or as another does, or it could be moved up; so only such starts are tried.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace

from foldwright.core.cloth.laying.first_fit import first_fit
from foldwright.core.cloth.laying.laying_out import lay_out
from foldwright.core.cloth.order import ClothOrder, ClothPiece
from foldwright.core.cloth.whole import Bolt, Cloth, bolts_of, in_whole_units, units_in_a_nanometre

Starts = Mapping[str, int]
Cost = Callable[[Starts], int]


def rooms_to_settle(order: ClothOrder) -> tuple[str, ...]:
    """Give the free rooms whose start matters: those with pieces that follow the repeat.

    Takes: an order without faults.

    Gives: their names in order; none for a cloth without a repeat along.

    Source: derived here.
    """
    if not order.pattern.vertical_repeat:
        return ()
    ruled = {piece.room for piece in order.pieces if piece.phase_along is not None}
    return tuple(sorted(ruled & order.free_rooms))


def starts_to_try(order: ClothOrder) -> Iterator[Starts]:
    """Give starts to begin with: all alike, and each room where the one before it ends.

    Takes: an order without faults.

    Gives: where each free room starts in the repeat, in whole units.

    Source: derived here.
    """
    rooms = rooms_to_settle(order)
    yield dict.fromkeys(rooms, 0)
    if len(rooms) > 1:
        yield _one_after_another(order, rooms)


def _one_after_another(order: ClothOrder, rooms: tuple[str, ...]) -> Starts:
    starts: dict[str, int] = {}
    end = 0
    for room in rooms:
        cloth = room_alone(order, room)
        layout = lay_out(cloth, first_fit(cloth), 1)
        if layout is None or not cloth.repeat:
            starts[room] = 0
            continue
        first = layout.laid[0].level.start or 0
        last = layout.laid[-1]
        starts[room] = (end - first) % cloth.repeat
        end = starts[room] + (last.level.start or 0) + last.level.length + cloth.spare
    return starts


def room_alone(order: ClothOrder, room: str) -> Cloth:
    """Give the pieces of one room on a roll that begins wherever it suits.

    Takes: an order without faults; the name of a free room.

    Gives: the cloth, as wide as the widest roll.

    Source: derived here.
    """
    pieces = tuple(piece for piece in order.pieces if piece.room == room)
    return in_whole_units(replace(order, pieces=pieces), [_anywhere(order)], {})


def _anywhere(order: ClothOrder) -> Bolt:
    bolts = bolts_of(order)
    return Bolt(
        name="",
        lot="",
        width=max(bolt.width for bolt in bolts),
        begin=min(bolt.begin for bolt in bolts),
        end=None,
        origin=None,
    )


def settle(
    order: ClothOrder, starts: Starts, cost: Cost, go_on: Callable[[], bool]
) -> Iterator[Starts]:
    """Move one room after another to where the job takes least.

    Takes: the order; starts to begin with; what a job takes with given starts; whether to go on.

    Gives: better and better starts, until no room can be moved to advantage.

    Source: derived here.
    """
    best, least = dict(starts), cost(starts)
    moved = True
    while moved:
        moved = False
        for room in starts:
            for place in _places(order, best, room):
                if not go_on():
                    return
                tried = {**best, room: place}
                if (found := cost(tried)) < least:
                    best, least, moved = tried, found, True
                    yield best


def _places(order: ClothOrder, starts: Starts, room: str) -> list[int]:
    """Give the starts at which a room begins with another, or meets it end to end."""
    units, repeat = units_in_a_nanometre(order), order.pattern.vertical_repeat.nanometres
    own = {_ends(order, piece) for piece in order.pieces if piece.room == room}
    places = set()
    for piece in order.pieces:
        if piece.room == room or piece.phase_along is None:
            continue
        start, end = _ends(order, piece)
        there = starts.get(piece.room, 0)
        for first, last in own:
            places |= {there + end - first, there + start - first, there + start - last}
    return sorted({place % (repeat * units) for place in places})


def _ends(order: ClothOrder, piece: ClothPiece) -> tuple[int, int]:
    """Give where in the repeat a piece starts, and where the next could."""
    units = units_in_a_nanometre(order)
    start = 0 if piece.phase_along is None else piece.phase_along.nanometres * units
    return start, start + (piece.length + order.spare).nanometres * units
