"""Which cut lengths are worth having, where any place across will do."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from math import gcd, inf

import numpy as np

from foldwright.core.cloth.columns import NOWHERE, place_in
from foldwright.core.cloth.finding.rounds import Rounds
from foldwright.core.cloth.finding.worth import HAIR, Loading, Reals, lots_in
from foldwright.core.cloth.laying.first_fit import may_join
from foldwright.core.cloth.level import Level, Strip, distance, level_of
from foldwright.core.cloth.whole import Cloth, Kind

MOST_FROM_A_PLACE = 12
TURNS = 6
MOST_CELLS = 6_000


@dataclass(frozen=True, slots=True)
class Start:
    """A place in the repeat, with the kinds that may lie behind it, nearest reach first."""

    place: int
    kinds: tuple[int, ...]
    behind: tuple[int, ...]
    lengths: Reals  # mm from the start to the end of each kind
    far: Reals  # mm on to the next cut length
    ends: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Prices:
    """What a piece of each kind is worth, to be at each place, and to be longer than a step."""

    pieces: Reals
    places: Reals
    steps: Reals  # mm, rising
    longer: Reals  # what a cut length is worth that is longer than each step

    def credit(self, lengths: Reals) -> Reals:
        """Give what cut lengths are worth for being as long as they are."""
        total = np.concatenate([[0.0], np.cumsum(self.longer)])
        worth: Reals = total[np.searchsorted(self.steps, lengths, side="left")]
        return worth

    def mixed(self, other: Prices, share: float) -> Prices:
        """Give prices that lean so far on others."""
        return Prices(
            self.pieces + share * (other.pieces - self.pieces),
            self.places + share * (other.places - self.places),
            self.steps,
            self.longer + share * (other.longer - self.longer),
        )

    def divided(self, factor: float) -> Prices:
        """Give prices so many times lower."""
        return Prices(self.pieces / factor, self.places / factor, self.steps, self.longer / factor)

    def thresholds(self, start: Start) -> tuple[Reals, Reals]:
        """Give the worth of pieces that pays for each length: among others, and as a last."""
        credit = self.credit(start.lengths)
        if start.place == NOWHERE:
            return start.far - credit, np.full(len(start.far), np.inf)
        here, ends = self.places[start.place], self.places[list(start.ends)]
        return start.far - credit + here - ends, start.lengths - credit + here


class SideBySide:
    """Finds cut lengths for given prices; all pieces may lie anywhere across."""

    def __init__(self, cloth: Cloth) -> None:
        self.cloth = cloth
        cell = _cell(cloth)
        self.room = cloth.width // cell
        self.widths = [kind.width // cell for kind in cloth.kinds]
        self.limits = [min(kind.count, kind.most) for kind in cloth.kinds]
        self.starts = tuple(_starts(cloth))
        self._rounds = Rounds(self.starts)
        self.turns = max(1, TURNS // len(self.starts))
        self._loading = Loading(self.room, sum(1 + lots_in(most - 1) for most in self.limits))

    def worth_having(self, prices: Prices, enough: float = inf) -> tuple[list[Level], float | None]:
        """Find cut lengths that are worth more than they cost at these prices.

        Takes: prices; how many cut lengths are enough to stop at, before all places in the
        repeat are looked at.

        Gives: cut lengths; and the factor by which the prices must be divided so that none
        in the whole world is worth more than it costs, None if not all were looked at.

        Source: cutting-stock-1961; column-bound-1990 for the factor.
        """
        return self._rounds.look(lambda start: self._worth_having_from(start, prices), enough)

    def _worth_having_from(self, start: Start, prices: Prices) -> tuple[list[Level], float]:
        """Load a start again and again without the pieces of the best before."""
        found: list[Level] = []
        worth, factor = prices.pieces.copy(), 0.0
        for turn in range(self.turns):
            marks = self._load(start, worth)
            gains, ratio = _gains(start, prices, self._with_longest(start, worth, marks))
            factor = factor if turn else ratio
            sets = self._best(start, gains, marks)
            found += [self._level(start, counts) for counts in sets]
            if not sets:
                break
            worth[list(sets[0])] = 0.0
        return found, factor

    def _load(self, start: Start, worth: Reals) -> list[int]:
        """Allow one kind after another; give the mark of what may lie beside each as longest."""
        self._loading.clear()
        marks = []
        for number, behind in zip(start.kinds, start.behind, strict=True):
            width, each = self.widths[number], float(worth[number])
            first = behind == 0
            self._loading.allow(number, width, self.limits[number] - 1, each, first=first)
            marks.append(self._loading.mark)
            self._loading.allow(number, width, 1, each, first=first)
        return marks

    def _with_longest(self, start: Start, worth: Reals, marks: list[int]) -> Reals:
        kinds = list(start.kinds)
        rooms = [self.room - self.widths[kind] for kind in kinds]
        first = [behind == 0 for behind in start.behind]
        beside = self._loading.worth(marks, rooms, first=first)
        total: Reals = worth[kinds] + beside
        return total

    def _best(self, start: Start, gains: Reals, marks: list[int]) -> list[Counter[int]]:
        """Give the sets that gain most, each with its longest piece."""
        best = np.argsort(-gains, kind="stable")[:MOST_FROM_A_PLACE]
        sets = []
        for rank in best[gains[best] > HAIR]:
            kind = start.kinds[rank]
            room, first = self.room - self.widths[kind], start.behind[rank] == 0
            beside = self._loading.pieces(marks[rank], room, first=first)
            sets.append(beside + Counter([kind]))
        return sets

    def _level(self, start: Start, counts: Counter[int]) -> Level:
        """Lay pieces side by side from the left; leave out what may not share a length."""
        behind = dict(zip(start.kinds, start.behind, strict=True))
        strips: list[Strip] = []
        left = 0
        for number in sorted(counts.elements()):
            width = self.cloth.kinds[number].width
            joins = may_join(self.cloth, number, (strip.kind for strip in strips))
            if joins and left + width <= self.cloth.width:
                strips.append(Strip(number, left, behind[number]))
                left += width
        place = 0 if start.place == NOWHERE else self.cloth.phases[start.place]
        return level_of(self.cloth, place, strips)

    def harder(self) -> bool:
        """Tell that there is nothing left to search: every cut length is looked at."""
        return False

    def all_within(self, prices: Prices, gap: float, most: int) -> list[Level] | None:
        """List every cut length that a plan within `gap` (mm) of the bound could use.

        Takes: prices that no cut length is worth more than; the gap between plan and bound;
        how many at most.

        Gives: the cut lengths that hold as many pieces as they can, or None if too many.

        Source: derived here.
        """
        found: list[Level] = []
        for start in self.starts:
            for counts in self._sets_within(start, prices, gap):
                found.append(self._level(start, counts))
                if len(found) > most:
                    return None
        return found

    def _sets_within(self, start: Start, prices: Prices, gap: float) -> Iterator[Counter[int]]:
        """Give sets by their longest piece, which must be worth something."""
        wanted = [rank for rank, kind in enumerate(start.kinds) if prices.pieces[kind] > HAIR]
        kinds = [start.kinds[rank] for rank in wanted]
        worth = [float(prices.pieces[kind]) for kind in kinds]
        widths = [self.widths[kind] for kind in kinds]
        limits = [self.limits[kind] for kind in kinds]
        tables = _tables(self.room, widths, limits, worth)
        least = np.minimum(*prices.thresholds(start)) - gap
        for tallest, rank in enumerate(wanted):
            search = _Search(tables, widths, limits, worth, float(least[rank]), tallest)
            for chosen in search.run():
                yield Counter({kinds[index]: count for index, count in chosen.items()})


def _cell(cloth: Cloth) -> int:
    """Give the step in which widths are counted: exact if it can be, else a millimetre.

    Both widths and the cloth's are rounded down to it, so no set that fits is ever missed.
    """
    exact = gcd(*(kind.width for kind in cloth.kinds))
    return exact if cloth.width // exact <= MOST_CELLS else cloth.per_mm


def _tables(room: int, widths: list[int], limits: list[int], worth: list[float]) -> Reals:
    """Give, for so many kinds allowed, the best worth of every width."""
    loading, marks = Loading(room, sum(map(lots_in, limits))), [0]
    for index, width in enumerate(widths):
        loading.allow(index, width, limits[index], worth[index], first=False)
        marks.append(loading.mark)
    return np.array([loading.best(mark) for mark in marks])


class _Search:
    """All sets of pieces with a given longest one that are worth enough."""

    def __init__(  # noqa: PLR0913, PLR0917 - the sums of one start, named once
        self,
        tables: Reals,
        widths: list[int],
        limits: list[int],
        worth: list[float],
        least: float,
        tallest: int,
    ) -> None:
        self.tables, self.widths, self.limits, self.worth = tables, widths, limits, worth
        self.least, self.tallest = least - HAIR, tallest
        self.narrowest = min(range(tallest + 1), key=widths.__getitem__)

    def run(self) -> Iterator[dict[int, int]]:
        tallest, room = self.tallest, self.tables.shape[1] - 1
        for count in range(1, self.limits[tallest] + 1):
            left, value = room - count * self.widths[tallest], count * self.worth[tallest]
            if left >= 0:
                yield from self._more({tallest: count}, tallest, left, value)

    def _more(
        self, chosen: dict[int, int], below: int, left: int, value: float
    ) -> Iterator[dict[int, int]]:
        """Add kinds numbered below `below`; stop where even the best of them is too little."""
        if value >= self.least and self._full(chosen, left):
            yield chosen
        for index in range(below - 1, -1, -1):
            if value + self.tables[index + 1, left] < self.least:
                return
            most = min(self.limits[index], left // self.widths[index])
            for count in range(1, most + 1):
                yield from self._more(
                    {**chosen, index: count},
                    index,
                    left - count * self.widths[index],
                    value + count * self.worth[index],
                )

    def _full(self, chosen: dict[int, int], left: int) -> bool:
        room = left < self.widths[self.narrowest]
        return room or chosen.get(self.narrowest, 0) >= self.limits[self.narrowest]


def _gains(start: Start, prices: Prices, tops: Reals) -> tuple[Reals, float]:
    """Give what each loading gains over its cost, and the greatest worth per cost."""
    onward, last = prices.thresholds(start)
    gains = tops - np.minimum(onward, last)
    ratio = float(np.max((tops - onward) / start.far))
    if start.place != NOWHERE:
        ratio = max(ratio, float(np.max((tops - last) / start.lengths)))
    return gains, 1.0 + ratio


def _starts(cloth: Cloth) -> Iterator[Start]:
    for place, phase in enumerate(cloth.phases):
        yield _start(cloth, place, phase, range(len(cloth.kinds)))
    free = [number for number, kind in enumerate(cloth.kinds) if kind.along is None]
    if cloth.repeat and free:
        yield _start(cloth, NOWHERE, None, free)


def _start(cloth: Cloth, place: int, phase: int | None, kinds: Iterable[int]) -> Start:
    reached = sorted(
        (_behind(cloth, cloth.kinds[n], phase) + cloth.kinds[n].length, n) for n in kinds
    )
    numbers = tuple(number for _, number in reached)
    far = [distance(cloth, phase, length) for length, _ in reached]
    return Start(
        place=place,
        kinds=numbers,
        behind=tuple(_behind(cloth, cloth.kinds[number], phase) for number in numbers),
        lengths=np.array([length / cloth.per_mm for length, _ in reached]),
        far=np.array([each / cloth.per_mm for each in far]),
        ends=tuple(place_in(cloth, (phase or 0) + each) for each in far),
    )


def _behind(cloth: Cloth, kind: Kind, phase: int | None) -> int:
    if phase is None or kind.along is None:
        return 0
    return min((start - phase) % cloth.repeat for start in cloth.starts(kind))
