"""A second look at the pattern: each piece where its motif must stand, each seam running on."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.cloth.checking.second_look import Look, Said, nearly, off
from foldwright.core.cloth.order import ClothPiece, Placement, RollUse


def pattern(look: Look) -> Said:
    """Look at the pattern on every piece and over every seam, from positions alone."""
    yield from _phases(look)
    yield from _seams(look)


def _phases(look: Look) -> Said:
    """Look whether each piece lies where the pattern must be."""
    rooms: dict[str, set[int]] = {}
    for name, placement in look.placed.items():
        piece, use = look.asked.get(name), look.used.get(placement.roll)
        if piece is None or use is None:
            continue
        if _off_across(look, piece, placement):
            yield name, "its pattern stands wrong across"
            continue
        rest = _rest_along(look, piece, placement, use)
        if rest is None:
            continue
        if piece.room not in look.order.free_rooms:
            if 0 not in rest:
                yield name, "its pattern stands wrong along"
        elif not (agreed := _agreed(look, rooms.setdefault(piece.room, rest), rest)):
            yield name, "its pattern stands otherwise than in the rest of its room"
        else:
            rooms[piece.room] = agreed


def _agreed(look: Look, room: set[int], rest: set[int]) -> set[int]:
    """Give the starts in the repeat that a room and one more piece agree on."""
    lattice = look.order.pattern
    repeat = lattice.vertical_repeat.nanometres * lattice.drop_fraction.denominator
    return {here for here in room if any(not off(here - there, repeat) for there in rest)}


def _off_across(look: Look, piece: ClothPiece, placement: Placement) -> bool:
    lattice = look.order.pattern
    if piece.phase_across is None or placement.turned:
        return False
    asked = (piece.phase_across + lattice.origin_across).nanometres
    return off(placement.across.nanometres - asked, lattice.horizontal_repeat.nanometres)


def _rest_along(
    look: Look, piece: ClothPiece, placement: Placement, use: RollUse
) -> set[int] | None:
    """Give how far it stands behind its phase, in parts of a nanometre; None without rule.

    A piece without a rule across may stand on any column, and has a rest for each.
    """
    lattice = look.order.pattern
    repeat, period = lattice.vertical_repeat.nanometres, lattice.horizontal_repeat.nanometres
    if piece.phase_along is None or not repeat or placement.turned:
        return None
    parts = lattice.drop_fraction.denominator
    columns = range(parts) if period else range(1)
    if piece.phase_across is not None and period:
        aside = placement.across - lattice.origin_across - piece.phase_across
        column = round(Fraction(aside.nanometres, period))
        columns = range(column, column + 1)
    lies = (placement.along - use.origin_along - piece.phase_along).nanometres * parts
    down = repeat * lattice.drop_fraction.numerator
    return {nearly((lies - each * down) % (repeat * parts), repeat * parts) for each in columns}


def _seams(look: Look) -> Said:
    """Look at each seam from positions alone: what meets there must be the same print."""
    lattice = look.order.pattern
    for seam in () if look.plan.railroaded else look.order.seams:
        left, right = look.placed.get(seam.left), look.placed.get(seam.right)
        if left is None or right is None or not {left.roll, right.roll} <= look.used.keys():
            continue
        aside = (right.across - left.across - seam.across).nanometres
        name = f"{seam.left} and {seam.right}"
        if off(aside, lattice.horizontal_repeat.nanometres):
            yield name, "the pattern breaks at the seam, across"
        elif lattice.vertical_repeat and _breaks_along(look, left, right, aside):
            yield name, "the pattern breaks at the seam, along"


def _breaks_along(look: Look, left: Placement, right: Placement, aside: int) -> bool:
    lattice = look.order.pattern
    period, repeat = lattice.horizontal_repeat.nanometres, lattice.vertical_repeat.nanometres
    parts = lattice.drop_fraction.denominator
    origins = look.used[right.roll].origin_along - look.used[left.roll].origin_along
    ahead = (right.along - left.along - origins).nanometres
    columns = round(Fraction(aside, period)) if period else 0
    down = columns * repeat * lattice.drop_fraction.numerator
    return off(ahead * parts - down, repeat * parts)
