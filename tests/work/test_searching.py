"""Searches in processes of their own: the best so far, a stop, a process that dies."""

import os
import signal
import time
from collections.abc import Iterator

import pytest

from foldwright.core.cloth.checking import faults_of
from foldwright.core.cloth.order import Buying, ClothOrder, ClothPiece
from foldwright.core.quantity.length import Length
from foldwright.work.searching import Search, Searches, TooManySearches

PATIENCE_S = 60.0  # for a slow machine; a quick one never waits so long


def order(pieces: int, seed: int = 1) -> ClothOrder:
    """Pieces of all sizes: a few are planned at once, many are searched for as long as given."""
    return ClothOrder(
        pieces=tuple(
            ClothPiece(
                name=str(number),
                shade=str(number),
                room="",
                layer="face",
                width=Length.mm(300 + (number * 387 * seed) % 1000),
                length=Length.mm(900 + (number * 691 * seed) % 1500),
            )
            for number in range(pieces)
        ),
        buying=Buying(usable_width=Length.mm(1400), increment=Length.mm(1)),
    )


@pytest.fixture
def searches() -> Iterator[Searches]:
    begun = Searches()
    yield begun
    begun.close()


def until(search: Search, done: str) -> None:
    """Look until there is a plan, or until the search has ended."""
    ends = time.monotonic() + PATIENCE_S
    while time.monotonic() < ends:
        search.look(0.2)
        if not search.running or (done == "plan" and search.answer.result is not None):
            return
        time.sleep(0.05)
    pytest.fail(f"no {done} in {PATIENCE_S} seconds")


def test_a_search_ends_with_a_proven_plan(searches: Searches) -> None:
    asked = order(3)
    search = searches.begin("a", asked, 20.0)
    until(search, "end")
    plan = search.answer.result
    assert plan is not None
    assert plan.proven
    assert not plan.cut_short
    assert faults_of(plan, asked) == ()
    assert searches.of("a") is search
    assert searches.of("b") is None


def test_a_stopped_search_leaves_the_best_so_far_marked(searches: Searches) -> None:
    search = searches.begin("a", order(150), 300.0)
    until(search, "plan")
    assert search.running
    search.stop()
    until(search, "end")
    plan = search.answer.result
    assert plan is not None
    assert plan.cut_short
    assert search.stopped
    assert search.took_s < PATIENCE_S


def test_a_search_whose_process_dies_leaves_the_best_it_sent(searches: Searches) -> None:
    search = searches.begin("a", order(150), 300.0)
    until(search, "plan")
    pid = search._process.pid
    assert pid is not None
    os.kill(pid, signal.SIGKILL)
    until(search, "end")
    assert search.answer.result is not None
    assert search.answer.result.cut_short


def test_what_cannot_be_cut_is_said(searches: Searches) -> None:
    narrow = ClothOrder(
        pieces=order(2).pieces, buying=Buying(usable_width=Length.mm(100), increment=Length.mm(1))
    )
    search = searches.begin("a", narrow, 5.0)
    until(search, "end")
    assert search.answer.result is None
    assert search.answer.findings


def test_two_run_at_once_and_a_third_is_refused(searches: Searches) -> None:
    first = searches.begin("a", order(150, 1), 300.0)
    searches.begin("b", order(150, 2), 300.0)
    with pytest.raises(TooManySearches):
        searches.begin("c", order(3), 1.0)
    until(first, "plan")
    first.stop()
    until(first, "end")
    assert searches.begin("c", order(3), 1.0).running


def test_a_search_begun_anew_ends_the_one_before(searches: Searches) -> None:
    first = searches.begin("a", order(150), 300.0)
    second = searches.begin("a", order(3), 20.0)
    assert not first.running
    assert searches.of("a") is second
