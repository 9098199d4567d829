"""The cuts of a plan in the order of the table: from which mark to which, and what is left."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from string import ascii_lowercase

from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPlan,
    CutLength,
    Placement,
    Remnant,
    RollUse,
)
from foldwright.core.facts.order_limits import LEAST_REMNANT
from foldwright.core.quantity.length import ZERO, Length


@dataclass(frozen=True, kw_only=True, slots=True)
class CutPiece:
    """One piece of a cut length: between which marks from the left it is ripped.

    `head_trim` and `foot_trim` are what is trimmed off it at the start and the end of the
    cut length, so that its pattern begins where it must.
    """

    key: str  # short enough for the drawing: the number of its cut, and its place from the left
    name: str
    rip_from: Length
    rip_to: Length
    width: Length
    length: Length
    head_trim: Length
    foot_trim: Length
    turned: bool = False
    partners: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Cut:
    """One cut length; marks are from the roll's outer end.

    `start_in_repeat` is how far behind the beginning of a repeat the first mark lies; None
    where the cloth has no repeat along, or where nobody knows yet where it begins.
    """

    number: int
    start: Length
    end: Length
    waste_before: Length
    start_in_repeat: Length | None
    pieces: tuple[CutPiece, ...]
    left_on_roll: Length | None

    @property
    def length(self) -> Length:
        """Give the length to cut off."""
        return self.end - self.start


@dataclass(frozen=True, kw_only=True, slots=True)
class RollCuts:
    """One roll with its cuts from the outer end inwards, and what is left of it."""

    use: RollUse
    in_hand: bool
    cuts: tuple[Cut, ...]
    remnants: tuple[Remnant, ...]
    lost_to_repeat: Length
    lost_to_flaws: Length

    @property
    def worth_keeping(self) -> tuple[Remnant, ...]:
        """Give what is left that is no mere strip, the first along the roll first."""
        least = LEAST_REMNANT.value
        kept = (left for left in self.remnants if min(left.width, left.length) >= least)
        return tuple(sorted(kept, key=lambda left: (left.along, left.across)))


def cut_list(plan: ClothPlan, order: ClothOrder) -> tuple[RollCuts, ...]:
    """List what is cut from each roll, in the order in which it is cut.

    Takes: a plan that has been checked, and the order it answers.

    Gives: the rolls that are cut, as the plan lists them; cuts are numbered through.

    Source: common practice (what a cut sheet holds).

    >>> from foldwright.core.cloth.example import ORDER, PLAN
    >>> [cut.start.in_millimetres for roll in cut_list(PLAN, ORDER) for cut in roll.cuts]
    [100.0, 1740.0]
    """
    listed: list[RollCuts] = []
    number = 1
    for use in plan.rolls:
        cuts = tuple(_cuts(use, plan, order, number))
        if cuts:
            listed.append(_roll(use, cuts, plan, order))
            number += len(cuts)
    return tuple(listed)


def _roll(use: RollUse, cuts: tuple[Cut, ...], plan: ClothPlan, order: ClothOrder) -> RollCuts:
    levels = [level for level in plan.levels if level.roll == use.name]
    return RollCuts(
        use=use,
        in_hand=any(roll.name == use.name for roll in order.rolls),
        cuts=cuts,
        remnants=tuple(left for left in plan.remnants if left.roll == use.name),
        lost_to_repeat=sum((level.waits_for_repeat for level in levels), ZERO),
        lost_to_flaws=sum((level.waits_for_flaw for level in levels), ZERO),
    )


def _cuts(use: RollUse, plan: ClothPlan, order: ClothOrder, first: int) -> Iterator[Cut]:
    levels = sorted(
        (level for level in plan.levels if level.roll == use.name),
        key=lambda level: level.start,
    )
    before = ZERO
    for number, level in enumerate(levels, start=first):
        end = level.start + level.length
        yield Cut(
            number=number,
            start=level.start,
            end=end,
            waste_before=level.start - before,
            start_in_repeat=_in_repeat(level, use, order),
            pieces=tuple(_pieces(number, level, plan, order)),
            left_on_roll=use.length - end if use.length else None,
        )
        before = end


def _in_repeat(level: CutLength, use: RollUse, order: ClothOrder) -> Length | None:
    """Give how far into its repeat a cut length begins, on a roll that has been measured."""
    repeat = order.pattern.vertical_repeat
    if not repeat or not order.rolls:
        return None
    return Length((level.start - use.origin_along).nanometres % repeat.nanometres)


def _pieces(
    number: int, level: CutLength, plan: ClothPlan, order: ClothOrder
) -> Iterator[CutPiece]:
    """List the pieces of a cut length from left to right."""
    places = [place for place in plan.placements if place.piece in level.pieces]
    for nth, place in enumerate(sorted(places, key=lambda place: place.across)):
        head_trim = place.along - level.start
        yield CutPiece(
            key=f"{number}{_letter(nth)}" if len(places) > 1 else str(number),
            name=place.piece,
            rip_from=place.across,
            rip_to=place.across + place.width,
            width=place.width,
            length=place.length,
            head_trim=head_trim,
            foot_trim=level.length - head_trim - place.length,
            turned=place.turned,
            partners=_partners(place, order),
        )


def _letter(nth: int) -> str:
    """Give a, b, c and so on; beyond the alphabet by two letters."""
    more, last = divmod(nth, len(ascii_lowercase))
    return (_letter(more - 1) if more else "") + ascii_lowercase[last]


def _partners(place: Placement, order: ClothOrder) -> tuple[str, ...]:
    """Name the pieces that are sewn to this one, the left neighbour first."""
    left = [seam.left for seam in order.seams if seam.right == place.piece]
    right = [seam.right for seam in order.seams if seam.left == place.piece]
    return (*left, *right)
