"""The least that a plan could take: cut lengths are priced until none is worth adding."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from foldwright.core.cloth.choosing.model import Finder, Frame, Relaxed, Rest, relaxed
from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.finding.side_by_side import Prices

CLOSE = 1e-6
LEAN = 0.7  # how far prices lean on the best so far, which keeps them from swinging
LESS_LEAN = 0.35
ENOUGH = 60  # cut lengths found before the model is solved again
ALL_PLACES_EVERY = 10


@dataclass(kw_only=True, slots=True)
class Priced:
    """Cut lengths that matter, and the least length (mm) that is proven, with its prices."""

    pool: Pool
    least: float
    prices: Prices
    last: Relaxed


def price(
    frame: Frame,
    pool: Pool,
    finder: Finder,
    go_on: Callable[[], bool],
    rest: Rest | None = None,
) -> Priced:
    """Add cut lengths to the pool until the model cannot be improved, or the time is used.

    Takes: the frame; a pool that holds one plan; a finder of cut lengths; whether to go on;
    what is still to be covered, by default all.

    Gives: the bound, which holds whenever it stops, and prices that no cut length beats.

    Source: cutting-stock-1961; column-bound-1990 for the bound of an early stop.
    """
    steps = pricing(frame, pool, finder, rest)
    found = next(steps)
    while go_on() and (better := next(steps, None)) is not None:
        found = better
    return found


def pricing(frame: Frame, pool: Pool, finder: Finder, rest: Rest | None = None) -> Iterator[Priced]:
    """Price step by step, for whoever can tell when it is enough.

    Takes: the frame; a pool that holds one plan; a finder of cut lengths; what is still to be
    covered, by default all.

    Gives: what is found so far, after each step; at last what cannot be improved.

    Source: cutting-stock-1961; column-bound-1990.
    """
    search = _Search(frame, pool, finder, frame.all if rest is None else rest)
    yield search.result()
    while search.step():
        yield search.result()
    yield search.result()


class _Search:
    """One run of pricing; `centre` are the prices that proved the best bound so far."""

    def __init__(self, frame: Frame, pool: Pool, finder: Finder, rest: Rest) -> None:
        self.frame, self.pool, self.finder, self.rest = frame, pool, finder, rest
        self.steps = 0
        self.last = relaxed(frame, pool.columns, rest)
        self.least, self.centre = 0.0, self.last.prices
        self._look(0.0, everywhere=True)

    def result(self) -> Priced:
        """Give what was found."""
        return Priced(pool=self.pool, least=self.least, prices=self.centre, last=self.last)

    def step(self) -> bool:
        """Solve the model and look for better cut lengths; tell whether there may be more."""
        self.steps += 1
        self.last = relaxed(self.frame, self.pool.columns, self.rest)
        if self.last.length <= self.least * (1 + CLOSE):
            return False
        everywhere = self.steps % ALL_PLACES_EVERY == 0
        lean = (LEAN, LESS_LEAN) if self.least else ()
        found = any(self._look(each, everywhere=everywhere) for each in (*lean, 0.0))
        return found or self.finder.harder()

    def _look(self, lean: float, *, everywhere: bool) -> int:
        """Look for cut lengths at leaning prices; raise the bound; give how many are new."""
        prices = self.last.prices.mixed(self.centre, lean)
        value = self.last.length + lean * (self.least - self.last.length)
        levels, factor = self.finder.worth_having(prices, *(() if everywhere else (ENOUGH,)))
        if factor is not None and value / factor > self.least:
            self.least = value / factor
            self.centre = prices.divided(factor)
        return sum(self.pool.add(level) for level in levels)
