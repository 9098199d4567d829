"""Sound runs between flaws filled as full as cut lengths can fill them.

A cloth without a repeat has no place where a cut length must start; between two flaws it is
only asked which lengths, with what is lost between them, leave least of the run.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from foldwright.core.cloth.level import Level
from foldwright.core.cloth.placing import Laid
from foldwright.core.cloth.whole import Bolt, Cloth


def fill_runs(
    cloth: Cloth, levels: Sequence[Level], bolts: Sequence[Bolt]
) -> tuple[Laid, ...] | None:
    """Fill the runs of one bolt after another.

    Takes: a cloth without a repeat; cut lengths; bolts in an order.

    Gives: the cut lengths where they lie, or None if they do not all fit.

    Source: derived here.
    """
    waiting, laid = list(levels), list[Laid]()
    for bolt in bolts:
        lost = 0
        for start, end in _runs(bolt):
            free = start
            for number in _fullest(cloth, waiting, end - start):
                laid.append(Laid(bolt, free, waiting[number], 0, lost))
                free += waiting[number].length + cloth.spare
                lost = 0
            placed = {id(each.level) for each in laid}
            waiting = [level for level in waiting if id(level) not in placed]
            if not waiting:
                return tuple(laid)
            lost = _to_next(bolt, max(free, start), end)
    return None


def _runs(bolt: Bolt) -> Iterator[tuple[int, int]]:
    """Give the runs of a bolt that no flaw touches, over the full width."""
    free = bolt.begin
    for flaw in sorted(bolt.flaws, key=lambda flaw: flaw.start):
        if flaw.start > free:
            yield free, flaw.start
        free = max(free, flaw.end)
    if bolt.end is not None and bolt.end > free:
        yield free, bolt.end


def _to_next(bolt: Bolt, free: int, end: int) -> int:
    """Give how far it is from where a run is free to where the next begins."""
    starts = [start for start, _ in _runs(bolt) if start >= end]
    return starts[0] - free if starts else 0


def _fullest(cloth: Cloth, waiting: Sequence[Level], room: int) -> list[int]:
    """Choose cut lengths whose sum comes nearest to a room, each with the spare behind it.

    Sums that can be reached are the ones in the bits of a number; a length more shifts them.
    """
    grain = cloth.grain
    most = (room + cloth.spare) // grain
    mask = (1 << (most + 1)) - 1
    sizes = [(level.length + cloth.spare) // grain for level in waiting]
    reached = [1]
    for size in sizes:
        reached.append(reached[-1] | (reached[-1] << size) & mask)
    left = reached[-1].bit_length() - 1
    chosen = []
    for number in range(len(sizes) - 1, -1, -1):
        if not reached[number] >> left & 1:
            chosen.append(number)
            left -= sizes[number]
    return chosen
