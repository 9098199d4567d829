"""The checker names each fault that is planted in a sound plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.core.cloth.orders import CENTRE, IN_HAND, SMALL, SOUND, mm, piece, put, roll, to_buy

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPlan,
    CutLength,
    Flaw,
    Pattern,
    Placement,
    RollUse,
)
from foldwright.core.quantity.length import ZERO

Plant = Callable[[], tuple[ClothPlan, ClothOrder]]


def said(plan: ClothPlan, order: ClothOrder) -> set[str]:
    return {f"{fault.where}: {fault.what}" for fault in faults_of(plan, order)}


def moved(name: str, **to: object) -> ClothPlan:
    return replace(
        SOUND,
        placements=tuple(
            replace(each, **to) if each.piece == name else each  # type: ignore[arg-type]
            for each in SOUND.placements
        ),
    )


def level(number: int, **to: object) -> ClothPlan:
    levels = list(SOUND.levels)
    levels[number] = replace(levels[number], **to)  # type: ignore[arg-type]
    return replace(SOUND, levels=tuple(levels))


def test_a_sound_plan_has_no_faults() -> None:
    assert said(SOUND, IN_HAND) == set()


PLANTS: dict[str, tuple[Plant, str]] = {
    "missing": (
        lambda: (replace(SOUND, placements=SOUND.placements[:-1]), IN_HAND),
        "B: it is not cut",
    ),
    "twice": (
        lambda: (
            replace(SOUND, placements=(*SOUND.placements, put(SMALL, "two", 1900, 0))),
            IN_HAND,
        ),
        "B: it is cut 2 times",
    ),
    "not wanted": (
        lambda: (SOUND, replace(IN_HAND, pieces=IN_HAND.pieces[:-1])),
        "B: it is cut and nobody wants it",
    ),
    "turned among others": (
        lambda: (moved("B", turned=True), IN_HAND),
        "B: it lies turned otherwise than the rest of the cloth",
    ),
    "phase along": (
        lambda: (moved("AC", along=mm(599)), IN_HAND),
        "AC: its pattern stands wrong along",
    ),
    "phase along by a hundredth": (
        lambda: (moved("AC", along=mm(600) + mm(Fraction(1, 100))), IN_HAND),
        "AC: its pattern stands wrong along",
    ),
    "phase across": (
        lambda: (moved("AC", across=mm(1)), IN_HAND),
        "AC: its pattern stands wrong across",
    ),
    "overlap": (
        lambda: (moved("AR", across=mm(260)), IN_HAND),
        "AR: it lies over AL",
    ),
    "not edge to edge": (
        lambda: (level(1, pieces=("AR", "AL")), IN_HAND),
        "AL: it cannot be cut off edge to edge from the piece to its left",
    ),
    "a cut through a piece": (
        lambda: (level(1, length=mm(1499)), IN_HAND),
        "AL: a cut over the full width goes through it",
    ),
    "cut lengths overlap": (
        lambda: (level(0, length=mm(1781)), IN_HAND),
        "one: a cut length begins before the one ahead of it is cut off",
    ),
    "named in no cut length": (
        lambda: (level(1, pieces=("AL",)), IN_HAND),
        "AR: it is called for in 0 cut lengths",
    ),
    "more lost than there is": (
        lambda: (level(1, waits_for_repeat=mm(281)), IN_HAND),
        "one: more cloth is said to be lost than lies between two lengths",
    ),
    "in the cloth that squaring takes": (
        lambda: (
            SOUND,
            replace(IN_HAND, rolls=(roll("one", 6000, head_loss=mm(601)), IN_HAND.rolls[1])),
        ),
        "one: the first cut length begins in the cloth that squaring takes off",
    ),
    "more lost than lies before the first": (
        lambda: (level(0, waits_for_flaw=mm(601)), IN_HAND),
        "one: more cloth is said to be lost than lies before the first cut length",
    ),
    "less than nothing lost": (
        lambda: (level(1, waits_for_flaw=mm(-1)), IN_HAND),
        "one: less than nothing is said to be lost",
    ),
    "a cut length without a piece": (
        lambda: (
            replace(
                SOUND,
                levels=(
                    *SOUND.levels,
                    CutLength(roll="two", start=mm(1600), length=mm(90), pieces=()),
                ),
            ),
            IN_HAND,
        ),
        "two: a length is cut off and no piece lies in it",
    ),
    "a last cut length longer than its pieces": (
        lambda: (level(2, length=mm(801)), IN_HAND),
        "two: what is used of it is not what is said",
    ),
    "a cut length over the end": (
        lambda: (level(2, length=mm(2301)), IN_HAND),
        "two: a cut length runs over the end of the roll",
    ),
    "one roll as two": (
        lambda: (replace(SOUND, rolls=(*SOUND.rolls, SOUND.rolls[1])), IN_HAND),
        "two: it is used as two rolls",
    ),
    "a roll that is used and not named": (
        lambda: (replace(SOUND, rolls=SOUND.rolls[:1]), IN_HAND),
        "B: it lies on the roll “two”, which is not used",
    ),
    "bought though in hand": (
        lambda: (
            replace(SOUND, rolls=(replace(SOUND.rolls[0], bought=mm(1)), SOUND.rolls[1])),
            IN_HAND,
        ),
        "one: it is in hand, and said to be bought",
    ),
    "seam broken along": (
        lambda: (moved("AR", along=mm(2401)), IN_HAND),
        "AC and AR: the pattern breaks at the seam, along",
    ),
    "seam broken across": (
        lambda: (moved("AR", across=mm(961)), IN_HAND),
        "AC and AR: the pattern breaks at the seam, across",
    ),
    "wrong roll": (
        lambda: (moved("B", roll="one"), IN_HAND),
        "B: it does not lie in its cut length",
    ),
    "a roll that is not there": (
        lambda: (SOUND, replace(IN_HAND, rolls=IN_HAND.rolls[:1])),
        "two: there is no such roll",
    ),
    "a roll as it is not": (
        lambda: (SOUND, replace(IN_HAND, rolls=(roll("one", 5999), IN_HAND.rolls[1]))),
        "one: it is not the roll as it was measured",
    ),
    "a pattern that begins elsewhere": (
        lambda: (
            SOUND,
            replace(IN_HAND, rolls=(roll("one", 6000, origin_along=mm(1)), IN_HAND.rolls[1])),
        ),
        "one: its pattern does not begin where it was measured",
    ),
    "flaw covered": (
        lambda: (
            SOUND,
            replace(IN_HAND, pieces=(*IN_HAND.pieces[:3], replace(SMALL, hidden_head=mm(19)))),
        ),
        "B: it covers a flaw",
    ),
    "lot mixed": (
        lambda: (
            SOUND,
            replace(IN_HAND, pieces=(*IN_HAND.pieces[:3], replace(SMALL, room="den"))),
        ),
        "den: its pieces come from 2 dye lots",
    ),
    "sides in one length": (
        lambda: (SOUND, replace(IN_HAND, sides_share=False)),
        "AL: it shares a cut length with the other side of its shade",
    ),
    "one millimetre too long": (
        lambda: (
            SOUND,
            replace(IN_HAND, pieces=(replace(CENTRE, length=mm(1499)), *IN_HAND.pieces[1:])),
        ),
        "AC: it is not cut to its size",
    ),
    "over the end": (
        lambda: (
            replace(
                SOUND,
                rolls=(SOUND.rolls[0], replace(SOUND.rolls[1], length=mm(1499))),
            ),
            replace(IN_HAND, rolls=(IN_HAND.rolls[0], replace(IN_HAND.rolls[1], length=mm(1499)))),
        ),
        "B: it lies over the end of the roll",
    ),
    "over the edge": (
        lambda: (moved("B", across=mm(901)), IN_HAND),
        "B: it lies over the edge of the cloth",
    ),
    "used otherwise than said": (
        lambda: (
            replace(SOUND, rolls=(replace(SOUND.rolls[0], used=mm(3899)), SOUND.rolls[1])),
            IN_HAND,
        ),
        "one: what is used of it is not what is said",
    ),
    "bought otherwise than said": (
        lambda: (replace(SOUND, bought=mm(5399)), IN_HAND),
        "bought: it is not what is used of the rolls",
    ),
    "bound above the plan": (
        lambda: (replace(SOUND, bound=mm(5401)), IN_HAND),
        "bound: the plan takes less than is said to be possible",
    ),
    "proven below": (
        lambda: (replace(SOUND, proven=True), IN_HAND),
        "bound: the plan is said to be proven and the bound is below it",
    ),
}


@pytest.mark.parametrize("name", PLANTS)
def test_each_planted_fault_is_named(name: str) -> None:
    plant, words = PLANTS[name]
    assert words in said(*plant())


def test_a_seam_is_looked_at_from_positions_alone() -> None:
    """Both pieces stand where their phases ask, and the phases are wrong for the seam."""
    wrong = replace(IN_HAND, seams=(replace(IN_HAND.seams[0], across=mm(261)),))
    assert "AL and AC: the pattern breaks at the seam, across" in said(SOUND, wrong)


def two_sides(along: int, drop: Fraction = Fraction(1, 2)) -> tuple[ClothPlan, ClothOrder]:
    """A seam over one horizontal repeat of a half drop, the right piece so far along."""
    one = piece("1", 300, 500)
    other = piece("2", 300, 500)
    order = to_buy(
        one,
        other,
        pattern=Pattern(vertical_repeat=mm(400), horizontal_repeat=mm(300), drop_fraction=drop),
        seams=(replace(IN_HAND.seams[0], left="1", right="2", across=mm(0)),),
    )
    placements = (put(one, "to buy 1", 0, 0), put(other, "to buy 1", along, 300))
    end = mm(along + 500)
    plan = ClothPlan(
        levels=(CutLength(roll="to buy 1", start=ZERO, length=end, pieces=("1", "2")),),
        placements=placements,
        rolls=(
            RollUse(
                name="to buy 1",
                lot="",
                usable_width=mm(1400),
                length=end,
                origin_along=ZERO,
                used=end,
            ),
        ),
        remnants=(),
        bought=end,
        bound=ZERO,
        proven=False,
    )
    return plan, order


@pytest.mark.parametrize(("along", "sound"), [(200, True), (600, True), (0, False), (400, False)])
def test_a_seam_over_a_half_drop_stands_half_a_repeat_lower(along: int, *, sound: bool) -> None:
    words = "1 and 2: the pattern breaks at the seam, along"
    assert (words in said(*two_sides(along))) is not sound


def test_a_third_of_a_repeat_is_told_from_a_third_and_a_hair() -> None:
    plan, order = two_sides(0, Fraction(1, 3))
    third = mm(Fraction(400, 3))
    exact = replace(plan.placements[1], along=third)
    off = replace(exact, along=third + mm(Fraction(1, 1000)))
    assert faults_along(replace(plan, placements=(plan.placements[0], exact)), order) == 0
    assert faults_along(replace(plan, placements=(plan.placements[0], off)), order) == 1


def faults_along(plan: ClothPlan, order: ClothOrder) -> int:
    return sum("seam, along" in each for each in said(plan, order))


def test_pieces_of_a_free_room_must_agree_with_one_another_only() -> None:
    free = replace(IN_HAND, free_rooms=frozenset({"den"}))
    apart = moved("AC", along=mm(650))
    assert "AC: its pattern stands wrong along" not in said(apart, free)
    assert any("otherwise than in the rest of its room" in words for words in said(apart, free))


def test_what_is_bought_is_what_the_supplier_sells() -> None:
    one = piece("1", 300, 550)
    order = to_buy(one, step=100)
    use = RollUse(
        name="to buy 1",
        lot="",
        usable_width=mm(1400),
        length=mm(600),
        origin_along=ZERO,
        used=mm(550),
        bought=mm(600),
    )
    plan = ClothPlan(
        levels=(CutLength(roll="to buy 1", start=ZERO, length=mm(550), pieces=("1",)),),
        placements=(
            Placement(
                piece="1", roll="to buy 1", along=ZERO, across=ZERO, width=mm(300), length=mm(550)
            ),
        ),
        rolls=(use,),
        remnants=(),
        bought=mm(600),
        bound=mm(600),
        proven=True,
    )
    assert said(plan, order) == set()
    short = replace(plan, bought=mm(550), bound=ZERO, proven=False)
    assert "bought: it is not what must be bought" in said(short, order)


def test_a_flaw_beside_a_piece_does_no_harm() -> None:
    beside = Flaw(along=mm(800), across=mm(500), length=mm(30), width=mm(50))
    rolls = (IN_HAND.rolls[0], replace(IN_HAND.rolls[1], flaws=(beside,)))
    assert said(SOUND, replace(IN_HAND, rolls=rolls)) == set()
