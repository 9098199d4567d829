"""A second look at a plan: it reads positions only and shares no code with the planner."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from foldwright.core.cloth.order import (
    ClothOrder,
    ClothPiece,
    ClothPlan,
    CutLength,
    Flaw,
    Placement,
    RollUse,
)
from foldwright.core.why.fault import Fault

Span = tuple[int, int]
PLAN_AGAIN = "Do not cut from this plan; plan the job again."


def faults_of(plan: ClothPlan, order: ClothOrder) -> tuple[Fault, ...]:
    """Say everything that is wrong with a plan.

    Takes: a plan and the order that it answers.

    Gives: one fault for each thing that is wrong; none for a plan that can be cut as printed.

    Source: derived here.

    >>> from foldwright.core.quantity.length import ZERO
    >>> empty = ClothPlan(levels=(), placements=(), rolls=(), remnants=(), bought=ZERO,
    ...                   bound=ZERO, proven=True)
    >>> faults_of(empty, ClothOrder(pieces=()))
    ()
    """
    look = _Look(plan, order)
    said = (
        *look.pieces(),
        *look.rolls(),
        *look.cut_lengths(),
        *look.boxes(),
        *look.overlaps(),
        *look.flaws(),
        *look.phases(),
        *look.seams(),
        *look.lots(),
        *look.sides(),
        *look.amounts(),
    )
    return tuple(Fault(where=where, what=what, remedy=PLAN_AGAIN) for where, what in said)


Said = Iterator[tuple[str, str]]


class _Look:
    """A plan beside its order, with what is looked up often."""

    def __init__(self, plan: ClothPlan, order: ClothOrder) -> None:
        self.plan, self.order = plan, order
        asked = (order.railroaded or ()) if plan.railroaded else order.pieces
        self.asked: dict[str, ClothPiece] = {piece.name: piece for piece in asked}
        self.used: dict[str, RollUse] = {roll.name: roll for roll in plan.rolls}
        self.placed: dict[str, Placement] = {each.piece: each for each in plan.placements}
        self.on_roll: dict[str, list[Placement]] = defaultdict(list)
        for placement in plan.placements:
            self.on_roll[placement.roll].append(placement)

    def pieces(self) -> Said:
        """Look for pieces that are missing, there twice, not wanted, or turned among others."""
        found = Counter(placement.piece for placement in self.plan.placements)
        for name in self.asked.keys() - found.keys():
            yield name, "it is not cut"
        for name, count in found.items():
            if name not in self.asked:
                yield name, "it is cut and nobody wants it"
            elif count > 1:
                yield name, f"it is cut {count} times"
        for placement in self.plan.placements:
            if placement.turned is not self.plan.railroaded:
                yield placement.piece, "it lies turned otherwise than the rest of the cloth"

    def rolls(self) -> Said:
        """Look whether every roll is one in hand, or one as it is sold."""
        in_hand = {roll.name: roll for roll in self.order.rolls}
        for name, times in Counter(roll.name for roll in self.plan.rolls).items():
            if times > 1:
                yield name, "it is used as two rolls"
        for use in self.plan.rolls:
            roll = in_hand.get(use.name)
            if self.order.buying is None and roll is None:
                yield use.name, "there is no such roll"
            elif roll is not None and (roll.lot, roll.usable_width, roll.length) != (
                use.lot,
                use.usable_width,
                use.length,
            ):
                yield use.name, "it is not the roll as it was measured"
            elif roll is not None and _off(
                use.origin_along.nanometres - roll.origin_along.nanometres,
                self.order.pattern.vertical_repeat.nanometres,
            ):
                yield use.name, "its pattern does not begin where it was measured"
            elif self.order.buying and not self._as_sold(use):
                yield use.name, "it is not as the cloth is sold"
        for placement in self.plan.placements:
            if placement.roll not in self.used:
                yield placement.piece, f"it lies on the roll “{placement.roll}”, which is not used"

    def _as_sold(self, use: RollUse) -> bool:
        buying = self.order.buying
        whole = buying.whole_roll if buying else None
        wide = buying is not None and use.usable_width == buying.usable_width
        return wide and (use.length == self.plan.bought if whole is None else use.length == whole)

    def cut_lengths(self) -> Said:
        """Look whether cut lengths follow one another with the spare, edge to edge."""
        named = Counter(name for level in self.plan.levels for name in level.pieces)
        for name in self.placed:
            if named[name] != 1:
                yield name, f"it is called for in {named[name]} cut lengths"
        by_roll: dict[str, list[CutLength]] = defaultdict(list)
        for level in self.plan.levels:
            by_roll[level.roll].append(level)
            yield from self._in_its_length(level)
        for roll, levels in by_roll.items():
            first = self._begin(roll)
            if levels[0].start.nanometres < first:
                yield roll, "the first cut length begins in the cloth that squaring takes off"
            for before, after in pairwise(levels):
                free = before.start + before.length + self.order.spare
                if after.start < free:
                    yield roll, "a cut length begins before the one ahead of it is cut off"
                elif after.waits_for_repeat + after.waits_for_flaw > after.start - free:
                    yield roll, "more cloth is said to be lost than lies between two lengths"

    def _in_its_length(self, level: CutLength) -> Said:
        start, end = level.start.nanometres, (level.start + level.length).nanometres
        right = 0
        for name in level.pieces:
            placement = self.placed.get(name)
            if placement is None or placement.roll != level.roll:
                yield name, "it does not lie in its cut length"
                continue
            low, high = _along(placement)
            if low < start or high > end:
                yield name, "a cut over the full width goes through it"
            left, edge = _across(placement)
            if left < right:
                yield name, "it cannot be cut off edge to edge from the piece to its left"
            right = edge

    def _begin(self, roll: str) -> int:
        for each in self.order.rolls:
            if each.name == roll:
                return each.head_loss.nanometres
        return self.order.buying.start_allowance.nanometres if self.order.buying else 0

    def boxes(self) -> Said:
        """Look whether each piece has its size and lies on the cloth."""
        for placement in self.plan.placements:
            piece, use = self.asked.get(placement.piece), self.used.get(placement.roll)
            if piece is not None and (placement.width, placement.length) != _size(
                piece, turned=placement.turned
            ):
                yield placement.piece, "it is not cut to its size"
            if use is None:
                continue
            (left, right), (start, end) = _across(placement), _along(placement)
            if left < 0 or right > use.usable_width.nanometres:
                yield placement.piece, "it lies over the edge of the cloth"
            if start < 0 or end > use.length.nanometres:
                yield placement.piece, "it lies over the end of the roll"

    def overlaps(self) -> Said:
        """Look for two pieces on one spot."""
        for placements in self.on_roll.values():
            waiting = sorted(placements, key=_along)
            for number, placement in enumerate(waiting):
                for other in waiting[number + 1 :]:
                    if other.along >= placement.along + placement.length:
                        break
                    if _meet(_across(placement), _across(other)):
                        yield other.piece, f"it lies over {placement.piece}"

    def flaws(self) -> Said:
        """Look for flaws where they would be seen."""
        flawed = {roll.name: roll.flaws for roll in self.order.rolls}
        for placement in self.plan.placements:
            piece = self.asked.get(placement.piece)
            for flaw in flawed.get(placement.roll, ()):
                if piece is not None and _shows(flaw, placement, piece):
                    yield placement.piece, "it covers a flaw"

    def phases(self) -> Said:
        """Look whether each piece lies where the pattern must be."""
        rooms: dict[str, set[int]] = {}
        for name, placement in self.placed.items():
            piece, use = self.asked.get(name), self.used.get(placement.roll)
            if piece is None or use is None:
                continue
            if self._off_across(piece, placement):
                yield name, "its pattern stands wrong across"
                continue
            rest = self._rest_along(piece, placement, use)
            if rest is None:
                continue
            if piece.room not in self.order.free_rooms:
                if 0 not in rest:
                    yield name, "its pattern stands wrong along"
            elif not (agreed := self._agreed(rooms.setdefault(piece.room, rest), rest)):
                yield name, "its pattern stands otherwise than in the rest of its room"
            else:
                rooms[piece.room] = agreed

    def _agreed(self, room: set[int], rest: set[int]) -> set[int]:
        """Give the starts in the repeat that a room and one more piece agree on."""
        pattern = self.order.pattern
        repeat = pattern.vertical_repeat.nanometres * pattern.drop_fraction.denominator
        return {here for here in room if any(not _off(here - there, repeat) for there in rest)}

    def _off_across(self, piece: ClothPiece, placement: Placement) -> bool:
        pattern = self.order.pattern
        if piece.phase_across is None or placement.turned:
            return False
        asked = (piece.phase_across + pattern.origin_across).nanometres
        return _off(placement.across.nanometres - asked, pattern.horizontal_repeat.nanometres)

    def _rest_along(self, piece: ClothPiece, placement: Placement, use: RollUse) -> set[int] | None:
        """Give how far it stands behind its phase, in parts of a nanometre; None without rule."""
        pattern = self.order.pattern
        repeat, across = pattern.vertical_repeat.nanometres, pattern.horizontal_repeat.nanometres
        if piece.phase_along is None or not repeat or placement.turned:
            return None
        parts = pattern.drop_fraction.denominator
        drops = range(parts) if across else (0,)
        if piece.phase_across is not None and across:
            aside = placement.across - pattern.origin_across - piece.phase_across
            drops = (aside.nanometres // across,)
        lies = (placement.along - use.origin_along - piece.phase_along).nanometres * parts
        down = repeat * pattern.drop_fraction.numerator
        return {_nearly((lies - drop * down) % (repeat * parts), repeat * parts) for drop in drops}

    def seams(self) -> Said:
        """Look at each seam from positions alone: what meets there must be the same print."""
        pattern = self.order.pattern
        for seam in () if self.plan.railroaded else self.order.seams:
            left, right = self.placed.get(seam.left), self.placed.get(seam.right)
            if left is None or right is None or not {left.roll, right.roll} <= self.used.keys():
                continue
            aside = (right.across - left.across - seam.across).nanometres
            period, repeat = (
                pattern.horizontal_repeat.nanometres,
                pattern.vertical_repeat.nanometres,
            )
            name = f"{seam.left} and {seam.right}"
            if _off(aside, period):
                yield name, "the pattern breaks at the seam, across"
            elif repeat and self._breaks_along(left, right, aside):
                yield name, "the pattern breaks at the seam, along"

    def _breaks_along(self, left: Placement, right: Placement, aside: int) -> bool:
        pattern = self.order.pattern
        period, repeat = pattern.horizontal_repeat.nanometres, pattern.vertical_repeat.nanometres
        parts = pattern.drop_fraction.denominator
        origins = (
            self.used[right.roll].origin_along - self.used[left.roll].origin_along
        ).nanometres
        ahead = (right.along - left.along).nanometres - origins
        aside_repeats = round(Fraction(aside, period)) if period else 0
        drop = aside_repeats * repeat * pattern.drop_fraction.numerator
        return _off(ahead * parts - drop, repeat * parts)

    def lots(self) -> Said:
        """Look for rooms of two dye lots."""
        found: dict[str, set[str]] = defaultdict(set)
        for name, placement in self.placed.items():
            if name in self.asked and placement.roll in self.used:
                found[self.asked[name].one_lot].add(self.used[placement.roll].lot)
        for group, lots in found.items():
            if len(lots) > 1:
                yield group, f"its pieces come from {len(lots)} dye lots"

    def sides(self) -> Said:
        """Look for both sides of a shade in one cut length where they are kept apart."""
        for level in () if self.order.sides_share else self.plan.levels:
            for name in level.pieces:
                piece = self.asked.get(name)
                if piece is not None and piece.side_partner in level.pieces:
                    yield name, "it shares a cut length with the other side of its shade"

    def amounts(self) -> Said:
        """Look whether what is used and bought is what is said, and no less than the bound."""
        total = 0
        for use in self.plan.rolls:
            end = max((_along(each)[1] for each in self.on_roll[use.name]), default=0)
            if abs(use.used.nanometres - end) > 1:
                yield use.name, "what is used of it is not what is said"
            total += end
        bought = self.plan.bought.nanometres
        if self.order.buying is None and abs(bought - total) > len(self.plan.rolls):
            yield "bought", "it is not what is used of the rolls"
        if self.order.buying is not None and bought != self._to_buy(total):
            yield "bought", "it is not what must be bought"
        if self.plan.bound.nanometres > bought:
            yield "bound", "the plan takes less than is said to be possible"
        if self.plan.proven and self.plan.bound.nanometres != bought:
            yield "bound", "the plan is said to be proven and the bound is below it"

    def _to_buy(self, used: int) -> int:
        buying = self.order.buying
        assert buying is not None  # noqa: S101 - asked only of orders to buy
        if buying.whole_roll is not None:
            whole = buying.whole_roll.nanometres
            return max(len(self.plan.rolls), -(-buying.least.nanometres // whole)) * whole
        step = buying.increment.nanometres
        return -(-max(used, buying.least.nanometres) // step) * step


def _size(piece: ClothPiece, *, turned: bool) -> tuple[object, object]:
    return (piece.length, piece.width) if turned else (piece.width, piece.length)


def _along(placement: Placement) -> Span:
    return placement.along.nanometres, (placement.along + placement.length).nanometres


def _across(placement: Placement) -> Span:
    return placement.across.nanometres, (placement.across + placement.width).nanometres


def _meet(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]


def _shows(flaw: Flaw, placement: Placement, piece: ClothPiece) -> bool:
    along, across = _along(placement), _across(placement)
    head, foot = piece.hidden_head.nanometres, piece.hidden_foot.nanometres
    if placement.turned:
        across = across[0] + head, across[1] - foot
    else:
        along = along[0] + head, along[1] - foot
    flawed_along = flaw.along.nanometres, (flaw.along + flaw.length).nanometres
    flawed_across = flaw.across.nanometres, (flaw.across + flaw.width).nanometres
    return _meet(along, flawed_along) and _meet(across, flawed_across)


def _nearly(rest: int, period: int) -> int:
    """Give a rest as zero if it is a hair below a whole period.

    Positions are held in whole nanometres and a third of a repeat may not be.
    """
    return 0 if min(rest, period - rest) <= HAIRS * 12 else rest


HAIRS = 2  # nanometres by which two rounded positions may differ


def _off(distance: int, period: int) -> bool:
    """Tell whether a distance is not a whole number of periods."""
    return bool(period) and _nearly(distance % period, period) != 0
