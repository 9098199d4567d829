"""Make figures: measured, chosen, from a supplier's sheet, a fact, or derived from others."""

from __future__ import annotations

from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, T, Unit
from foldwright.core.why.source import Source, Status


def measured(name: str, length: Length) -> Figure[Length]:
    """Make a figure of a length that somebody measured at the window.

    Takes: the figure's name in trade words; the exact length.

    Gives: a figure with status measured and no inputs.

    Source: derived here.

    >>> measured("width at the top", Length.inches(35)).status.value
    'measured'
    """
    return Figure(
        name=name,
        value=length,
        unit=Unit.LENGTH,
        because=f"The {name} as measured.",
        status=Status.MEASURED,
    )


def chosen(name: str, value: T, unit: Unit) -> Figure[T]:
    """Make a figure of what the client or the maker chose.

    Takes: the figure's name; its value; its unit.

    Gives: a figure with status chosen and no inputs.

    Source: derived here.

    >>> chosen("number of rows", 7, Unit.COUNT).because
    'The number of rows as chosen for this shade.'
    """
    return Figure(
        name=name,
        value=value,
        unit=unit,
        because=f"The {name} as chosen for this shade.",
        status=Status.CHOSEN,
    )


def supplied(  # noqa: PLR0913 - all that a figure carries
    name: str,
    value: T,
    unit: Unit,
    record_name: str,
    *,
    low: T | None = None,
    high: T | None = None,
) -> Figure[T]:
    """Make a figure of what a supplier's sheet says.

    Takes: the figure's name; its value and unit; the record's name in the shop list;
    the ends of the 90 % range where the sheet gives them.

    Gives: a figure with status supplier's sheet and no inputs.

    Source: derived here.

    >>> supplied("tube diameter", Length.mm(38), Unit.LENGTH, "tube 38").because
    'The tube diameter on the sheet of “tube 38”.'
    """
    return Figure(
        name=name,
        value=value,
        unit=unit,
        because=f"The {name} on the sheet of “{record_name}”.",
        status=Status.SUPPLIER,
        low=low,
        high=high,
    )


def fact(  # noqa: PLR0913 - all that a figure carries
    name: str,
    value: T,
    unit: Unit,
    because: str,
    status: Status,
    *,
    source: Source | None = None,
    low: T | None = None,
    high: T | None = None,
    rounding: Rounding = Rounding.MARK,
) -> Figure[T]:
    """Make a figure of something known before the job: a rule, a constant, a habit.

    Takes: the figure's name; its value and unit; one sentence that says why it is so;
    how it is known; its source where there is one; the ends of its 90 % range; which way a
    length is rounded when it is shown.

    Gives: a figure without inputs.

    Source: derived here.

    >>> fact("safety wraps", 3.0, Unit.TURN, "They stay on.", Status.PRACTICE).rests_on.value
    'common practice'
    """
    return Figure(
        name=name,
        value=value,
        unit=unit,
        because=because,
        status=status,
        source=source,
        low=low,
        high=high,
        rounding=rounding,
    )


def derived(  # noqa: PLR0913 - all that a figure carries
    name: str,
    value: T,
    unit: Unit,
    because: str,
    *inputs: Figure[Any],
    low: T | None = None,
    high: T | None = None,
    rounding: Rounding = Rounding.MARK,
    source: Source | None = None,
) -> Figure[T]:
    """Make a figure worked out from other figures.

    Takes: the figure's name; its value and unit; one sentence in which {0}, {1} …
    stand for the inputs; the inputs in that order; the ends of the 90 % range;
    the way it is rounded in print; the source of the rule where there is one.

    Gives: a figure with status derived.

    Source: derived here.

    >>> width = measured("width", Length.inches(35))
    >>> half = derived("half width", width.value / 2, Unit.LENGTH, "Half of {0}.", width)
    >>> half.rests_on.value
    'measured'
    """
    return Figure(
        name=name,
        value=value,
        unit=unit,
        because=because,
        inputs=inputs,
        low=low,
        high=high,
        rounding=rounding,
        source=source,
    )
