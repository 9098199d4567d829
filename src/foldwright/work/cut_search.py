"""A search for cut plans that goes on beside other work: seen as it stands, ended at any time."""

from __future__ import annotations

import atexit
import math
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from threading import Lock, Thread
from weakref import WeakSet

from foldwright.core.cloth.order import ClothPlan
from foldwright.core.why.answer import Answer
from foldwright.work.cut_orders import ClothToCut
from foldwright.work.cutting import ClothCut, cut_in_turn
from foldwright.work.stock import PlanAtFault

Clock = Callable[[], float]
LOOK_AGAIN_S = 0.2
QUICK_S, QUICK_PART = 0.25, 0.2  # most cloths are proven at once: no other keeps them waiting
LAST_WAIT_S = 5.0


class CutSearch:
    """One search for the plans of a job's cloths, in a thread of its own.

    First every cloth gets a plan at once, then a quick look, then the time is shared among
    them. Searches that
    share a `turn` look for better plans one after the other.
    """

    def __init__(
        self,
        cloths: tuple[ClothToCut, ...],
        time_given_s: float,
        clock: Clock,
        turn: Lock | None = None,
    ) -> None:
        self.cloths = cloths
        self.trouble = ""
        self._best: list[ClothCut | None] = [None] * len(cloths)
        self._time_given_s, self._clock = time_given_s, clock
        self._ended = False
        self._turn = turn or Lock()
        self._lock = Lock()
        self._thread = Thread(target=self._search, daemon=True)

    def start(self) -> None:
        """Begin."""
        _BEGUN.add(self)
        self._thread.start()

    def end(self) -> None:
        """Take the best so far: the search sees that no time is left."""
        self._ended = True

    def wait(self, seconds: float) -> None:
        """Wait for the search to come to its end, but no longer than this."""
        self._thread.join(seconds)

    @property
    def running(self) -> bool:
        """Tell whether better plans are still looked for."""
        return self._thread.is_alive()

    @property
    def ready(self) -> bool:
        """Tell whether each cloth has its first answer."""
        return all(cut is not None for cut in self.cuts)

    @property
    def cuts(self) -> tuple[ClothCut | None, ...]:
        """Give the best plan of each cloth so far; None where there is none yet."""
        with self._lock:
            return tuple(self._best)

    def _search(self) -> None:
        try:
            self._plan(0.0)
            with self._in_turn():
                self._plan(min(QUICK_S * len(self.cloths), self._time_given_s * QUICK_PART))
                self._plan(self._time_given_s)
        except PlanAtFault as trouble:
            self.trouble = str(trouble)

    def _plan(self, seconds: float) -> None:
        found = cut_in_turn(self.cloths, time_given_s=seconds, clock=self._read, watch=self._watch)
        for number, cut in enumerate(found):
            with self._lock:
                self._best[number] = _better(cut, self._best[number])

    @contextmanager
    def _in_turn(self) -> Iterator[None]:
        """Wait until no other search runs; one that was ended waits for none."""
        mine = False
        while not (mine or self._ended):
            mine = self._turn.acquire(timeout=LOOK_AGAIN_S)
        try:
            yield
        finally:
            if mine:
                self._turn.release()

    def _read(self) -> float:
        return math.inf if self._ended else self._clock()

    def _watch(self, cloth: ClothToCut, plan: ClothPlan) -> bool:
        with self._lock:
            number, cut = self._place(cloth), ClothCut(to_cut=cloth, answer=Answer(result=plan))
            self._best[number] = _better(cut, self._best[number])
        return not self._ended

    def _place(self, cloth: ClothToCut) -> int:
        return next(
            number
            for number, each in enumerate(self.cloths)
            if any(cloth is way for way in (each, *each.otherwise))
        )


def _better(cut: ClothCut, before: ClothCut | None) -> ClothCut:
    """Give the plan that takes less, and of equals the one of which more is proven."""
    if before is None or before.plan is None or cut.plan is None:
        return cut
    return min((cut, before), key=lambda each: _rank(each.plan))


def _rank(plan: ClothPlan | None) -> tuple[int, int, int]:
    if plan is None:
        return 0, 0, 0
    return plan.bought.nanometres, plan.cuts, -plan.bound.nanometres


_BEGUN: WeakSet[CutSearch] = WeakSet()


@atexit.register
def _end_all() -> None:
    """End the searches with the program: one cut off inside its solver takes the program down."""
    begun = list(_BEGUN)
    for search in begun:
        search.end()
    for search in begun:
        search.wait(LAST_WAIT_S)
