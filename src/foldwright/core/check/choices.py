"""What the last look over an order asks beyond the shade: cutting, fixing, parcel."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.pieces.matching import PatternAcross, PatternAlong
from foldwright.core.quantity.length import Length


class Nap(Enum):
    """Which way the pile runs, or the print stands, on the hanging shade."""

    UP = "up"
    DOWN = "down"


class FixingPlace(Enum):
    """What the fixings are to hold in, where the ground itself takes no screw."""

    THROUGH = "through it, into what stands behind"
    BESIDE = "beside it"


@dataclass(frozen=True, kw_only=True, slots=True)
class Cutting:
    """How the face is to be cut; None is not said yet."""

    roll: str = ""  # the roll in hand that it is cut from
    turned: bool = False  # turned a quarter on the roll, its length across
    nap: Nap | None = None
    motif_height: Length | None = None
    motif_above_hem: Length | None = None  # centre of any motif over the bottom edge
    half_drop_planned: bool = False  # the second width begins half a repeat further on
    pattern_across: PatternAcross = PatternAcross.MOTIF
    pattern_along: PatternAlong = PatternAlong.HEM
    sides_apart: bool = False  # the two sides of one face never come from one cut length
    lining_shrinkage: float | None = None  # share, from the shop's own steam test


@dataclass(frozen=True, kw_only=True, slots=True)
class FixingPlan:
    """How the board is held."""

    count: int | None = None
    from_end: Length | None = None  # the outermost, to the end of the board
    place: FixingPlace | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Delivery:
    """How the shade travels."""

    box_length: Length | None = None
    longest_passage: Length | None = None  # that passes stair, lift or car
