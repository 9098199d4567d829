"""Better cut lengths and a better bound for one cloth, step by step."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Protocol

import numpy as np

from foldwright.core.cloth.choosing.bounding import Found, bound_by_next_starts, bound_of
from foldwright.core.cloth.choosing.counting import LongOnes
from foldwright.core.cloth.choosing.diving import dive
from foldwright.core.cloth.choosing.exchanging import can_exchange, exchanged
from foldwright.core.cloth.choosing.improving import improve, over_price
from foldwright.core.cloth.choosing.joining import choose_joined, hangs_together
from foldwright.core.cloth.choosing.model import Choice, Frame, Needed, in_a_row
from foldwright.core.cloth.choosing.pricing import Priced, price
from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.level import Level, each_piece_once

MOST_COLUMNS = 5_000
MOST_OF_THE_POOL = 2_500
FEW_KINDS = 120
FEW_PIECES = 30
MOST_OF_A_SMALL_JOB = 1_500
A_HAIR = 1e-6  # mm
BEYOND = 0.05  # mm above a length that is worth finding: what is proven if there is none
SECONDS_AT_ONCE = 10.0
A_THIRD, MOST_OF_THE_TIME = 1 / 3, 0.8
PRICING = 0.5  # parts of the time by which these steps end
EXCHANGING = 0.75
IMPROVING = 0.9
COUNTING = 0.1  # a part of all time, from when it begins
PARTS_OF_THE_GAP = (1.0, 0.5, 0.25, 0.1, 0.05, 0.02, 0.0)
EXCHANGES = 300  # tried for each piece before cut lengths are put together anew
NO_BETTER = 5  # times in a row
VAIN = 150  # times that a part is opened again without gain, until the search is done


class Watch(Protocol):
    """Whoever asked for the search: it takes what is found and says when to stop."""

    def offer(self, levels: Sequence[Level]) -> None:
        """Take cut lengths that hold every piece."""

    def prove(self, least: float) -> None:
        """Take a length (mm) that no plan can be under."""

    def choice(self) -> Choice:
        """Give the best plan so far as a choice of the model."""

    def worth(self) -> float:
        """Give the greatest length (mm) that would still be worth finding."""

    def seconds_left(self) -> float:
        """Give the seconds left; none once the plan is proven or somebody cancelled."""


def search(found: Found, levels: Sequence[Level], watch: Watch) -> None:
    """Look for better cut lengths until the best are proven or the time is used.

    Takes: a cloth with its finder; cut lengths that hold every piece; who takes what is found.

    Source: derived here.
    """
    run = _Run(found, levels, watch)
    first = (run.price, run.count_long_ones, run.dive, run.prove_few)
    more = (run.exchange, run.choose_of_pool)
    for step in (*first, *more, run.improve_for_long, run.choose, run.improve):
        if watch.seconds_left() <= 0:
            return
        step()


class _Run:
    """One search, step by step."""

    def __init__(self, found: Found, levels: Sequence[Level], watch: Watch) -> None:
        self.found, self.watch, self.begun = found, watch, watch.seconds_left()
        self.cloth, self.finder = found.cloth, found.finder
        self.frame = Frame(found.cloth)
        self.pool = Pool(found.cloth, levels)
        self.priced: Priced | None = None
        self.choice: Choice | None = self.watch.choice()
        self.chance = np.random.default_rng(len(found.cloth.kinds))

    def _until(self, share: float) -> Callable[[], bool]:
        """Give whether a share of the time is left still."""
        return lambda: self.watch.seconds_left() > self.begun * (1 - share)

    def _for_another(self, share: float) -> Callable[[], bool]:
        """Give whether a share of the time is left still, from now on."""
        return self._until(1 - self.watch.seconds_left() / self.begun + share)

    def price(self) -> None:
        """Find the least that is proven, and the prices that prove it."""
        if not self.found.exact:
            self.watch.prove(bound_of(self.cloth, self._until(PRICING / 2)))
        elif len(self.cloth.phases) > 1:
            self.watch.prove(bound_by_next_starts(self.cloth, self._until(PRICING / 2)))
        self._price(self._until(PRICING))

    def _price(self, go_on: Callable[[], bool]) -> None:
        self.priced = price(self.frame, self.pool, self.finder, go_on)
        if self.found.exact:
            self.watch.prove(self.priced.least)

    def prove_few(self) -> None:
        """Settle a small job at once: list all cut lengths that matter and choose."""
        if sum(kind.count for kind in self.cloth.kinds) <= FEW_PIECES:
            self._choose((1.0,), MOST_COLUMNS, MOST_OF_THE_TIME)
        else:
            self._choose((1.0,), MOST_OF_A_SMALL_JOB, A_THIRD)

    def choose_of_pool(self) -> None:
        """Choose among the cut lengths that were priced, the nearest to paying first."""
        priced = self.priced
        if priced is None:
            return
        columns = sorted(
            priced.pool.columns, key=lambda c: over_price(self.frame, c, priced.prices)
        )
        known = self.choice.columns if self.choice else []
        few = list(dict.fromkeys([*columns[:MOST_OF_THE_POOL], *known]))
        self._take(choose_joined(self.frame, few, self._at_once(A_THIRD))[0])

    def choose(self) -> None:
        """Choose among all cut lengths that matter, or the likeliest if they are too many."""
        self._choose(PARTS_OF_THE_GAP, MOST_COLUMNS, A_THIRD)

    def _choose(self, parts: Sequence[float], most: int, share: float) -> None:
        """Choose among the cut lengths that could be in a plan worth finding.

        If all of these are listed, what is proven of them holds: any other cut length would
        take a plan beyond what is worth finding.
        """
        priced, worth = self.priced, self.watch.worth()
        gap = worth - (priced.least if priced else 0.0)
        if priced is None or gap < 0:
            return
        for part in parts:
            levels = self.finder.all_within(priced.prices, gap * part, most)
            if levels is not None:
                proves = worth if part == 1 else None
                self._choose_among(priced, levels, gap * part, proves, self._at_once(share))
                return
            most = MOST_OF_A_SMALL_JOB

    def _choose_among(
        self,
        priced: Priced,
        levels: Sequence[Level],
        gap: float,
        proves: float | None,
        seconds: Callable[[], float],
    ) -> None:
        pool = Pool(self.cloth, [*levels, *(c.level for c in priced.pool.columns)])
        columns = [
            c for c in pool.columns if over_price(self.frame, c, priced.prices) <= gap + A_HAIR
        ]
        if proves is None and self.choice is not None:
            columns = list(dict.fromkeys([*columns, *self.choice.columns]))
        choice, least = choose_joined(self.frame, columns, seconds)
        if self.found.exact and proves is not None:
            beyond = min(BEYOND, self.cloth.grain / self.cloth.per_mm)
            self.watch.prove(min(least, proves + beyond))
        self._take(choice)

    def _at_once(self, share: float) -> Callable[[], float]:
        """Give the seconds for one choice: a share of what is left."""
        return lambda: min(SECONDS_AT_ONCE, self.watch.seconds_left() * share)

    def dive(self) -> None:
        """Settle cut lengths one after another, where pricing again and again is quick."""
        if self.cloth.in_places and len(self.cloth.kinds) > FEW_KINDS:
            return
        self._take(
            dive(self.frame, self.pool, self.finder, self.watch.seconds_left, self.frame.all)
        )

    def exchange(self) -> None:
        """Exchange pieces between cut lengths, again and again from the best so far."""
        if not can_exchange(self.cloth):
            return
        go_on, vain = self._until(EXCHANGING), 0
        while self.choice is not None and vain < NO_BETTER and go_on():
            before = self.choice
            steps = EXCHANGES * sum(kind.count for kind in self.cloth.kinds)
            levels = each_piece_once(self.cloth, [column.level for column in before.columns])
            found = exchanged(self.cloth, levels, self.chance, steps, go_on)
            for level in found:
                self.pool.add(level)
            self._take(in_a_row(self.frame, found))
            vain = 0 if self.choice is not before else vain + 1

    def _take(self, choice: Choice | None) -> None:
        """Keep a better choice, or what it comes to once it is laid out."""
        if choice is None or (self.choice is not None and choice.length >= self.choice.length):
            return
        self.watch.offer([column.level for column in choice.columns])
        real = choice if hangs_together(choice) else self.watch.choice()
        if self.choice is None or real.length < self.choice.length:
            self.choice = real

    def count_long_ones(self) -> None:
        """Count how many cut lengths must be long, and price again."""
        many = len(self.cloth.kinds) > FEW_KINDS
        if self.cloth.in_places and (many or len(self.cloth.phases) > 1):
            return  # what is found there may be shorter than it was priced
        long_ones, rows = LongOnes(self.cloth), list[Needed]()
        go_on = self._for_another(COUNTING)
        while self.priced is not None and go_on():
            missing = long_ones.missing(self._how_many_longer, go_on)
            if not missing:
                return
            before, frame = self.priced, self.frame
            rows = sorted([*rows, *missing], key=lambda each: each.longer_than)
            self.frame = Frame(self.cloth, needed=rows)
            self._price(self._for_another(COUNTING))
            if self.priced.least < before.least:
                self.frame, self.priced = frame, before
                return

    def _how_many_longer(self, length: int) -> float:
        """Give how many cut lengths of the relaxed model are longer, parts of them counted too."""
        shares: list[float] = [] if self.priced is None else self.priced.last.shares.tolist()
        columns = zip(self.pool.columns, shares, strict=False)
        return sum(share for column, share in columns if column.level.length > length)

    def improve_for_long(self) -> None:
        """Improve until most of the time is used."""
        self._improve(IMPROVING)

    def improve(self) -> None:
        """Improve until the end."""
        self._improve(1.0)

    def _improve(self, share: float) -> None:
        """Open parts of the choice again until nothing comes of it for long."""
        go_on, vain = self._until(share), 0
        while self.choice is not None and vain < VAIN and go_on():
            better = improve(
                self.frame,
                self.pool,
                self.finder,
                self.choice,
                self.chance,
                self.watch.seconds_left,
            )
            vain = 0 if better else vain + 1
            self._take(better)
