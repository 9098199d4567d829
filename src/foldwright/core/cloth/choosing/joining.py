"""A choice that hangs together: no cut lengths that only follow one another in a circle.

The model lets cut lengths close a circle of their own, which no roll ever comes to. For the
places of such a circle it is added that some way must lead in if anything starts there; every
plan keeps to that, so what is proven with these rows holds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence

import numpy as np
from scipy.sparse import csr_array

from foldwright.core.cloth.choosing.model import Choice, Frame, chosen
from foldwright.core.cloth.columns import NOWHERE, Column

ROUNDS = 12


def choose_joined(
    frame: Frame, columns: Sequence[Column], seconds_left: Callable[[], float]
) -> tuple[Choice | None, float]:
    """Choose cut lengths that can all be cut in one go from each roll.

    Takes: the frame; cut lengths to choose from; a clock that gives the seconds to use.

    Gives: the best choice found, or None; and a length (mm) that no choice among these is
    under, endless if there is none.

    Source: derived here.
    """
    rows: list[csr_array] = []
    best, least = chosen(frame, columns, frame.all, seconds_left())
    for _ in range(ROUNDS):
        if best is None or seconds_left() <= 0:
            break
        circle = _circle(best)
        if not circle:
            break
        rows += _must_be_entered(frame, columns, circle, best)
        found, bound = chosen(frame, columns, frame.all, seconds_left(), rows=rows)
        least = max(least, bound)
        if found is None:
            break
        best = found
    return best, least


def hangs_together(choice: Choice) -> bool:
    """Tell whether the rolls of a choice come to all its cut lengths.

    Takes: a choice with its ways.

    Gives: whether it can be cut as it is; else it takes more than it says.

    Source: derived here.
    """
    return not _circle(choice)


def _circle(choice: Choice) -> set[int]:
    """Give the places that are used and that no roll comes to."""
    leads: dict[int, list[int]] = defaultdict(list)
    for start, end in _moves(choice):
        leads[start].append(end)
    reached, waiting = {NOWHERE}, [NOWHERE]
    while waiting:
        for end in leads[waiting.pop()]:
            if end not in reached:
                reached.add(end)
                waiting.append(end)
    return {start for start, _ in _moves(choice)} - reached


def _moves(choice: Choice) -> list[tuple[int, int]]:
    columns = [(c.start, c.end) for c in choice.columns if c.start != NOWHERE]
    return [*columns, *((way.start, way.end) for way in choice.ways)]


def _must_be_entered(
    frame: Frame, columns: Sequence[Column], circle: set[int], choice: Choice
) -> list[csr_array]:
    """Ask for a way in from outside for each cut length of the circle, and for all together."""
    moves = [(c.start, c.end) for c in columns] + [(w.start, w.end) for w in frame.ways]
    enters = [float(end in circle and start not in circle) for start, end in moves]
    inside = np.array([float(c.start in circle) for c in columns] + [0.0] * len(frame.ways))
    pieces = float(frame.all.pieces.sum())
    rows = [csr_array(pieces * np.array([enters]) - inside)]
    for column in {c for c in choice.columns if c.start in circle}:
        row = np.array([enters]) * _most(frame, column)
        row[0, [n for n, other in enumerate(columns) if other == column]] -= 1.0
        rows.append(csr_array(row))
    return rows


def _most(frame: Frame, column: Column) -> float:
    """Give how often a cut length can be wanted."""
    return float(max(-(-frame.all.pieces[kind] // count) for kind, count in column.counts))
