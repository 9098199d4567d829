"""What one layout trades against another, in the words of the trade and with its numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any

from foldwright.core.design.layout import Layout
from foldwright.core.design.pattern_lock import Lock
from foldwright.core.facts.layout_taste import NEXT, TOLD_APART, Wish
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived
from foldwright.core.why.trying import on_mark

L = Figure[Length]
ORDINALS = {1: "each fold", 2: "every other fold", 3: "every third fold", 4: "every fourth fold"}


@dataclass(frozen=True, kw_only=True, slots=True)
class Seen:
    """A layout with what the search found of it."""

    layout: Layout
    lock: Lock | None
    motif_folded: bool
    stops: int
    system: System

    @property
    def rings(self) -> Figure[int]:
        """Count the rings to sew."""
        rows, columns = self.layout.rows.count, self.layout.columns.count
        return derived(
            "rings",
            rows.value * columns.value,
            Unit.COUNT,
            "{0} rows on {1} columns.",
            rows,
            columns,
        )


@dataclass(kw_only=True, slots=True)
class Saying:
    """A sentence in the making, its figures numbered as they come."""

    parts: list[str] = field(default_factory=list)
    figures: list[Figure[Any]] = field(default_factory=list)

    def add(self, text: str, *figures: Figure[Any]) -> None:
        """Say one thing more; {} stand for the figures."""
        first = len(self.figures)
        slots = [f"{{{first + number}}}" for number in range(len(figures))]
        self.figures.extend(figures)
        self.parts.append(text.format(*slots))

    def told(self, between: str) -> str:
        """Give what was said, as one sentence."""
        text = between.join(self.parts)
        return text[:1].upper() + text[1:] + "."


def tell_offer(one: Seen, other: Seen) -> tuple[str, tuple[Figure[Any], ...]]:
    """Tell a layout in two sentences: what it is, and what it trades against another.

    Takes: the layout; the one that it is held against.

    Gives: the text, in which {0}, {1} … stand for the figures.

    Source: derived here.
    """
    plain, trade = Saying(), Saying()
    _measures(plain, one.layout)
    trade.figures = plain.figures
    for tell in (_stops, _rings, _print, _motif, _stack, _glass, _moved):
        tell(trade, one, other)
    if one.layout == other.layout:
        trade.add("nothing that was tried is better")
    _seam(trade, one, other)
    return " ".join(_sentences(plain, trade)), tuple(plain.figures)


def tell_title(wish: Wish, one: Seen, other: Seen) -> str:
    """Name a layout: by its wish, or the next best by what it has more or fewer of.

    Takes: the wish that it was found for; the layout; the one that it is held against.

    Gives: a few words.

    Source: derived here.
    """
    if wish is not NEXT:
        return wish.title
    rows, columns = _rows_apart(one, other), _columns_apart(one, other)
    changes = " and ".join((*more_or_fewer(rows, "row"), *more_or_fewer(columns, "column")))
    return changes[:1].upper() + changes[1:] if changes else wish.title


def _sentences(plain: Saying, trade: Saying) -> Iterator[str]:
    yield plain.told(", ")
    if trade.parts:
        yield trade.told("; ")


def _measures(said: Saying, layout: Layout) -> None:
    rows, columns = layout.rows, layout.columns
    said.add("{} rows at {}", rows.count, rows.spacing)
    said.add("{} columns {} apart", columns.count, columns.pitch)
    said.add("the first {} from the edge", columns.edge_distance)


def _stops(said: Saying, one: Seen, other: Seen) -> None:
    if one.stops < other.stops:
        cleared = _count("stops cleared", other.stops - one.stops, "What stops it otherwise.")
        said.add("it clears {} to stop at", cleared)


def _rings(said: Saying, one: Seen, other: Seen) -> None:
    """Say what rows and columns more or fewer cost or save in rings and cords."""
    rows, columns = _rows_apart(one, other), _columns_apart(one, other)
    if not rows and not columns:
        return
    changes = " and ".join((*more_or_fewer(rows, "row"), *more_or_fewer(columns, "column")))
    rings = one.rings.value - other.rings.value
    difference = derived(
        "rings apart", abs(rings), Unit.COUNT, "{0} against {1}.", one.rings, other.rings
    )
    verb = "saves" if rings < 0 else "costs"
    cords = _cords(columns) if columns and (columns < 0) == (rings < 0) else ""
    said.add(
        f"{changes} {verb if _single(rows, columns) else verb[:-1]} {{}} rings{cords}", difference
    )
    if columns and not cords:
        said.add(
            f"it {'saves' if columns < 0 else 'takes'} {_cords(columns).removeprefix(' and ')}"
        )


def _rows_apart(one: Seen, other: Seen) -> int:
    return one.layout.rows.count.value - other.layout.rows.count.value


def _columns_apart(one: Seen, other: Seen) -> int:
    return one.layout.columns.count.value - other.layout.columns.count.value


def _single(rows: int, columns: int) -> bool:
    """Tell whether the verb stands after one thing alone."""
    return abs(rows) + abs(columns) == 1


def more_or_fewer(number: int, word: str) -> Iterator[str]:
    """Say how many more or fewer there are; nothing where there are as many.

    Takes: the difference; what is counted, one of it.

    Gives: text such as "2 rows more", or none.

    Source: derived here.

    >>> [*more_or_fewer(2, "row"), *more_or_fewer(0, "row"), *more_or_fewer(-1, "column")]
    ['2 rows more', '1 column fewer']
    """
    if number:
        many = "" if abs(number) == 1 else "s"
        yield f"{abs(number)} {word}{many} {'more' if number > 0 else 'fewer'}"


def _cords(columns: int) -> str:
    return " and a cord" if abs(columns) == 1 else f" and {abs(columns)} cords"


def _print(said: Saying, one: Seen, other: Seen) -> None:
    if one.lock is not None:
        said.add(f"{ORDINALS[one.lock.alike_after]} shows the same part of the print")
    elif other.lock is not None:
        said.add("the print falls on the folds by no rule")


def _motif(said: Saying, one: Seen, other: Seen) -> None:
    if one.motif_folded != other.motif_folded:
        folds = "folds a" if one.motif_folded else "folds no"
        said.add(f"the lowest row {folds} motif in two")


def _stack(said: Saying, one: Seen, other: Seen) -> None:
    ours, theirs = one.layout.stack.raised_size, other.layout.stack.raised_size
    if _apart(ours, theirs):
        word = "shorter" if ours.value < theirs.value else "longer"
        apart = _difference("raised sizes apart", ours, theirs, one.system)
        said.add(f"the raised shade is {{}} {word}", apart)


def _glass(said: Saying, one: Seen, other: Seen) -> None:
    ours, theirs = one.layout.stack.glass_covered, other.layout.stack.glass_covered
    if ours is not None and theirs is not None and _apart(ours, theirs):
        word = "less" if ours.value < theirs.value else "more"
        said.add(
            f"it covers {{}} {word} glass", _difference("glass apart", ours, theirs, one.system)
        )


def _moved(said: Saying, one: Seen, other: Seen) -> None:
    """Say what else is not as it was, so that nothing is typed unsaid."""
    rows, before = one.layout.rows, other.layout.rows
    if rows.skirt.value != before.skirt.value:
        said.add("the hem shows {} below the folds instead of {}", rows.skirt, before.skirt)
    if rows.head_allowance.value != before.head_allowance.value:
        said.add("the head takes {} instead of {}", rows.head_allowance, before.head_allowance)
    if rows.fullness.value != before.fullness.value:
        said.add("the loops take {} of cloth instead of {}", rows.fullness, before.fullness)


def _seam(said: Saying, one: Seen, other: Seen) -> None:
    widths, before = one.layout.widths, other.layout.widths
    middle, usual = widths.centre_visible, before.centre_visible
    if middle is not None and usual is not None and middle.value != usual.value:
        said.add("the middle piece shows {} instead of {}", middle, usual)
    if widths.nearest_column is not None:
        said.add("a seam lies {} from the nearest column", widths.nearest_column)


def _apart(one: L, other: L) -> bool:
    return abs(one.value - other.value) >= TOLD_APART.value


def _difference(name: str, one: L, other: L, system: System) -> L:
    value = on_mark(abs(one.value - other.value), system, Rounding.MARK)
    return derived(name, value, Unit.LENGTH, "{0} against {1}, to a mark.", one, other)


def _count(name: str, value: int, because: str) -> Figure[int]:
    return derived(name, value, Unit.COUNT, because)
