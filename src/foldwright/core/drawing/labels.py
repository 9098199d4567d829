"""Keep labels apart: move them along a line, or put them on several lines."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def spread(places: Sequence[float], least_gap: float) -> list[float]:
    """Move labels apart along a line as little as need be, keeping their order.

    Takes: where each label belongs, in any order; the least distance between neighbours.

    Gives: a place for each, in the order given; a crowd keeps its own middle.

    Source: derived here (neighbours pooled until all stand apart).

    >>> spread([10.0, 11.0, 30.0], 4.0)
    [8.5, 12.5, 30.0]
    """
    order = sorted(range(len(places)), key=lambda index: places[index])
    crowds: list[list[float]] = []
    for index in order:
        crowds.append([places[index]])
        while len(crowds) > 1 and _overlap(crowds[-2], crowds[-1], least_gap):
            last = crowds.pop()
            crowds[-1].extend(last)
    in_order = [place for crowd in crowds for place in _line_up(crowd, least_gap)]
    return [place for _, place in sorted(zip(order, in_order, strict=True))]


def _line_up(crowd: list[float], gap: float) -> list[float]:
    """Stand a crowd side by side about its own middle."""
    middle = sum(crowd) / len(crowd)
    first = middle - gap * (len(crowd) - 1) / 2
    return [first + gap * index for index in range(len(crowd))]


def _overlap(before: list[float], after: list[float], gap: float) -> bool:
    """Tell whether two crowds, once lined up, would stand too close."""
    return _line_up(after, gap)[0] - _line_up(before, gap)[-1] < gap


def levels(places: Sequence[float], label_width: float) -> int:
    """Count the lines that labels in a row need so that none runs into its neighbour.

    Takes: where the labels belong, in order; the width of the widest.

    Gives: 1 or more; labels take the lines in turn.

    Source: derived here.

    >>> levels([0.0, 10.0, 20.0], 15.0)
    2
    """
    count = 1
    while any(
        second - first < label_width for first, second in pairwise_apart(places, count)
    ) and count < len(places):
        count += 1
    return count


def pairwise_apart(places: Sequence[float], step: int) -> list[tuple[float, float]]:
    """Pair each place with the one `step` further on: its neighbour on the same line.

    Takes: the places in order; the number of lines.

    Gives: the pairs.

    Source: derived here.

    >>> pairwise_apart([1.0, 2.0, 3.0], 2)
    [(1.0, 3.0)]
    """
    return [pair for start in range(step) for pair in pairwise(places[start::step])]
