"""What holds for every plan of cloth, whatever the job."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import count

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    ClothPlan,
    Flaw,
    Pattern,
    Roll,
)
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO, Length

FEW = settings(max_examples=10, deadline=None)
SIZES = st.tuples(st.integers(100, 1400), st.integers(300, 2500), st.booleans())


def mm(value: float) -> Length:
    return Length.mm(Fraction(value))


def piece(number: int, width: int, length: int, *, at_sill: bool) -> ClothPiece:
    return ClothPiece(
        name=str(number),
        shade=str(number),
        room="den",
        layer="face",
        width=mm(width),
        length=mm(length),
        phase_along=-mm(length) if at_sill else ZERO,
    )


@st.composite
def orders(draw: st.DrawFn) -> ClothOrder:
    sizes = draw(st.lists(SIZES, min_size=1, max_size=7))
    repeat = draw(st.sampled_from([0, 320, 641]))
    return ClothOrder(
        pieces=tuple(piece(n, w, h, at_sill=s) for n, (w, h, s) in enumerate(sizes)),
        pattern=Pattern(vertical_repeat=mm(repeat)),
        buying=Buying(usable_width=mm(1400), increment=mm(1), start_allowance=mm(repeat + 50)),
        spare=mm(draw(st.sampled_from([0, 20]))),
    )


def planned(order: ClothOrder, time_given_s: float = 1.0) -> ClothPlan:
    ticks = count()
    plan = plan_cloth(order, time_given_s=time_given_s, clock=lambda: next(ticks) * 0.02).result
    assert plan is not None
    assert faults_of(plan, order) == ()
    assert plan.bound <= plan.bought
    return plan


@FEW
@given(orders())
def test_a_shade_more_never_shortens_a_plan(order: ClothOrder) -> None:
    fewer = planned(order)
    one_more = piece(99, 700, 1200, at_sill=False)
    more = planned(replace(order, pieces=(*order.pieces, one_more)))
    assert more.bought >= fewer.bound
    if fewer.proven:
        assert more.bought >= fewer.bought


@FEW
@given(orders(), st.sampled_from([2, 3]))
def test_twice_the_size_takes_twice_the_cloth(order: ClothOrder, times: int) -> None:
    assert order.buying is not None
    sold = order.buying
    large = replace(
        order,
        pieces=tuple(
            replace(
                each,
                width=each.width * times,
                length=each.length * times,
                phase_along=None if each.phase_along is None else each.phase_along * times,
            )
            for each in order.pieces
        ),
        pattern=Pattern(vertical_repeat=order.pattern.vertical_repeat * times),
        spare=order.spare * times,
        buying=Buying(
            usable_width=sold.usable_width * times,
            increment=sold.increment * times,
            start_allowance=sold.start_allowance * times,
        ),
    )
    once, again = planned(order), planned(large)
    if once.proven and again.proven:
        assert again.bought == once.bought * times
    assert again.bought >= once.bound * times
    assert again.bound <= once.bought * times


FLAWS = st.tuples(st.integers(0, 9000), st.integers(0, 1300))


def in_hand(order: ClothOrder, flaws: list[tuple[int, int]]) -> ClothOrder:
    marked = tuple(
        Flaw(along=mm(along), across=mm(across), length=mm(40), width=mm(60))
        for along, across in flaws
    )
    roll = Roll(name="1", lot="", usable_width=mm(1400), length=mm(60_000), flaws=marked)
    return replace(order, buying=None, rolls=(roll,))


@FEW
@given(orders(), st.lists(FLAWS, min_size=1, max_size=4))
def test_more_flaws_never_shorten_a_plan(order: ClothOrder, flaws: list[tuple[int, int]]) -> None:
    sound, flawed = planned(in_hand(order, [])), planned(in_hand(order, flaws))
    assert flawed.bought >= sound.bound
    if sound.proven:
        assert flawed.bought >= sound.bought


@FEW
@given(orders())
def test_a_free_room_never_takes_more_than_it_would_if_its_start_were_given(
    order: ClothOrder,
) -> None:
    free = planned(replace(order, free_rooms=frozenset({"den"})))
    assert free.bound <= planned(order).bought


@dataclass(frozen=True, kw_only=True)
class Sheet:
    """Pieces that fill a sheet of the full width, and where the cuts over it lie."""

    pieces: tuple[ClothPiece, ...]
    starts: tuple[int, ...]  # of each piece
    length: int


def sheet(chance: np.random.Generator, name: str = "") -> Sheet:
    """Cut a sheet edge to edge at random: over the full width first, then along."""
    pieces: list[ClothPiece] = []
    starts: list[int] = []
    total = 0
    for _ in range(int(chance.integers(3, 9))):
        length, left = int(chance.integers(400, 2500)), 1400
        while left:
            width = min(left, int(chance.integers(200, 1401)))
            width = left if left - width < 200 else width
            left -= width
            plain = piece(len(pieces), width, length, at_sill=False)
            pieces.append(replace(plain, name=f"{name}{plain.name}", phase_along=None))
            starts.append(total)
        total += length
    return Sheet(pieces=tuple(pieces), starts=tuple(starts), length=total)


def as_printed(cut: Sheet, repeat: int, origin: int = 0) -> tuple[ClothPiece, ...]:
    """Ask of each piece the place in the repeat that it had in the sheet."""
    return tuple(
        replace(each, phase_along=mm((start - origin) % repeat))
        for each, start in zip(cut.pieces, cut.starts, strict=True)
    )


TO_BUY = Buying(usable_width=mm(1400), increment=mm(1))
SHEETS = pytest.mark.parametrize("seed", range(8))


def is_put_together_again(order: ClothOrder, length: int) -> None:
    plan = planned(order, time_given_s=20.0)
    assert plan.bought == mm(length)
    assert plan.proven


@SHEETS
def test_a_sheet_cut_edge_to_edge_is_put_together_again(seed: int) -> None:
    """The least is the sheet, by its area."""
    cut = sheet(np.random.default_rng(seed))
    is_put_together_again(ClothOrder(pieces=cut.pieces, buying=TO_BUY), cut.length)


@SHEETS
@pytest.mark.parametrize("repeat", [320, 641])
def test_a_printed_sheet_is_put_together_again(seed: int, repeat: int) -> None:
    """Each piece is asked at the place of the repeat where it was cut: the sheet is the least."""
    cut = sheet(np.random.default_rng(seed))
    printed = Pattern(vertical_repeat=mm(repeat))
    order = ClothOrder(pieces=as_printed(cut, repeat), buying=TO_BUY, pattern=printed)
    is_put_together_again(order, cut.length)


def lots_of(sheets: dict[str, Sheet], more: int = 0, origin: int = 0) -> tuple[Roll, ...]:
    """Give a roll of a lot of its own for each room's sheet."""
    return tuple(
        Roll(
            name=f"roll {room}",
            lot=f"lot {room}",
            usable_width=mm(1400),
            length=mm(cut.length + more),
            origin_along=mm(origin),
        )
        for room, cut in sheets.items()
    )


def in_room(pieces: tuple[ClothPiece, ...], room: str) -> tuple[ClothPiece, ...]:
    return tuple(replace(each, room=room) for each in pieces)


@SHEETS
@pytest.mark.parametrize("more", [0, 700])
def test_sheets_of_rooms_are_put_together_from_rolls_of_their_own_lots(
    seed: int, more: int
) -> None:
    """No room takes from two lots, and both rolls are used to the sheets' ends."""
    chance = np.random.default_rng(seed)
    sheets = {room: sheet(chance, room) for room in ("den", "hall")}
    pieces = tuple(p for room, cut in sheets.items() for p in in_room(cut.pieces, room))
    order = ClothOrder(pieces=pieces, rolls=lots_of(sheets, more))
    is_put_together_again(order, sum(cut.length for cut in sheets.values()))


@SHEETS
def test_printed_sheets_are_put_together_from_rolls_of_their_own_lots(seed: int) -> None:
    """The rolls begin within the repeat, as the pieces are asked."""
    chance, repeat, origin = np.random.default_rng(seed), 320, 110
    sheets = {room: sheet(chance, room) for room in ("den", "hall")}
    printed = {room: as_printed(cut, repeat, origin) for room, cut in sheets.items()}
    order = ClothOrder(
        pieces=tuple(p for room, pieces in printed.items() for p in in_room(pieces, room)),
        pattern=Pattern(vertical_repeat=mm(repeat)),
        rolls=lots_of(sheets, origin=origin),
    )
    is_put_together_again(order, sum(cut.length for cut in sheets.values()))
