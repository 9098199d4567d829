"""What keeps an order of cloth from being cut: all of it at once, each with what would work."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    Flaw,
    Pattern,
    Roll,
    Seam,
)
from foldwright.core.cloth.refusing.misfits import misfits_of
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault

LONGEST = Length.metres(1000)  # no roll, piece or repeat is longer: a slip of the decimal point
ABOVE_ZERO = "Give a length above zero."
ZERO_OR_MORE = "Give zero or more."
HAIR = 20  # nanometres: a third of a repeat may not be whole


def faults_of(order: ClothOrder, system: System = System.METRIC) -> tuple[Fault, ...]:
    """Say everything that keeps an order from being cut.

    Takes: any order; the system of the reader.

    Gives: the faults, none for an order that a planner may try.

    Source: derived here.

    >>> [fault.where for fault in faults_of(ClothOrder(pieces=()))]
    ['pieces', 'rolls']
    """
    return slips_of(order, system) or misfits_of(order, system)


def slips_of(order: ClothOrder, system: System = System.METRIC) -> tuple[Fault, ...]:
    """Say what is no order at all, whatever the cloth: sizes, names and rules that cannot be.

    Takes: any order; the system of the reader.

    Gives: the faults; slips of the pen in the sizes, or else in what names what.

    Source: derived here.

    >>> [fault.where for fault in slips_of(ClothOrder(pieces=()))]
    ['pieces', 'rolls']
    """
    sizes = (*_of_the_lists(order), *_of_the_sizes(order, system), *_of_the_pattern(order.pattern))
    return sizes or (*_of_the_names(order), *_of_the_seams(order))


def _of_the_lists(order: ClothOrder) -> Iterator[Fault]:
    if not order.pieces:
        yield Fault(where="pieces", what="no piece is asked for", remedy="Add one.")
    if not order.rolls and order.buying is None:
        yield Fault(
            where="rolls",
            what="there is no cloth to cut from",
            remedy="Add a roll in hand, or say how the cloth is sold.",
        )
    if order.rolls and order.buying is not None:
        yield Fault(
            where="rolls",
            what="cloth in hand and cloth to buy stand in one order",
            remedy="Plan the rolls in hand first, and buy for the pieces that are left.",
        )


def _of_the_sizes(order: ClothOrder, system: System) -> Iterator[Fault]:
    yield from _not_below_zero("spare", order.spare)
    for label, pieces in (("pieces", order.pieces), ("railroaded", order.railroaded or ())):
        for piece in pieces:
            yield from _of_a_piece(f"{label}.{piece.name}", piece)
    for roll in order.rolls:
        yield from _of_a_roll(f"rolls.{roll.name}", roll, system)
    if order.buying is not None:
        yield from _of_the_buying(order.buying)


def _of_the_buying(buying: Buying) -> Iterator[Fault]:
    yield from _above_zero("buying.usable_width", buying.usable_width)
    yield from _above_zero("buying.increment", buying.increment)
    yield from _not_below_zero("buying.least", buying.least)
    yield from _not_below_zero("buying.start_allowance", buying.start_allowance)
    if buying.whole_roll is not None:
        yield from _above_zero("buying.whole_roll", buying.whole_roll)
        if buying.start_allowance >= buying.whole_roll > ZERO:
            yield Fault(
                where="buying.whole_roll",
                what="squaring its end and finding the repeat take the whole roll",
                remedy="Give a roll longer than the start allowance.",
            )


def _of_a_piece(where: str, piece: ClothPiece) -> Iterator[Fault]:
    yield from _above_zero(f"{where}.width", piece.width)
    yield from _above_zero(f"{where}.length", piece.length)
    yield from _not_below_zero(f"{where}.hidden_head", piece.hidden_head)
    yield from _not_below_zero(f"{where}.hidden_foot", piece.hidden_foot)
    if piece.hidden_head + piece.hidden_foot >= piece.length > ZERO:
        yield Fault(
            where=f"{where}.hidden_head",
            what="the hidden ends leave nothing of the piece to be seen",
            remedy="Give hidden ends that are shorter together than the piece.",
        )


def _of_a_roll(where: str, roll: Roll, system: System) -> Iterator[Fault]:
    yield from _above_zero(f"{where}.usable_width", roll.usable_width)
    yield from _above_zero(f"{where}.length", roll.length)
    yield from _not_below_zero(f"{where}.head_loss", roll.head_loss)
    if roll.head_loss >= roll.length > ZERO:
        yield Fault(
            where=f"{where}.head_loss",
            what="squaring the end takes the whole roll",
            remedy="Give a head loss below the roll's length, or leave the roll out.",
        )
    for number, flaw in enumerate(roll.flaws, start=1):
        yield from _of_a_flaw(f"{where}.flaws.{number}", flaw, roll, system)


def _of_a_flaw(where: str, flaw: Flaw, roll: Roll, system: System) -> Iterator[Fault]:
    yield from _above_zero(f"{where}.length", flaw.length)
    yield from _above_zero(f"{where}.width", flaw.width)
    for name, at, size, end in (
        ("along", flaw.along, flaw.length, roll.length),
        ("across", flaw.across, flaw.width, roll.usable_width),
    ):
        if at >= end > ZERO or at + size <= ZERO < size:
            yield Fault(
                where=f"{where}.{name}",
                what=f"a flaw at {print_length(at, system)} {name} lies beside the cloth",
                remedy=f"Give a place from 0 to {print_length(end, system)}: along from the outer"
                " end of the roll, across from its left edge, face up.",
            )


def _above_zero(where: str, length: Length) -> Iterator[Fault]:
    if length <= ZERO:
        yield Fault(where=where, what="it is not above zero", remedy=ABOVE_ZERO)
    elif length > LONGEST:
        yield from _absurd(where)


def _not_below_zero(where: str, length: Length) -> Iterator[Fault]:
    if length < ZERO:
        yield Fault(where=where, what="it is below zero", remedy=ZERO_OR_MORE)
    elif length > LONGEST:
        yield from _absurd(where)


def _absurd(where: str) -> Iterator[Fault]:
    yield Fault(
        where=where,
        what="it is longer than a kilometre",
        remedy="Look at the unit and the decimal point.",
    )


def _of_the_pattern(pattern: Pattern) -> Iterator[Fault]:
    yield from _not_below_zero("pattern.vertical_repeat", pattern.vertical_repeat)
    yield from _not_below_zero("pattern.horizontal_repeat", pattern.horizontal_repeat)
    if not 0 <= pattern.drop_fraction < 1:
        yield Fault(
            where="pattern.drop_fraction",
            what="a drop is a part of the repeat",
            remedy="Give 0 for a straight match, 1/2 for a half drop, or another part below 1.",
        )
    elif pattern.drop_fraction.denominator > 12:  # noqa: PLR2004 - said in the sentence
        yield Fault(
            where="pattern.drop_fraction",
            what="no print drops by so fine a part of its repeat",
            remedy=f"Give a part with 12 or less below the line, such as "
            f"{pattern.drop_fraction.limit_denominator(12)}.",
        )
    elif pattern.drop_fraction and not (pattern.vertical_repeat and pattern.horizontal_repeat):
        yield Fault(
            where="pattern.drop_fraction",
            what="a drop needs a repeat along and a repeat across",
            remedy="Give both repeats, or a drop of 0.",
        )


def _of_the_names(order: ClothOrder) -> Iterator[Fault]:
    yield from _twice("pieces", [piece.name for piece in order.pieces])
    yield from _twice("railroaded", [piece.name for piece in order.railroaded or ()])
    yield from _twice("rolls", [roll.name for roll in order.rolls])
    known = {piece.name for piece in order.pieces}
    for number, seam in enumerate(order.seams, start=1):
        for name in (seam.left, seam.right):
            if name not in known:
                yield Fault(
                    where=f"seams.{number}",
                    what=f"no piece is named “{name}”",
                    remedy="Name two pieces of the order.",
                )
    for piece in order.railroaded or ():
        if piece.phase_along is not None or piece.phase_across is not None:
            yield Fault(
                where=f"railroaded.{piece.name}",
                what="a pattern cannot be placed on a piece that is turned",
                remedy="Leave its phases out, or do not railroad this cloth.",
            )


def _of_the_seams(order: ClothOrder) -> Iterator[Fault]:
    """Say at which seams the places of the two pieces cannot let the pattern run on."""
    known, pattern = {piece.name: piece for piece in order.pieces}, order.pattern
    for number, seam in enumerate(order.seams, start=1):
        left, right = known.get(seam.left), known.get(seam.right)
        if left is None or right is None or _runs_on(left, right, seam, pattern):
            continue
        yield Fault(
            where=f"seams.{number}",
            what=f"“{left.name}” and “{right.name}” have no places where the pattern runs on",
            remedy="Give both a place across, as far apart as the seam says, and the same place"
            " along; or leave the seam out.",
        )


def _runs_on(left: ClothPiece, right: ClothPiece, seam: Seam, pattern: Pattern) -> bool:
    period, repeat = pattern.horizontal_repeat.nanometres, pattern.vertical_repeat.nanometres
    columns = Fraction(0)
    if period:
        if left.phase_across is None or right.phase_across is None:
            return False
        apart = right.phase_across - left.phase_across - seam.across
        columns = Fraction(apart.nanometres, period)
        if abs(columns - round(columns)) * period > HAIR:
            return False
    if not repeat:
        return True
    if left.phase_along is None or right.phase_along is None:
        return False
    lower = (right.phase_along - left.phase_along).nanometres
    rest = (lower - round(columns) * pattern.drop_fraction * repeat) % repeat
    return min(rest, repeat - rest) <= HAIR


def _twice(where: str, names: list[str]) -> Iterator[Fault]:
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield Fault(
            where=f"{where}.{name}",
            what="two have this name",
            remedy="Give each a name of its own.",
        )
