"""Tell a figure: its value in the reader's units, its sentence, and all it rests on.

Screens, papers and terminals all ask here, so that one figure reads alike everywhere.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from foldwright.core.quantity import measures
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measure_printing import MINUS
from foldwright.core.quantity.printing import print_fine
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.source import Source, Status

SLOT = re.compile(r"\{(\d+)(:range)?\}")
NUMBER_AND_UNIT = re.compile(rf"([-{MINUS}]?[\d./ ]*\d) ?(.*)")

PRINTERS: dict[Unit, Callable[[Any, System], str]] = {
    Unit.AREA: measures.print_area,
    Unit.MASS: measures.print_mass,
    Unit.AREAL_MASS: measures.print_areal_mass,
    Unit.LINE_MASS: measures.print_line_mass,
    Unit.FORCE: measures.print_force,
    Unit.TORQUE: measures.print_torque,
    Unit.RATE: measures.print_rate,
    Unit.TURN: lambda value, _: measures.print_turns(value),
    Unit.TIME: lambda value, _: f"{measures.print_number(value)} s",
    Unit.SPEED: measures.print_speed,
    Unit.ENERGY: measures.print_energy,
    Unit.ANGLE: lambda value, _: f"{measures.print_number(value)}°",
    Unit.STIFFNESS: measures.print_stiffness,
    Unit.SHARE: lambda value, _: measures.print_share(value),
    Unit.RATIO: lambda value, _: measures.print_number(value),
    Unit.COUNT: lambda value, _: str(value),
    Unit.WORD: lambda value, _: str(value),
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Line:
    """One line of an explanation; `depth` counts how many steps it lies under the figure asked.

    `told_above` marks a figure whose own line stands further up, so that its sentence
    and inputs are not told twice.
    """

    depth: int
    name: str
    value: str
    sentence: str
    status: Status
    rests_on: Status
    source: Source | None
    told_above: bool = False

    @property
    def known(self) -> str:
        """Give how the figure is known, in words, with its source where it has one.

        >>> line = Line(depth=0, name="pull", value="35 N", sentence="", rests_on=Status.PUBLISHED,
        ...     status=Status.PUBLISHED, source=Source(id="sor-2019-97", clause="s. 6"))
        >>> line.known
        'published: sor-2019-97, s. 6'
        """
        words = self.status.value
        if self.status is Status.DERIVED and self.rests_on is not Status.DERIVED:
            words = f"{words}, resting on {self.rests_on.value}"
        return f"{words}: {cite(self.source)}" if self.source else words

    @property
    def text(self) -> str:
        """Give the whole line as one text, without its indent.

        >>> Line(depth=1, name="drop", value="60 in", sentence="", status=Status.MEASURED,
        ...     rests_on=Status.MEASURED, source=None, told_above=True).text
        'drop: 60 in (told above)'
        """
        if self.told_above:
            return f"{self.name}: {self.value} (told above)"
        return f"{self.name}: {self.value}. {self.sentence} [{self.known}]"


def show_value(figure: Figure[Any], system: System) -> str:
    """Show a figure's value with its unit, without its range.

    Takes: the figure; the reader's system.

    Gives: text such as "35 3/16 in" or "9.8 turns"; a length honours its rounding.

    Source: derived here.

    >>> figure = Figure(name="rows", value=7, unit=Unit.COUNT, because="Chosen.")
    >>> show_value(figure, System.INCH)
    '7'
    """
    return _printed(figure.value, figure, system)


def show(figure: Figure[Any], system: System) -> str:
    """Show a figure's value with its unit, and its 90 % range in plain words if it has one.

    Takes: the figure; the reader's system.

    Gives: text such as "9.8 turns (90 % between 8.6 and 11.3)".

    Source: derived here.

    >>> figure = Figure(
    ...     name="turns", value=9.825, unit=Unit.TURN, because="Known.", low=8.6, high=11.3)
    >>> show(figure, System.METRIC)
    '9.8 turns (90 % between 8.6 and 11.3)'
    """
    value = show_value(figure, system)
    if figure.low is None or figure.high is None:
        return value
    low = _printed(figure.low, figure, system)
    high = _printed(figure.high, figure, system)
    return f"{value} (90 % {_between(low, high, value)})"


def fill(sentence: str, figures: Sequence[Figure[Any]], system: System) -> str:
    """Fill a sentence's slots with the figures they stand for.

    Takes: a sentence in which {0}, {1} … stand for the figures in order, and {0:range}
    for a figure with its range; the figures; the reader's system.

    Gives: the sentence as a person reads it.

    Raises: IndexError for a slot without a figure.

    Source: derived here.

    >>> rows = Figure(name="rows", value=7, unit=Unit.COUNT, because="Chosen.")
    >>> fill("Mark {0} rows.", (rows,), System.INCH)
    'Mark 7 rows.'
    """

    def shown(slot: re.Match[str]) -> str:
        figure = figures[int(slot[1])]
        return show(figure, system) if slot[2] else show_value(figure, system)

    return SLOT.sub(shown, sentence)


def tell(figure: Figure[Any], system: System) -> str:
    """Tell why a figure is what it is, in its one sentence.

    Takes: the figure; the reader's system.

    Gives: its because sentence with the inputs filled in.

    Source: derived here.

    >>> width = Figure(name="width", value=Length.inches(35), unit=Unit.LENGTH, because="Measured.")
    >>> board = Figure(name="board", value=Length.inches(35), unit=Unit.LENGTH,
    ...     because="As long as the width, {0}.", inputs=(width,))
    >>> tell(board, System.INCH)
    'As long as the width, 35 in.'
    """
    return fill(figure.because, figure.inputs, system)


def explain(figure: Figure[Any], system: System) -> tuple[Line, ...]:
    """Explain a figure with everything it rests on, as an indented list.

    Takes: the figure; the reader's system.

    Gives: one line for the figure and one for each input under it, depth first; what reads
    alike in several places is told once and only named again.

    Source: derived here.

    >>> width = Figure(name="width", value=Length.inches(35), unit=Unit.LENGTH,
    ...     because="As measured.", status=Status.MEASURED)
    >>> board = Figure(name="board", value=Length.inches(35), unit=Unit.LENGTH,
    ...     because="As long as {0}.", inputs=(width,))
    >>> for line in explain(board, System.INCH):
    ...     print("  " * line.depth + line.text)
    board: 35 in. As long as 35 in. [derived, resting on measured]
      width: 35 in. As measured. [measured]
    """
    lines: list[Line] = []
    told: set[Line] = set()
    waiting: list[tuple[int, Figure[Any]]] = [(0, figure)]
    while waiting:
        depth, current = waiting.pop()
        line = _line(current, system)
        lines.append(replace(line, depth=depth, told_above=line in told))
        if line not in told:
            told.add(line)
            waiting.extend((depth + 1, each) for each in reversed(current.inputs))
    return tuple(lines)


def cite(source: Source) -> str:
    """Name a source and the clause meant in it.

    Takes: the source.

    Gives: its id in docs/sources.toml, with the clause or page.

    Source: derived here.

    >>> cite(Source(id="sor-2019-97", clause="s. 6"))
    'sor-2019-97, s. 6'
    """
    return f"{source.id}, {source.clause}" if source.clause else source.id


def _line(figure: Figure[Any], system: System) -> Line:
    return Line(
        depth=0,
        name=figure.name,
        value=show(figure, system),
        sentence=tell(figure, system),
        status=figure.status,
        rests_on=figure.rests_on,
        source=figure.source,
    )


def _printed(value: Any, figure: Figure[Any], system: System) -> str:
    """Print a value of the figure's kind; rounded alike, a value never leaves its own range."""
    if isinstance(value, Length):
        return print_fine(value, system, figure.rounding)
    return PRINTERS[figure.unit](value, system)


def _between(low: str, high: str, value: str) -> str:
    """Leave the unit out of a range where value and both ends share it; per cent stay."""
    parts = [NUMBER_AND_UNIT.fullmatch(text) for text in (low, high, value)]
    units = {part[2].replace("turns", "turn") for part in parts if part}
    if len(units) == 1 and units != {"%"} and parts[0] and parts[1]:
        return f"between {parts[0][1]} and {parts[1][1]}"
    return f"between {low} and {high}"
