"""Which pieces are cut from which rolls: no room of two dye lots, no piece wider than its roll."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import chain, islice, product

from foldwright.core.cloth.order import ClothOrder, ClothPiece
from foldwright.core.cloth.whole import Bolt, Cloth, Kind, bolt_to_buy, bolts_of, in_whole_units

MOST_WAYS = 256
FILLED_TO = (100, 90, 80, 70, 60, 50, 40, 30)  # percent of a lot's cloth, by area
Starts = Mapping[str, int]
Division = tuple[Cloth, ...]  # parts of a job that have nothing to do with each other


def whole_cloth(order: ClothOrder, starts: Starts, *, turned: bool) -> Cloth:
    """Give all pieces on all rolls as if they were one lot and the widest width.

    Takes: an order without faults; where each free room starts; whether the cloth is turned.

    Gives: the cloth for bounds: whatever can be cut at all can be cut from it.

    Source: derived here.
    """
    bolts = bolts_of(order)
    widest = max(bolt.width for bolt in bolts)
    return in_whole_units(order, [replace(b, width=widest) for b in bolts], starts, turned=turned)


def divisions(order: ClothOrder, starts: Starts, *, turned: bool) -> Iterator[Division]:
    """Give ways to divide the pieces among lots and the rolls among widths.

    Takes: an order without faults; where each free room starts; whether the cloth is turned.

    Gives: ways to try, one only for cloth to buy and for rolls of one lot and one width; none
    in which a piece has no place across.

    Source: derived here.
    """
    if order.buying is not None:
        yield (in_whole_units(order, _to_buy(order, turned=turned), starts, turned=turned),)
        return
    for lots in islice(_by_lot(order, turned=turned), MOST_WAYS):
        for bolts in product(*(_by_width(order, lot) for lot in lots)):
            division = tuple(
                in_whole_units(order, part, starts, turned=turned, groups=groups)
                for part, groups in zip(bolts, lots.values(), strict=True)
            )
            if all(_has_place(cloth, kind) for cloth in division for kind in cloth.kinds):
                yield division


def _has_place(cloth: Cloth, kind: Kind) -> bool:
    """Tell whether a piece can stand somewhere across, with its motif where it must be."""
    if kind.across is None:
        return kind.width <= cloth.width
    return any(True for _ in cloth.places(kind))


def _to_buy(order: ClothOrder, *, turned: bool) -> list[Bolt]:
    """Give one endless bolt, or as many whole rolls as there are pieces."""
    pieces = (order.railroaded or ()) if turned else order.pieces
    endless = order.buying is None or order.buying.whole_roll is None
    return [bolt_to_buy(order, n) for n in range(1, 2 if endless else len(pieces) + 1)]


def _by_width(order: ClothOrder, lot: str) -> Iterator[list[Bolt]]:
    """Give the rolls of a lot from each width on, cut as if all had that width."""
    bolts = [bolt for bolt in bolts_of(order) if bolt.lot == lot]
    for width in sorted({bolt.width for bolt in bolts}):
        yield [bolt for bolt in bolts if bolt.width >= width]


def _by_lot(order: ClothOrder, *, turned: bool) -> Iterator[dict[str, set[str]]]:
    """Give lots with the groups of pieces that come from each: one lot for all first."""
    pieces = (order.railroaded or ()) if turned else order.pieces
    areas = _areas(pieces)
    lots = list(dict.fromkeys(roll.lot for roll in order.rolls))
    for lot in lots:
        yield {lot: set(areas)}
    if len(lots) > 1 and len(areas) > 1:
        ways = chain(_dealt(order, areas), product(lots, repeat=len(areas)))
        for choice in _once(ways):
            if len(set(choice)) > 1:
                yield _divided(choice, areas)


def _dealt(order: ClothOrder, areas: Mapping[str, int]) -> Iterator[tuple[str, ...]]:
    """Deal the groups out, the largest first, to lots filled up to an ever smaller share.

    Where rooms are many, the ways that are tried one after another differ in the smallest
    rooms alone, and none of them may fit.
    """
    held: dict[str, int] = defaultdict(int)
    for roll in order.rolls:
        clear = roll.length - roll.head_loss
        held[roll.lot] += roll.usable_width.nanometres * clear.nanometres
    by_size = sorted(held, key=lambda lot: (-held[lot], lot))
    for percent in FILLED_TO:
        for lots in (by_size, by_size[::-1]):
            yield _filled({lot: held[lot] * percent // 100 for lot in lots}, areas)


def _filled(room: dict[str, int], areas: Mapping[str, int]) -> tuple[str, ...]:
    """Put each group into the first lot with room for it, else into the one with most room."""
    choice = []
    for area in areas.values():
        lot = next((lot for lot in room if room[lot] >= area), max(room, key=lambda lot: room[lot]))
        room[lot] -= area
        choice.append(lot)
    return tuple(choice)


def _once(ways: Iterable[tuple[str, ...]]) -> Iterator[tuple[str, ...]]:
    seen: set[tuple[str, ...]] = set()
    for way in ways:
        if way not in seen:
            seen.add(way)
            yield way


def _divided(choice: tuple[str, ...], areas: Mapping[str, int]) -> dict[str, set[str]]:
    found: dict[str, set[str]] = defaultdict(set)
    for lot, group in zip(choice, areas, strict=True):
        found[lot].add(group)
    return dict(found)


def _areas(pieces: tuple[ClothPiece, ...]) -> dict[str, int]:
    """Give the area of each lot group, the largest first."""
    areas: dict[str, int] = defaultdict(int)
    for piece in pieces:
        areas[piece.one_lot] += piece.width.nanometres * piece.length.nanometres
    return dict(sorted(areas.items(), key=lambda each: (-each[1], each[0])))
