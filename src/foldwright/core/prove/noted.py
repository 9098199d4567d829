"""Figures of what was noted at the bench, and the readings they are made of."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.prove.card_step import Judgement, Outcome, Reading, Readings
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, T, Unit
from foldwright.core.why.source import Status


def noted(name: str, value: T, unit: Unit) -> Figure[T]:
    """Make a figure of something noted at the bench."""
    because = f"The {name}, as noted at the bench."
    return Figure(name=name, value=value, unit=unit, because=because, status=Status.MEASURED)


def length(readings: Readings, name: str) -> Length | None:
    """Give a length that was read, or None."""
    value = readings.get(name)
    return value if isinstance(value, Length) else None


def lengths(readings: Readings, **names: str) -> Iterator[tuple[str, Figure[Length]]]:
    """Give the lengths that were read, as figures under the names given."""
    for field, words in names.items():
        value = length(readings, field)
        if value is not None:
            yield field, noted(words, value, Unit.LENGTH)


def number(readings: Readings, name: str) -> float | None:
    """Give a number that was read, or None."""
    value: Reading | None = readings.get(name)
    return float(value) if isinstance(value, int | float) else None


def passes(sentence: str, *figures: Figure[Any]) -> Judgement:
    """Say that something is as it should be."""
    return Judgement(outcome=Outcome.PASS, sentence=sentence, figures=figures)


def asks(sentence: str, *figures: Figure[Any]) -> Judgement:
    """Say that somebody must look at something again, or decide."""
    return Judgement(outcome=Outcome.ASK, sentence=sentence, figures=figures)


def stops(sentence: str, *figures: Figure[Any]) -> Judgement:
    """Say that the shade may not leave so."""
    return Judgement(outcome=Outcome.STOP, sentence=sentence, figures=figures)
