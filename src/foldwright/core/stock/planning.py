"""The plan: a valid one at once, then better until it is proven or the time is used."""

from __future__ import annotations

from collections.abc import Callable

from foldwright.core.stock.bounding import Column, Pool, bound_by_columns, bound_by_length
from foldwright.core.stock.filling import Filled, longest_first
from foldwright.core.stock.fuller import filled_by_worth
from foldwright.core.stock.keeping import Keeper, Watch
from foldwright.core.stock.meeting import met
from foldwright.core.stock.order import CutOrder, StockPlan
from foldwright.core.stock.proving import best_of
from foldwright.core.stock.refusing import faults_of, too_little
from foldwright.core.stock.tight import every_column, tight_columns
from foldwright.core.stock.whole import Whole, cost_step, in_whole_units, with_more
from foldwright.core.why.fault import Fault

MOST_SIZES_SEARCHED = 400  # above this the longest-first plan is within a hair of the bound
MOST_IN_VAIN = 8
FIRST_LOOK_S = 1.0  # each later look takes twice as long, so that somebody may end it between


class CannotCut(Exception):  # noqa: N818 - the order's fault, told in its sentences
    """The order cannot be cut from this stock; `faults` say why and what would work."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__(" ".join(fault.sentence for fault in faults))
        self.faults = faults


def plan_stock(
    order: CutOrder, seconds_left: Callable[[], float], watch: Watch = lambda _plan: True
) -> StockPlan:
    """Plan the cuts of one material from stock lengths and the offcut rack.

    Takes: the order; a clock that gives the seconds left, read between the steps; who looks
    at each better plan and says whether to go on.

    Gives: a valid plan, its cost, and the least cost that is proven possible.

    Raises: `CannotCut` with every fault of the order.

    Holds for: up to tens of thousands of pieces; above a few hundred different sizes the
    plan is longest-first only.

    Source: derived here.

    >>> from foldwright.core.quantity.length import Length
    >>> from foldwright.core.stock.order import Need, StockLength
    >>> need = Need(name="tube", length=Length.mm(900), count=7)
    >>> bar = StockLength(name="3 m", length=Length.mm(3000), cost=8.0)
    >>> plan_stock(CutOrder(needs=(need,), stock=(bar,)), lambda: 1.0).cost
    24.0
    """
    if faults := faults_of(order):
        raise CannotCut(faults)
    whole, bars = _first_bars(in_whole_units(order))
    keeper = Keeper(order, whole, bars, clock=seconds_left, watch=watch)
    keeper.prove(bound_by_length(whole))
    keeper.show()
    if len(whole.sizes) <= MOST_SIZES_SEARCHED:
        _Search(whole, keeper).improve()
    if keeper.missing:
        raise CannotCut((too_little(order, keeper.missing, settled=keeper.proven),))
    return keeper.result()


def _first_bars(whole: Whole) -> tuple[Whole, list[Filled]]:
    """Fill bars longest first; where they run out, go on with bars that would have to be got."""
    if (bars := longest_first(whole)) is not None:
        return whole, bars
    endless = with_more(whole)
    return endless, longest_first(endless) or []


class _Search:
    """The steps to a cheaper plan or a higher bound, the quick ones first."""

    def __init__(self, whole: Whole, keeper: Keeper) -> None:
        self.whole, self.keeper = whole, keeper
        self.pool = Pool(least_cost=keeper.least_cost)
        for bar in keeper.bars:
            self.pool.add(_column(whole, bar))
        self._tried_at = -1.0  # the least cost that tight bars were last tried for

    def improve(self) -> None:
        """Take the steps until the plan is proven or the time is used."""
        for step in (
            self._meet_tightly,
            self._fill_by_worth,
            self._bound,
            self._meet_tightly,
            self._meet,
            self._choose_among_all,
            self._find_more_ways,
            self._meet,
            self._come_nearer,
            self._choose_among_known,
        ):
            if self.keeper.seconds_left() > 0:
                step()

    def _meet_tightly(self) -> None:
        """Try to meet the bound with bars so full that a plan as cheap as it could use them."""
        least = self.keeper.least_cost
        if len(self.whole.sources) > 1 or self._tried_at == least:
            return
        self._tried_at = least
        columns = tight_columns(self.whole, round(least / self.whole.sources[0].cost))
        if columns:
            self._meet_with(columns, least)

    def _fill_by_worth(self) -> None:
        """Fill bars by worth while that helps, and keep the ways for later."""
        cost, vain, clock = self.keeper.cost, 0, self._half_of_the_time()
        for bars in filled_by_worth(self.whole):
            self.keeper.offer(bars)
            for bar in bars or ():
                self.pool.add(_column(self.whole, bar))
            cost, vain = self.keeper.cost, 0 if self.keeper.cost < cost else vain + 1
            if vain == MOST_IN_VAIN or clock() <= 0:
                return

    def _bound(self) -> None:
        """Raise the bound until the ways found so far show that it cannot be raised."""
        bound_by_columns(self.whole, self.pool, self._half_of_the_time(), settle=True)
        self.keeper.prove(self.pool.least_cost)

    def _find_more_ways(self) -> None:
        bound_by_columns(self.whole, self.pool, self._half_of_the_time(), settle=False)
        self.keeper.prove(self.pool.least_cost)

    def _meet(self) -> None:
        self._meet_with(self.pool.columns, self.keeper.least_cost)

    def _meet_with(self, columns: list[Column], cost: float) -> None:
        self.keeper.offer(met(self.whole, columns, cost, self._half_of_the_time()))

    def _choose_among_all(self) -> None:
        """Choose among all ways to fill a bar where they can be listed: that proves it, too."""
        if columns := every_column(self.whole):
            self.keeper.prove(self._choose(columns))

    def _come_nearer(self) -> None:
        """Ask for a plan half-way to the bound, as often as there is one, then for any cheaper."""
        for part in (0.5, 1.0):
            while self.keeper.seconds_left() > 0 and self._met_on_the_way(part):
                pass

    def _met_on_the_way(self, part: float) -> bool:
        before, least = self.keeper.cost, self.keeper.least_cost
        cheaper = before - float(cost_step(self.whole))
        self._meet_with(self.pool.columns, min(cheaper, least + part * (before - least)))
        return self.keeper.cost < before

    def _choose_among_known(self) -> None:
        self._choose(self.pool.columns)

    def _choose(self, columns: list[Column]) -> float:
        """Choose among some ways; give the least that any choice among them costs."""
        look_s, least, settled = FIRST_LOOK_S, 0.0, False
        while not settled and (left_s := self.keeper.seconds_left()) > 0:
            choice = best_of(self.whole, columns, min(look_s, left_s))
            self.keeper.offer(choice.bars)
            least, settled, look_s = max(least, choice.least_cost), choice.settled, 2 * look_s
        return least

    def _half_of_the_time(self) -> Callable[[], float]:
        """Give a clock that stops when half of the time that is left now is used."""
        kept = self.keeper.seconds_left() / 2
        return lambda: self.keeper.seconds_left() - kept


def _column(whole: Whole, bar: Filled) -> Column:
    held = dict(bar.counts)
    return bar.source, tuple(held.get(number, 0) for number in range(len(whole.sizes)))
