"""A second look at a plan: it reads positions only and shares no code with the planner."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from foldwright.core.stock.order import Bar, CutOrder, StockPlan


def faults_in(plan: StockPlan, order: CutOrder) -> tuple[str, ...]:
    """Say everything that is wrong with a plan.

    Takes: a plan and the order that it answers.

    Gives: sentences; none for a plan that can be cut as printed.

    Source: derived here.

    >>> faults_in(StockPlan(bars=(), cost=0.0, least_cost=0.0, proven=True),
    ...           CutOrder(needs=(), stock=()))
    ()
    """
    wrong = [*_pieces(plan, order), *_bars(plan, order), *_cost(plan, order)]
    for number, bar in enumerate(plan.bars, start=1):
        wrong += [f"Bar {number}: {words}" for words in _on_one_bar(bar, order)]
    return tuple(wrong)


def _pieces(plan: StockPlan, order: CutOrder) -> Iterator[str]:
    wanted: Counter[tuple[str, int]] = Counter()
    for need in order.needs:
        wanted[need.name, need.length.nanometres] += need.count
    cut = Counter((c.need, c.length.nanometres) for bar in plan.bars for c in bar.cuts)
    for name, _ in wanted - cut:
        yield f"{name} is missing."
    for name, _ in cut - wanted:
        yield f"{name} is cut but not wanted."


def _bars(plan: StockPlan, order: CutOrder) -> Iterator[str]:
    there = Counter({(p.name, p.length, True): 0 for p in order.rack})
    for piece in order.rack:
        there[piece.name, piece.length, True] += 1
    endless = {(s.name, s.length, False) for s in order.stock if s.quantity is None}
    for stock in order.stock:
        there[stock.name, stock.length, False] += stock.quantity or 0
    used = Counter((bar.name, bar.length, bar.from_rack) for bar in plan.bars)
    for kind, count in used.items():
        if kind not in endless and count > there[kind]:
            yield f"{kind[0]} is used {count} times and there are {there[kind]}."


def _cost(plan: StockPlan, order: CutOrder) -> Iterator[str]:
    prices = {(stock.name, stock.length): stock.cost for stock in order.stock}
    paid = sum(prices.get((b.name, b.length), 0.0) for b in plan.bars if not b.from_rack)
    if abs(paid - plan.cost) > 1e-6 * max(1.0, paid):
        yield f"The bars cost {paid}, the plan says {plan.cost}."
    if plan.cost < plan.least_cost - 1e-6 * max(1.0, plan.cost):
        yield "The plan is cheaper than what is said to be possible: the bound is wrong."


def _on_one_bar(bar: Bar, order: CutOrder) -> Iterator[str]:
    free_from = 0 if bar.from_rack else order.saw.trim.nanometres
    for cut in bar.cuts:
        if cut.start.nanometres < free_from:
            yield f"{cut.need} begins before the blade has left the piece before it."
        free_from = (cut.start + cut.length + order.saw.kerf).nanometres
    end = free_from - order.saw.kerf.nanometres if bar.cuts else free_from
    if end > bar.length.nanometres:
        yield "the last piece runs over the end."
    if bar.remainder.nanometres != max(bar.length.nanometres - free_from, 0):
        yield "what is left is not what is said."
