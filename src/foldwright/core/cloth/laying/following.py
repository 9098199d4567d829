"""In which order cut lengths follow one another, so that least is lost to the repeat.

Cut lengths are arcs on the circle of the repeat; what is lost are the gaps from the end of one
to the start of the next. A closed tour of all arcs goes round the circle a whole number of
times, the flow over each part of the circle follows from where arcs start and end, and a way
through all of them exists if and only if what is used hangs together. A roll's cut lengths are
such a tour less the gap that closes it, so the fewest rounds and then the longest closing gap
take the least cloth.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import islice

Arc = tuple[int, int]
TRIES = 500


def in_best_order(arcs: Sequence[Arc], repeat: int, begin: int | None) -> list[int]:
    """Put arcs in the order that loses least.

    Takes: where in the repeat each cut length starts and where the next could; the repeat;
    where in the repeat the roll begins, None where that is free.

    Gives: the numbers of the arcs in order.

    Source: derived here; wallpaper-sequencing-1977 for the problem.

    >>> in_best_order([(0, 50), (20, 70), (50, 20)], 100, 0)
    [0, 2, 1]
    """
    if not arcs:
        return []
    circle = _Circle(arcs, repeat, begin)
    for _ in range(2):
        for leave, enter in islice(circle.closings(), TRIES):
            if (walk := circle.walk(leave, enter)) is not None:
                return walk
        circle.once_more_round()
    walk = circle.walk(*circle.meeting())
    assert walk is not None  # noqa: S101 - with flow all round everything hangs together
    return walk


class _Circle:
    """The places where arcs start and end, and the flow from each place to the next."""

    def __init__(self, arcs: Sequence[Arc], repeat: int, begin: int | None) -> None:
        self.arcs, self.repeat = arcs, repeat
        fixed = set() if begin is None else {begin % repeat}
        self.places = sorted({place % repeat for arc in arcs for place in arc} | fixed)
        number = {place: index for index, place in enumerate(self.places)}
        self.moves = [(number[start % repeat], number[end % repeat]) for start, end in arcs]
        self.begin = None if begin is None else number[begin % repeat]
        self.flow = self._least_flow()

    def _least_flow(self) -> list[int]:
        net = [0] * len(self.places)
        for start, end in self.moves:
            net[start] -= 1
            net[end] += 1
        flow, total = [], 0
        for each in net:
            total += each
            flow.append(total)
        return [each - min(flow) for each in flow]

    def once_more_round(self) -> None:
        """Let the tour go round once more, which joins what does not hang together."""
        self.flow = [each + 1 for each in self.flow]

    def meeting(self) -> tuple[int, int]:
        """Give a closing without a gap."""
        place = self.moves[0][0] if self.begin is None else self.begin
        return place, place

    def closings(self) -> Iterator[tuple[int, int]]:
        """Give where the last arc may end and the first begin, the longest gap first."""
        ends = {end for _, end in self.moves}
        starts = {start for start, _ in self.moves} if self.begin is None else {self.begin}
        found = []
        for enter in starts:
            for leave, gap in self._back_from(enter):
                if leave in ends or (gap == 0 and self.begin is None):
                    found.append((-gap, leave, enter))
        for _, leave, enter in sorted(found):
            yield leave, enter

    def _back_from(self, enter: int) -> Iterator[tuple[int, int]]:
        """Go back from a place as far as the flow reaches."""
        yield enter, 0
        place, count = enter, len(self.places)
        for _ in range(count - 1):
            place = (place - 1) % count
            if self.flow[place] < 1:
                return
            yield place, (self.places[enter] - self.places[place]) % self.repeat

    def walk(self, leave: int, enter: int) -> list[int] | None:
        """Give a way over all arcs from one place to another, None if they do not hang together."""
        ways: dict[int, list[tuple[int, int | None]]] = defaultdict(list)
        flow, count = list(self.flow), len(self.places)
        while leave != enter:
            flow[leave] -= 1
            leave = (leave + 1) % count
        for place, often in enumerate(flow):
            ways[place] += [((place + 1) % count, None)] * (often if count > 1 else 0)
        for number in range(len(self.moves) - 1, -1, -1):
            start, end = self.moves[number]
            ways[start].append((end, number))
        walk = _over_all(ways, enter)
        return walk if len(walk) == len(self.arcs) else None


def _over_all(ways: dict[int, list[tuple[int, int | None]]], enter: int) -> list[int]:
    """Walk each way once, and put in a round wherever the walk came past one."""
    path: list[tuple[int, int | None]] = [(enter, None)]
    walked: list[int] = []
    while path:
        place, arc = path[-1]
        if ways[place]:
            path.append(ways[place].pop())
        else:
            path.pop()
            if arc is not None:
                walked.append(arc)
    return walked[::-1]
