"""How many cut lengths must be long: a piece longer than a step needs one that is longer too.

Pieces above each step must lie side by side in some number of cut lengths, and that number is
whole. Rounding it up at every step is most of what a relaxed model misses on small jobs.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from math import ceil

import numpy as np

from foldwright.core.cloth.columns import Pool
from foldwright.core.cloth.first_fit import first_fit
from foldwright.core.cloth.model import Frame, Needed
from foldwright.core.cloth.pricing import price
from foldwright.core.cloth.side_by_side import SideBySide
from foldwright.core.cloth.whole import Cloth, Kind
from foldwright.core.cloth.worth import Reals

FINEST_PARTS = 12  # parts of a width that the rounding functions try
CLOSE = 1e-6


def needed(cloth: Cloth, go_on: Callable[[], bool]) -> list[Needed]:
    """Give how many cut lengths must be longer than each step.

    Takes: the cloth; whether to go on, read before each step.

    Gives: steps, rising; of steps that need the same number the longest only.

    Source: derived here.
    """
    lengths = sorted({kind.length for kind in cloth.kinds}, reverse=True)
    found: list[Needed] = []
    count = 0
    for length, step in zip(lengths, [*lengths[1:], 0], strict=True):
        if not go_on():
            break
        tall = tuple(kind for kind in cloth.kinds if kind.length >= length)
        least = _least_count(_side_by_side_only(cloth, tall), count, go_on)
        if least > count:
            found.append(Needed(step, least))
            count = least
    return found[::-1]


def _side_by_side_only(cloth: Cloth, kinds: tuple[Kind, ...]) -> Cloth:
    """Forget lengths and repeats: what is left is how many pieces lie side by side."""
    flat = tuple(replace(k, length=cloth.per_mm, along=None, partner=None) for k in kinds)
    bolt = replace(cloth.bolts[0], begin=0, origin=None, end=None, flaws=())
    return replace(cloth, kinds=flat, bolts=(bolt,), repeat=0, shift=0, drops=1, spare=0)


def _least_count(cloth: Cloth, at_least: int, go_on: Callable[[], bool]) -> int:
    """Give a proven least number of cut lengths, priced only where quicker ways disagree."""
    levels = first_fit(cloth)
    quick = max(at_least, ceil(by_rounding(cloth) - CLOSE))
    if len(levels) <= quick:
        return quick
    found = price(Frame(cloth), Pool(cloth, levels), SideBySide(cloth), go_on)
    return max(quick, ceil(found.least - CLOSE))


def by_rounding(cloth: Cloth) -> float:
    """Give a least number of cut lengths by widths alone, rounded in many ways.

    Takes: the cloth.

    Gives: the greatest of the bounds by area, by leaving out the small, and by rounding.

    Source: dual-feasible-2001.
    """
    widths = np.array([kind.width / cloth.width for kind in cloth.kinds])
    counts = np.array([float(kind.count) for kind in cloth.kinds])
    return max(float(worth @ counts) for worth in rounded_widths(widths))


def rounded_widths(widths: Reals) -> Iterator[Reals]:
    """Give widths (parts of the cloth's) rounded so that what fits still sums to at most 1.

    Takes: widths as parts of the cloth's width.

    Gives: the widths themselves, and by step and rounding functions.

    Source: dual-feasible-2001.
    """
    yield widths
    for parts in range(1, FINEST_PARTS):
        scaled = widths * (parts + 1)
        whole = np.abs(scaled - np.round(scaled)) < CLOSE
        yield np.where(whole, widths, np.floor(scaled + CLOSE) / parts)
    for small in np.unique(widths[widths <= 1 / 2]):
        yield np.where(widths > 1 - small + CLOSE, 1.0, np.where(widths < small - CLOSE, 0, widths))
        whole = np.floor(1 / small + CLOSE)
        high = 1 - np.floor((1 - widths) / small + CLOSE) / whole
        low = np.floor(widths / small + CLOSE) / whole
        half = np.abs(widths - 1 / 2) < CLOSE
        yield np.where(half, 0.5, np.where(widths > 1 / 2, high, low))
