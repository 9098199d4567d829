"""The order in whole units: pieces that are alike together, and all sizes exact.

One unit is a nanometre divided by the drop's denominator, so a third of a repeat is whole too.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import cached_property
from math import gcd

from foldwright.core.cloth.order import ClothOrder, ClothPiece, Roll
from foldwright.core.quantity.length import NANOMETRES_PER_MILLIMETRE, Length


@dataclass(frozen=True, kw_only=True, slots=True)
class Kind:
    """Pieces that can stand for each other; `across` and `along` are phases, None no rule.

    Widths are across the roll and lengths along it, turned or not. `hidden` are the strips
    that nobody sees: left, right, at the start, at the end. `most` may lie in one cut length;
    with a `partner` kind the two together.
    """

    names: tuple[str, ...]
    width: int
    length: int
    across: int | None
    along: int | None
    hidden: tuple[int, int, int, int]
    most: int
    partner: int | None = None

    @property
    def count(self) -> int:
        """Give how many pieces there are."""
        return len(self.names)


@dataclass(frozen=True, kw_only=True, slots=True)
class Box:
    """A flaw: from left to right and from start to end."""

    left: int
    right: int
    start: int
    end: int


@dataclass(frozen=True, kw_only=True, slots=True)
class Bolt:
    """A roll in hand, or one to buy: `end` None is as long as wanted, `origin` None unknown."""

    name: str
    lot: str
    width: int
    begin: int
    end: int | None
    origin: int | None
    flaws: tuple[Box, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Cloth:
    """Kinds of pieces, bolts of one usable width, and the lattice of the pattern."""

    kinds: tuple[Kind, ...]
    bolts: tuple[Bolt, ...]
    width: int
    repeat: int  # along, 0 is none
    period: int  # across, 0 is none
    drops: int  # repeats across until the pattern stands level again
    shift: int  # how much lower the next repeat across stands
    spare: int
    per_mm: int  # units in a millimetre
    turned: bool = False

    @property
    def loose(self) -> bool:
        """Tell whether some pieces may lie anywhere along while others follow the repeat."""
        return bool(self.repeat) and any(kind.along is None for kind in self.kinds)

    @property
    def in_places(self) -> bool:
        """Tell whether some piece has a rule across."""
        return any(kind.across is not None for kind in self.kinds)

    @cached_property
    def grain(self) -> int:
        """Give the step that every position in a plan without a needless gap is a multiple of."""
        sizes = [self.repeat, self.spare, self.shift]
        for kind in self.kinds:
            sizes += [kind.length, kind.along or 0, *kind.hidden[2:]]
        for bolt in self.bolts:
            sizes += [bolt.begin, bolt.origin or 0, *(flaw.end for flaw in bolt.flaws)]
        return gcd(*sizes)

    @cached_property
    def phases(self) -> tuple[int, ...]:
        """Give every place in the repeat where a piece may have to start; (0,) where none does."""
        found = {phase for kind in self.kinds for phase in self.starts(kind)}
        return tuple(sorted(found)) or (0,)

    def starts(self, kind: Kind) -> tuple[int, ...]:
        """Give where in the repeat a kind may start, one for each drop of the pattern."""
        if kind.along is None:
            return ()
        return tuple((kind.along + n * self.shift) % self.repeat for n in range(self.drops))

    def places(self, kind: Kind) -> Iterator[tuple[int, int]]:
        """Give each place across for a kind with a rule, and which drop it stands on."""
        if kind.across is None:
            return
        number = -(kind.across // self.period)
        place = kind.across + number * self.period
        while place + kind.width <= self.width:
            yield place, number % self.drops
            place, number = place + self.period, number + 1

    def reach(self, kind: Kind, start: int, drop: int) -> int:
        """Give how far a kind reaches behind a cut length's start, with the spare."""
        if kind.along is None:
            return kind.length + self.spare
        behind = (kind.along + drop * self.shift - start) % self.repeat
        return behind + kind.length + self.spare


def in_whole_units(
    order: ClothOrder,
    bolts: Iterable[Bolt],
    starts: Mapping[str, int],
    *,
    turned: bool = False,
    groups: AbstractSet[str] | None = None,
) -> Cloth:
    """Put an order into whole units.

    Takes: an order without faults; the bolts to cut from, of which the narrowest gives the
    width; where each free room starts in the repeat, in units; whether the whole cloth is
    turned; the lot groups to cut, by default all.

    Gives: kinds of pieces, longest first, and the lattice.

    Source: derived here.

    >>> from foldwright.core.cloth.order import Buying
    >>> piece = ClothPiece(name="1", shade="A", room="", layer="face",
    ...                    width=Length.mm(900), length=Length.mm(1500))
    >>> buying = Buying(usable_width=Length.mm(1400), increment=Length.mm(100))
    >>> order = ClothOrder(pieces=(piece,), buying=buying)
    >>> in_whole_units(order, bolts_of(order), {}).kinds[0].width
    900000000
    """
    units, bolts = units_in_a_nanometre(order), tuple(bolts)
    pattern, kinds = order.pattern, kinds_of(order, starts, turned=turned, groups=groups)
    ruled = any(kind.along is not None for kind in kinds)
    repeat = pattern.vertical_repeat.nanometres * units if ruled else 0
    shift = round(repeat * pattern.drop_fraction)
    across = pattern.horizontal_repeat.nanometres * units
    return Cloth(
        kinds=kinds,
        bolts=bolts,
        width=min(bolt.width for bolt in bolts),
        repeat=repeat,
        period=across,
        drops=pattern.drop_fraction.denominator if across and shift else 1,
        shift=shift if across else 0,
        spare=order.spare.nanometres * units,
        per_mm=NANOMETRES_PER_MILLIMETRE * units,
        turned=turned,
    )


def units_in_a_nanometre(order: ClothOrder) -> int:
    """Give into how many units a nanometre is split, so that every drop is whole."""
    return order.pattern.drop_fraction.denominator


def bolts_of(order: ClothOrder) -> tuple[Bolt, ...]:
    """Give the rolls in hand, or one bolt to buy that never ends."""
    units = units_in_a_nanometre(order)
    if order.buying is None:
        return tuple(_in_hand(roll, units) for roll in order.rolls)
    return (bolt_to_buy(order, 1),)


def bolt_to_buy(order: ClothOrder, number: int) -> Bolt:
    """Give one piece of cloth as it will be delivered."""
    assert order.buying is not None  # noqa: S101 - asked only of orders to buy
    buying, units = order.buying, units_in_a_nanometre(order)
    whole = buying.whole_roll
    return Bolt(
        name=f"to buy {number}",
        lot="",
        width=buying.usable_width.nanometres * units,
        begin=buying.start_allowance.nanometres * units,
        end=None if whole is None else whole.nanometres * units,
        origin=None,
    )


def _in_hand(roll: Roll, units: int) -> Bolt:
    return Bolt(
        name=roll.name,
        lot=roll.lot,
        width=roll.usable_width.nanometres * units,
        begin=roll.head_loss.nanometres * units,
        end=roll.length.nanometres * units,
        origin=roll.origin_along.nanometres * units,
        flaws=tuple(
            Box(
                left=flaw.across.nanometres * units,
                right=(flaw.across + flaw.width).nanometres * units,
                start=flaw.along.nanometres * units,
                end=(flaw.along + flaw.length).nanometres * units,
            )
            for flaw in roll.flaws
        ),
    )


@dataclass(frozen=True, slots=True)
class _Likeness:
    """All that must agree for two pieces to stand for each other."""

    length: int
    width: int
    across: int | None
    along: int | None
    hidden: tuple[int, int, int, int]

    @property
    def order(self) -> tuple[int, int, str]:
        return -self.length, -self.width, repr(self)


def kinds_of(
    order: ClothOrder,
    starts: Mapping[str, int],
    *,
    turned: bool = False,
    groups: AbstractSet[str] | None = None,
) -> tuple[Kind, ...]:
    """Put pieces that are alike together, longest first."""
    pieces = (order.railroaded or ()) if turned else order.pieces
    if groups is not None:
        pieces = tuple(piece for piece in pieces if piece.one_lot in groups)
    alike = {piece.name: _likeness(piece, order, starts, turned=turned) for piece in pieces}
    partners: dict[str, str] = {} if order.sides_share else _partners(pieces)
    named: dict[tuple[_Likeness, _Likeness | None], list[str]] = {}
    for name, like in alike.items():
        named.setdefault((like, alike.get(partners.get(name, ""))), []).append(name)
    keys = sorted(named, key=lambda key: (key[0].order, key[1].order if key[1] else ()))
    return tuple(_kind(key, named[key], keys) for key in keys)


def _kind(
    key: tuple[_Likeness, _Likeness | None],
    names: list[str],
    keys: list[tuple[_Likeness, _Likeness | None]],
) -> Kind:
    like, other = key
    partner = None if other in (None, like) else keys.index((other, like))
    return Kind(
        names=tuple(names),
        width=like.width,
        length=like.length,
        across=like.across,
        along=like.along,
        hidden=like.hidden,
        most=len(names) // 2 if other == like else len(names),
        partner=partner,
    )


def _partners(pieces: tuple[ClothPiece, ...]) -> dict[str, str]:
    known = {piece.name for piece in pieces}
    pairs: dict[str, str] = {}
    for piece in pieces:
        if piece.side_partner in known:
            pairs[piece.name] = str(piece.side_partner)
            pairs.setdefault(str(piece.side_partner), piece.name)
    return pairs


def _likeness(
    piece: ClothPiece, order: ClothOrder, starts: Mapping[str, int], *, turned: bool
) -> _Likeness:
    units, pattern = units_in_a_nanometre(order), order.pattern
    head, foot = piece.hidden_head.nanometres * units, piece.hidden_foot.nanometres * units
    sizes = piece.width.nanometres * units, piece.length.nanometres * units
    along, across = None, None
    if piece.phase_along is not None and pattern.vertical_repeat:
        repeat = pattern.vertical_repeat.nanometres * units
        along = (piece.phase_along.nanometres * units + starts.get(piece.room, 0)) % repeat
    if piece.phase_across is not None and pattern.horizontal_repeat:
        level_again = (
            pattern.horizontal_repeat.nanometres * units * pattern.drop_fraction.denominator
        )
        across = (piece.phase_across + pattern.origin_across).nanometres * units % level_again
    return _Likeness(
        length=sizes[0] if turned else sizes[1],
        width=sizes[1] if turned else sizes[0],
        across=across,
        along=along,
        hidden=(head, foot, 0, 0) if turned else (0, 0, head, foot),
    )


def length_of(cloth: Cloth, units: int) -> Length:
    """Give a length from whole units, rounded to the nearest nanometre."""
    return Length(round(units * NANOMETRES_PER_MILLIMETRE / cloth.per_mm))
