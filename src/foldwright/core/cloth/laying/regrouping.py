"""Other cut lengths for the pieces of a few, where rolls have flaws, ends or unequal widths.

The model of cut lengths sees none of these; here a few cut lengths are undone, their pieces
put side by side in another way, and all laid out again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from foldwright.core.cloth.laying.first_fit import may_join
from foldwright.core.cloth.level import Level, Strip, level_of, spots
from foldwright.core.cloth.whole import Cloth

UNDONE = 4  # cut lengths at most
ALONE = 0.3  # how often a piece begins a cut length though another has room


def as_wide_as_any(cloth: Cloth) -> Cloth:
    """Give a cloth whose cut lengths may be as wide as its widest roll."""
    return replace(cloth, width=max(bolt.width for bolt in cloth.bolts))


def regrouped(cloth: Cloth, levels: Sequence[Level], chance: np.random.Generator) -> list[Level]:
    """Undo a few cut lengths and put their pieces side by side anew.

    Takes: the cloth; cut lengths; where to draw them from.

    Gives: cut lengths with the same pieces.

    Source: derived here.
    """
    count = min(len(levels), int(chance.integers(1, UNDONE + 1)))
    undone = set(chance.choice(len(levels), size=count, replace=False).tolist())
    pieces = [strip.kind for number in undone for strip in levels[number].strips]
    chance.shuffle(pieces)
    kept = [level for number, level in enumerate(levels) if number not in undone]
    fresh = _side_by_side(cloth, pieces, chance)
    order = [*kept, *fresh]
    at = int(chance.integers(len(kept) + 1))
    return order if chance.random() < 1 / 2 else [*kept[:at], *fresh, *kept[at:]]


def _side_by_side(cloth: Cloth, pieces: Sequence[int], chance: np.random.Generator) -> list[Level]:
    rows: list[list[Strip]] = []
    for number in pieces:
        for row in rows:
            if chance.random() > ALONE and (strip := _spot(cloth, number, row)) is not None:
                row.append(strip)
                break
        else:
            strip = _spot(cloth, number, [])
            if strip is not None:
                rows.append([strip])
    return [_level(cloth, row) for row in rows]


def _spot(cloth: Cloth, number: int, row: Sequence[Strip]) -> Strip | None:
    """Give the first place for a piece beside others; `behind` still holds its drop."""
    if not may_join(cloth, number, (strip.kind for strip in row)):
        return None
    taken = [(strip.left, strip.left + cloth.kinds[strip.kind].width) for strip in row]
    for left, drop in spots(cloth, cloth.kinds[number], taken):
        return Strip(number, left, drop or 0)
    return None


def _level(cloth: Cloth, row: Sequence[Strip]) -> Level:
    """Give the shortest cut length for pieces on their drops, of all that could come first."""
    return min(_levels(cloth, row), key=lambda level: level.length)


def _levels(cloth: Cloth, row: Sequence[Strip]) -> Iterator[Level]:
    phases = {strip: _phase(cloth, strip) for strip in row}
    for start in {phase for phase in phases.values() if phase is not None} or {0}:
        yield level_of(
            cloth,
            start,
            (
                Strip(s.kind, s.left, 0 if p is None else (p - start) % cloth.repeat)
                for s, p in phases.items()
            ),
        )


def _phase(cloth: Cloth, strip: Strip) -> int | None:
    kind = cloth.kinds[strip.kind]
    if kind.along is None:
        return None
    return (kind.along + strip.behind * cloth.shift) % cloth.repeat
