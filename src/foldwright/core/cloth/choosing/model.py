"""The covering model: every piece cut, and each roll a way through the repeat.

A roll is a path: it is opened at a place of the repeat, each cut length and each gap leads
on to the next place, and one last cut length ends it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import inf
from typing import Protocol

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import Bounds, LinearConstraint, linprog, milp
from scipy.sparse import csc_array, csr_array, hstack

from foldwright.core.cloth.columns import NOWHERE, Column, columns_of
from foldwright.core.cloth.finding.side_by_side import Prices
from foldwright.core.cloth.finding.worth import Reals
from foldwright.core.cloth.level import Level
from foldwright.core.cloth.whole import Bolt, Cloth

A_CUT = 0.01  # mm of cloth that one cut less is worth, so that equal lengths prefer fewer cuts
NODES = 20_000  # branches to look at, so that the same steps give the same choice
INFEASIBLE = 2  # as the solver says it


class Finder(Protocol):
    """Finds cut lengths for given prices."""

    def worth_having(self, prices: Prices, enough: float = ...) -> tuple[list[Level], float | None]:
        """Find cut lengths that are worth more than they cost at these prices."""
        ...

    def harder(self) -> bool:
        """Search longer from now on; tell whether that can be."""
        ...

    def all_within(self, prices: Prices, gap: float, most: int) -> list[Level] | None:
        """List every cut length that a plan within `gap` (mm) of the bound could use."""
        ...


@dataclass(frozen=True, slots=True)
class Way:
    """A way through the repeat without a cut: a gap, or a roll's beginning."""

    start: int
    end: int
    cost: float  # mm
    bolt: int | None
    most: float


@dataclass(frozen=True, slots=True)
class Needed:
    """So many cut lengths must be longer than this, however the pieces are combined."""

    longer_than: int
    count: int


@dataclass(frozen=True, slots=True)
class Rest:
    """What is still to be covered: pieces, long cut lengths, rolls, the flow each place lacks."""

    pieces: Reals
    longer: Reals  # cut lengths longer than each step
    rolls: float
    most_rolls: float
    flow: Reals

    def without(self, column: Column, longer: int) -> Rest:
        """Give what is left when one cut length, longer than so many steps, is settled."""
        pieces, flow = self.pieces.copy(), self.flow.copy()
        steps = self.longer - (np.arange(len(self.longer)) < longer)
        for kind, count in column.counts:
            pieces[kind] = max(0.0, pieces[kind] - count)
        if column.start != NOWHERE:
            flow[column.start] += 1.0
        if column.end != NOWHERE:
            flow[column.end] -= 1.0
        return Rest(pieces, steps, self.rolls, self.most_rolls, flow)

    @property
    def rows(self) -> Reals:
        """Give what the covering rows ask for."""
        return np.concatenate([self.pieces, self.longer, [self.rolls, -self.most_rolls]])


class Frame:
    """What every choice of cut lengths shares: the pieces wanted, the gaps, the rolls."""

    def __init__(self, cloth: Cloth, least_rolls: int = 1, needed: Sequence[Needed] = ()) -> None:
        self.cloth = cloth
        self.places = len(cloth.phases)
        self.ways = [*_gaps(cloth), *_openings(cloth)]
        self.steps = np.array([each.longer_than / cloth.per_mm for each in needed])
        self.all = Rest(
            pieces=np.array([kind.count for kind in cloth.kinds], dtype=float),
            longer=np.array([float(each.count) for each in needed]),
            rolls=float(least_rolls),
            most_rolls=float(sum(kind.count for kind in cloth.kinds) if _many(cloth) else 1),
            flow=np.zeros(self.places),
        )
        self._way_flow = self._flow([(way.start, way.end) for way in self.ways])
        opened = np.array([[float(way.bolt is not None) for way in self.ways]])
        none = np.zeros((len(cloth.kinds) + len(needed), len(self.ways)))
        self._way_rows = csc_array(np.vstack([none, opened, -opened]))

    def _flow(self, moves: Iterable[tuple[int, int]]) -> csc_array:
        """Give the rows that hold arrivals and departures at each place equal."""
        rows, columns, values = [], [], []
        moves = list(moves)
        for column, (start, end) in enumerate(moves):
            for place, value in ((start, -1.0), (end, 1.0)):
                if place != NOWHERE:
                    rows.append(place)
                    columns.append(column)
                    values.append(value)
        return csc_array((values, (rows, columns)), shape=(self.places, len(moves)))

    def longer_than(self, column: Column) -> int:
        """Give how many steps a cut length is longer than."""
        return int(np.searchsorted(self.steps, column.level.length / self.cloth.per_mm))

    def without(self, rest: Rest, column: Column) -> Rest:
        """Give what is left when one cut length is settled."""
        return rest.without(column, self.longer_than(column))

    def costs(self, columns: Sequence[Column]) -> Reals:
        """Give what each column and each way takes, in mm."""
        costs = [column.cost / self.cloth.per_mm for column in columns]
        return np.array([*costs, *(way.cost for way in self.ways)])

    def matrices(self, columns: Sequence[Column]) -> tuple[csc_array, csc_array]:
        """Give the rows to cover and the rows of flow: columns first, then ways."""
        rows, numbers, values = [], [], []
        for number, column in enumerate(columns):
            for kind, count in column.counts:
                rows.append(kind)
                numbers.append(number)
                values.append(float(count))
            steps = self.longer_than(column)
            rows += range(len(self.cloth.kinds), len(self.cloth.kinds) + steps)
            numbers += [number] * steps
            values += [1.0] * steps
        shape = (len(self.all.rows), len(columns))
        cover = hstack([csc_array((values, (rows, numbers)), shape=shape), self._way_rows])
        flow = hstack([self._flow([(c.start, c.end) for c in columns]), self._way_flow])
        return cover.tocsc(), flow.tocsc()

    @property
    def way_limits(self) -> list[float]:
        """Give how often each way may be taken."""
        return [way.most for way in self.ways]


def _many(cloth: Cloth) -> bool:
    """Tell whether there are several rolls: one to buy is delivered in one piece."""
    return len(cloth.bolts) > 1


def _gaps(cloth: Cloth) -> Iterable[Way]:
    phases = cloth.phases
    if len(phases) > 1:
        for number, phase in enumerate(phases):
            after = (number + 1) % len(phases)
            gap = (phases[after] - phase) % cloth.repeat
            yield Way(number, after, gap / cloth.per_mm, None, np.inf)


def _openings(cloth: Cloth) -> Iterable[Way]:
    alike = cloth.bolts[0].origin is None  # bolts to buy are all the same
    for number, bolt in enumerate(cloth.bolts[:1] if alike else cloth.bolts):
        most = np.inf if bolt.origin is None else 1.0
        for place in (
            range(len(cloth.phases)) if bolt.origin is None else (first_place(cloth, bolt),)
        ):
            yield Way(NOWHERE, place, first_start(cloth, bolt, place) / cloth.per_mm, number, most)


def first_start(cloth: Cloth, bolt: Bolt, place: int) -> int:
    """Give the first position on a bolt at a place of the repeat."""
    if bolt.origin is None or not cloth.repeat:
        return bolt.begin
    return bolt.begin + (bolt.origin + cloth.phases[place] - bolt.begin) % cloth.repeat


def first_place(cloth: Cloth, bolt: Bolt) -> int:
    """Give the place of the repeat that a bolt comes to first."""
    return min(range(len(cloth.phases)), key=lambda place: first_start(cloth, bolt, place))


@dataclass(frozen=True, slots=True)
class Relaxed:
    """The model solved without whole numbers: length (mm), prices, share of each column."""

    length: float
    prices: Prices
    shares: Reals


def relaxed(frame: Frame, columns: Sequence[Column], rest: Rest) -> Relaxed:
    """Solve the model without whole numbers."""
    cover, flow = frame.matrices(columns)
    limits = np.zeros((len(columns) + len(frame.ways), 2))
    limits[:, 1] = [np.inf] * len(columns) + frame.way_limits
    solved = linprog(  # type: ignore[call-overload]  # its stubs know no sparse matrices
        frame.costs(columns),
        A_ub=-cover,
        b_ub=-rest.rows,
        A_eq=flow,
        b_eq=rest.flow,
        bounds=limits,
        method="highs",
    )
    kinds = len(frame.cloth.kinds)
    worth = np.maximum(-np.asarray(solved.ineqlin.marginals), 0.0)[:-2]
    places = np.asarray(solved.eqlin.marginals)
    prices = Prices(worth[:kinds], places, frame.steps, worth[kinds:])
    return Relaxed(float(solved.fun), prices, solved.x[: len(columns)])


@dataclass(frozen=True, slots=True)
class Choice:
    """Whole cut lengths at last: each as often as it is cut, and the ways between them."""

    columns: list[Column]
    ways: list[Way]
    length: float  # mm


def chosen(
    frame: Frame,
    columns: Sequence[Column],
    rest: Rest,
    seconds: float,
    rows: Sequence[csr_array] = (),
) -> tuple[Choice | None, float]:
    """Choose whole cut lengths among the given ones that take the least cloth.

    Takes: the frame; cut lengths to choose from; what they must cover; the seconds to use at
    most; rows that must not be below zero besides.

    Gives: the best choice found, or None; and a length (mm) that no choice among these is
    under, endless if there is none.

    Source: derived here.
    """
    cover, flow = frame.matrices(columns)
    costs = frame.costs(columns)
    a_cut = min(A_CUT, A_CUT / max(1.0, rest.pieces.sum() * 2 * A_CUT))
    per_cut = np.array([a_cut] * len(columns) + [0.0] * len(frame.ways))
    solved = milp(
        costs + per_cut,
        constraints=[
            LinearConstraint(cover, lb=rest.rows),
            LinearConstraint(flow, lb=rest.flow, ub=rest.flow),
            *(LinearConstraint(row, lb=0.0) for row in rows),
        ],
        integrality=np.ones(len(costs), dtype=np.int_),
        bounds=Bounds(lb=0.0, ub=[np.inf] * len(columns) + frame.way_limits),
        options={"time_limit": max(seconds, 0.01), "mip_rel_gap": 0.0, "node_limit": NODES},
    )
    if solved.x is None:
        return None, inf if solved.status == INFEASIBLE else 0.0
    least = (solved.mip_dual_bound or 0.0) - a_cut * rest.pieces.sum()
    return _choice(frame, columns, np.rint(solved.x).astype(int), costs), least


def _choice(
    frame: Frame, columns: Sequence[Column], times: NDArray[np.int_], costs: Reals
) -> Choice:
    return Choice(
        columns=[c for c, often in zip(columns, times, strict=False) for _ in range(often)],
        ways=[w for w, n in zip(frame.ways, times[len(columns) :], strict=True) for _ in range(n)],
        length=float(costs @ times),
    )


def in_a_row(frame: Frame, levels: Sequence[Level]) -> Choice:
    """Give cut lengths that may follow one another in any order as a choice: on one roll.

    Takes: the frame; cut lengths that all start alike in the repeat.

    Gives: the choice, with what loses most to the repeat as the last.

    Source: derived here.
    """
    ways = [columns_of(frame.cloth, level) for level in levels]
    last = max(range(len(ways)), key=lambda number: ways[number][0].cost - ways[number][-1].cost)
    columns = [way[-1 if number == last else 0] for number, way in enumerate(ways)]
    opening = min((w for w in frame.ways if w.bolt is not None), key=lambda way: way.cost)
    length = sum(column.cost for column in columns) / frame.cloth.per_mm + opening.cost
    return Choice(columns, [opening], length)
