"""Whatever keeps an order from being cut is said at once, with what would work."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.core.cloth.orders import IN_HAND, mm, piece, roll, to_buy

from foldwright.core.cloth.order import Buying, ClothOrder, Flaw, Pattern, Seam
from foldwright.core.cloth.refusing.slips import faults_of
from foldwright.core.quantity.length import ZERO
from foldwright.core.quantity.rounding import System

ONE = piece("1", 900, 1500)


def said(order: ClothOrder) -> list[str]:
    return [fault.sentence for fault in faults_of(order)]


def test_a_sound_order_has_no_faults() -> None:
    assert said(IN_HAND) == []


WRONG = {
    "wider than any roll": (
        to_buy(piece("1", 1401, 1500)),
        "1401 mm across is wider than any roll",
        "The widest that can be cut is 1400 mm",
    ),
    "longer than any roll": (
        ClothOrder(pieces=(ONE,), rolls=(roll("a", 1400), roll("b", 1499))),
        "1500 mm along is longer than any roll",
        "The longest that can be cut is 1499 mm",
    ),
    "repeat longer than the roll": (
        ClothOrder(
            pieces=(replace(ONE, phase_along=ZERO),),
            rolls=(roll("a", 2000),),
            pattern=Pattern(vertical_repeat=mm(2001)),
        ),
        "the repeat of 2001 mm is longer than any roll",
        "The longest repeat that a roll holds is 2000 mm",
    ),
    "repeat wider than the roll": (
        to_buy(
            replace(ONE, phase_across=ZERO),
            pattern=Pattern(horizontal_repeat=mm(1500)),
        ),
        "the repeat of 1500 mm across is wider than any roll",
        "The widest that a roll holds is 1400 mm",
    ),
    "flaws covering all": (
        ClothOrder(
            pieces=(ONE,),
            rolls=(
                roll(
                    "a",
                    2000,
                    flaws=(Flaw(along=ZERO, across=ZERO, length=mm(2000), width=mm(1400)),),
                ),
            ),
        ),
        "flaws cover every roll from end to end",
        "Measure the flaws again",
    ),
    "no lot can serve a room": (
        ClothOrder(
            pieces=(piece("1", 1400, 1500), piece("2", 1400, 1500)),
            rolls=(roll("a", 2000), roll("b", 2000, lot="B")),
        ),
        "no dye lot holds enough for “den”",
        "Buy at least 1000 mm more of one lot",
    ),
    "no place for the motif": (
        to_buy(
            replace(ONE, phase_across=mm(600)),
            pattern=Pattern(horizontal_repeat=mm(700)),
        ),
        "only 800 mm of the roll is left for it",
        "cut it at most 800 mm wide",
    ),
    "zero": (to_buy(piece("1", 0, 1500)), "it is not above zero", "Give a length above zero"),
    "negative": (to_buy(piece("1", 900, -5)), "it is not above zero", "Give a length above zero"),
    "absurd": (
        to_buy(piece("1", 900, 1_500_000)),
        "it is longer than a kilometre",
        "Look at the unit and the decimal point",
    ),
    "a drop above the repeat": (
        to_buy(ONE, pattern=Pattern(drop_fraction=Fraction(3, 2))),
        "a drop is a part of the repeat",
        "1/2 for a half drop",
    ),
    "a drop too fine": (
        to_buy(ONE, pattern=Pattern(drop_fraction=Fraction(49, 100))),
        "no print drops by so fine a part of its repeat",
        "1/2",
    ),
    "two of one name": (to_buy(ONE, ONE), "two have this name", "a name of its own"),
    "no piece": (to_buy(), "no piece is asked for", "Add one"),
    "no cloth": (ClothOrder(pieces=(ONE,)), "there is no cloth to cut from", "Add a roll in hand"),
    "both kinds of cloth": (
        replace(to_buy(ONE), rolls=(roll("a", 2000),)),
        "cloth in hand and cloth to buy stand in one order",
        "buy for the pieces that are left",
    ),
    "hidden ends": (
        to_buy(replace(ONE, hidden_head=mm(800), hidden_foot=mm(700))),
        "the hidden ends leave nothing of the piece to be seen",
        "shorter together than the piece",
    ),
    "a pattern turned": (
        to_buy(ONE, railroaded=(replace(ONE, phase_along=ZERO),)),
        "a pattern cannot be placed on a piece that is turned",
        "Leave its phases out",
    ),
    "a step of nothing": (
        ClothOrder(pieces=(ONE,), buying=Buying(usable_width=mm(1400), increment=ZERO)),
        "it is not above zero",
        "Give a length above zero",
    ),
    "wide enough rolls are too short": (
        ClothOrder(pieces=(ONE,), rolls=(roll("a", 1400), roll("b", 9000, width=800))),
        "1500 mm along is longer than any roll that is wide enough",
        "The longest that can be cut is 1400 mm",
    ),
    "a flaw beyond the end": (
        ClothOrder(
            pieces=(ONE,),
            rolls=(
                roll(
                    "a",
                    2000,
                    flaws=(Flaw(along=mm(2000), across=ZERO, length=mm(9), width=mm(9)),),
                ),
            ),
        ),
        "rolls.a.flaws.1.along: a flaw at 2000 mm along lies beside the cloth",
        "Give a place from 0 to 2000 mm",
    ),
    "a flaw left of the edge": (
        ClothOrder(
            pieces=(ONE,),
            rolls=(
                roll(
                    "a", 2000, flaws=(Flaw(along=ZERO, across=mm(-9), length=mm(9), width=mm(9)),)
                ),
            ),
        ),
        "rolls.a.flaws.1.across: a flaw at -9 mm across lies beside the cloth",
        "Give a place from 0 to 1400 mm",
    ),
    "a whole roll that is all allowance": (
        ClothOrder(
            pieces=(ONE,),
            buying=Buying(
                usable_width=mm(1400),
                increment=mm(1),
                start_allowance=mm(600),
                whole_roll=mm(600),
            ),
        ),
        "squaring its end and finding the repeat take the whole roll",
        "Give a roll longer than the start allowance",
    ),
    "a seam that names nobody": (
        replace(IN_HAND, seams=(replace(IN_HAND.seams[0], right="AX"),)),
        "seams.1: no piece is named “AX”",
        "Name two pieces of the order",
    ),
    "a seam across that cannot match": (
        replace(IN_HAND, seams=(replace(IN_HAND.seams[0], across=mm(261)),)),
        "seams.1: “AL” and “AC” have no places where the pattern runs on",
        "as far apart as the seam says",
    ),
    "a seam along that cannot match": (
        replace(
            IN_HAND,
            pieces=(
                IN_HAND.pieces[0],
                replace(IN_HAND.pieces[1], phase_along=mm(1)),
                *IN_HAND.pieces[2:],
            ),
        ),
        "seams.1: “AL” and “AC” have no places where the pattern runs on",
        "the same place along",
    ),
    "a seam of a piece that may lie anywhere": (
        replace(
            IN_HAND,
            pieces=(
                IN_HAND.pieces[0],
                replace(IN_HAND.pieces[1], phase_along=None),
                *IN_HAND.pieces[2:],
            ),
        ),
        "seams.1: “AL” and “AC” have no places where the pattern runs on",
        "leave the seam out",
    ),
    "squared away": (
        ClothOrder(pieces=(ONE,), rolls=(roll("a", 2000, head_loss=mm(2000)),)),
        "squaring the end takes the whole roll",
        "leave the roll out",
    ),
}


@pytest.mark.parametrize("name", WRONG)
def test_each_fault_is_said_with_what_would_work(name: str) -> None:
    order, what, remedy = WRONG[name]
    assert any(what in sentence and remedy in sentence for sentence in said(order))


def test_all_faults_are_said_at_once() -> None:
    order = to_buy(piece("1", 0, 1500), piece("2", 900, -1), spare=mm(-1))
    assert len(said(order)) == 3


def test_a_piece_too_wide_may_be_railroaded() -> None:
    wide = piece("1", 2000, 1300)
    assert said(to_buy(wide, railroaded=(wide,))) == []


def test_a_seam_over_one_column_of_a_half_drop_wants_half_a_repeat() -> None:
    """The right piece counts its place from the next column, which stands lower."""
    pattern = replace(IN_HAND.pattern, drop_fraction=Fraction(1, 2))
    left, right = (
        replace(ONE, name=name, width=mm(300), phase_across=mm(at), phase_along=mm(along))
        for name, at, along in (("L", 0, 0), ("R", 1000, 300))
    )
    order = to_buy(left, right, pattern=pattern, seams=(Seam(left="L", right="R", across=mm(300)),))
    assert said(order) == []
    level = replace(order, pieces=(left, replace(right, phase_along=ZERO)))
    assert any("seams.1" in sentence for sentence in said(level))


def test_all_is_said_in_the_system_of_the_reader() -> None:
    order = to_buy(piece("1", 1500, 1500), width=1397)
    (fault,) = faults_of(order, System.INCH)
    assert "The widest that can be cut is 55 in" in fault.remedy
