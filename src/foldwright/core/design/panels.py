"""The cloth of each panel between two rows, whatever the style."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from foldwright.core.design.layout import RowPlan
from foldwright.core.quantity.length import ZERO, Length


def panel_heights(rows: RowPlan) -> tuple[Length, ...]:
    """Give the height that each panel would have hanging free, the top panel last.

    Takes: the row plan.

    Gives: one length for each row, lowest first. A panel below tied rows is gathered up even
    when the shade is down; it gets the height it would have if the rows were untied.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> [height.in_millimetres for height in panel_heights(LAYOUT.rows)][-2:]
    [200.0, 140.0]
    """
    marks = [mark.value for mark in rows.marks]
    between = [upper - lower for lower, upper in pairwise(marks)]
    if rows.pouf is not None and rows.tied_rows.value:
        gathered = rows.pouf.value / rows.tied_rows.value
        between[: rows.tied_rows.value] = [
            height + gathered for height in between[: rows.tied_rows.value]
        ]
    return (*between, rows.top_panel.value)


def looped_fullness(rows: RowPlan) -> float:
    """Tell how much cloth a panel has to one of height, as it hangs in folds.

    Takes: the row plan.

    Gives: the fullness of loops; 1 where the cloth is flat, or gathered along the drop so
    that it hangs in no loops.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> looped_fullness(LAYOUT.rows)
    1.0
    """
    return 1.0 if rows.shirred else rows.fullness.value


def hem_below(rows: RowPlan) -> Length:
    """Tell how far below the lowest row the hem lies, along the cloth.

    Takes: the row plan.

    Gives: the first row's height; the skirt alone where a pouf or a swag hangs lower than
    the hem does at its columns.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> hem_below(LAYOUT.rows).in_millimetres
    60.0
    """
    behind = rows.tied_rows.value or rows.shirred
    return rows.skirt.value if behind else rows.first_row.value


def cloth_below(rows: RowPlan) -> Length:
    """Give the cloth from the hem up to the lowest row, before it is gathered.

    Takes: the row plan.

    Gives: what hangs there; loops begin above the lowest row, gathers along the drop below it.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> cloth_below(LAYOUT.rows).in_millimetres
    60.0
    """
    return _times(hem_below(rows), rows.fullness.value if rows.shirred else 1.0)


def hanging_cloth(rows: RowPlan) -> Length:
    """Add up the cloth of a shade from its hem to its top line, as it hangs in folds.

    Takes: the row plan.

    Gives: the cloth below the lowest row and that of all panels; what is sewn into tucks,
    pockets or gathers counts as short as they make it.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> hanging_cloth(LAYOUT.rows).in_millimetres
    1600.0
    """
    return hem_below(rows) + _times(_panels(rows), looped_fullness(rows))


def cloth_of(rows: RowPlan) -> Length:
    """Add up the cloth of a shade from its hem to its top line, before tucks and pockets.

    Takes: the row plan.

    Gives: what lies below the lowest row; above it the drop, and what is tied up in a pouf,
    at the fullness.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> cloth_of(LAYOUT.rows).in_millimetres
    1600.0
    """
    return cloth_below(rows) + _times(_panels(rows), rows.fullness.value)


def _panels(rows: RowPlan) -> Length:
    return sum(panel_heights(rows), ZERO)


def _times(height: Length, fullness: float) -> Length:
    return Length(round(height.nanometres * Fraction(fullness).limit_denominator()))
