"""Seeded cutting jobs of eight families: sizes as a workroom sees them, drawn without a source."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

import numpy as np

from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    Flaw,
    Pattern,
    Roll,
    Seam,
)
from foldwright.core.quantity.length import ZERO, Length

MOST_TYPES = 240  # of windows in one job
SEAM = Length.mm(15)
NARROWEST_SIDE = 150  # mm; the centre shrinks where sides would be narrower


@dataclass(frozen=True, slots=True)
class Window:
    """A shade to cut: its room, cut width and cut length in whole millimetres."""

    room: int
    width: int
    length: int


def windows(chance: np.random.Generator, shades: int) -> list[Window]:
    """Draw windows room by room: up to three widths, and in half of the rooms one drop."""
    found: list[Window] = []
    types: list[Window] = []
    while len(found) < shades:
        room = len(types)
        drop = int(chance.integers(1150, 2500))
        widths = chance.integers(480, 2100, size=int(chance.integers(1, 4)))
        one_drop = chance.random() < 0.5
        for _ in range(int(chance.integers(1, 5))):
            if len(types) < MOST_TYPES:
                length = drop if one_drop else drop + int(chance.integers(-150, 150))
                types.append(Window(room, int(chance.choice(widths)), length))
                found.append(types[-1])
            else:
                found.append(types[int(chance.integers(len(types)))])
    return found[:shades]


def pieces(
    window: Window,
    name: str,
    cloth: int,
    across: Callable[[int, int], Length | None],
    along: Length,
) -> tuple[list[ClothPiece], list[Seam]]:
    """Cut one shade: whole if it fits, else a full width and two equal sides.

    `across` gives the phase of a part from its left edge and the shade's width, if any.
    """

    def piece(part: str, left: int, width: int) -> ClothPiece:
        return ClothPiece(
            name=f"{name}{part}",
            shade=name,
            room=str(window.room),
            layer="face",
            width=Length.mm(width),
            length=Length.mm(window.length),
            phase_across=across(left, window.width),
            phase_along=along,
        )

    if window.width <= cloth:
        return [piece("", 0, window.width)], []
    seam = int(SEAM.in_millimetres)
    side = max(-(-(window.width - cloth + 2 * seam) // 2) + seam, NARROWEST_SIDE)
    centre = window.width - 2 * side + 4 * seam
    lefts = (0, side - 2 * seam, window.width - side)
    left, middle, right = (
        piece(part, at, width)
        for part, at, width in zip("LCR", lefts, (side, centre, side), strict=True)
    )
    seams = [
        Seam(left=left.name, right=middle.name, across=Length.mm(lefts[1])),
        Seam(left=middle.name, right=right.name, across=Length.mm(lefts[2] - lefts[1])),
    ]
    left, right = replace(left, side_partner=right.name), replace(right, side_partner=left.name)
    return [left, middle, right], seams


def order(family: str, shades: int, seed: int) -> ClothOrder:
    """Draw one job."""
    chance = np.random.default_rng([FAMILIES.index(family), shades, seed])
    cloth = int(chance.choice([1370, 1380, 1400]))
    pattern = _pattern(chance, family)
    across_mm = int(pattern.horizontal_repeat.in_millimetres)
    widest, motif = _widest_centred(cloth, across_mm), pattern.horizontal_repeat / 2
    most = widest + 2 * (cloth - across_mm) - 6 * int(SEAM.in_millimetres)

    def across(left: int, width: int) -> Length | None:
        if not pattern.horizontal_repeat:
            return None
        return motif + Length.mm(left) - Length.mm(Fraction(width, 2))

    cut: list[ClothPiece] = []
    seams: list[Seam] = []
    drawn = [replace(w, width=min(w.width, most)) for w in windows(chance, shades)]
    from_sill = {window.room for window in drawn if chance.random() < 0.5}
    for number, window in enumerate(drawn, start=1):
        along = ZERO
        if family == "mixed head and sill" and window.room in from_sill:
            along = -Length.mm(window.length)
        some, joined = pieces(window, f"{number}", widest, across, along)
        cut += some
        seams += joined
    job = ClothOrder(
        pieces=tuple(cut),
        pattern=pattern,
        spare=Length.mm(20),
        seams=tuple(seams),
        buying=Buying(
            usable_width=Length.mm(cloth),
            increment=Length.mm(100),
            start_allowance=Length.mm(50) + pattern.vertical_repeat,
        ),
    )
    return _of_family(job, family, drawn, chance, cloth)


def _widest_centred(cloth: int, across: int) -> int:
    """Give the widest part with a motif in its middle, if motifs stand half a repeat in."""
    if not across:
        return cloth
    middles = range(across // 2, cloth, across)
    return 2 * max(min(middle, cloth - middle) for middle in middles) - 2


def _pattern(chance: np.random.Generator, family: str) -> Pattern:
    along = Length.mm(int(chance.integers(240, 760)))
    across = Length.mm(int(chance.choice([170, 230, 342, 456, 685])))
    return {
        "vertical repeat": Pattern(vertical_repeat=along),
        "straight, centred": Pattern(vertical_repeat=along, horizontal_repeat=across),
        "half drop, centred": Pattern(
            vertical_repeat=along, horizontal_repeat=across, drop_fraction=Fraction(1, 2)
        ),
        "mixed head and sill": Pattern(vertical_repeat=along),
        "free rooms": Pattern(vertical_repeat=along),
    }.get(family, Pattern())


def _of_family(
    job: ClothOrder, family: str, drawn: list[Window], chance: np.random.Generator, cloth: int
) -> ClothOrder:
    if family == "plain, may be railroaded" and all(w.length <= cloth for w in drawn):
        return replace(job, railroaded=tuple(_turned(drawn)))
    if family == "plain, may be railroaded":
        short = [replace(w, length=min(w.length, cloth)) for w in drawn]
        again = [pieces(w, f"{n}", cloth, lambda *_: None, ZERO) for n, w in enumerate(short, 1)]
        upright = tuple(piece for some, _ in again for piece in some)
        seams = tuple(seam for _, some in again for seam in some)
        return replace(job, pieces=upright, seams=seams, railroaded=tuple(_turned(short)))
    if family == "free rooms":
        return replace(job, free_rooms=frozenset(piece.room for piece in job.pieces))
    if family == "stock with flaws":
        return replace(job, buying=None, rolls=tuple(_rolls(job, chance, cloth)))
    return job


def _turned(drawn: list[Window]) -> Iterator[ClothPiece]:
    for number, window in enumerate(drawn, start=1):
        yield ClothPiece(
            name=f"{number}",
            shade=f"{number}",
            room=str(window.room),
            layer="face",
            width=Length.mm(window.width),
            length=Length.mm(window.length),
        )


def _rolls(job: ClothOrder, chance: np.random.Generator, cloth: int) -> Iterator[Roll]:
    """Draw rolls of about 30 m with a flaw every six metres, half as much again as is needed."""
    area = sum(p.width.in_millimetres * p.length.in_millimetres for p in job.pieces)
    held, number = 0.0, 0
    while held < 1.5 * area / cloth + 6000:
        number += 1
        length = int(chance.integers(12_000, 45_000))
        held += length
        flaws = tuple(
            Flaw(
                along=Length.mm(int(chance.integers(0, length - 100))),
                across=Length.mm(int(chance.integers(0, cloth - 60))),
                length=Length.mm(int(chance.integers(10, 100))),
                width=Length.mm(int(chance.integers(10, 60))),
            )
            for _ in range(int(chance.poisson(length / 6000)))
        )
        yield Roll(
            name=f"roll {number}",
            lot="A",
            usable_width=Length.mm(cloth),
            length=Length.mm(length),
            head_loss=Length.mm(30),
            flaws=flaws,
        )


FAMILIES = (
    "plain",
    "plain, may be railroaded",
    "vertical repeat",
    "straight, centred",
    "half drop, centred",
    "mixed head and sill",
    "free rooms",
    "stock with flaws",
)
ONE_PHASE = (FAMILIES[0], FAMILIES[1], FAMILIES[2], FAMILIES[3], FAMILIES[7])
