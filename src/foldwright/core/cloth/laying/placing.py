"""Where on a bolt a cut length can go: in the repeat, and clear of flaws."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, permutations

from foldwright.core.cloth.level import Level, Strip
from foldwright.core.cloth.whole import Bolt, Box, Cloth

ORDERS = 24  # in which strips are tried beside a flaw: all of up to four
MOST_REPEATS = 400  # behind a flaw, until a roll is given up

Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Laid:
    """A cut length where it lies on its bolt, and what was lost before it and why."""

    bolt: Bolt
    start: int
    level: Level
    repeat_loss: int
    flaw_loss: int

    @property
    def end(self) -> int:
        """Give where it ends."""
        return self.start + self.level.length


def place(cloth: Cloth, bolt: Bolt, level: Level, after: int) -> Laid | None:
    """Put a cut length on a bolt at the first place from `after` on.

    Takes: the cloth; a bolt; a cut length; where the bolt is free.

    Gives: the cut length, its strips moved across where a flaw asks for it; None if it does
    not fit before the bolt's end.

    Source: derived here.
    """
    first = in_the_repeat(cloth, bolt, level, after)
    for start in islice(_starts(cloth, bolt, level, first), MOST_REPEATS):
        if bolt.end is not None and start + level.length > bolt.end:
            return None
        near = [f for f in bolt.flaws if f.start < start + level.length and f.end > start]
        wide = any(s.left + cloth.kinds[s.kind].width > bolt.width for s in level.strips)
        clear = clear_of(cloth, bolt, level, start, near) if near or wide else level
        if clear is not None:
            return Laid(bolt, start, clear, first - after, start - first)
    return None


def in_the_repeat(cloth: Cloth, bolt: Bolt, level: Level, position: int) -> int:
    """Give the first position where the pattern stands as the cut length needs it."""
    if level.start is None or not cloth.repeat or bolt.origin is None:
        return position
    return position + (bolt.origin + level.start - position) % cloth.repeat


def _starts(cloth: Cloth, bolt: Bolt, level: Level, first: int) -> Iterator[int]:
    """Give places to try: each next repeat, or just behind what a flaw hides of a strip."""
    yield first
    if level.start is not None and cloth.repeat:
        for number in range(1, MOST_REPEATS):
            yield first + number * cloth.repeat
        return
    hidden = {(s.behind + cloth.kinds[s.kind].hidden[2]) for s in level.strips}
    yield from sorted(
        {flaw.end - each for flaw in bolt.flaws for each in hidden if flaw.end - each > first}
    )


def clear_of(
    cloth: Cloth, bolt: Bolt, level: Level, start: int, flaws: Sequence[Box]
) -> Level | None:
    """Give the cut length with its strips laid across so that no flaw shows."""
    spoilt = {s: _spoilt(cloth, s, start, flaws) for s in level.strips}
    for order in islice(permutations(level.strips), ORDERS):
        lefts = _from_the_left(cloth, bolt, order, spoilt)
        if lefts is not None:
            strips = (Strip(s.kind, left, s.behind) for s, left in zip(order, lefts, strict=True))
            return Level(level.start, level.length, tuple(strips))
    return None


def _spoilt(cloth: Cloth, strip: Strip, start: int, flaws: Sequence[Box]) -> list[Span]:
    """Give, from left to right, the spans that the left edge of a strip must keep out of."""
    kind = cloth.kinds[strip.kind]
    left, right, head, foot = kind.hidden
    low, high = start + strip.behind + head, start + strip.behind + kind.length - foot
    return sorted(
        (flaw.left - kind.width + right, flaw.right - left)
        for flaw in flaws
        if flaw.start < high and flaw.end > low
    )


def _from_the_left(
    cloth: Cloth, bolt: Bolt, order: Sequence[Strip], spoilt: dict[Strip, list[Span]]
) -> list[int] | None:
    """Put each strip as far left as it goes; None if they run over the edge."""
    free, lefts = 0, []
    for strip in order:
        left = _first_clear(cloth, strip, free, spoilt[strip])
        free = left + cloth.kinds[strip.kind].width
        if free > bolt.width:
            return None
        lefts.append(left)
    return lefts


def _first_clear(cloth: Cloth, strip: Strip, free: int, spoilt: Sequence[Span]) -> int:
    """Give the first left edge of a strip that is free, sound, and right for its motif."""
    step = cloth.period * cloth.drops if cloth.kinds[strip.kind].across is not None else 0
    left = free + (strip.left - free) % step if step else free
    for low, high in spoilt:
        if low < left < high:
            left = high + (strip.left - high) % step if step else high
    return left
