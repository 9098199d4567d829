"""A second look at the cuts: every piece once, of its size, and to be cut edge to edge."""

from __future__ import annotations

from collections import Counter, defaultdict
from itertools import pairwise

from foldwright.core.cloth.checking.second_look import (
    Look,
    Said,
    across,
    along,
    overlapping,
    spot_of,
)
from foldwright.core.cloth.order import ClothPiece, CutLength
from foldwright.core.quantity.length import ZERO, Length


def cuts(look: Look) -> Said:
    """Look at all that is cut, from positions alone."""
    yield from _pieces(look)
    yield from _cut_lengths(look)
    yield from _boxes(look)
    yield from _overlaps(look)
    yield from _sides(look)


def _pieces(look: Look) -> Said:
    """Look for pieces that are missing, there twice, not wanted, or turned among others."""
    found = Counter(placement.piece for placement in look.plan.placements)
    for name in look.asked:
        if name not in found:
            yield name, "it is not cut"
    for name, count in found.items():
        if name not in look.asked:
            yield name, "it is cut and nobody wants it"
        elif count > 1:
            yield name, f"it is cut {count} times"
    for placement in look.plan.placements:
        if placement.turned is not look.plan.railroaded:
            yield placement.piece, "it lies turned otherwise than the rest of the cloth"


def _cut_lengths(look: Look) -> Said:
    """Look whether cut lengths follow one another with the spare, edge to edge."""
    named = Counter(name for level in look.plan.levels for name in level.pieces)
    for name in look.placed:
        if named[name] != 1:
            yield name, f"it is called for in {named[name]} cut lengths"
    by_roll: dict[str, list[CutLength]] = defaultdict(list)
    for level in look.plan.levels:
        by_roll[level.roll].append(level)
        yield from _in_its_length(look, level)
    for roll, levels in by_roll.items():
        yield from _on_its_roll(look, roll, levels)


def _on_its_roll(look: Look, roll: str, levels: list[CutLength]) -> Said:
    first, use = _begin(look, roll), look.used.get(roll)
    if levels[0].start < first:
        yield roll, "the first cut length begins in the cloth that squaring takes off"
    elif _lost(levels[0]) > levels[0].start - first:
        yield roll, "more cloth is said to be lost than lies before the first cut length"
    for before, after in pairwise(levels):
        free = before.start + before.length + look.order.spare
        if after.start < free:
            yield roll, "a cut length begins before the one ahead of it is cut off"
        elif _lost(after) > after.start - free:
            yield roll, "more cloth is said to be lost than lies between two lengths"
    if any(min(level.waits_for_repeat, level.waits_for_flaw) < ZERO for level in levels):
        yield roll, "less than nothing is said to be lost"
    if use is not None and any(level.start + level.length > use.length for level in levels):
        yield roll, "a cut length runs over the end of the roll"


def _lost(level: CutLength) -> Length:
    return level.waits_for_repeat + level.waits_for_flaw


def _in_its_length(look: Look, level: CutLength) -> Said:
    start, end = level.start.nanometres, (level.start + level.length).nanometres
    if not level.pieces:
        yield level.roll, "a length is cut off and no piece lies in it"
    right = 0
    for name in level.pieces:
        placement = look.placed.get(name)
        if placement is None or placement.roll != level.roll:
            yield name, "it does not lie in its cut length"
            continue
        low, high = along(placement)
        if low < start or high > end:
            yield name, "a cut over the full width goes through it"
        left, edge = across(placement)
        if left < right:
            yield name, "it cannot be cut off edge to edge from the piece to its left"
        right = edge


def _begin(look: Look, roll: str) -> Length:
    """Give where the squared cloth of a roll begins."""
    for each in look.order.rolls:
        if each.name == roll:
            return each.head_loss
    return look.order.buying.start_allowance if look.order.buying else ZERO


def _boxes(look: Look) -> Said:
    """Look whether each piece has its size and lies on the cloth."""
    for placement in look.plan.placements:
        piece, use = look.asked.get(placement.piece), look.used.get(placement.roll)
        size = placement.width, placement.length
        if piece is not None and size != _size(piece, turned=placement.turned):
            yield placement.piece, "it is not cut to its size"
        if use is None:
            continue
        (left, right), (start, end) = across(placement), along(placement)
        if left < 0 or right > use.usable_width.nanometres:
            yield placement.piece, "it lies over the edge of the cloth"
        if start < 0 or end > use.length.nanometres:
            yield placement.piece, "it lies over the end of the roll"


def _size(piece: ClothPiece, *, turned: bool) -> tuple[Length, Length]:
    return (piece.length, piece.width) if turned else (piece.width, piece.length)


def _overlaps(look: Look) -> Said:
    """Look for two pieces on one spot."""
    for placements in look.on_roll.values():
        for spot, other in overlapping(spot_of(each.piece, each) for each in placements):
            yield other.name, f"it lies over {spot.name}"


def _sides(look: Look) -> Said:
    """Look for both sides of a shade in one cut length where they are kept apart."""
    for level in () if look.order.sides_share else look.plan.levels:
        for name in level.pieces:
            piece = look.asked.get(name)
            if piece is not None and piece.side_partner in level.pieces:
                yield name, "it shares a cut length with the other side of its shade"
