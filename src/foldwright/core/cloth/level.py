"""A cut length and how its pieces lie side by side in it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from foldwright.core.cloth.whole import Cloth, Kind


@dataclass(frozen=True, slots=True)
class Strip:
    """One piece of a cut length: its kind's number, its left edge, how far behind the start."""

    kind: int
    left: int
    behind: int


@dataclass(frozen=True, slots=True)
class Level:
    """A cut length: where in the repeat it starts (None anywhere), its length, its pieces."""

    start: int | None
    length: int
    strips: tuple[Strip, ...]

    @property
    def counts(self) -> Counter[int]:
        """Give how many pieces of each kind it holds."""
        return Counter(strip.kind for strip in self.strips)


def level_of(cloth: Cloth, start: int, strips: Iterable[Strip]) -> Level:
    """Give the shortest cut length for pieces that lie as they do behind a place in the repeat."""
    strips = tuple(sorted(strips, key=lambda strip: strip.left))
    ruled = [strip.behind for strip in strips if cloth.kinds[strip.kind].along is not None]
    if not ruled:
        flat = tuple(Strip(strip.kind, strip.left, 0) for strip in strips)
        return Level(None, max(cloth.kinds[strip.kind].length for strip in strips), flat)
    first = min(ruled)
    moved = tuple(Strip(strip.kind, strip.left, max(strip.behind - first, 0)) for strip in strips)
    length = max(strip.behind + cloth.kinds[strip.kind].length for strip in moved)
    return Level((start + first) % cloth.repeat, length, moved)


def each_piece_once(cloth: Cloth, levels: Sequence[Level]) -> list[Level]:
    """Leave out what is cut more often than it is wanted, from the longest cut lengths first.

    Takes: the cloth; cut lengths that hold every piece at least once.

    Gives: cut lengths that hold every piece once, the shortest first.

    Source: derived here.
    """
    wanted = [kind.count for kind in cloth.kinds]
    kept = []
    for level in sorted(levels, key=lambda v: (v.length, v.start or 0)):
        strips = []
        for strip in level.strips:
            if wanted[strip.kind] > 0:
                wanted[strip.kind] -= 1
                strips.append(strip)
        if strips:
            kept.append(level_of(cloth, level.start or 0, strips))
    return kept


def distance(cloth: Cloth, start: int | None, length: int) -> int:
    """Give how far on the next cut length can start, at a place where some piece may start.

    Takes: where in the repeat a cut length starts; its length.

    Gives: length and spare, and the gap to the next place of the repeat that is in use.

    Source: derived here.
    """
    on = length + cloth.spare
    if start is None or not cloth.repeat:
        return on
    return on + min((phase - start - on) % cloth.repeat for phase in cloth.phases)


def spots(
    cloth: Cloth, kind: Kind, taken: Iterable[tuple[int, int]]
) -> Iterator[tuple[int, int | None]]:
    """Give the places where a kind still fits between strips, and the drop each stands on.

    A kind without a rule across may stand on any drop: None.
    """
    gaps = list(_gaps(cloth.width, taken))
    if kind.across is None:
        yield from ((left, None) for left, right in gaps if right - left >= kind.width)
        return
    for place, drop in cloth.places(kind):
        if any(left <= place and place + kind.width <= right for left, right in gaps):
            yield place, drop


def _gaps(width: int, taken: Iterable[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    left = 0
    for start, end in sorted(taken):
        if start > left:
            yield left, start
        left = end
    if width > left:
        yield left, width
