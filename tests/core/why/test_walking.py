"""Every figure in a result is found, and every number without a why is named."""

from __future__ import annotations

from dataclasses import dataclass
from enum import IntEnum
from typing import Any

import numpy as np

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, measured
from foldwright.core.why.walking import bare_numbers, walk_figures, walk_places

WIDTH = measured("width", Length.mm(900))
HALF = derived("half", Length.mm(450), Unit.LENGTH, "Half of {0}.", WIDTH)


class Way(IntEnum):
    UP = 1


@dataclass(frozen=True, kw_only=True)
class Part:
    figure: Figure[Any]
    number: Any = None


@dataclass(frozen=True, kw_only=True)
class Whole:
    parts: tuple[Part, ...]
    named: dict[str, Part]
    note: str = "7"


def test_figures_are_found_in_the_order_of_the_fields() -> None:
    whole = Whole(parts=(Part(figure=WIDTH), Part(figure=HALF)), named={"last": Part(figure=WIDTH)})
    assert list(walk_figures(whole)) == [WIDTH, HALF, WIDTH]
    assert [place for place, _ in walk_places(whole)] == [
        "parts.0.figure",
        "parts.1.figure",
        "named.last.figure",
    ]


def test_numbers_without_a_why_are_named_by_their_place() -> None:
    whole = Whole(
        parts=(Part(figure=WIDTH, number=3), Part(figure=HALF, number=Length.mm(1))),
        named={"last": Part(figure=chosen("rows", 7, Unit.COUNT), number=[0.5, None])},
    )
    assert bare_numbers(whole) == ("parts.0.number", "parts.1.number", "named.last.number.0")


def test_arrays_are_numbers_and_words_choices_and_figures_are_none() -> None:
    assert bare_numbers({"curve": np.zeros(3)}) == ("curve",)
    assert bare_numbers(("7", True, None, WIDTH)) == ()
    assert bare_numbers((Way.UP,)) == ()


def test_what_lies_inside_a_figure_has_its_why() -> None:
    assert bare_numbers(HALF) == ()
    assert list(walk_figures(HALF)) == [HALF]
