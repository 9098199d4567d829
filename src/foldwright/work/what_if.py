"""Ask of a cut plan what if the repeat is longer, a flaw is here, or a piece is larger."""

from __future__ import annotations

from collections import Counter
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
from foldwright.core.cloth.refusing.slips import slips_of
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import print_length
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
    asked = replace(
        order,
        pattern=_longer_repeat(order, what.repeat_longer),
        rolls=tuple(_with_flaws(roll, what.flaws) for roll in order.rolls),
    )
    for size in what.pieces:
        asked = _with_size(asked, size)
    return asked


def concerns(order: ClothOrder, what: WhatIf) -> bool:
    """Tell whether anything that is asked changes an order."""
    return as_if(order, what) != order


def check_question(cloths: tuple[ClothToCut, ...], what: WhatIf) -> None:
    """Refuse what no cloth of the job could be, before anything is planned.

    Raises: CannotUse with all that is wrong, each with what would work.
    """
    faults = (*_unknown_names(cloths, what), *_of_the_repeat(cloths, what), *_slips(cloths, what))
    if faults:
        raise CannotUse(faults)


def _unknown_names(cloths: tuple[ClothToCut, ...], what: WhatIf) -> Iterator[Fault]:
    rolls = [roll.name for cloth in cloths for roll in cloth.order.rolls]
    pieces = [piece.name for cloth in cloths for piece in cloth.order.pieces]
    yield from _unknown("roll in hand", [each.roll for each in what.flaws], rolls)
    yield from _unknown("piece", [each.piece for each in what.pieces], pieces)
    for name, times in Counter(each.piece for each in what.pieces).items():
        if times > 1:
            yield Fault(
                where="what if",
                what=f"“{short(name)}” is given {times} sizes",
                remedy="Ask for one size of a piece at a time.",
            )


def _unknown(kind: str, names: list[str], known: list[str]) -> Iterator[Fault]:
    listed = f"Known here: {', '.join(known)}." if known else f"The job has no {kind}."
    for name in names:
        if name not in known:
            yield Fault(
                where="what if",
                what=f"no {kind} is called “{short(name)}”",
                remedy=suggestion(name, known, listed),
            )


def _of_the_repeat(cloths: tuple[ClothToCut, ...], what: WhatIf) -> Iterator[Fault]:
    """Say so where no cloth has a repeat along, or nothing would be left of one."""
    if not what.repeat_longer:
        return
    printed = [cloth for cloth in cloths if cloth.order.pattern.vertical_repeat]
    if not printed:
        yield Fault(
            where="what if",
            what="no cloth of the job has a repeat along",
            remedy="Type the repeat in the cloth's sheet, or on its roll.",
        )
    for cloth in printed:
        repeat = cloth.order.pattern.vertical_repeat
        if repeat + what.repeat_longer <= ZERO:
            yield Fault(
                where="what if",
                what=f"nothing would be left of the repeat of {cloth.title}",
                remedy=f"Shorten it by less than {print_length(repeat, cloth.system)}.",
            )


def _slips(cloths: tuple[ClothToCut, ...], what: WhatIf) -> Iterator[Fault]:
    """Say which sizes and places asked for can be none, whatever the cloth."""
    sizes = replace(what, repeat_longer=ZERO)
    for cloth in cloths:
        if concerns(cloth.order, sizes):
            known = slips_of(cloth.order, cloth.system)
            asked = slips_of(as_if(cloth.order, sizes), cloth.system)
            yield from (fault for fault in asked if fault not in known)


def _longer_repeat(order: ClothOrder, longer: Length) -> Pattern:
    repeat = order.pattern.vertical_repeat
    return replace(order.pattern, vertical_repeat=repeat + longer) if repeat else order.pattern


def _with_flaws(roll: Roll, flaws: tuple[FlawHere, ...]) -> Roll:
    more = tuple(each.flaw for each in flaws if each.roll == roll.name)
    return replace(roll, flaws=(*roll.flaws, *more))


def _with_size(order: ClothOrder, size: OtherSize) -> ClothOrder:
    """Change the size of a piece; what is centred on a motif stays so, and seams go on matching.

    A side of a joined face gets or loses its width at the outer edge.
    """
    piece = next((each for each in order.pieces if each.name == size.piece), None)
    wider = ZERO if piece is None else size.width - piece.width
    before, behind = _joined_before(order, size.piece), _joined_behind(order, size.piece)
    at_the_left = wider / 2 if bool(before) is bool(behind) else wider if behind else ZERO
    moved = dict.fromkeys((*before, size.piece), -at_the_left)
    moved |= dict.fromkeys(behind, wider - at_the_left)
    turned = order.railroaded
    return replace(
        order,
        pieces=tuple(_resized(each, size, moved.get(each.name, ZERO)) for each in order.pieces),
        railroaded=None if turned is None else tuple(_resized(each, size, ZERO) for each in turned),
        seams=tuple(
            replace(seam, across=seam.across + wider) if seam.left == size.piece else seam
            for seam in order.seams
        ),
    )


def _joined_behind(order: ClothOrder, name: str) -> tuple[str, ...]:
    """Give the pieces sewn to the right of one, and to the right of those."""
    right = next((seam.right for seam in order.seams if seam.left == name), None)
    return () if right is None else (right, *_joined_behind(order, right))


def _joined_before(order: ClothOrder, name: str) -> tuple[str, ...]:
    left = next((seam.left for seam in order.seams if seam.right == name), None)
    return () if left is None else (left, *_joined_before(order, left))


def _resized(piece: ClothPiece, size: OtherSize, moved: Length) -> ClothPiece:
    across = piece.phase_across
    piece = replace(piece, phase_across=None if across is None else across + moved)
    if piece.name != size.piece:
        return piece
    return replace(piece, width=size.width, length=size.length)


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
