"""The least cloth for a tiny job, by trying every way on a coarse grid; nothing of the planner.

All sizes are whole steps of the grid. A cut length that ends earlier is never worse for what
follows, so the least end after each set of pieces is found from the least ends of its parts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache
from itertools import product

from foldwright.core.cloth.order import ClothOrder, ClothPiece, Roll
from foldwright.core.quantity.length import Length

NEVER = 10**9


def least_cloth(order: ClothOrder, step: Length) -> int:
    """Give the least that must be bought or used, in steps of the grid."""
    rooms = sorted(order.free_rooms & {p.room for p in order.pieces if p.phase_along is not None})
    repeat = _steps(order.pattern.vertical_repeat, step) or 1
    best = NEVER
    for shifts in product(range(repeat), repeat=len(rooms)):
        moved = dict(zip(rooms, shifts, strict=True))
        best = min(best, _Grid(order, step, moved).least())
    if order.railroaded is not None:
        turned = replace(
            order,
            pieces=tuple(replace(p, width=p.length, length=p.width) for p in order.railroaded),
            railroaded=None,
            seams=(),
        )
        best = min(best, least_cloth(turned, step))
    return best


def _steps(length: Length, step: Length) -> int:
    ratio = Fraction(length.nanometres, step.nanometres)
    assert ratio.denominator == 1, "not on the grid"
    return ratio.numerator


class _Grid:
    def __init__(self, order: ClothOrder, step: Length, moved: dict[str, int]) -> None:
        self.order, self.step, self.moved = order, step, moved
        self.repeat = _steps(order.pattern.vertical_repeat, step)
        self.period = _steps(order.pattern.horizontal_repeat, step)
        self.x0 = _steps(order.pattern.origin_across, step)
        self.spare = _steps(order.spare, step)
        self.pieces = order.pieces

    def least(self) -> int:
        if self.order.buying is None:
            return self._of_rolls()
        buying = self.order.buying
        begin, sold = _steps(buying.start_allowance, self.step), _steps(buying.increment, self.step)
        everything = (1 << len(self.pieces)) - 1
        used = NEVER
        for origin in range(self.repeat or 1):
            bolt = Roll(
                name="",
                lot="",
                usable_width=buying.usable_width,
                length=self.step * NEVER,
                head_loss=self.step * begin,
                origin_along=self.step * origin,
            )
            used = min(used, self._ends(bolt)(everything))
        return -(-max(used, _steps(buying.least, self.step)) // sold) * sold

    def _of_rolls(self) -> int:
        """Deal the pieces out to the rolls in every way."""
        ends = [self._ends(roll) for roll in self.order.rolls]
        best = NEVER
        for choice in product(range(len(ends)), repeat=len(self.pieces)):
            lots: dict[str, set[str]] = {}
            for piece, roll in zip(self.pieces, choice, strict=True):
                lots.setdefault(piece.one_lot, set()).add(self.order.rolls[roll].lot)
            if any(len(some) > 1 for some in lots.values()):
                continue
            total = 0
            for number, end in enumerate(ends):
                some = sum(1 << p for p, roll in enumerate(choice) if roll == number)
                total += end(some) if some else 0
            best = min(best, total)
        return best

    def _ends(self, roll: Roll):  # type: ignore[no-untyped-def]  # noqa: ANN202 - a cached function
        @cache
        def end(some: int) -> int:
            if not some:
                return _steps(roll.head_loss, self.step) - self.spare
            best, last = NEVER, some
            while last:
                before = end(some & ~last)
                if before < best:
                    best = min(best, self._end_of(roll, last, before + self.spare))
                last = (last - 1) & some
            return best if best <= _steps(roll.length, self.step) else NEVER

        return end

    def _end_of(self, roll: Roll, some: int, after: int) -> int:
        """Give the least end of one cut length with these pieces, all behind a position."""
        pieces = [p for n, p in enumerate(self.pieces) if some >> n & 1]
        if not self.order.sides_share:
            names = {p.name for p in pieces}
            if any(p.side_partner in names for p in pieces):
                return NEVER
        width = _steps(roll.usable_width, self.step)
        if sum(_steps(p.width, self.step) for p in pieces) > width:
            return NEVER
        return min(self._across(roll, pieces, after, [False] * width), default=NEVER)

    def _across(
        self, roll: Roll, pieces: list[ClothPiece], after: int, taken: list[bool]
    ) -> Iterator[int]:
        if not pieces:
            yield after
            return
        piece, wide = pieces[0], _steps(pieces[0].width, self.step)
        for left in range(len(taken) - wide + 1):
            if any(taken[left : left + wide]) or not self._may_stand(piece, left):
                continue
            end = self._along(roll, piece, left, after) + _steps(piece.length, self.step)
            now = [was or left <= x < left + wide for x, was in enumerate(taken)]
            for rest in self._across(roll, pieces[1:], after, now):
                yield max(end, rest)

    def _may_stand(self, piece: ClothPiece, left: int) -> bool:
        if piece.phase_across is None or not self.period:
            return True
        return (left - self.x0 - _steps(piece.phase_across, self.step)) % self.period == 0

    def _along(self, roll: Roll, piece: ClothPiece, left: int, after: int) -> int:
        for along in range(after, after + 200):
            if self._in_pattern(roll, piece, left, along) and self._sound(roll, piece, left, along):
                return along
        return NEVER

    def _in_pattern(self, roll: Roll, piece: ClothPiece, left: int, along: int) -> bool:
        if piece.phase_along is None or not self.repeat:
            return True
        down = self.repeat * self.order.pattern.drop_fraction
        columns = range(self.order.pattern.drop_fraction.denominator if self.period else 1)
        if piece.phase_across is not None and self.period:
            aside = left - self.x0 - _steps(piece.phase_across, self.step)
            columns = range(aside // self.period, aside // self.period + 1)
        head = along - _steps(roll.origin_along, self.step) - _steps(piece.phase_along, self.step)
        head -= self.moved.get(piece.room, 0)
        return any((head - column * down) % self.repeat == 0 for column in columns)

    def _sound(self, roll: Roll, piece: ClothPiece, left: int, along: int) -> bool:
        right = left + _steps(piece.width, self.step)
        head = along + _steps(piece.hidden_head, self.step)
        foot = along + _steps(piece.length, self.step) - _steps(piece.hidden_foot, self.step)
        for flaw in roll.flaws:
            f_along, f_across = _steps(flaw.along, self.step), _steps(flaw.across, self.step)
            f_end = f_along + _steps(flaw.length, self.step)
            f_right = f_across + _steps(flaw.width, self.step)
            if left < f_right and f_across < right and head < f_end and f_along < foot:
                return False
        return True
