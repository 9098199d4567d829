"""The checker on remnants, on cloth to buy and on cloth that is turned; and what it is made of."""

from __future__ import annotations

import ast
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from tests.core.cloth.orders import IN_HAND, SMALL, SOUND, mm, piece, put

from foldwright.core import cloth
from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPlan,
    Comparison,
    CutLength,
    Flaw,
    Placement,
    Remnant,
    RemnantUse,
    Roll,
    RollUse,
)
from foldwright.core.quantity.length import ZERO


def said(plan: ClothPlan, order: ClothOrder) -> set[str]:
    return {f"{fault.where}: {fault.what}" for fault in faults_of(plan, order)}


BESIDE = Remnant(
    roll="two", along=mm(700), across=mm(500), width=mm(900), length=mm(800), uses=("tie",)
)
END = Remnant(roll="one", along=mm(3900), across=ZERO, width=mm(1400), length=mm(2100))
TIE = RemnantUse(name="tie", width=mm(900), length=mm(800))
LARGE = RemnantUse(name="cushion", width=mm(901), length=mm(800))
WITH_USES = replace(IN_HAND, remnant_uses=(TIE, LARGE))
END = replace(END, uses=("tie", "cushion"))


def left(**to: object) -> ClothPlan:
    return replace(SOUND, remnants=(replace(BESIDE, **to), END))  # type: ignore[arg-type]


def test_remnants_that_are_there_are_sound() -> None:
    assert said(left(), WITH_USES) == set()


REMNANTS = {
    "over a piece": (left(across=mm(499)), "two: what is left of it lies over B"),
    "over the edge": (left(width=mm(901)), "two: what is left of it lies beside the cloth"),
    "over the end": (
        left(along=mm(2300), across=ZERO),
        "two: what is left of it lies beside the cloth",
    ),
    "on no roll": (left(roll="three"), "three: what is left of it lies beside the cloth"),
    "of no size": (left(length=ZERO), "two: what is left of it lies beside the cloth"),
    "over another": (
        replace(SOUND, remnants=(BESIDE, BESIDE)),
        "two: what is left of it lies over something else that is left",
    ),
    "good for too much": (
        left(uses=("tie", "cushion")),
        "two: what is left of it is not good for what is said",
    ),
    "good for more than is said": (
        left(uses=()),
        "two: what is left of it is not good for what is said",
    ),
}


@pytest.mark.parametrize("name", REMNANTS)
def test_a_remnant_that_is_not_there_is_named(name: str) -> None:
    plan, words = REMNANTS[name]
    assert words in said(plan, WITH_USES)


def test_a_comparison_with_another_plan_is_named() -> None:
    right = Comparison(
        plan=SOUND.bought, shade_by_shade=mm(9000), first_fit=mm(6000), bound=SOUND.bound
    )
    assert said(replace(SOUND, comparison=right), IN_HAND) == set()
    for wrong in (replace(right, plan=mm(5399)), replace(right, bound=mm(4999))):
        assert "comparison: it is made with another plan" in said(
            replace(SOUND, comparison=wrong), IN_HAND
        )


WHOLE = Buying(usable_width=mm(1400), increment=mm(1), start_allowance=mm(50), whole_roll=mm(3000))
ONE, TWO = piece("1", 1400, 2000), piece("2", 1400, 2500)
TO_BUY = ClothOrder(pieces=(ONE, TWO), buying=WHOLE)


def bolt(name: str, used: int) -> RollUse:
    return RollUse(
        name=name,
        lot="",
        usable_width=mm(1400),
        length=mm(3000),
        origin_along=ZERO,
        used=mm(used),
        bought=mm(3000),
    )


BOUGHT = ClothPlan(
    levels=(
        CutLength(roll="to buy 1", start=mm(50), length=mm(2000), pieces=("1",)),
        CutLength(roll="to buy 2", start=mm(50), length=mm(2500), pieces=("2",)),
    ),
    placements=(put(ONE, "to buy 1", 50, 0), put(TWO, "to buy 2", 50, 0)),
    rolls=(bolt("to buy 1", 2050), bolt("to buy 2", 2550)),
    remnants=(),
    bought=mm(6000),
    bound=mm(6000),
    proven=True,
)


def other_roll(**to: object) -> ClothPlan:
    return replace(BOUGHT, rolls=(replace(BOUGHT.rolls[0], **to), BOUGHT.rolls[1]))  # type: ignore[arg-type]


BUYS: dict[str, tuple[Callable[[], tuple[ClothPlan, ClothOrder]], str]] = {
    "a roll too few": (
        lambda: (replace(BOUGHT, bought=mm(3000), bound=mm(3000)), TO_BUY),
        "bought: it is not what must be bought",
    ),
    "a longer roll than is sold": (
        lambda: (other_roll(length=mm(3001)), TO_BUY),
        "to buy 1: it is not as the cloth is sold",
    ),
    "a wider roll than is sold": (
        lambda: (other_roll(usable_width=mm(1401)), TO_BUY),
        "to buy 1: it is not as the cloth is sold",
    ),
    "a roll bought otherwise than it is long": (
        lambda: (other_roll(bought=mm(2999)), TO_BUY),
        "to buy 1: it is not as the cloth is sold",
    ),
    "in the start allowance": (
        lambda: (BOUGHT, replace(TO_BUY, buying=replace(WHOLE, start_allowance=mm(51)))),
        "to buy 1: the first cut length begins in the cloth that squaring takes off",
    ),
    "under the least order": (
        lambda: (BOUGHT, replace(TO_BUY, buying=replace(WHOLE, least=mm(6001)))),
        "bought: it is not what must be bought",
    ),
    "two lots": (
        lambda: (other_roll(lot="B"), TO_BUY),
        "den: its pieces come from 2 dye lots",
    ),
}


def test_whole_rolls_as_they_are_sold_are_sound() -> None:
    assert said(BOUGHT, TO_BUY) == set()


@pytest.mark.parametrize("name", BUYS)
def test_what_is_bought_otherwise_than_it_is_sold_is_named(name: str) -> None:
    plant, words = BUYS[name]
    assert words in said(*plant())


FACE = piece("wide", 2000, 1300, hidden_head=mm(60), hidden_foot=mm(90))


def turned(flaw_across: int) -> tuple[ClothPlan, ClothOrder]:
    """Put a face across the roll, its head to the left, with a flaw of 20 mm in the cloth."""
    flaw = Flaw(along=mm(500), across=mm(flaw_across), length=mm(20), width=mm(20))
    roll = Roll(name="a", lot="", usable_width=mm(1400), length=mm(3000), flaws=(flaw,))
    order = ClothOrder(pieces=(FACE,), rolls=(roll,), railroaded=(FACE,))
    place = Placement(
        piece="wide",
        roll="a",
        along=ZERO,
        across=ZERO,
        width=FACE.length,
        length=FACE.width,
        turned=True,
    )
    plan = ClothPlan(
        levels=(CutLength(roll="a", start=ZERO, length=mm(2000), pieces=("wide",)),),
        placements=(place,),
        rolls=(
            RollUse(
                name="a",
                lot="",
                usable_width=mm(1400),
                length=mm(3000),
                origin_along=ZERO,
                used=mm(2000),
            ),
        ),
        remnants=(),
        bought=mm(2000),
        bound=ZERO,
        proven=False,
        railroaded=True,
    )
    return plan, order


@pytest.mark.parametrize(
    ("across", "shows"), [(40, False), (41, True), (700, True), (1209, True), (1210, False)]
)
def test_a_turned_piece_hides_a_flaw_at_its_left_and_right_end(across: int, *, shows: bool) -> None:
    assert said(*turned(across)) == ({"wide: it covers a flaw"} if shows else set())


@pytest.mark.parametrize(("along", "shows"), [(1430, False), (1429, True)])
def test_a_flaw_is_hidden_in_the_hem_turn_to_the_millimetre(along: int, *, shows: bool) -> None:
    flaw = Flaw(along=mm(along), across=ZERO, length=mm(30), width=mm(50))
    rolls = (IN_HAND.rolls[0], replace(IN_HAND.rolls[1], flaws=(flaw,)))
    hem = replace(SMALL, hidden_foot=mm(70))
    order = replace(IN_HAND, pieces=(*IN_HAND.pieces[:3], hem), rolls=rolls)
    assert said(SOUND, order) == ({"B: it covers a flaw"} if shows else set())


def test_a_turned_plan_of_a_cloth_that_may_not_be_turned_is_named() -> None:
    plan, order = turned(40)
    assert "wide: it is cut and nobody wants it" in said(plan, replace(order, railroaded=None))


def test_two_kinds_of_lots_are_told_apart_by_their_group() -> None:
    """Pieces of two rooms that must come from one lot, such as a pair in two bays."""
    apart = replace(IN_HAND, pieces=tuple(replace(p, lot_group="all") for p in IN_HAND.pieces))
    assert "all: its pieces come from 2 dye lots" in said(SOUND, apart)


def test_the_checker_is_made_of_nothing_of_the_planner() -> None:
    """All that it reads, and all that those read, says what an order and a plan are."""
    folder = Path(str(cloth.__file__)).parent
    waiting, read = ["checking.plan"], set[str]()
    while waiting:
        name = waiting.pop()
        read.add(name)
        source = folder / f"{name.replace('.', '/')}.py"
        for node in ast.walk(ast.parse(source.read_text(encoding="utf-8"))):
            module = node.module or "" if isinstance(node, ast.ImportFrom) else ""
            if module.startswith("foldwright.core.cloth."):
                waiting += {module.removeprefix("foldwright.core.cloth.")} - read
            elif module.startswith("foldwright."):
                assert module.split(".")[2] in {"quantity", "why"}, module
    assert read == {
        "checking.plan",
        "checking.cloth",
        "checking.cuts",
        "checking.pattern",
        "checking.second_look",
        "order",
    }
