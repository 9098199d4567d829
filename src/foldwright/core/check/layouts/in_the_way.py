"""Which typed value leaves no layout without a stop."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from foldwright.core.design.order import Order
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Remedy
from foldwright.core.why.making import chosen
from foldwright.core.why.trying import Way, by_change

TYPED = {
    "row_count": ("number of rows", Unit.COUNT),
    "largest_row_spacing": ("largest row spacing", Unit.LENGTH),
    "skirt": ("skirt", Unit.LENGTH),
    "head_allowance": ("head allowance", Unit.LENGTH),
    "fullness": ("fullness", Unit.RATIO),
    "edge_distance": ("edge distance", Unit.LENGTH),
    "column_count": ("number of columns", Unit.COUNT),
    "largest_pitch": ("largest column pitch", Unit.LENGTH),
    "middle_piece": ("middle piece", Unit.LENGTH),
}
"""What the search leaves as it was typed, with its name and its unit."""


def typed_in_the_way(
    order: Order, stops: int, least_stops: Callable[[Order], int]
) -> Iterator[Remedy]:
    """Free each typed value by itself, and name those that a stop comes of.

    Takes: the order; the stops of its best layout; what counts those of another order's best.

    Gives: a remedy for each that clears the value, so that the tool may choose it.

    Source: derived here.
    """
    for name, (words, unit) in TYPED.items():
        typed = getattr(order.design, name)
        if typed is None:
            continue
        way = _freed(order, name, chosen(words, typed, unit))
        if way.inputs is not None and least_stops(way.inputs) < stops:
            yield way.remedy


def _freed(order: Order, name: str, typed: Figure[Any]) -> Way[Order]:
    sentence = (
        f"With the {typed.name} of {{0}} that is typed, no layout is without a stop."
        " Leave it to the tool."
    )
    return by_change(order, order.system, sentence, typed, **{f"design__{name}": None})
