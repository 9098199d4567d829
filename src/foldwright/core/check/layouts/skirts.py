"""The skirts that are tried, where nobody has typed one."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.design.choices import POUFED
from foldwright.core.design.order import Order, skirt
from foldwright.core.facts.layout_taste import GREATEST_SKIRT, SKIRT_STEP
from foldwright.core.quantity.length import Length


def skirts_tried(order: Order) -> Iterator[Length | None]:
    """Give the shade's own skirt, and every other from none to the longest.

    Takes: the order.

    Gives: None for the house's skirt; the own one alone where it is typed, or hidden by a pouf.

    Source: common practice for the longest.
    """
    yield order.design.skirt
    if order.design.skirt is None and order.design.style not in POUFED:
        step, house = SKIRT_STEP[order.system].value, skirt(order).value
        steps = range(int(GREATEST_SKIRT.value / step) + 1)
        yield from (step * number for number in steps if step * number != house)
