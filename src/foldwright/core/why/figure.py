"""The one way in which every visible figure carries its derivation."""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING, Any, Generic, TypeVar

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.source import Source, Status

if TYPE_CHECKING:
    from collections.abc import Iterator


T = TypeVar("T", Length, float, int, str)


class Unit(Enum):
    """What a figure is counted in inside the program; screens choose the trade's unit."""

    LENGTH = "length"  # value is a Length
    AREA = "m2"
    MASS = "kg"
    AREAL_MASS = "kg/m2"
    LINE_MASS = "kg/m"
    FORCE = "N"
    TORQUE = "N.m"
    RATE = "N.m/turn"
    TURN = "turn"
    TIME = "s"
    SPEED = "m/s"
    ENERGY = "J"
    ANGLE = "degree"
    STIFFNESS = "Pa"
    SHARE = "share"  # shown as per cent
    RATIO = "1"
    COUNT = "count"
    WORD = "word"  # a choice in words: "right", "two-way lock"


@dataclass(frozen=True, kw_only=True, slots=True)
class Figure(Generic[T]):
    """A value a person can see, with the sentence, the inputs and the source behind it.

    `because` is one sentence in trade words; `{0}`, `{1}` … stand for `inputs`
    in order and are filled in when shown, in the units of the reader.
    `low` and `high`, where given, bound the middle 90 % of what is possible.
    """

    name: str
    value: T
    unit: Unit
    because: str
    inputs: tuple[Figure[Any], ...] = field(default=(), repr=False)  # shared, so endless in print
    status: Status = Status.DERIVED
    source: Source | None = None
    low: T | None = None
    high: T | None = None
    rounding: Rounding = Rounding.MARK

    def family(self) -> Iterator[Figure[Any]]:
        """Give this figure and all it rests on, each once, nearest first."""
        seen: set[int] = set()
        queue: list[Figure[Any]] = [self]
        while queue:
            figure = queue.pop(0)
            if id(figure) not in seen:
                seen.add(id(figure))
                yield figure
                queue.extend(figure.inputs)

    @property
    def rests_on(self) -> Status:
        """Give the weakest status among the figures this one was made from.

        A derived figure is only as good as the worst fact in it.
        """
        order = list(Status)
        leaves = [figure.status for figure in self.family() if not figure.inputs]
        return max(leaves, key=order.index)
