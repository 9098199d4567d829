"""A second model of cutting cloth, for a general-purpose optimiser; nothing of the planner.

The planner chooses among whole cut lengths. Here each piece chooses its roll, its cut length
and its place, the place is an origin and whole numbers of repeats along and across, and cut
lengths follow one another on their rolls. All lengths are in millimetres.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from itertools import combinations

from pyscipopt import Model, quicksum

from foldwright.core.cloth.order import Buying, ClothOrder, ClothPiece, Roll
from foldwright.core.quantity.length import Length

Terms = Mapping[int, float]


def least_by_positions(order: ClothOrder, seconds: float = 60.0) -> float:
    """Give the least to buy, or to use of the rolls in hand, in millimetres."""
    least = _Model(order, order.pieces).solve(seconds)
    if order.railroaded is None:
        return least
    turned = [replace(p, width=p.length, length=p.width) for p in order.railroaded]
    return min(least, _Model(order, turned, turned=True).solve(seconds))


def _mm(length: Length) -> float:
    return length.in_millimetres


def _bolts(order: ClothOrder, pieces: Iterable[ClothPiece]) -> tuple[Roll, ...]:
    """Give the rolls in hand, or as many to buy as could be wanted."""
    buying = order.buying
    if buying is None:
        return order.rolls
    repeat, total = order.pattern.vertical_repeat, buying.start_allowance
    for piece in pieces:
        total += piece.length + order.spare + repeat
    one = Roll(
        name="",
        lot="",
        usable_width=buying.usable_width,
        length=buying.whole_roll or total,
        head_loss=buying.start_allowance,
    )
    return (one,) * (1 if buying.whole_roll is None else len(tuple(pieces)))


class _Model:
    """Columns and rows of the model, and what they mean."""

    def __init__(
        self, order: ClothOrder, pieces: Iterable[ClothPiece], *, turned: bool = False
    ) -> None:
        self.order, self.pieces, self.turned = order, tuple(pieces), turned
        self.rolls = _bolts(order, self.pieces)
        self.lows: list[float] = []
        self.highs: list[float] = []
        self.whole: list[int] = []
        self.costs: dict[int, float] = {}
        self.rows: list[tuple[Terms, float]] = []
        self.far = max(_mm(roll.length) for roll in self.rolls)
        self.lengths = range(len(self.pieces))
        self._places()
        self._cut_lengths()
        self._side_by_side()
        self._alike()
        self._patterns()
        self._flaws()
        self._lots()
        self._cost()

    def column(self, low: float, high: float, *, whole: bool = False) -> int:
        self.lows.append(low)
        self.highs.append(high)
        self.whole.append(int(whole))
        return len(self.lows) - 1

    def choice(self) -> int:
        return self.column(0, 1, whole=True)

    def at_most(self, terms: Terms, most: float) -> None:
        self.rows.append((terms, most))

    def exactly(self, terms: Terms, value: float) -> None:
        self.at_most(terms, value)
        self.at_most({column: -by for column, by in terms.items()}, -value)

    def _places(self) -> None:
        """Each piece lies on one roll, in one cut length, at a place."""
        widest = max(_mm(roll.usable_width) for roll in self.rolls)
        self.across = [self.column(0, widest) for _ in self.pieces]
        self.along = [self.column(0, self.far) for _ in self.pieces]
        self.on = [[self.choice() for _ in self.rolls] for _ in self.pieces]
        self.within = [[self.choice() for _ in self.lengths] for _ in self.pieces]
        for piece, across, on, within in zip(
            self.pieces, self.across, self.on, self.within, strict=True
        ):
            self.exactly(dict.fromkeys(on, 1), 1)
            self.exactly(dict.fromkeys(within, 1), 1)
            room = {
                choice: -_mm(roll.usable_width) for choice, roll in zip(on, self.rolls, strict=True)
            }
            self.at_most({across: 1, **room}, -_mm(piece.width))

    def _cut_lengths(self) -> None:
        """Cut lengths follow one another, roll after roll, and hold their pieces."""
        self.start = [self.column(0, self.far) for _ in self.lengths]
        self.end = [self.column(0, self.far) for _ in self.lengths]
        self.of = [[self.choice() for _ in self.rolls] for _ in self.lengths]
        self.used = [self.column(0, _mm(roll.length)) for roll in self.rolls]
        numbers = [dict(zip(of, range(len(of)), strict=True)) for of in self.of]
        for number in self.lengths:
            self.at_most(dict.fromkeys(self.of[number], 1), 1)
            self._on_a_roll(number)
            for piece in range(len(self.pieces)):
                self._holds(number, piece)
        for before, after in zip(self.lengths[:-1], self.lengths[1:], strict=True):
            there = {
                **dict.fromkeys(self.of[before], -1.0),
                **dict.fromkeys(self.of[after], 1.0),
            }
            self.at_most(there, 0)
            many = len(self.rolls)
            rolls = {column: float(n) for column, n in numbers[before].items()}
            rolls |= {column: many - float(n) for column, n in numbers[after].items()}
            self.at_most(rolls, many)
            for one, other in zip(self.of[before], self.of[after], strict=True):
                spare = _mm(self.order.spare)
                apart = {
                    self.end[before]: 1,
                    self.start[after]: -1,
                    one: self.far + spare,
                    other: self.far + spare,
                }
                self.at_most(apart, 2 * (self.far + spare) - spare)

    def _on_a_roll(self, number: int) -> None:
        for roll, of, used in zip(self.rolls, self.of[number], self.used, strict=True):
            self.at_most({self.start[number]: -1, of: _mm(roll.head_loss)}, 0)
            self.at_most({self.end[number]: 1, used: -1, of: self.far}, self.far)

    def _holds(self, number: int, piece: int) -> None:
        within, long = self.within[piece][number], _mm(self.pieces[piece].length)
        self.at_most({within: 1, **dict.fromkeys(self.of[number], -1)}, 0)
        self.at_most({self.start[number]: 1, self.along[piece]: -1, within: self.far}, self.far)
        self.at_most(
            {self.along[piece]: 1, self.end[number]: -1, within: self.far}, self.far - long
        )
        self.at_most({self.start[number]: 1, self.end[number]: -1, within: long}, 0)
        for of, on in zip(self.of[number], self.on[piece], strict=True):
            self.at_most({within: 1, of: 1, on: -1}, 1)

    def _side_by_side(self) -> None:
        """Pieces of one cut length lie beside one another; sides apart lie in two."""
        wide = max(_mm(roll.usable_width) for roll in self.rolls)
        for one, other in combinations(range(len(self.pieces)), 2):
            left, right = self.choice(), self.choice()
            for first, then, choice in ((one, other, left), (other, one, right)):
                gap = {self.across[first]: 1, self.across[then]: -1, choice: wide}
                self.at_most(gap, wide - _mm(self.pieces[first].width))
            partners = self.pieces[one].side_partner, self.pieces[other].side_partner
            pair = self.pieces[other].name == partners[0] or self.pieces[one].name == partners[1]
            for number in self.lengths:
                both = {self.within[one][number]: 1, self.within[other][number]: 1}
                if pair and not self.order.sides_share:
                    self.at_most(both, 1)
                self.at_most({**both, left: -1, right: -1}, 1)
        for number in self.lengths:
            row = {
                within[number]: _mm(piece.width)
                for within, piece in zip(self.within, self.pieces, strict=True)
            }
            self.at_most(row, wide)

    def _alike(self) -> None:
        """Of pieces that can stand for each other, the first lies in the earlier cut length."""
        last: dict[ClothPiece, int] = {}
        for number, piece in enumerate(self.pieces):
            kind = replace(piece, name="", shade="", side_partner=None)
            before = last.get(kind) if self.order.sides_share else None
            last[kind] = number
            if before is not None:
                order = {w: float(n) for n, w in enumerate(self.within[before])}
                order |= {w: -float(n) for n, w in enumerate(self.within[number])}
                self.at_most(order, 0)

    def _patterns(self) -> None:
        """A place is an origin, a phase, and whole repeats; a column to the right stands lower."""
        pattern = self.order.pattern
        repeat, period = _mm(pattern.vertical_repeat), _mm(pattern.horizontal_repeat)
        drop = float(pattern.drop_fraction) * repeat
        begins = [self._origin(roll, repeat) for roll in self.rolls]
        rooms = {room: self.column(0, repeat) for room in sorted(self.order.free_rooms)}
        for number, piece in enumerate(self.pieces):
            column: int | None = None
            if period and not self.turned:
                column = self._column_of(number, piece, period)
            if repeat and piece.phase_along is not None and not self.turned:
                repeats = self.column(*self._repeats(piece, repeat), whole=True)
                lies = {self.along[number]: 1.0, repeats: -repeat}
                if column is not None:
                    lies[column] = -drop
                if piece.room in rooms:
                    lies[rooms[piece.room]] = -1
                self._in_pattern(lies, _mm(piece.phase_along), number, begins)

    def _column_of(self, number: int, piece: ClothPiece, period: float) -> int:
        """Let a piece stand on a column of the pattern: on any, where it has no rule across."""
        pattern = self.order.pattern
        if piece.phase_across is None:
            return self.column(0, pattern.drop_fraction.denominator - 1, whole=True)
        place = _mm(piece.phase_across + pattern.origin_across)
        most = self.highs[self.across[number]] - place
        column = self.column(-place // period, most // period + 1, whole=True)
        self.exactly({self.across[number]: 1, column: -period}, place)
        return column

    def _repeats(self, piece: ClothPiece, repeat: float) -> tuple[float, float]:
        """Give the fewest and the most repeats between the origin and a piece."""
        begins = [abs(_mm(roll.origin_along)) for roll in self.rolls]
        wide = self.highs[self.across[0]] + abs(_mm(piece.phase_across or piece.width))
        columns = wide / (_mm(self.order.pattern.horizontal_repeat) or wide) + 2
        away = abs(_mm(piece.phase_along or piece.length)) + max(begins) + (columns + 2) * repeat
        return -(away // repeat) - 1, (self.far + away) // repeat + 1

    def _origin(self, roll: Roll, repeat: float) -> int:
        known = self.order.buying is None
        low = _mm(roll.origin_along) if known else 0.0
        return self.column(low, low if known else repeat)

    def _in_pattern(
        self, lies: dict[int, float], phase: float, piece: int, begins: list[int]
    ) -> None:
        """Let the pattern count on whichever roll the piece lies."""
        if len(begins) == 1:
            self.exactly({**lies, begins[0]: -1}, phase)
            return
        loose = 9 * self.far
        for on, begin in zip(self.on[piece], begins, strict=True):
            behind = {**lies, begin: -1.0}
            self.at_most({**behind, on: loose}, phase + loose)
            self.at_most({**{c: -by for c, by in behind.items()}, on: loose}, loose - phase)

    def _flaws(self) -> None:
        """A piece on a flawed roll keeps off each flaw at one side, or hides it at an end."""
        for number, piece in enumerate(self.pieces):
            head, foot = _mm(piece.hidden_head), _mm(piece.hidden_foot)
            ends = (head, foot, 0.0, 0.0) if self.turned else (0.0, 0.0, head, foot)
            for on, roll in zip(self.on[number], self.rolls, strict=True):
                for flaw in roll.flaws:
                    ways = [self.choice() for _ in range(4)]
                    self.at_most({on: 1, **dict.fromkeys(ways, -1)}, 0)
                    left, right = _mm(flaw.across), _mm(flaw.across + flaw.width)
                    start, end = _mm(flaw.along), _mm(flaw.along + flaw.length)
                    x, y, far = self.across[number], self.along[number], 2 * self.far
                    wide, long = _mm(piece.width), _mm(piece.length)
                    self.at_most({x: -1, ways[0]: far}, far + ends[0] - right)
                    self.at_most({x: 1, ways[1]: far}, far + left - wide + ends[1])
                    self.at_most({y: -1, ways[2]: far}, far + ends[2] - end)
                    self.at_most({y: 1, ways[3]: far}, far + start - long + ends[3])

    def _lots(self) -> None:
        lots = sorted({roll.lot for roll in self.rolls})
        for group in sorted({piece.one_lot for piece in self.pieces}) if len(lots) > 1 else ():
            chosen = {lot: self.choice() for lot in lots}
            self.exactly(dict.fromkeys(chosen.values(), 1), 1)
            for piece, on in zip(self.pieces, self.on, strict=True):
                for choice, roll in zip(on, self.rolls, strict=True):
                    if piece.one_lot == group:
                        self.at_most({choice: 1, chosen[roll.lot]: -1}, 0)

    def _cost(self) -> None:
        buying = self.order.buying
        if buying is None:
            self.costs = dict.fromkeys(self.used, 1.0)
        elif buying.whole_roll is None:
            self._steps(buying)
        else:
            for roll, used in enumerate(self.used):
                bought = self.choice()
                self.costs[bought] = _mm(buying.whole_roll)
                for number in self.lengths:
                    self.at_most({self.of[number][roll]: 1, bought: -1}, 0)
                self.at_most({used: 1, bought: -_mm(buying.whole_roll)}, 0)

    def _steps(self, buying: Buying) -> None:
        step = _mm(buying.increment)
        least = -(-_mm(buying.least) // step)
        steps = self.column(least, max(least, self.far // step + 1), whole=True)
        self.at_most({self.used[0]: 1, steps: -step}, 0)
        self.costs = {steps: step}

    def solve(self, seconds: float) -> float:
        """Give the least cost; endless where nothing can be cut."""
        model, columns = Model(), []
        model.hideOutput()
        model.setParam("limits/time", seconds)
        for number, (low, high, whole) in enumerate(
            zip(self.lows, self.highs, self.whole, strict=True)
        ):
            kind, cost = "I" if whole else "C", self.costs.get(number, 0.0)
            columns.append(model.addVar(vtype=kind, lb=low, ub=high, obj=cost))
        for terms, most in self.rows:
            model.addCons(quicksum(by * columns[column] for column, by in terms.items()) <= most)
        model.optimize()
        if model.getStatus() == "infeasible":
            return float("inf")
        assert model.getStatus() == "optimal", model.getStatus()
        return float(model.getObjVal())
