"""A layout in whole units written out as the plan that is cut from, piece by piece."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from foldwright.core.cloth.laying.laying_out import Layout
from foldwright.core.cloth.laying.placing import Laid
from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPiece,
    ClothPlan,
    CutLength,
    Placement,
    Remnant,
    RollUse,
)
from foldwright.core.cloth.whole import Bolt, Cloth, length_of
from foldwright.core.quantity.length import ZERO, Length


@dataclass(frozen=True, slots=True)
class Part:
    """A part of the job that is cut from bolts of its own, laid out."""

    cloth: Cloth
    layout: Layout


def written_out(order: ClothOrder, parts: Sequence[Part], bound: Length) -> ClothPlan | None:
    """Write a plan out.

    Takes: the order; its parts laid out; the least that is proven possible.

    Gives: the plan, not yet compared; None if the sides of a shade could not be kept apart.

    Source: derived here.
    """
    written = [_Written(order, part) for part in parts]
    if any(each.names is None for each in written):
        return None
    uses = tuple(use for each in written for use in each.rolls())
    bought = _bought(order, uses)
    uses = tuple(_as_bought(order, use, bought) for use in uses)
    levels = tuple(level for each in written for level in each.levels())
    plan = ClothPlan(
        levels=levels,
        placements=tuple(p for each in written for p in each.placements()),
        rolls=uses,
        remnants=(),
        bought=bought,
        bound=min(bound, bought),
        proven=bound >= bought,
        railroaded=parts[0].cloth.turned,
    )
    return _with_remnants(plan, order)


def to_buy(order: ClothOrder, used: Length) -> Length:
    """Give what must be bought for what is used, as the cloth is sold.

    Takes: an order; the length used, of all rolls together.

    Gives: the length to buy, or the length used where the cloth is in hand.

    Source: common practice (whole steps, a least order, whole rolls).
    """
    buying = order.buying
    if buying is None:
        return used
    step = buying.increment if buying.whole_roll is None else buying.whole_roll
    least = max(used, buying.least).nanometres
    return Length(-(-least // step.nanometres) * step.nanometres)


def _bought(order: ClothOrder, uses: Sequence[RollUse]) -> Length:
    used = sum((use.used for use in uses), ZERO)
    if order.buying is None or order.buying.whole_roll is None:
        return to_buy(order, used)
    return max(order.buying.whole_roll * len(uses), to_buy(order, ZERO))


def _as_bought(order: ClothOrder, use: RollUse, bought: Length) -> RollUse:
    """Give a roll to buy the length that it will have."""
    if order.buying is None:
        return use
    whole = order.buying.whole_roll
    length = bought if whole is None else whole
    return RollUse(
        name=use.name,
        lot=use.lot,
        usable_width=use.usable_width,
        length=length,
        origin_along=use.origin_along,
        used=use.used,
        bought=length,
    )


class _Written:
    """One part with a name for each of its strips."""

    def __init__(self, order: ClothOrder, part: Part) -> None:
        self.order, self.cloth = order, part.cloth
        bolts = {bolt.name: number for number, bolt in enumerate(part.cloth.bolts)}
        self.laid = sorted(part.layout.laid, key=lambda each: (bolts[each.bolt.name], each.start))
        pieces = (order.railroaded or ()) if part.cloth.turned else order.pieces
        self.pieces = {piece.name: piece for piece in pieces}
        self.names = _names(self.cloth, self.laid, self.pieces, apart=not order.sides_share)

    def _length(self, units: int) -> Length:
        return length_of(self.cloth, units)

    def placements(self) -> Iterator[Placement]:
        for each, names in zip(self.laid, self.names or (), strict=True):
            for strip, name in zip(each.level.strips, names, strict=True):
                piece = self.pieces[name]
                sizes = piece.width, piece.length
                yield Placement(
                    piece=name,
                    roll=each.bolt.name,
                    along=self._length(each.start + strip.behind),
                    across=self._length(strip.left),
                    width=sizes[self.cloth.turned],
                    length=sizes[not self.cloth.turned],
                    turned=self.cloth.turned,
                )

    def levels(self) -> Iterator[CutLength]:
        for each, names in zip(self.laid, self.names or (), strict=True):
            start = self._length(each.start)
            yield CutLength(
                roll=each.bolt.name,
                start=start,
                length=self._length(each.end) - start,
                pieces=tuple(names),
                waits_for_repeat=Length(each.repeat_loss * 1_000_000 // self.cloth.per_mm),
                waits_for_flaw=Length(each.flaw_loss * 1_000_000 // self.cloth.per_mm),
            )

    def rolls(self) -> Iterator[RollUse]:
        ends: dict[str, tuple[Bolt, int]] = {}
        for each in self.laid:
            ends[each.bolt.name] = each.bolt, each.end
        rolls = {roll.name: roll for roll in self.order.rolls}
        for name, (bolt, end) in ends.items():
            roll = rolls.get(name)
            origin = bolt.origin or 0
            if roll is None and self.cloth.repeat:
                origin %= self.cloth.repeat
            yield RollUse(
                name=name,
                lot=bolt.lot,
                usable_width=self._length(bolt.width),
                length=ZERO if roll is None else roll.length,
                origin_along=self._length(origin) if roll is None else roll.origin_along,
                used=self._length(end),
            )


def _names(
    cloth: Cloth, laid: Sequence[Laid], pieces: dict[str, ClothPiece], *, apart: bool
) -> list[list[str]] | None:
    """Give each strip the name of a piece of its kind."""
    lefts = [[n for n in kind.names if not _is_right(pieces[n], pieces)] for kind in cloth.kinds]
    waiting = [
        iter([*left, *(n for n in kind.names if n not in set(left))])
        for kind, left in zip(cloth.kinds, lefts, strict=True)
    ]
    names = [[next(waiting[strip.kind]) for strip in each.level.strips] for each in laid]
    if not apart or _kept_apart(laid, names, pieces):
        return names
    return None


def _is_right(piece: ClothPiece, pieces: dict[str, ClothPiece]) -> bool:
    """Tell the second of two sides from the first."""
    return piece.side_partner in pieces and piece.name > str(piece.side_partner)


def _kept_apart(
    laid: Sequence[Laid], names: list[list[str]], pieces: dict[str, ClothPiece]
) -> bool:
    """Exchange pieces of one kind until no cut length holds both sides of a shade."""
    for row in range(len(names)):
        for column in range(len(names[row])):
            if _clash(names[row], pieces) and not _exchange(laid, names, pieces, row, column):
                continue
        if _clash(names[row], pieces):
            return False
    return True


def _clash(row: Sequence[str], pieces: dict[str, ClothPiece]) -> bool:
    return any(pieces[name].side_partner in row for name in row)


def _exchange(
    laid: Sequence[Laid],
    names: list[list[str]],
    pieces: dict[str, ClothPiece],
    row: int,
    column: int,
) -> bool:
    """Exchange one name for another of its kind if both cut lengths are then sound."""
    kind = laid[row].level.strips[column].kind
    if pieces[names[row][column]].side_partner not in names[row]:
        return False
    for other in range(len(names)):
        for place, strip in enumerate(laid[other].level.strips):
            if other == row or strip.kind != kind:
                continue
            clashed = _clash(names[other], pieces)
            _swap(names, (row, column), (other, place))
            if not _clash(names[row], pieces) and clashed >= _clash(names[other], pieces):
                return True
            _swap(names, (row, column), (other, place))
    return False


def _swap(names: list[list[str]], one: tuple[int, int], other: tuple[int, int]) -> None:
    here, there = names[one[0]][one[1]], names[other[0]][other[1]]
    names[one[0]][one[1]], names[other[0]][other[1]] = there, here


def _with_remnants(plan: ClothPlan, order: ClothOrder) -> ClothPlan:
    remnants = tuple(_named(each, order) for each in _remnants(plan))
    return ClothPlan(
        levels=plan.levels,
        placements=plan.placements,
        rolls=plan.rolls,
        remnants=remnants,
        bought=plan.bought,
        bound=plan.bound,
        proven=plan.proven,
        railroaded=plan.railroaded,
    )


def _remnants(plan: ClothPlan) -> Iterator[Remnant]:
    """Give the end of each roll, then what is left beside and behind the pieces."""
    placed = {placement.piece: placement for placement in plan.placements}
    for use in plan.rolls:
        if use.length > use.used:
            yield Remnant(
                roll=use.name,
                along=use.used,
                across=ZERO,
                width=use.usable_width,
                length=use.length - use.used,
            )
    widths = {use.name: use.usable_width for use in plan.rolls}
    for level in plan.levels:
        last = placed[level.pieces[-1]]
        edge, end = last.across + last.width, level.start + level.length
        if edge < widths[level.roll]:
            yield Remnant(
                roll=level.roll,
                along=level.start,
                across=edge,
                width=widths[level.roll] - edge,
                length=level.length,
            )
        for name in level.pieces:
            foot = placed[name].along + placed[name].length
            if foot < end:
                yield Remnant(
                    roll=level.roll,
                    along=foot,
                    across=placed[name].across,
                    width=placed[name].width,
                    length=end - foot,
                )


def _named(remnant: Remnant, order: ClothOrder) -> Remnant:
    fits = tuple(
        use.name
        for use in order.remnant_uses
        if use.width <= remnant.width and use.length <= remnant.length
    )
    return Remnant(
        roll=remnant.roll,
        along=remnant.along,
        across=remnant.across,
        width=remnant.width,
        length=remnant.length,
        uses=fits,
    )
