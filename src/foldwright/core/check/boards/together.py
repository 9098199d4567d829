"""One tube that lifts all shades of a board: their loads added, their cords side by side."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from foldwright.core.check.boards.placing import Hanging
from foldwright.core.design.layout import Layout
from foldwright.core.facts.order_limits import LINED_UP
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.weigh.load import PanelLoad, Weights
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

N = Figure[float]


def apart_in_rows(shades: tuple[Hanging, ...]) -> Length | None:
    """Tell how far the rows of shades that should rise together lie apart.

    Takes: the shades.

    Gives: the greatest distance between two rows of one number, or between two raises; None
    where they have not as many rows, or are not of one style.

    Source: derived here.

    >>> apart_in_rows(()) == ZERO
    True
    """
    if not shades:
        return ZERO
    first = shades[0].layout
    for shade in shades:
        same = (shade.layout.style, shade.layout.rows.count.value, shade.layout.rows.fullness.value)
        if same != (first.style, first.rows.count.value, first.rows.fullness.value):
            return None
    return max(_apart(first, shade) for shade in shades)


def _apart(first: Layout, shade: Hanging) -> Length:
    pairs = zip(first.rows.marks, shade.layout.rows.marks, strict=True)
    rows = [abs(one.value - other.value) for one, other in pairs]
    return max(*rows, abs(first.travel.value - shade.layout.travel.value))


def rise_together(shades: tuple[Hanging, ...]) -> bool:
    """Tell whether one tube can lift all these shades.

    Takes: the shades.

    Gives: whether their rows and their raises are alike to a mark.

    Source: derived here.

    >>> rise_together(())
    True
    """
    apart = apart_in_rows(shades)
    return apart is not None and apart <= LINED_UP.value


def add_weights(all_weights: tuple[Weights, ...]) -> Weights:
    """Add what hangs on the cords of shades that rise together.

    Takes: the weights of each, one at least, with rows alike.

    Gives: the weights as if they were one shade.

    Holds for: the same rows, raise and fullness in all; the stiffest cloth is taken for all.

    Source: derived here.

    >>> from foldwright.core.rig.example import WEIGHTS
    >>> two = add_weights((WEIGHTS, WEIGHTS))
    >>> two.load.bar_n == 2 * WEIGHTS.load.bar_n
    True
    """
    first = all_weights[0]
    return replace(
        first,
        layers=tuple(layer for weights in all_weights for layer in weights.layers),
        bar=_sum("mass of all bars", all_weights, lambda weights: weights.bar),
        rods=_sum("mass of all rods", all_weights, lambda weights: weights.rods),
        rings=_sum("mass of all rings", all_weights, lambda weights: weights.rings),
        total=_sum("mass of all shades", all_weights, lambda weights: weights.total),
        load=_add_loads(tuple(weights.load for weights in all_weights)),
        pieces=tuple(piece for weights in all_weights for piece in weights.pieces),
        beside=tuple(piece for weights in all_weights for piece in weights.beside),
    )


def _sum(name: str, all_weights: tuple[Weights, ...], part: Callable[[Weights], N]) -> N:
    parts = [part(weights) for weights in all_weights]
    slots = " and ".join(f"{{{number}}}" for number in range(len(parts)))
    total = sum(each.value for each in parts)
    low, high = (_bound(parts, end) for end in ("low", "high"))
    return derived(name, total, Unit.MASS, f"{slots}.", *parts, low=low, high=high)


def _bound(parts: list[N], end: str) -> float | None:
    """Add the ends of the ranges, where there are any."""
    ends = [getattr(part, end) for part in parts]
    if all(value is None for value in ends):
        return None
    return float(
        sum(part.value if value is None else value for part, value in zip(parts, ends, strict=True))
    )


def _add_loads(loads: tuple[PanelLoad, ...]) -> PanelLoad:
    return replace(
        loads[0],
        cloth_n_m=sum(load.cloth_n_m for load in loads),
        bar_n=sum(load.bar_n for load in loads),
        rows_n=tuple(sum(row) for row in zip(*(load.rows_n for load in loads), strict=True)),
        backing_n_m=sum(load.backing_n_m for load in loads),
        lumps=tuple(lump for load in loads for lump in load.lumps),
        bending_length_m=max(load.bending_length_m for load in loads),
    )
