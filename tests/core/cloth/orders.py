"""Small orders and a plan made by hand, without any planner."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from foldwright.core.cloth.order import (
    Buying,
    ClothOrder,
    ClothPiece,
    ClothPlan,
    CutLength,
    Flaw,
    Pattern,
    Placement,
    Roll,
    RollUse,
    Seam,
)
from foldwright.core.quantity.length import ZERO, Length


def mm(value: float) -> Length:
    return Length.mm(Fraction(value))


def piece(name: str, width: float, length: float, **more: object) -> ClothPiece:
    known = {"shade": name, "room": "den", "layer": "face"} | more
    return ClothPiece(name=name, width=mm(width), length=mm(length), **known)  # type: ignore[arg-type]


def to_buy(*pieces: ClothPiece, width: float = 1400, step: float = 1, **more: object) -> ClothOrder:
    buying = Buying(usable_width=mm(width), increment=mm(step))
    return ClothOrder(pieces=pieces, buying=buying, **more)  # type: ignore[arg-type]


def roll(name: str, length: float, width: float = 1400, **more: object) -> Roll:
    return Roll(name=name, usable_width=mm(width), length=mm(length), **({"lot": "A"} | more))  # type: ignore[arg-type]


CENTRE = piece("AC", 1000, 1500, shade="A", phase_across=ZERO, phase_along=ZERO)
LEFT = replace(CENTRE, name="AL", width=mm(300), phase_across=mm(440), side_partner="AR")
RIGHT = replace(LEFT, name="AR", phase_across=mm(260), side_partner="AL")
SMALL = piece("B", 500, 800, room="hall", phase_along=ZERO, hidden_head=mm(50))

IN_HAND = ClothOrder(
    pieces=(CENTRE, LEFT, RIGHT, SMALL),
    pattern=Pattern(vertical_repeat=mm(600), horizontal_repeat=mm(700)),
    rolls=(
        roll("one", 6000),
        roll(
            "two",
            3000,
            lot="B",
            head_loss=mm(30),
            origin_along=mm(100),
            flaws=(Flaw(along=mm(690), across=ZERO, length=mm(30), width=mm(50)),),
        ),
    ),
    spare=mm(20),
    seams=(
        Seam(left="AL", right="AC", across=mm(260)),
        Seam(left="AC", right="AR", across=mm(960)),
    ),
)


def put(asked: ClothPiece, roll_name: str, along: float, across: float) -> Placement:
    return Placement(
        piece=asked.name,
        roll=roll_name,
        along=mm(along),
        across=mm(across),
        width=asked.width,
        length=asked.length,
    )


SOUND = ClothPlan(
    levels=(
        CutLength(roll="one", start=mm(600), length=mm(1500), pieces=("AC",)),
        CutLength(
            roll="one",
            start=mm(2400),
            length=mm(1500),
            pieces=("AL", "AR"),
            waits_for_repeat=mm(280),
        ),
        CutLength(roll="two", start=mm(700), length=mm(800), pieces=("B",)),
    ),
    placements=(
        put(CENTRE, "one", 600, 0),
        put(LEFT, "one", 2400, 440),
        put(RIGHT, "one", 2400, 960),
        put(SMALL, "two", 700, 0),
    ),
    rolls=(
        RollUse(
            name="one",
            lot="A",
            usable_width=mm(1400),
            length=mm(6000),
            origin_along=ZERO,
            used=mm(3900),
        ),
        RollUse(
            name="two",
            lot="B",
            usable_width=mm(1400),
            length=mm(3000),
            origin_along=mm(100),
            used=mm(1500),
        ),
    ),
    remnants=(),
    bought=mm(5400),
    bound=mm(5000),
    proven=False,
)
