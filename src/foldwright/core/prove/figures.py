"""Plain numbers of the bench as figures."""

from __future__ import annotations

from math import isclose
from typing import Any

from foldwright.core.lift.span import Span
from foldwright.core.prove.observing import Reading
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Status

SAME = 1e-6  # ends as near as this leave no range to tell


def noted(name: str, value: float, unit: Unit) -> Figure[Any]:
    """Make a figure of a number noted at the bench; lengths are given in metres."""
    because = f"The {name} as noted at the bench."
    return fact(name, _value(value, unit), unit, because, Status.MEASURED)


def ranged(name: str, span: Span, unit: Unit, because: str, *inputs: Figure[Any]) -> Figure[Any]:
    """Make a figure of a span; lengths are given in metres."""
    low, likely, high = (_value(value, unit) for value in (span.low, span.likely, span.high))
    if isclose(span.low, span.high, rel_tol=SAME):
        return derived(name, likely, unit, because, *inputs)
    return derived(name, likely, unit, because, *inputs, low=low, high=high)


def reckoned(
    name: str, value: float, unit: Unit, because: str, *inputs: Figure[Any]
) -> Figure[Any]:
    """Make a figure of a number worked out; lengths are given in metres."""
    return derived(name, _value(value, unit), unit, because, *inputs)


def noted_reading(reading: Reading) -> Figure[Any]:
    """Make a figure of a reading; what only happened or did not is a word."""
    if reading.unit is Unit.SHARE:
        word = "yes" if reading.noted else "no"
        because = f"Noted at the bench: {reading.name}, or not."
        return fact(reading.name, word, Unit.WORD, because, Status.MEASURED)
    return noted(reading.name, reading.noted, reading.unit)


def _value(value: float, unit: Unit) -> Any:
    return Length.metres(round(value, 6)) if unit is Unit.LENGTH else float(value)
