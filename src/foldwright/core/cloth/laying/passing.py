"""Cut lengths laid out where rolls have flaws: on all rolls at once, past the easiest flaw first.

A flaw costs nothing where a cut length has room for it beside its pieces, or below a short
one. So a roll is filled up to its next flaw with the cut lengths that are fullest, and one
with room is laid over the flaw; where none can be, the filling ends as close before the flaw
as may be. Of all rolls the one whose next flaw costs least is taken first, until what is left
fits the sound runs that the rolls have come to.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import islice, pairwise
from math import gcd

import numpy as np

from foldwright.core.cloth.laying.placing import Laid, clear_of, in_the_repeat, place
from foldwright.core.cloth.level import Level, Strip, distance
from foldwright.core.cloth.whole import Bolt, Box, Cloth

FILLERS = 70  # cut lengths from which the way to a flaw is filled
HOSTS = 300  # cut lengths that are tried over a flaw
FINEST = 50_000  # steps into which the way to a flaw is divided at most
SHUFFLED = (0.03, 0.1, 0.3)  # parts of a cut length's cloth by which its room is misjudged

Span = tuple[int, int]


def in_one_phase(cloth: Cloth, levels: Iterable[Level]) -> bool:
    """Tell whether all pieces start at one place in the repeat, or anywhere without one.

    Takes: the cloth; its cut lengths.

    Gives: whether `lay_past_flaws` can lay them out.

    Source: derived here.
    """
    one_start = len(cloth.phases) == 1 and len({level.start for level in levels}) == 1
    return not cloth.repeat or one_start


def lay_past_flaws(
    cloth: Cloth, levels: Sequence[Level], chance: np.random.Generator | None = None
) -> tuple[Laid, ...] | None:
    """Lay cut lengths out on flawed rolls.

    Takes: the cloth with its bolts; cut lengths in one phase; where to draw another order of
    them from, if it is not the first try.

    Gives: the cut lengths where they lie, or None if they do not all fit this way.

    Source: derived here.
    """
    filling = _Filling(cloth, _fullest_first(cloth, levels, chance))
    while not filling.finish():
        if not filling.pass_a_flaw():
            return None
    return tuple(each for roll in filling.rolls for each in roll.laid)


def _fullest_first(
    cloth: Cloth, levels: Sequence[Level], chance: np.random.Generator | None
) -> list[Level]:
    idle = [cloth.width * level.length - _used(cloth, level) for level in levels]
    if chance is not None:
        spread = float(chance.choice(SHUFFLED)) * cloth.width
        draws = chance.normal(0.0, spread, size=len(levels))
        idle = [
            room + int(draw * level.length)
            for room, draw, level in zip(idle, draws, levels, strict=True)
        ]
    return [levels[number] for number in sorted(range(len(levels)), key=idle.__getitem__)]


def _used(cloth: Cloth, level: Level) -> int:
    return sum(cloth.kinds[s.kind].width * cloth.kinds[s.kind].length for s in level.strips)


@dataclass(slots=True)
class _Roll:
    """A bolt, what lies on it, the flaws ahead, and where the next cut length can start."""

    cloth: Cloth
    bolt: Bolt
    flaws: list[Box]
    next: int
    free: int
    laid: list[Laid] = field(default_factory=list)

    @property
    def flaw(self) -> Box | None:
        """Give the next flaw."""
        return self.flaws[0] if self.flaws else None

    @property
    def room(self) -> int:
        """Give how far it is to the next flaw, or to the end."""
        flaw, end = self.flaw, self.bolt.end
        return (0 if end is None else end - self.next) if flaw is None else flaw.start - self.next

    def wide_enough(self, level: Level) -> bool:
        """Tell whether a cut length fits across."""
        kinds = self.cloth.kinds
        return all(s.left + kinds[s.kind].width <= self.bolt.width for s in level.strips)

    def put(self, level: Level) -> None:
        """Lay a cut length where the next one can start."""
        each = place(self.cloth, self.bolt, level, self.next)
        assert each is not None  # noqa: S101 - the way is clear, or the place was tried before
        first = in_the_repeat(self.cloth, self.bolt, level, self.free)
        lost = each.start - first
        self.laid.append(replace(each, repeat_loss=first - self.free, flaw_loss=lost))
        self._go_on_from(each.start + distance(self.cloth, level.start, level.length))
        self.free = each.end + self.cloth.spare

    def leave(self, flaw: Box, level: Level) -> None:
        """Go on behind a flaw."""
        behind = max(self.next, flaw.end)
        self._go_on_from(in_the_repeat(self.cloth, self.bolt, level, behind))

    def _go_on_from(self, start: int) -> None:
        self.next = start
        self.flaws = [flaw for flaw in self.flaws if flaw.end > start]


@dataclass(frozen=True, slots=True)
class _Step:
    """A way past a flaw: what is lost, how late the cut length over it comes, and what is cut."""

    loss: int
    rank: int
    fillers: tuple[Level, ...]
    over: Level | None

    @property
    def levels(self) -> tuple[Level, ...]:
        """Give all cut lengths of it."""
        return self.fillers if self.over is None else (*self.fillers, self.over)


class _Filling:
    """All rolls while they are filled, and the cut lengths that wait, the fullest first."""

    def __init__(self, cloth: Cloth, waiting: list[Level]) -> None:
        self.cloth, self.waiting = cloth, waiting
        self.rolls = [_roll(cloth, bolt, waiting[0]) for bolt in cloth.bolts]
        self._steps: dict[int, _Step] = {}
        self._spans: dict[tuple[int, int, int], list[Span]] = {}
        shapes: dict[tuple[Strip, ...], int] = {}
        self._shapes = {id(v): shapes.setdefault(v.strips, len(shapes)) for v in waiting}

    @cached_property
    def unit(self) -> int:
        """Give the step that all cut lengths take a whole number of."""
        return gcd(*(self._takes(level) for level in self.waiting))

    def _takes(self, level: Level) -> int:
        return distance(self.cloth, level.start, level.length)

    def finish(self) -> bool:
        """Put all that waits into the sound runs ahead, if it fits; tell whether it did."""
        rooms = [roll.room for roll in self.rolls]
        if sum(room for room in rooms if room > 0) < sum(v.length for v in self.waiting):
            return False
        found: list[tuple[_Roll, Level]] = []
        for level in sorted(self.waiting, key=lambda v: -v.length):
            number = self._closest(rooms, level)
            if number is None:
                return False
            rooms[number] -= self._takes(level)
            found.append((self.rolls[number], level))
        for roll, level in found:
            roll.put(level)
        return True

    def _closest(self, rooms: list[int], level: Level) -> int | None:
        """Give the roll that has least room left for a cut length, one in use before others."""
        fits = [
            (not self.rolls[number].laid, room, number)
            for number, room in enumerate(rooms)
            if room >= level.length and self.rolls[number].wide_enough(level)
        ]
        return min(fits)[-1] if fits else None

    def pass_a_flaw(self) -> bool:
        """Take the way past a flaw that loses least; tell whether there was one."""
        for number, roll in enumerate(self.rolls):
            flaw = roll.flaw
            if flaw is not None and number not in self._steps:
                self._steps[number] = self._best_step(number, flaw)
        if not self._steps:
            return False
        self._take(min(self._steps, key=lambda n: (self._steps[n].loss, self._steps[n].rank, n)))
        return True

    def _take(self, number: int) -> None:
        step, roll = self._steps[number], self.rolls[number]
        flaw = roll.flaw
        for level in step.levels:
            roll.put(level)
        if step.over is None and flaw is not None:
            roll.leave(flaw, self.waiting[0])
        taken = {id(level) for level in step.levels}
        self.waiting = [level for level in self.waiting if id(level) not in taken]
        for other, its in list(self._steps.items()):
            if other == number or any(id(level) in taken for level in its.levels):
                del self._steps[other]

    def _best_step(self, number: int, flaw: Box) -> _Step:
        """Find the best way past a roll's next flaw: over it, or else round it."""
        roll = self.rolls[number]
        opening = 0 if roll.laid else roll.next - self.cloth.spare
        fillers = self._fillers(roll)
        for rank, level in enumerate(islice(self._over(), HOSTS if roll.room >= 0 else 0)):
            for span in self._spans_over(number, flaw, level):
                found = fillers.reach(span[0] - roll.next, span[1] - roll.next)
                if found is not None and self._lies(roll, level, found):
                    return _Step(opening, rank, found, level)
        found = fillers.furthest()
        lost = flaw.end - roll.next - sum(map(self._takes, found))
        return _Step(opening + max(lost, 0), 0, found, None)

    def _over(self) -> Iterator[Level]:
        """Give the cut lengths that are tried over a flaw: of those that are alike the first."""
        alike = set[int]()
        for level in self.waiting:
            if (shape := self._shapes[id(level)]) not in alike:
                alike.add(shape)
                yield level

    def _fillers(self, roll: _Roll) -> _Sums:
        fit = (v for v in self.waiting if v.length <= roll.room and roll.wide_enough(v))
        some = list(islice(fit, FILLERS))
        takes = [self._takes(level) for level in some]
        behind = min((t - v.length for t, v in zip(takes, some, strict=True)), default=0)
        return _Sums(some, takes, max(roll.room, 0) + behind, self.unit)

    def _lies(self, roll: _Roll, level: Level, fillers: Sequence[Level]) -> bool:
        """Tell whether a cut length can lie just behind others, whatever flaws it covers."""
        start = roll.next + sum(map(self._takes, fillers))
        if any(level is other for other in fillers):
            return False
        each = place(self.cloth, roll.bolt, level, start)
        return each is not None and each.start == start

    def _spans_over(self, number: int, flaw: Box, level: Level) -> list[Span]:
        key = (number, flaw.start, self._shapes[id(level)])
        if key not in self._spans:
            found = _spans_over(self.cloth, self.rolls[number].bolt, flaw, level)
            self._spans[key] = sorted(found, reverse=True)
        return self._spans[key]


def _roll(cloth: Cloth, bolt: Bolt, level: Level) -> _Roll:
    """Open a bolt; where its place in the repeat is unknown it begins with a cut length."""
    if cloth.repeat and bolt.origin is None:
        bolt = replace(bolt, origin=bolt.begin - (level.start or 0))
    first = in_the_repeat(cloth, bolt, level, bolt.begin)
    ahead = [flaw for flaw in bolt.flaws if flaw.end > first]
    return _Roll(cloth, bolt, sorted(ahead, key=lambda f: f.start), first, bolt.begin)


def _spans_over(cloth: Cloth, bolt: Bolt, flaw: Box, level: Level) -> Iterator[Span]:
    """Give where a cut length may start so that it lies over a flaw and no piece shows it."""
    first, last = flaw.start - level.length, flaw.start
    turns = {first, last}
    for strip in level.strips:
        kind = cloth.kinds[strip.kind]
        turns.add(flaw.start - strip.behind - kind.length + kind.hidden[3])
        turns.add(flaw.end - strip.behind - kind.hidden[2])
    for start, end in pairwise(sorted(turn for turn in turns if first <= turn <= last)):
        if clear_of(cloth, bolt, level, (start + end) // 2, [flaw]) is not None:
            yield start, end


class _Sums:
    """Which lengths some cut lengths add up to.

    Sums that can be reached are the ones in the bits of a number; a length more shifts them.
    """

    def __init__(self, levels: list[Level], takes: list[int], room: int, unit: int) -> None:
        self.levels = levels
        self.unit = max(unit, room // FINEST)
        self.sizes = [-(-size // self.unit) for size in takes]
        mask = (1 << (room // self.unit + 1)) - 1
        self.reached = [1]
        for size in self.sizes:
            self.reached.append(self.reached[-1] | (self.reached[-1] << size) & mask)

    def reach(self, low: int, high: int) -> tuple[Level, ...] | None:
        """Choose cut lengths that end within a span, as few and as early ones as can be."""
        first, last = max(0, -(-low // self.unit)), high // self.unit
        if last < first:
            return None
        span = ((1 << (last - first + 1)) - 1) << first
        for allowed, reached in enumerate(self.reached):
            if reached & span:
                return self._chosen(allowed, (reached & span).bit_length() - 1)
        return None

    def furthest(self) -> tuple[Level, ...]:
        """Choose cut lengths that leave least."""
        return self._chosen(len(self.sizes), self.reached[-1].bit_length() - 1)

    def _chosen(self, allowed: int, total: int) -> tuple[Level, ...]:
        chosen = []
        for number in range(allowed - 1, -1, -1):
            if not self.reached[number] >> total & 1:
                chosen.append(self.levels[number])
                total -= self.sizes[number]
        return tuple(chosen)
