"""A better choice from a good one: open some cut lengths again and choose anew for these."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from foldwright.core.cloth.choosing.diving import so_often
from foldwright.core.cloth.choosing.model import Choice, Finder, Frame, Rest, chosen
from foldwright.core.cloth.choosing.pricing import Priced, price
from foldwright.core.cloth.columns import Column, Pool
from foldwright.core.cloth.finding.side_by_side import Prices

PIECES_AT_ONCE = 26
MOST_COLUMNS = 6_000
STEPS = 12
SECONDS = 2.0
A_HAIR = 1e-6  # mm


def improve(  # noqa: PLR0913, PLR0917 - a choice and all that it stands in
    frame: Frame,
    pool: Pool,
    finder: Finder,
    choice: Choice,
    chance: np.random.Generator,
    seconds_left: Callable[[], float],
) -> Choice | None:
    """Open a part of a choice again.

    Takes: the frame; the pool; a finder; a whole choice; where to draw the part from; a
    clock that gives the seconds left.

    Gives: a choice that takes less, or None.

    Source: derived here.
    """
    opened = _part(choice, chance)
    kept = [column for n, column in enumerate(choice.columns) if n not in opened]
    rest = frame.all
    for column in kept:
        rest = frame.without(rest, column)
    settled = sum(column.cost for column in kept) / frame.cloth.per_mm
    part = [choice.columns[number] for number in sorted(opened)]
    found = best_of_rest(frame, pool, finder, part, rest, choice.length - settled, seconds_left)
    if found is None or settled + found.length >= choice.length - A_HAIR:
        return None
    return Choice([*kept, *found.columns], found.ways, settled + found.length)


def _part(choice: Choice, chance: np.random.Generator) -> set[int]:
    """Draw cut lengths, half of them near one another in length."""
    order = sorted(range(len(choice.columns)), key=lambda n: choice.columns[n].level.length)
    middle = int(chance.integers(len(order)))
    spread = float(chance.choice([3.0, 10.0, len(order)]))
    drawn = chance.normal(middle, spread, size=4 * PIECES_AT_ONCE).round().astype(int)
    opened: set[int] = set()
    pieces = 0
    for rank in drawn[(drawn >= 0) & (drawn < len(order))]:
        number = order[int(rank)]
        count = len(choice.columns[number].level.strips)
        if number not in opened and pieces + count <= PIECES_AT_ONCE:
            opened.add(number)
            pieces += count
    return opened


def best_of_rest(  # noqa: PLR0913, PLR0917 - a part of a choice and all that it stands in
    frame: Frame,
    pool: Pool,
    finder: Finder,
    part: Sequence[Column],
    rest: Rest,
    length: float,
    seconds_left: Callable[[], float],
) -> Choice | None:
    """Choose the best cut lengths for a rest that is now covered by a part of that length."""
    wanted = {int(kind) for kind in np.nonzero(rest.pieces)[0]}
    few = Pool(frame.cloth, [column.level for column in part])
    for column in pool.columns:
        if all(kind in wanted for kind, _ in column.counts):
            few.add(column.level)
    found = price(frame, few, finder, so_often(STEPS), rest)
    if found.least >= length - A_HAIR:
        return None
    columns = _worth_choosing(frame, finder, found, length)
    return chosen(frame, columns, rest, min(SECONDS, seconds_left()))[0]


def _worth_choosing(frame: Frame, finder: Finder, found: Priced, length: float) -> list[Column]:
    """List every cut length that a better choice could use, or those of the pool if too many."""
    gap = length - found.least
    levels = finder.all_within(found.prices, gap, MOST_COLUMNS)
    if levels is None:
        return found.pool.columns
    listed = Pool(frame.cloth, [*levels, *(column.level for column in found.pool.columns)])
    return [c for c in listed.columns if over_price(frame, c, found.prices) <= gap + A_HAIR]


def over_price(frame: Frame, column: Column, prices: Prices) -> float:
    """Give how much more a cut length takes than it is worth, in mm."""
    worth = sum(count * prices.pieces[kind] for kind, count in column.counts)
    if column.start >= 0:
        worth -= prices.places[column.start]
    if column.end >= 0:
        worth += prices.places[column.end]
    worth += float(prices.longer[: frame.longer_than(column)].sum())
    return column.cost / frame.cloth.per_mm - float(worth)
