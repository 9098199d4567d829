"""A plan laid beside its order for a second look: what is looked up often, and boxes on cloth."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPiece,
    ClothPlan,
    Placement,
    Remnant,
    RollUse,
)

Span = tuple[int, int]
Said = Iterator[tuple[str, str]]  # where, and what is wrong there
HAIRS = 2  # nanometres by which two rounded positions may differ
MOST_PARTS = 12  # into which a drop divides the repeat


class Look:
    """A plan beside its order."""

    def __init__(self, plan: ClothPlan, order: ClothOrder) -> None:
        self.plan, self.order = plan, order
        asked = (order.railroaded or ()) if plan.railroaded else order.pieces
        self.asked: dict[str, ClothPiece] = {piece.name: piece for piece in asked}
        self.used: dict[str, RollUse] = {roll.name: roll for roll in plan.rolls}
        self.placed: dict[str, Placement] = {each.piece: each for each in plan.placements}
        self.on_roll: dict[str, list[Placement]] = defaultdict(list)
        for placement in plan.placements:
            self.on_roll[placement.roll].append(placement)


@dataclass(frozen=True, slots=True)
class Spot:
    """A box on a roll, in nanometres."""

    name: str
    along: Span
    across: Span


def spot_of(name: str, box: Placement | Remnant) -> Spot:
    """Give the box that a piece or a remnant fills."""
    return Spot(name, along(box), across(box))


def along(box: Placement | Remnant) -> Span:
    """Give from where to where a box reaches along its roll."""
    return box.along.nanometres, (box.along + box.length).nanometres


def across(box: Placement | Remnant) -> Span:
    """Give from where to where a box reaches across its roll."""
    return box.across.nanometres, (box.across + box.width).nanometres


def meet(one: Span, other: Span) -> bool:
    """Tell whether two spans share more than an edge."""
    return one[0] < other[1] and other[0] < one[1]


def overlapping(spots: Iterable[Spot]) -> Iterator[tuple[Spot, Spot]]:
    """Give each two boxes of one roll that share a place, the one nearer to the end first."""
    waiting = sorted(spots, key=lambda spot: spot.along)
    for number, spot in enumerate(waiting):
        for other in waiting[number + 1 :]:
            if other.along[0] >= spot.along[1]:
                break
            if meet(spot.across, other.across):
                yield spot, other


def nearly(rest: int, period: int) -> int:
    """Give a rest as zero if it is a hair off a whole period.

    Positions are held in whole nanometres and a third of a repeat may not be.
    """
    return 0 if min(rest, period - rest) <= HAIRS * MOST_PARTS else rest


def off(distance: int, period: int) -> bool:
    """Tell whether a distance is not a whole number of periods."""
    return bool(period) and nearly(distance % period, period) != 0
