"""The least cloth wherever free rooms start: what is open is narrowed down step by step.

As long as it is open whether a condition on where rooms start holds, every cut length is
taken for as short as it could be either way; what that takes is a bound for all starts that
are left. The bound of the whole job is the least over all that is left open.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from heapq import heappop, heappush

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csc_array

from foldwright.core.cloth.choosing.counting import LongOnes
from foldwright.core.cloth.rooms.gathering import Rooms, Together, all_together
from foldwright.core.cloth.rooms.repeats import Condition, Turn, turns_of, widest

Reals = NDArray[np.float64]
Whole = NDArray[np.int64]
Mask = NDArray[np.bool_]

MOST_SETS = 1_500
MOST_TURNS = 6_000
MOST_STEPS = 2_000
NODES = 2_000  # branches to look at, where whole cut lengths are chosen
A_HAIR = 1e-6
SLACK = 1e-3  # mm that a solver's least may be too high by
INFEASIBLE = 2  # as the solver says it


@dataclass(frozen=True, slots=True)
class Left:
    """Starts that are left: which conditions hold and which do not, and what follows."""

    holds: tuple[int, ...]
    fails: tuple[int, ...]
    behind: Whole  # how far at least the room of a column starts behind that of a row
    open: Mask  # conditions that may still hold or not


@dataclass(frozen=True, slots=True)
class Relaxed:
    """What the starts that are left take at least (mm), and which turns are then taken."""

    least: float
    turns: Whole
    shares: Reals


class Narrowing:
    """The search; `bound` rises step by step and holds at any time."""

    def __init__(  # noqa: PLR0913, PLR0917 - what is to be cut, and what is known of it
        self,
        rooms: Rooms,
        sets: Sequence[Together],
        turns: Sequence[Turn],
        rolls: int,
        worth: float,
        steps: Sequence[tuple[int, int]],
    ) -> None:
        self.rooms = rooms
        self.conditions = sorted({each for turn in turns for each in turn.conditions})
        self.count = len(set(rooms.room))
        self.model = _Model(rooms, sets, turns, rolls, steps, self.conditions)
        self.waiting: list[tuple[float, int, Left, Relaxed]] = []
        self.steps = 0
        self.settled = worth
        self._look((), (), 0.0)

    @property
    def bound(self) -> float:
        """Give a length (mm) that no plan can be under, or the greatest worth finding."""
        return min(self.settled, self.waiting[0][0]) if self.waiting else self.settled

    def run(self, seconds_left: Callable[[], float]) -> list[dict[str, int]]:
        """Narrow down until all is settled or the time is used; give starts that came out."""
        found: list[dict[str, int]] = []
        while self.waiting and self.steps < MOST_STEPS and seconds_left() > 0:
            least, _, left, relaxed = heappop(self.waiting)
            condition = self.model.undecided(left, relaxed)
            if condition is None:
                self._settle(left, least, seconds_left, found)
                continue
            # Both halves are looked at before time is read again: what is taken off the
            # heap must be back on it, or settled, whenever the bound is read.
            self._look((*left.holds, condition), left.fails, least)
            self._look(left.holds, (*left.fails, condition), least)
        return found

    def _look(self, holds: tuple[int, ...], fails: tuple[int, ...], at_least: float) -> None:
        """Put starts that are left on the heap, unless nothing worth finding is among them."""
        self.steps += 1
        left = _left(self.rooms, self.count, self.conditions, holds, fails)
        relaxed = None if left is None else self.model.relaxed(left)
        if left is None or relaxed is None:
            return
        least = max(at_least, relaxed.least)
        if least < self.settled - A_HAIR:
            heappush(self.waiting, (least, self.steps, left, relaxed))

    def _settle(
        self,
        left: Left,
        least: float,
        seconds_left: Callable[[], float],
        found: list[dict[str, int]],
    ) -> None:
        """Choose whole cut lengths for starts between which nothing matters any more."""
        whole = self.model.chosen(left, max(seconds_left(), 0.0))
        if whole is None:
            return
        least = max(least, whole.least)
        if least >= self.settled - A_HAIR:
            return
        condition = self.model.undecided(left, whole)
        if condition is None:
            self.settled = least
            found.append(self._starts(left))
            return
        self._look((*left.holds, condition), left.fails, least)
        self._look(left.holds, (*left.fails, condition), least)

    def _starts(self, left: Left) -> dict[str, int]:
        """Give starts that are left: each room as early as may be behind the first."""
        places = left.behind[0]
        fixed = next((n for n, names in enumerate(self.rooms.names) if not names), None)
        origin = 0 if fixed is None else int(places[fixed])
        return {
            name: int(places[number] - origin) % self.rooms.repeat
            for number, names in enumerate(self.rooms.names)
            for name in names
        }


def _left(
    rooms: Rooms,
    count: int,
    conditions: Sequence[Condition],
    holds: tuple[int, ...],
    fails: tuple[int, ...],
) -> Left | None:
    """Give the starts that are left, None if there are none."""
    behind = np.array(
        [[widest(rooms, one, other)[0] for other in range(count)] for one in range(count)],
        dtype=np.int64,
    )
    for number in holds:
        each = conditions[number]
        behind[each.before, each.after] = max(behind[each.before, each.after], each.least)
    for number in fails:
        each = conditions[number]
        behind[each.after, each.before] = max(behind[each.after, each.before], 1 - each.least)
    for room in range(count):
        np.maximum(behind, behind[:, [room]] + behind[[room], :], out=behind)
    if (np.diag(behind) > 0).any():
        return None
    undecided = [
        behind[each.before, each.after] < each.least <= -behind[each.after, each.before]
        for each in conditions
    ]
    return Left(holds, fails, behind, np.array(undecided, dtype=np.bool_))


class _Model:
    """The turns as rows and columns: pieces to cut, long cut lengths, marks, closing gaps."""

    def __init__(  # noqa: PLR0913, PLR0917 - what is to be cut, and what is known of it
        self,
        rooms: Rooms,
        sets: Sequence[Together],
        turns: Sequence[Turn],
        rolls: int,
        steps: Sequence[tuple[int, int]],
        conditions: Sequence[Condition],
    ) -> None:
        self.rooms, self.rolls = rooms, rolls
        cloth = rooms.plain
        self.opening = min(bolt.begin for bolt in cloth.bolts) - cloth.spare
        self.sets = np.array([turn.together for turn in turns])
        holding = np.zeros((len(sets), len(cloth.kinds)))
        for number, some in enumerate(sets):
            for kind, often in some:
                holding[number, kind] = often
        self.holds_all: Mask = np.ones((len(sets), len(sets)), dtype=np.bool_)
        for column in holding.T:
            self.holds_all &= np.greater_equal.outer(column, column)
        tallest = np.array([cloth.kinds[some[0][0]].length for some in sets])
        longer = np.array([tallest > step for step, _ in steps]).reshape(len(steps), len(sets))
        self.cover = np.concatenate([holding.T, longer])[:, self.sets]
        self.wanted = np.array(
            [*(kind.count for kind in cloth.kinds), *(n for _, n in steps)], float
        )
        marks = sorted(set(zip(rooms.room, rooms.behind, strict=True)))
        starts = np.array([marks.index(turn.start) for turn in turns])
        ends = np.array([marks.index(turn.end) for turn in turns])
        self.ways = starts * len(marks) + ends
        rows = np.arange(len(marks))[:, None]
        self.flow = (ends == rows).astype(float) - (starts == rows)
        self.repeats = np.array([turn.repeats for turn in turns], dtype=np.int64)
        self.asks = np.zeros((len(turns), len(conditions)), dtype=np.bool_)
        numbers = {condition: number for number, condition in enumerate(conditions)}
        for row, turn in enumerate(turns):
            self.asks[row, [numbers[each] for each in turn.conditions]] = True
        self.conditions = np.array([(c.before, c.after, c.least) for c in conditions]).reshape(
            -1, 3
        )
        self._set_bars(turns)
        self.order = np.lexsort((self.repeats, self.ways, self.sets))

    def _set_bars(self, turns: Sequence[Turn]) -> None:
        most = max(len(turn.bars) for turn in turns)
        shape = len(turns), most
        self.bar_rooms = np.zeros(shape, dtype=np.int64)
        self.bar_gaps = np.full(shape, 2**60, dtype=np.int64)
        self.bar_ends = np.array([turn.end[0] for turn in turns])[:, None]
        for row, turn in enumerate(turns):
            for column, bar in enumerate(turn.bars):
                self.bar_rooms[row, column] = bar.room
                self.bar_gaps[row, column] = bar.gap

    def relaxed(self, left: Left) -> Relaxed | None:
        """Solve without whole numbers; None if the starts that are left allow nothing."""
        turns, costs, last = self._columns(left)
        cover, flow, closes = self.cover[:, turns], self.flow[:, turns], last.astype(float)
        solved = linprog(  # type: ignore[call-overload]  # its stubs know no sparse matrices
            costs,
            A_ub=csc_array(np.vstack([-cover, -closes, closes])),
            b_ub=np.array([*-self.wanted, -1.0, float(self.rolls)]),
            A_eq=csc_array(flow),
            b_eq=np.zeros(len(flow)),
            method="highs",
        )
        if solved.x is None:
            return (
                None if solved.status == INFEASIBLE else Relaxed(0.0, turns, np.zeros(len(turns)))
            )
        return Relaxed(float(solved.fun) - SLACK, turns, solved.x)

    def chosen(self, left: Left, seconds: float) -> Relaxed | None:
        """Solve in whole numbers; None if the starts that are left allow nothing."""
        turns, costs, last = self._columns(left)
        solved = milp(
            costs,
            constraints=[
                LinearConstraint(csc_array(self.cover[:, turns]), lb=self.wanted),
                LinearConstraint(csc_array(self.flow[:, turns]), lb=0.0, ub=0.0),
                LinearConstraint(last.astype(float)[None], lb=1.0, ub=float(self.rolls)),
            ],
            integrality=np.ones(len(turns), dtype=np.int_),
            bounds=Bounds(lb=0.0, ub=np.inf),
            options={"time_limit": max(seconds, 0.01), "mip_rel_gap": 0.0, "node_limit": NODES},
        )
        if solved.status == INFEASIBLE:
            return None
        least = (solved.mip_dual_bound or 0.0) - SLACK
        shares = np.zeros(len(turns)) if solved.x is None else solved.x
        return Relaxed(float(least), turns, shares)

    def undecided(self, left: Left, relaxed: Relaxed) -> int | None:
        """Give the open condition that most of what is taken asks for, None if none does."""
        asked = relaxed.shares @ self.asks[relaxed.turns] * left.open
        if not len(asked) or asked.max() <= A_HAIR:
            return None
        return int(asked.argmax())

    def _columns(self, left: Left) -> tuple[Whole, Reals, Mask]:
        """Give the turns that may pay, what each costs (mm), and which close a roll."""
        turns = self._fewest_repeats(left)
        per_mm, repeat = self.rooms.plain.per_mm, self.rooms.repeat
        onward = self.repeats[turns] * repeat
        most = -left.behind.T[self.bar_rooms[turns], self.bar_ends[turns]]
        gaps = np.clip((self.bar_gaps[turns] + most).min(axis=1), 0, repeat - 1)
        last = onward - gaps + self.opening
        go, close = self._paying(turns, onward), self._paying(turns, last)
        costs = np.concatenate([onward[go], last[close]]) / per_mm
        closes: Mask = np.arange(len(costs)) >= np.count_nonzero(go)
        return np.concatenate([turns[go], turns[close]]), costs, closes

    def _fewest_repeats(self, left: Left) -> Whole:
        """Give, for each set and way, the turns with the fewest repeats that may be enough."""
        before, after, least = self.conditions.T
        fails: Mask = np.less(-left.behind[after, before], least)
        broken: Mask = np.asarray(self.asks[:, fails].any(axis=1))
        may = self.order[~broken[self.order]]
        key = self.sets[may] * (self.ways.max() + 1) + self.ways[may]
        first = np.r_[True, key[1:] != key[:-1]]
        fewest = self.repeats[may][first][np.cumsum(first) - 1]
        enough: Mask = np.equal(self.repeats[may], fewest)
        kept: Whole = may[enough]
        return kept

    def _paying(self, turns: Whole, costs: Whole) -> Mask:
        """Leave out what another turn on the same way does that holds as much and costs no more."""
        keep = np.ones(len(turns), dtype=np.bool_)
        for way in np.unique(self.ways[turns]):
            some = np.nonzero(self.ways[turns] == way)[0]
            sets, cost = self.sets[turns[some]], costs[some]
            rank = np.arange(len(some))
            better = self.holds_all[np.ix_(sets, sets)].copy()
            better &= np.less_equal.outer(cost, cost)
            alike = better.T.copy()
            alike &= better
            alike &= np.greater_equal.outer(rank, rank)
            better &= ~alike
            keep[some[better.any(axis=0)]] = False
        return keep


def narrowed(rooms: Rooms, rolls: int, worth: float, go_on: Callable[[], bool]) -> Narrowing | None:
    """Set out to find what a job takes at least, wherever its free rooms start.

    Takes: the rooms; how many rolls there may be; the greatest length (mm) that is worth
    finding; whether to go on.

    Gives: the search, or None if there are too many cut lengths to list.

    Holds for: one place across as good as any other, which leaves out a rule where it is not.

    Source: derived here.
    """
    if len(set(rooms.room)) <= 1:
        return None
    sets = all_together(rooms, worth, MOST_SETS, go_on)
    turns = None if not sets else turns_of(rooms, sets, MOST_TURNS)
    if not turns:
        return None
    # Half a cut length is nowhere enough, so every step is told.
    long_ones = LongOnes(rooms.plain).missing(lambda _: 0.5, go_on)
    steps = [(each.longer_than, each.count) for each in long_ones]
    return Narrowing(rooms, sets or (), turns, rolls, worth, steps)
