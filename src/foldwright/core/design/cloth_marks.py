"""Rows as they are marked on the flat cloth, where loops or a pouf take some of it up."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from foldwright.core.design.layout import RowPlan
from foldwright.core.design.panels import cloth_below, panel_heights
from foldwright.core.design.rows import exact_share
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


def mark_the_cloth(rows: RowPlan) -> RowPlan:
    """Add the marks on the flat cloth to rows that hang nearer together than they lie on it.

    Takes: the row plan.

    Gives: the same plan with its marks on the cloth; none where they are those of the
    hanging shade.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> mark_the_cloth(LAYOUT.rows) is LAYOUT.rows
    True
    """
    if rows.pouf is None and rows.fullness.value == 1:
        return rows
    return replace(rows, cloth_marks=tuple(_on_the_cloth(rows)))


def _on_the_cloth(rows: RowPlan) -> Iterator[L]:
    """Add the cloth up from the hem, panel by panel."""
    full, height = exact_share(rows.fullness), cloth_below(rows)
    because = "The row that hangs at {0}: the cloth from the hem up to it"
    because += ", the pouf with it" if rows.pouf else ""
    for number, (mark, panel) in enumerate(zip(rows.marks, panel_heights(rows), strict=True), 1):
        yield derived(
            f"row {number} on the flat cloth",
            height,
            Unit.LENGTH,
            because + ", at {1} of cloth to one above the lowest row.",
            mark,
            rows.fullness,
        )
        height = height + Length(round(panel.nanometres * full))
