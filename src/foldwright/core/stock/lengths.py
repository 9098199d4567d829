"""The lengths that a shade takes of tube, board, bar, rod, cord and tape."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Protocol

from foldwright.core.design.layout import Layout
from foldwright.core.design.rod_pockets import rod_length
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.rig.headrail import Headrail
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


class Named(Protocol):
    """A record of the shop's list."""

    @property
    def name(self) -> str:
        """Give its name."""


@dataclass(frozen=True, kw_only=True, slots=True)
class PartLength:
    """One length to cut, and of what."""

    material: str  # its name in the shop's list
    name: str
    length: L
    sawn: bool = True  # False: cut with scissors, and nothing is lost


@dataclass(frozen=True, kw_only=True, slots=True)
class Fitted:
    """A shade as far as its straight parts are known."""

    tag: str
    size: FinishedSize
    layout: Layout | None
    headrail: Headrail | None  # its own; None where one tube lifts several shades
    board_length: L | None  # its own; None where the board of another shade carries it
    chosen: Chosen
    habits: Habits


def lengths_of(shade: Fitted) -> Iterator[PartLength]:
    """Tell every straight part that a shade is cut from stock for.

    Takes: the shade as far as it is known.

    Gives: board, tube, bar, rods, cords or tapes; what is not chosen or not known is left out.

    Source: common practice (bar and rods shorter than the shade).

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.records import Bar
    >>> from foldwright.core.rig.example import SIZE
    >>> bar = Bar(name="flat", line_mass_kg_m=0.5, width=Length.mm(20), thickness=Length.mm(3),
    ...           stiffness_pa=2e11)
    >>> shade = Fitted(tag="Stair", size=SIZE, layout=None, headrail=None,
    ...                board_length=None, chosen=Chosen(bar=bar), habits=house_habits())
    >>> [(part.name, part.length.value.in_millimetres) for part in lengths_of(shade)]
    [('Stair bar', 1187.3)]
    """
    yield from _of_the_headrail(shade)
    yield from _of_the_hem(shade)
    yield from _rods(shade)
    yield from _cords(shade)


def _of_the_headrail(shade: Fitted) -> Iterator[PartLength]:
    if shade.chosen.board is not None and shade.board_length is not None:
        yield _part(shade, "board", shade.chosen.board, shade.board_length)
    if shade.headrail is not None and shade.chosen.tube is not None:
        yield _part(shade, "tube", shade.chosen.tube, shade.headrail.tube_cut)


def _of_the_hem(shade: Fitted) -> Iterator[PartLength]:
    if shade.chosen.bar is not None:
        length = _shorter("length of the bar", shade, shade.habits.bar_less_than_width)
        yield _part(shade, "bar", shade.chosen.bar, length)


def _rods(shade: Fitted) -> Iterator[PartLength]:
    if shade.chosen.rod is None or shade.layout is None:
        return
    length = rod_length(shade.size.width, shade.layout, shade.habits)
    for number in range(1, len(shade.layout.rows.rod_marks) + 1):
        yield _part(shade, f"rod {number}", shade.chosen.rod, length)


def _cords(shade: Fitted) -> Iterator[PartLength]:
    wound = shade.chosen.cord or shade.chosen.tape
    if wound is None or shade.headrail is None:
        return
    word = "cord" if shade.chosen.cord else "tape"
    for line in shade.headrail.lines:
        part = _part(shade, f"{word} {line.number}", wound, line.cut_length)
        yield PartLength(material=part.material, name=part.name, length=part.length, sawn=False)


def _part(shade: Fitted, word: str, record: Named, length: L) -> PartLength:
    return PartLength(material=record.name, name=f"{shade.tag} {word}", length=length)


def _shorter(name: str, shade: Fitted, less: L) -> L:
    width = shade.size.width
    because = "The finished width {0} less {1}."
    value = width.value - less.value
    rounding = Rounding.MUST_FIT
    return derived(name, value, Unit.LENGTH, because, width, less, rounding=rounding)
