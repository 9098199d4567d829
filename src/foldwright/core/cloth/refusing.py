"""What keeps an order of cloth from being cut: all of it at once, each with what would work."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from foldwright.core.cloth.order import ClothOrder, ClothPiece, Flaw, Pattern, Roll
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault

LONGEST = Length.metres(1000)  # no roll, piece or repeat is longer: a slip of the decimal point
ABOVE_ZERO = "Give a length above zero."
ZERO_OR_MORE = "Give zero or more."


def faults_of(order: ClothOrder, system: System = System.METRIC) -> tuple[Fault, ...]:
    """Say everything that keeps an order from being cut.

    Takes: any order; the system of the reader.

    Gives: the faults, none for an order that a planner may try.

    Source: derived here.

    >>> [fault.where for fault in faults_of(ClothOrder(pieces=()))]
    ['pieces', 'rolls']
    """
    sizes = (*_of_the_lists(order), *_of_the_sizes(order), *_of_the_pattern(order.pattern))
    return sizes or (*_of_the_names(order), *_of_the_fit(order, system))


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


def _of_the_sizes(order: ClothOrder) -> Iterator[Fault]:
    yield from _not_below_zero("spare", order.spare)
    for label, pieces in (("pieces", order.pieces), ("railroaded", order.railroaded or ())):
        for piece in pieces:
            yield from _of_a_piece(f"{label}.{piece.name}", piece)
    for roll in order.rolls:
        yield from _of_a_roll(f"rolls.{roll.name}", roll)
    if order.buying is not None:
        buying = order.buying
        yield from _above_zero("buying.usable_width", buying.usable_width)
        yield from _above_zero("buying.increment", buying.increment)
        yield from _not_below_zero("buying.least", buying.least)
        yield from _not_below_zero("buying.start_allowance", buying.start_allowance)
        if buying.whole_roll is not None:
            yield from _above_zero("buying.whole_roll", buying.whole_roll)


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


def _of_a_roll(where: str, roll: Roll) -> Iterator[Fault]:
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
        yield from _of_a_flaw(f"{where}.flaws.{number}", flaw)


def _of_a_flaw(where: str, flaw: Flaw) -> Iterator[Fault]:
    yield from _above_zero(f"{where}.length", flaw.length)
    yield from _above_zero(f"{where}.width", flaw.width)


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


def _twice(where: str, names: list[str]) -> Iterator[Fault]:
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield Fault(
            where=f"{where}.{name}",
            what="two have this name",
            remedy="Give each a name of its own.",
        )


def _of_the_fit(order: ClothOrder, system: System) -> Iterator[Fault]:
    upright = [*_too_large(order, order.pieces, "pieces", system, turned=False)]
    turned = order.railroaded or ()
    if upright and (not turned or any(_too_large(order, turned, "", system, turned=True))):
        yield from upright
    yield from _of_the_repeat(order, system)
    if not upright:
        yield from _of_the_places_across(order, system)
        yield from _of_the_flaws(order)
        yield from _of_the_lots(order, system)


def _too_large(
    order: ClothOrder, pieces: Iterable[ClothPiece], label: str, system: System, *, turned: bool
) -> Iterator[Fault]:
    """Say which pieces no roll is wide or long enough for, and the largest that would fit."""
    beds = _beds(order)
    for piece in pieces:
        across, along = (piece.length, piece.width) if turned else (piece.width, piece.length)
        if any(width >= across and (end is None or end >= along) for width, end in beds):
            continue
        widest = max(width for width, _ in beds)
        longest = max((end for width, end in beds if end and width >= across), default=ZERO)
        if across > widest:
            yield Fault(
                where=f"{label}.{piece.name}",
                what=f"{print_length(across, system)} across is wider than any roll",
                remedy=f"The widest that can be cut is {print_length(widest, system)}; join "
                f"widths, railroad the cloth, or take a wider one.",
            )
        else:
            yield Fault(
                where=f"{label}.{piece.name}",
                what=f"{print_length(along, system)} along is longer than any roll",
                remedy=f"The longest that can be cut is {print_length(longest, system)}; take "
                f"a longer roll.",
            )


def _beds(order: ClothOrder) -> list[tuple[Length, Length | None]]:
    """Give the width and the clear length of each roll; None is as long as wanted."""
    if order.buying is not None:
        whole = order.buying.whole_roll
        clear = None if whole is None else whole - order.buying.start_allowance
        return [(order.buying.usable_width, clear)]
    return [(roll.usable_width, roll.length - roll.head_loss) for roll in order.rolls]


def _of_the_repeat(order: ClothOrder, system: System) -> Iterator[Fault]:
    repeat, ends = order.pattern.vertical_repeat, [end for _, end in _beds(order)]
    longest = max((end for end in ends if end is not None), default=ZERO)
    ruled = any(piece.phase_along is not None for piece in order.pieces)
    if ruled and None not in ends and repeat > longest:
        yield Fault(
            where="pattern.vertical_repeat",
            what=f"the repeat of {print_length(repeat, system)} is longer than any roll",
            remedy=f"The longest repeat that a roll holds is {print_length(longest, system)}; "
            f"measure the repeat again, or take a longer roll.",
        )
    widest = max(width for width, _ in _beds(order))
    if order.pattern.horizontal_repeat > widest and any(
        piece.phase_across is not None for piece in order.pieces
    ):
        yield Fault(
            where="pattern.horizontal_repeat",
            what=f"the repeat of {print_length(order.pattern.horizontal_repeat, system)} across "
            f"is wider than any roll",
            remedy=f"The widest that a roll holds is {print_length(widest, system)}; measure "
            f"the repeat again.",
        )


def _of_the_places_across(order: ClothOrder, system: System) -> Iterator[Fault]:
    """Say which pieces the motif leaves no place across for, and how wide they might be."""
    period = order.pattern.horizontal_repeat.nanometres
    widest = max(width for width, _ in _beds(order)).nanometres
    for piece in order.pieces:
        if piece.phase_across is None or not period or period > widest:
            continue
        place = (piece.phase_across + order.pattern.origin_across).nanometres % period
        if place + piece.width.nanometres > widest:
            room = print_length(Length(widest - place), system)
            yield Fault(
                where=f"pieces.{piece.name}.phase_across",
                what=f"with its motif where it must be, only {room} of the roll is left for it",
                remedy=f"Place the motif elsewhere, or cut it at most {room} wide and join widths.",
            )


def _of_the_flaws(order: ClothOrder) -> Iterator[Fault]:
    """Say so if flaws leave no sound cloth on any roll."""
    if order.rolls and all(_covered(roll) for roll in order.rolls):
        yield Fault(
            where="rolls",
            what="flaws cover every roll from end to end",
            remedy="Measure the flaws again, or send the cloth back; with one of them less, "
            "the cloth beside it could be used.",
        )


def _covered(roll: Roll) -> bool:
    """Tell whether flaws over the full width leave nothing along, behind the head loss."""
    full = sorted(
        (flaw.along, flaw.along + flaw.length)
        for flaw in roll.flaws
        if flaw.across <= ZERO and flaw.across + flaw.width >= roll.usable_width
    )
    sound_from = roll.head_loss
    for start, end in full:
        if start > sound_from:
            return False
        sound_from = max(sound_from, end)
    return sound_from >= roll.length


def _of_the_lots(order: ClothOrder, system: System) -> Iterator[Fault]:
    """Say which rooms need more cloth, by area alone, than any lot holds."""
    if not order.rolls or order.railroaded is not None:
        return
    held: dict[str, Fraction] = {}
    for roll in order.rolls:
        clear = roll.length - roll.head_loss
        held[roll.lot] = held.get(roll.lot, Fraction(0)) + _area(roll.usable_width, clear)
    most, widest = max(held.values()), max(roll.usable_width for roll in order.rolls)
    rooms: dict[str, Fraction] = {}
    for piece in order.pieces:
        rooms[piece.one_lot] = rooms.get(piece.one_lot, Fraction(0)) + _area(
            piece.width, piece.length
        )
    for room, area in rooms.items():
        if area > most:
            short = Length(round((area - most) / widest.nanometres))
            yield Fault(
                where=f"rolls.{room}" if room else "rolls",
                what=f"no dye lot holds enough for {f'“{room}”' if room else 'the pieces'}, "
                f"which must be of one lot",
                remedy=f"Buy at least {print_length(short, system)} more of one lot, or let "
                f"fewer pieces share a lot.",
            )


def _area(width: Length, length: Length) -> Fraction:
    return Fraction(width.nanometres * length.nanometres)
