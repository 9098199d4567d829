"""Cut lengths laid out on bolts, one after another: which bolt, in which order, from where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from foldwright.core.cloth.laying.following import in_best_order
from foldwright.core.cloth.laying.passing import in_one_phase, lay_past_flaws
from foldwright.core.cloth.laying.placing import Laid, place
from foldwright.core.cloth.level import Level
from foldwright.core.cloth.whole import Bolt, Cloth

BOLTS = 0.15  # how often two bolts are exchanged instead of two cut lengths
ENDS = 0.15  # how often a roll is ended early, or no longer
NOTHING = (2**62, 0, 0)
MOST_WORK = 20_000  # cut lengths times bolts, all tries together


@dataclass(frozen=True, slots=True)
class Layout:
    """All cut lengths where they lie."""

    laid: tuple[Laid, ...]

    @property
    def ends(self) -> dict[Bolt, int]:
        """Give up to where each bolt is used."""
        found: dict[Bolt, int] = {}
        for each in self.laid:
            found[each.bolt] = max(found.get(each.bolt, 0), each.end)
        return found

    @property
    def rank(self) -> tuple[int, int, int]:
        """Give what is used, the cut lengths, and the longest end of a roll, best first."""
        left = [bolt.end - end for bolt, end in self.ends.items() if bolt.end is not None]
        return sum(self.ends.values()), len(self.laid), -max(left, default=0)

    def smooth(self, cloth: Cloth) -> bool:
        """Tell whether all lies on one bolt without a gap, and a second could save nothing."""
        lost = any(each.repeat_loss or each.flaw_loss for each in self.laid)
        begins = sorted(bolt.begin for bolt in cloth.bolts)
        second = cloth.spare if len(begins) == 1 else begins[1]
        alone = len(self.ends) == 1 and self.laid[0].bolt.begin == begins[0]
        return not lost and alone and second >= cloth.spare


def lay_out(cloth: Cloth, levels: Sequence[Level], tries: int, again: int = 0) -> Layout | None:
    """Lay cut lengths out on the bolts.

    Takes: the cloth with its bolts; the cut lengths; how often to try where chance has a say;
    which time it is asked again, from the order that it gave before.

    Gives: the best layout found, or None if none was found that holds them all.

    Holds for: one bolt without flaws exactly; else a search.

    Source: derived here.
    """
    bolt = cloth.bolts[0]
    if len(cloth.bolts) == 1 and not bolt.flaws:
        return _on_one(cloth, bolt, levels)
    found = _past_flaws(cloth, levels, again) if in_one_phase(cloth, levels) else None
    if found is not None and len(levels) * len(cloth.bolts) > MOST_WORK:
        return found
    return min(found, _Search(cloth, levels, again).best(tries), key=_rank)


def _past_flaws(cloth: Cloth, levels: Sequence[Level], again: int) -> Layout | None:
    chance = np.random.default_rng([len(levels), again]) if again else None
    laid = lay_past_flaws(cloth, levels, chance)
    return None if laid is None else Layout(laid)


def _on_one(cloth: Cloth, bolt: Bolt, levels: Sequence[Level]) -> Layout | None:
    """Lay all out on one bolt without flaws."""
    laid: list[Laid] = []
    for level in _in_order(cloth, bolt, levels):
        if bolt.origin is None and level.start is not None:
            start = laid[-1].end + cloth.spare if laid else bolt.begin
            bolt = replace(bolt, origin=start - level.start)
        each = place(cloth, bolt, level, laid[-1].end + cloth.spare if laid else bolt.begin)
        if each is None:
            return None
        laid.append(each)
    return Layout(tuple(replace(each, bolt=bolt) for each in laid))


def _in_order(cloth: Cloth, bolt: Bolt, levels: Sequence[Level]) -> list[Level]:
    """Give the order that loses least to the repeat; what may lie anywhere fills the gaps."""
    ruled = [level for level in levels if level.start is not None]
    loose = sorted((v for v in levels if v.start is None), key=lambda v: -v.length)
    if not cloth.repeat or not ruled:
        return [*ruled, *loose]
    arcs = [(v.start or 0, (v.start or 0) + v.length + cloth.spare) for v in ruled]
    begin = None if bolt.origin is None else bolt.begin - bolt.origin
    order = in_best_order(arcs, cloth.repeat, begin)
    return _with_loose(cloth, [ruled[number] for number in order], loose, begin)


def _with_loose(
    cloth: Cloth, ruled: list[Level], loose: list[Level], begin: int | None
) -> list[Level]:
    order: list[Level] = []
    place_in_repeat = begin
    for level in ruled:
        start = level.start or 0
        gap = 0 if place_in_repeat is None else (start - place_in_repeat) % cloth.repeat
        for each in list(loose):
            if each.length + cloth.spare <= gap:
                gap -= each.length + cloth.spare
                loose.remove(each)
                order.append(each)
        order.append(level)
        place_in_repeat = start + level.length + cloth.spare
    return [*order, *loose]


@dataclass(frozen=True, slots=True)
class _Deal:
    """Cut lengths in an order, dealt out to bolts in an order, to some of them so many only."""

    levels: tuple[Level, ...]
    bolts: tuple[Bolt, ...]
    most: tuple[int | None, ...]

    def changed(self, chance: np.random.Generator) -> _Deal:
        """Exchange two cut lengths or two bolts, or end a roll earlier or not."""
        several = len(self.bolts) > 1
        what = chance.random()
        if several and what < BOLTS:
            return replace(self, bolts=_exchanged(self.bolts, chance))
        if several and what < BOLTS + ENDS:
            most = list(self.most)
            at = int(chance.integers(len(most)))
            most[at] = int(chance.integers(len(self.levels))) if most[at] is None else None
            return replace(self, most=tuple(most))
        return replace(self, levels=_exchanged(self.levels, chance))


class _Search:
    """Deals changed by chance; what helps is kept."""

    def __init__(self, cloth: Cloth, levels: Sequence[Level], again: int) -> None:
        self.cloth, self.levels = cloth, tuple(levels)
        if not again:
            self.levels = tuple(sorted(levels, key=lambda v: (-v.length, v.start or 0)))
        self.chance = np.random.default_rng([len(levels), again])

    def best(self, tries: int) -> Layout | None:
        """Give the best layout after so many changes."""
        starts = [(self._filled(deal), deal) for deal in self._deals()]
        best, deal = min(starts, key=lambda each: _rank(each[0]))
        work = len(self.levels) * len(self.cloth.bolts)
        for _ in range(min(tries, MOST_WORK // work)):
            if best is not None and best.smooth(self.cloth):
                break
            tried = deal.changed(self.chance)
            found = self._filled(tried)
            if _rank(found) <= _rank(best):
                best, deal = found, tried
        return best

    def _deals(self) -> Iterator[_Deal]:
        """Give the bolts as they stand, the longest first, the shortest, the soundest first."""
        bolts = self.cloth.bolts
        by_room = tuple(sorted(bolts, key=lambda bolt: bolt.begin - (bolt.end or 0)))
        by_flaws = tuple(sorted(bolts, key=lambda b: len(b.flaws) / ((b.end or 0) - b.begin or 1)))
        for some in (bolts, by_room, by_room[::-1], by_flaws):
            yield _Deal(self.levels, some, (None,) * len(bolts))

    def _filled(self, deal: _Deal) -> Layout | None:
        waiting, laid = list(deal.levels), list[Laid]()
        for bolt, most in zip(deal.bolts, deal.most, strict=True):
            if not waiting:
                break
            laid += self._on_bolt(bolt, waiting, len(waiting) if most is None else most)
        return None if waiting else Layout(tuple(laid))

    def _on_bolt(self, bolt: Bolt, waiting: list[Level], most: int) -> list[Laid]:
        """Fill a bolt with what loses least next, until nothing more fits."""
        laid: list[Laid] = []
        free = bolt.begin
        while len(laid) < most and (found := self._next(bolt, waiting, free)) is not None:
            number, each = found
            if bolt.origin is None and each.level.start is not None:
                bolt = replace(bolt, origin=each.start - each.level.start)
                laid = [replace(before, bolt=bolt) for before in laid]
            laid.append(replace(each, bolt=bolt))
            free = each.end + self.cloth.spare
            del waiting[number]
        return laid

    def _next(self, bolt: Bolt, waiting: list[Level], free: int) -> tuple[int, Laid] | None:
        """Give the first waiting cut length that loses nothing, or the one that loses least."""
        best: tuple[int, Laid] | None = None
        room = None if bolt.end is None else bolt.end - free
        for number, level in enumerate(waiting):
            if room is not None and level.length > room:
                continue
            each = place(self.cloth, bolt, level, free)
            if each is not None and (best is None or each.start < best[1].start):
                best = number, each
                if each.start == free:
                    break
        return best


def _exchanged(some: tuple[Any, ...], chance: np.random.Generator) -> tuple[Any, ...]:
    one, other = chance.integers(len(some), size=2)
    changed = list(some)
    changed[one], changed[other] = changed[other], changed[one]
    return tuple(changed)


def _rank(layout: Layout | None) -> tuple[int, int, int]:
    return NOTHING if layout is None else layout.rank
