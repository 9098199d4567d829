"""What bar, rods and rings weigh."""

from __future__ import annotations

from foldwright.core.design.rod_pockets import rod_length
from foldwright.core.facts.records import Bar, Rod
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact, supplied
from foldwright.core.why.source import Status

L = Figure[Length]
N = Figure[float]


def bar_mass(shade: MadeUp, bar: Bar | None) -> N:
    """Give what the bottom bar weighs, cut to its length; None stands for a hem without one.

    Takes: the shade; the bar as its supplier describes it.

    Gives: kg.

    Source: common practice (cut shorter than the finished width).
    """
    if bar is None:
        because = "This shade hangs without a bar."
        return fact("mass of the bar", 0.0, Unit.MASS, because, Status.CHOSEN)
    length = _cut("length of the bar", shade.size.width, shade.habits.bar_less_than_width)
    return _by_length("mass of the bar", bar.line_mass_kg_m, bar.name, length)


def rod_mass(shade: MadeUp, rod: Rod) -> N:
    """Give what one rod weighs, cut to its length.

    Takes: the shade; the rod as its supplier describes it.

    Gives: kg.

    Source: common practice (cut shorter than the finished width).
    """
    length = rod_length(shade.size.width, shade.layout, shade.habits)
    return _by_length("mass of a rod", rod.line_mass_kg_m, rod.name, length)


def rods_mass(shade: MadeUp, one: N | None) -> N:
    """Give what all rods weigh together; None stands for a shade without rods.

    Takes: the shade; the mass of one rod.

    Gives: kg.

    Source: derived here.
    """
    if one is None:
        return fact("mass of the rods", 0.0, Unit.MASS, "This shade has no rods.", Status.CHOSEN)
    count = _count("number of rods", len(shade.layout.rows.rod_marks))
    because = "{0} rods of {1} each."
    return derived("mass of the rods", count.value * one.value, Unit.MASS, because, count, one)


def row_of_rings_mass(shade: MadeUp) -> N:
    """Give what the rings of one row weigh, one ring on each cord column.

    Takes: the shade.

    Gives: kg, with the range of a ring.

    Source: common practice.
    """
    ring, columns = shade.habits.ring_mass_kg, shade.layout.columns.count
    low, high = (None if end is None else end * columns.value for end in (ring.low, ring.high))
    return derived(
        "rings of one row",
        ring.value * columns.value,
        Unit.MASS,
        "{0} on each of the {1} columns.",
        ring,
        columns,
        low=low,
        high=high,
    )


def rings_mass(shade: MadeUp, row: N) -> N:
    """Give what all rings weigh together.

    Takes: the shade; the mass of one row of rings.

    Gives: kg, with the range of a ring.

    Source: derived here.
    """
    rows = shade.layout.rows.count
    low, high = (None if end is None else end * rows.value for end in (row.low, row.high))
    return derived(
        "mass of the rings",
        row.value * rows.value,
        Unit.MASS,
        "{0} in each of the {1} rows.",
        row,
        rows,
        low=low,
        high=high,
    )


def _cut(name: str, width: L, less: L) -> L:
    because = "The finished width {0} less {1}."
    return derived(name, width.value - less.value, Unit.LENGTH, because, width, less)


def _by_length(name: str, line_mass_kg_m: float, record: str, length: L) -> N:
    line = supplied("mass per length", line_mass_kg_m, Unit.LINE_MASS, record)
    mass = line_mass_kg_m * length.value.in_metres
    return derived(name, mass, Unit.MASS, "{0} over {1}.", line, length)


def _count(name: str, value: int) -> Figure[int]:
    return fact(name, value, Unit.COUNT, "As marked on the shade.", Status.CHOSEN)
