"""A small plan for examples: a seamed shade from a roll in hand with an 820 mm repeat."""

from __future__ import annotations

from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPiece,
    ClothPlan,
    CutLength,
    Flaw,
    Pattern,
    Placement,
    Remnant,
    Roll,
    RollUse,
    Seam,
)
from foldwright.core.quantity.length import Length


def _mm(value: int) -> Length:
    return Length.mm(value)


ROLL = Roll(
    name="roll 1",
    lot="A",
    usable_width=_mm(1370),
    length=_mm(5000),
    head_loss=_mm(60),
    origin_along=_mm(100),
    flaws=(Flaw(along=_mm(3450), across=_mm(200), length=_mm(40), width=_mm(30)),),
)
ORDER = ClothOrder(
    pieces=(
        ClothPiece(
            name="1 face centre", shade="1", room="Study", layer="face",
            width=_mm(1350), length=_mm(1600), phase_along=_mm(0),
        ),
        ClothPiece(
            name="1 face left", shade="1", room="Study", layer="face",
            width=_mm(300), length=_mm(1600), phase_along=_mm(0),
        ),
        ClothPiece(
            name="1 face right", shade="1", room="Study", layer="face",
            width=_mm(300), length=_mm(1600), phase_along=_mm(0),
        ),
    ),
    pattern=Pattern(vertical_repeat=_mm(820)),
    rolls=(ROLL,),
    spare=_mm(20),
    seams=(
        Seam(left="1 face left", right="1 face centre", across=_mm(274)),
        Seam(left="1 face centre", right="1 face right", across=_mm(1324)),
    ),
)  # fmt: skip
PLAN = ClothPlan(
    levels=(
        CutLength(roll="roll 1", start=_mm(100), length=_mm(1600), pieces=("1 face centre",)),
        CutLength(
            roll="roll 1", start=_mm(1740), length=_mm(1600),
            pieces=("1 face left", "1 face right"), waits_for_repeat=_mm(20),
        ),
    ),
    placements=(
        Placement(
            piece="1 face centre", roll="roll 1",
            along=_mm(100), across=_mm(0), width=_mm(1350), length=_mm(1600),
        ),
        Placement(
            piece="1 face left", roll="roll 1",
            along=_mm(1740), across=_mm(0), width=_mm(300), length=_mm(1600),
        ),
        Placement(
            piece="1 face right", roll="roll 1",
            along=_mm(1740), across=_mm(300), width=_mm(300), length=_mm(1600),
        ),
    ),
    rolls=(
        RollUse(
            name="roll 1", lot="A", usable_width=_mm(1370), length=_mm(5000),
            origin_along=_mm(100), used=_mm(3340),
        ),
    ),
    remnants=(
        Remnant(
            roll="roll 1", along=_mm(1740), across=_mm(600), width=_mm(770), length=_mm(1600),
            uses=("board cover",),
        ),
        Remnant(roll="roll 1", along=_mm(3340), across=_mm(0), width=_mm(1370), length=_mm(1660)),
    ),
    bought=_mm(3340),
    bound=_mm(3340),
    proven=True,
)  # fmt: skip
