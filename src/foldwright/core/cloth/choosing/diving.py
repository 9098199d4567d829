"""Whole cut lengths without a long search: settle the surest, price the rest again, go on."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from foldwright.core.cloth.choosing.model import Choice, Finder, Frame, Rest, chosen
from foldwright.core.cloth.choosing.pricing import price
from foldwright.core.cloth.columns import Column, Pool

SURE = 0.75  # a share from which a cut length is settled along with the surest
FEW_PIECES = 24  # so few are left to the exact search
STEPS_BETWEEN = 4
SECONDS_FOR_FEW = 2.0


def dive(
    frame: Frame, pool: Pool, finder: Finder, seconds_left: Callable[[], float], rest: Rest
) -> Choice | None:
    """Settle cut lengths one after another by their share in the relaxed model.

    Takes: the frame; a pool with the cut lengths that matter; a finder of more; a clock that
    gives the seconds left; what is still to be covered.

    Gives: whole cut lengths that cover it, or None without time.

    Source: derived here.
    """
    settled: list[Column] = []
    while rest.pieces.sum() > FEW_PIECES:
        if seconds_left() <= 0:
            return None
        found = price(frame, pool, finder, so_often(STEPS_BETWEEN), rest)
        for column in _surest(pool.columns, found.last.shares.tolist(), rest):
            settled.append(column)
            rest = frame.without(rest, column)
    price(frame, pool, finder, so_often(STEPS_BETWEEN * 2), rest)
    few, _ = chosen(frame, _useful(pool.columns, rest), rest, min(SECONDS_FOR_FEW, seconds_left()))
    if few is None:
        return None
    length = few.length + sum(column.cost for column in settled) / frame.cloth.per_mm
    return Choice([*settled, *few.columns], few.ways, length)


def so_often(times: int) -> Callable[[], bool]:
    """Give something that says yes so many times."""
    left = iter(range(times))
    return lambda: next(left, None) is not None


def _surest(columns: list[Column], shares: list[float], rest: Rest) -> Iterator[Column]:
    """Give the column with the greatest share, and others that are nearly whole."""
    order = sorted(range(len(shares)), key=lambda number: -shares[number])
    left = rest.pieces.copy()
    for rank, number in enumerate(order):
        if rank and shares[number] < SURE:
            return
        for _ in range(max(1, int(shares[number] + 1e-6))):
            if all(left[kind] >= count for kind, count in columns[number].counts) or not rank:
                yield columns[number]
                for kind, count in columns[number].counts:
                    left[kind] -= count


def _useful(columns: list[Column], rest: Rest) -> list[Column]:
    """Leave out cut lengths that hold nothing that is still wanted."""
    return [c for c in columns if any(rest.pieces[kind] > 0 for kind, _ in c.counts)]
