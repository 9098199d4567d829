"""What no roll can hold, of an order that makes sense: each with the nearest that would fit."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from foldwright.core.cloth.order import ClothOrder, ClothPiece, Roll
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault


def misfits_of(order: ClothOrder, system: System) -> tuple[Fault, ...]:
    """Say what no roll can hold.

    Takes: an order without slips; the system of the reader.

    Gives: the faults, none for an order that a planner may try.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Buying
    >>> wide = ClothPiece(name="1", shade="A", room="", layer="face",
    ...                   width=Length.mm(1500), length=Length.mm(900))
    >>> sold = Buying(usable_width=Length.mm(1400), increment=Length.mm(100))
    >>> misfits_of(ClothOrder(pieces=(wide,), buying=sold), System.METRIC)[0].what
    '1500 mm across is wider than any roll'
    """
    return tuple(_misfits(order, system))


def _misfits(order: ClothOrder, system: System) -> Iterator[Fault]:
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
                what=f"{print_length(along, system)} along is longer than any roll"
                f"{'' if _widest_enough(beds, across) else ' that is wide enough'}",
                remedy=f"The longest that can be cut is {print_length(longest, system)}; take "
                f"a longer roll.",
            )


def _widest_enough(beds: list[tuple[Length, Length | None]], across: Length) -> bool:
    """Tell whether every roll is wide enough, so that its length alone is wanting."""
    return all(width >= across for width, _ in beds)


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
