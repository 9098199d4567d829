"""Ask of a cut plan what if the repeat is longer, a flaw is here, or a piece is larger."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPiece,
    ClothPlan,
    Flaw,
    Pattern,
    Placement,
    Roll,
)
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.fault import Fault
from foldwright.work.cut_orders import ClothToCut
from foldwright.work.files import CannotUse
from foldwright.work.wording import short, suggestion


@dataclass(frozen=True, kw_only=True, slots=True)
class FlawHere:
    """A flaw on a roll, as the box to keep clear of."""

    roll: str
    flaw: Flaw


@dataclass(frozen=True, kw_only=True, slots=True)
class OtherSize:
    """A piece cut to another size."""

    piece: str
    width: Length
    length: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class WhatIf:
    """What is asked: any of three things, together."""

    repeat_longer: Length = ZERO
    flaws: tuple[FlawHere, ...] = ()
    pieces: tuple[OtherSize, ...] = ()

    @property
    def asks(self) -> bool:
        """Tell whether anything is asked."""
        return self != WhatIf()


@dataclass(frozen=True, kw_only=True, slots=True)
class Moved:
    """One piece that lies elsewhere, or is there in one of the two plans only."""

    piece: str
    before: Placement | None
    after: Placement | None


@dataclass(frozen=True, kw_only=True, slots=True)
class Change:
    """What another plan changes: how much longer it is, and which pieces move."""

    longer: Length
    moved: tuple[Moved, ...]
    stays: int


def as_if(order: ClothOrder, what: WhatIf) -> ClothOrder:
    """Give the order as it would be; what does not concern this cloth leaves it as it is."""
    return replace(
        order,
        pattern=_longer_repeat(order, what.repeat_longer),
        rolls=tuple(_with_flaws(roll, what.flaws) for roll in order.rolls),
        pieces=_with_sizes(order.pieces, what.pieces),
        railroaded=_with_sizes(order.railroaded, what.pieces) if order.railroaded else None,
    )


def concerns(order: ClothOrder, what: WhatIf) -> bool:
    """Tell whether anything that is asked changes an order."""
    return as_if(order, what) != order


def check_names(cloths: tuple[ClothToCut, ...], what: WhatIf) -> None:
    """Refuse names of rolls and pieces that no cloth of the job has.

    Raises: CannotUse with the nearest name.
    """
    rolls = [roll.name for cloth in cloths for roll in cloth.order.rolls]
    pieces = [piece.name for cloth in cloths for piece in cloth.order.pieces]
    faults = (
        *(_unknown("roll in hand", each.roll, rolls) for each in what.flaws),
        *(_unknown("piece", each.piece, pieces) for each in what.pieces),
    )
    if found := tuple(fault for fault in faults if fault is not None):
        raise CannotUse(found)


def _unknown(kind: str, name: str, known: list[str]) -> Fault | None:
    if name in known:
        return None
    listed = f"Known here: {', '.join(known)}." if known else f"The job has no {kind}."
    return Fault(
        where="what if",
        what=f"no {kind} is called “{short(name)}”",
        remedy=suggestion(name, known, listed),
    )


def _longer_repeat(order: ClothOrder, longer: Length) -> Pattern:
    repeat = order.pattern.vertical_repeat
    return replace(order.pattern, vertical_repeat=repeat + longer) if repeat else order.pattern


def _with_flaws(roll: Roll, flaws: tuple[FlawHere, ...]) -> Roll:
    more = tuple(each.flaw for each in flaws if each.roll == roll.name)
    return replace(roll, flaws=(*roll.flaws, *more))


def _with_sizes(
    pieces: tuple[ClothPiece, ...], sizes: tuple[OtherSize, ...]
) -> tuple[ClothPiece, ...]:
    """Change sizes; a piece that is centred on its motif stays so."""
    wanted = {size.piece: size for size in sizes}
    return tuple(_resized(piece, wanted.get(piece.name)) for piece in pieces)


def _resized(piece: ClothPiece, size: OtherSize | None) -> ClothPiece:
    if size is None:
        return piece
    across, wider = piece.phase_across, size.width - piece.width
    return replace(
        piece,
        width=size.width,
        length=size.length,
        phase_across=None if across is None else across - wider / 2,
    )


def change_between(before: ClothPlan, after: ClothPlan) -> Change:
    """Say what moves from one plan to another.

    Takes: two plans of one cloth.

    Gives: how much longer the second is, and each piece that lies elsewhere or has another
    size, in the order of its cuts.
    """
    moved = tuple(_moved(before, after))
    old = {each.piece for each in moved if each.before is not None}
    return Change(
        longer=after.bought - before.bought,
        moved=moved,
        stays=len(before.placements) - len(old),
    )


def _moved(before: ClothPlan, after: ClothPlan) -> Iterator[Moved]:
    old = {place.piece: place for place in before.placements}
    new = {place.piece: place for place in after.placements}
    for piece, place in new.items():
        if old.get(piece) != place:
            yield Moved(piece=piece, before=old.get(piece), after=place)
    for piece, place in old.items():
        if piece not in new:
            yield Moved(piece=piece, before=place, after=None)
