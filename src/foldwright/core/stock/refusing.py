"""What is wrong with an order to cut, all at once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from foldwright.core.quantity.length import ZERO
from foldwright.core.quantity.printing import print_both
from foldwright.core.quantity.rounding import System
from foldwright.core.stock.order import CutOrder
from foldwright.core.why.fault import Fault


def faults_of(order: CutOrder) -> tuple[Fault, ...]:
    """Say everything that keeps an order from being cut.

    Takes: any order.

    Gives: the faults, none for an order that can be planned.

    Source: derived here.

    >>> [fault.where for fault in faults_of(CutOrder(needs=(), stock=()))]
    ['needs', 'stock']
    """
    return (*_of_the_lists(order), *_of_the_lengths(order), *_of_the_fit(order))


def too_little(order: CutOrder, missing: Mapping[str, int], *, settled: bool) -> Fault:
    """Say which bars are wanted besides those there are.

    Takes: the order; how many more of each bar a plan would take; whether it is proven that
    there is no plan without them.

    Gives: the fault.

    Source: derived here.

    >>> too_little(CutOrder(needs=(), stock=()), {"6 m": 2}, settled=True).remedy
    'With 2 more of “6 m” all can be cut: raise the quantity, or list another length.'
    """
    count = sum(need.count for need in order.needs)
    pieces = "the piece" if count == 1 else f"all {count} pieces"
    more = ", ".join(f"{number} more of “{name}”" for name, number in missing.items())
    return Fault(
        where="stock",
        what=f"it does not hold {pieces}, however cut"
        if settled
        else f"no way was found to cut {pieces} from it",
        remedy=f"With {more} all can be cut: raise the quantity, or list another length.",
    )


def _of_the_lists(order: CutOrder) -> Iterator[Fault]:
    if not order.needs:
        yield Fault(where="needs", what="no piece is asked for", remedy="Add one.")
    if not order.stock and not order.rack:
        yield Fault(where="stock", what="nothing to cut from", remedy="Add a stock length.")


def _of_the_lengths(order: CutOrder) -> Iterator[Fault]:
    positive = "Give a length above zero."
    for number, need in enumerate(order.needs, start=1):
        if need.length <= ZERO:
            yield Fault(where=f"needs.{number}.length", what="it is not a length", remedy=positive)
        if need.count < 1:
            yield Fault(
                where=f"needs.{number}.count", what="it asks for no piece", remedy="Give 1 or more."
            )
    for number, bar in enumerate(order.stock, start=1):
        if bar.length <= order.saw.trim:
            yield Fault(
                where=f"stock.{number}.length", what="trimming leaves nothing", remedy=positive
            )
        if bar.cost <= 0:
            yield Fault(
                where=f"stock.{number}.cost",
                what="it must cost something",
                remedy="Give its price.",
            )
    for name in ("kerf", "trim"):
        if getattr(order.saw, name) < ZERO:
            yield Fault(where=f"saw.{name}", what="it is below zero", remedy="Give zero or more.")


def _of_the_fit(order: CutOrder) -> Iterator[Fault]:
    rooms = [bar.length - order.saw.trim for bar in order.stock]
    longest = max([*rooms, *(piece.length for piece in order.rack)], default=ZERO)
    for number, need in enumerate(order.needs, start=1):
        if need.length > longest > ZERO:
            yield Fault(
                where=f"needs.{number}.length",
                what=f"{print_both(need.length, System.METRIC)} is longer than any bar",
                remedy=f"The longest piece that can be cut is "
                f"{print_both(longest, System.METRIC)}; buy a longer bar or splice.",
            )
