"""Searches for better cut plans, each in a process of its own, so that pages stay quick.

A search sends every better plan as it finds it; whoever looks takes the best so far, and may
stop the search. A search that is stopped, or whose process dies, leaves the best plan it sent.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Hashable
from dataclasses import dataclass, field, replace
from math import inf
from multiprocessing import get_context
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from multiprocessing.synchronize import Event as StopSign

from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.why.answer import Answer

MOST_AT_ONCE = 2
MOST_KEPT = 32
LONGEST_S = 300.0
_processes = get_context("spawn")


class TooManySearches(Exception):  # noqa: N818 - a state of the shop, not a fault of the program
    """As many searches are running as this machine is given; one must end or be stopped first."""


@dataclass(kw_only=True)
class Search:
    """One search: what it was asked, the best plan so far, and whether it goes on."""

    order: ClothOrder
    time_given_s: float
    began_s: float
    _process: BaseProcess = field(repr=False)
    _results: Connection = field(repr=False)
    _stop: StopSign = field(repr=False)
    _clock: Callable[[], float] = field(repr=False)
    answer: Answer[ClothPlan] = field(default_factory=lambda: Answer(result=None))
    running: bool = True
    stopped: bool = False
    took_s: float = 0.0

    def look(self, patience_s: float = 0.0) -> Answer[ClothPlan]:
        """Take in what the search has sent, waiting at most so long for its first plan."""
        until = self._clock() + patience_s
        while self.running:
            wait = max(0.0, until - self._clock()) if self.answer.result is None else 0.0
            if not self._results.poll(wait):
                break
            self._take_one()
        if self.running:
            self.took_s = self._clock() - self.began_s
        return self.answer

    def stop(self) -> None:
        """Ask the search to end; the best plan so far stands, marked as cut short."""
        self.stopped = True
        self._stop.set()

    def end(self) -> None:
        """End the process at once."""
        self._process.kill()
        self._process.join()
        self._results.close()
        self.running = False

    def _take_one(self) -> None:
        """Take one plan or the last answer; a process that died leaves what it sent."""
        try:
            sent = self._results.recv()
        except (EOFError, OSError):
            self._finish(self._cut_short())
            return
        if isinstance(sent, ClothPlan):
            self.answer = Answer(result=sent)
        else:
            self._finish(sent)

    def _cut_short(self) -> Answer[ClothPlan]:
        plan = self.answer.result
        return Answer(result=plan and replace(plan, cut_short=not plan.proven))

    def _finish(self, answer: Answer[ClothPlan]) -> None:
        self.answer, self.running = answer, False
        self.took_s = self._clock() - self.began_s
        self._process.join(timeout=1.0)


class Searches:
    """The searches of this program, each under the key of what it is for."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._kept: dict[Hashable, Search] = {}

    def of(self, key: Hashable) -> Search | None:
        """Give the search for something, or None where none was begun."""
        return self._kept.get(key)

    def begin(self, key: Hashable, order: ClothOrder, time_given_s: float) -> Search:
        """Begin a search; an earlier one for the same is ended and forgotten.

        Takes: what it is for; the order; the seconds it may take, 300 at most.
        Gives: the search, running.
        Raises: TooManySearches where two others are running.
        """
        self._forget(key)
        if sum(self._running(search) for search in self._kept.values()) >= MOST_AT_ONCE:
            raise TooManySearches
        while len(self._kept) >= MOST_KEPT:
            self._forget(next(key for key, kept in self._kept.items() if not kept.running))
        search = _start(order, min(time_given_s, LONGEST_S), self._clock)
        self._kept[key] = search
        return search

    def close(self) -> None:
        """End every search."""
        for key in list(self._kept):
            self._forget(key)

    def _forget(self, key: Hashable) -> None:
        search = self._kept.pop(key, None)
        if search is not None:
            search.end()

    @staticmethod
    def _running(search: Search) -> bool:
        search.look()
        return search.running


def _start(order: ClothOrder, time_given_s: float, clock: Callable[[], float]) -> Search:
    """Start the process of one search."""
    results, sending = _processes.Pipe(duplex=False)
    stop = _processes.Event()
    process = _processes.Process(
        target=_search, args=(order, time_given_s, sending, stop), daemon=True
    )
    began_s = clock()
    process.start()
    sending.close()  # the process holds the only other end, so its death is seen
    return Search(
        order=order,
        time_given_s=time_given_s,
        began_s=began_s,
        _process=process,
        _results=results,
        _stop=stop,
        _clock=clock,
    )


def _search(order: ClothOrder, time_given_s: float, sending: Connection, stop: StopSign) -> None:
    """Search, in the process of its own: send each better plan, and the answer at the end."""

    def watch(plan: ClothPlan) -> bool:
        sending.send(plan)
        return not stop.is_set()

    def clock() -> float:
        """Let time end as soon as somebody stops the search, between two plans too."""
        return inf if stop.is_set() else time.monotonic()

    sending.send(plan_cloth(order, time_given_s=time_given_s, clock=clock, watch=watch))
