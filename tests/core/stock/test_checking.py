"""The second look must name each fault that is planted in a sound plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from tests.core.stock.orders import order_of, planned

from foldwright.core.quantity.length import Length
from foldwright.core.stock.checking import faults_in
from foldwright.core.stock.order import Bar, Cut, StockPlan

ORDER = order_of([900, 850, 600, 500, 400], rack=(950,))
SOUND = planned(ORDER)
MM = Length.mm(1)


def _with_bar(change: Callable[[Bar], Bar], number: int = -1) -> StockPlan:
    bars = list(SOUND.bars)
    bars[number] = change(bars[number])
    return replace(SOUND, bars=tuple(bars))


def _with_last_cut(**changes: Length | str) -> StockPlan:
    def change(bar: Bar) -> Bar:
        return replace(bar, cuts=(*bar.cuts[:-1], replace(bar.cuts[-1], **changes)))  # type: ignore[arg-type]

    return _with_bar(change)


def _last_cut() -> Cut:
    return SOUND.bars[-1].cuts[-1]


PLANTED = {
    "missing": (_with_bar(lambda bar: replace(bar, cuts=bar.cuts[:-1])), "is missing"),
    "another name": (_with_last_cut(need="stranger"), "cut but not wanted"),
    "one millimetre too long": (_with_last_cut(length=_last_cut().length + MM), "not wanted"),
    "overlapping": (_with_last_cut(start=_last_cut().start - MM), "before the blade"),
    "over the end": (_with_last_cut(start=Length.mm(1900)), "over the end"),
    "wrong remainder": (_with_bar(lambda bar: replace(bar, remainder=MM)), "what is left"),
    "a rack piece twice": (replace(SOUND, bars=(SOUND.bars[0], *SOUND.bars)), "used 2 times"),
    "a bar nobody sells": (_with_bar(lambda bar: replace(bar, name="stranger")), "there are 0"),
    "wrong cost": (replace(SOUND, cost=SOUND.cost + 1), "the plan says"),
    "bound too high": (replace(SOUND, least_cost=SOUND.cost + 1), "the bound is wrong"),
    "untrimmed": (
        _with_bar(
            lambda bar: replace(bar, cuts=(replace(bar.cuts[0], start=Length.mm(9)), *bar.cuts[1:]))
        ),
        "before the blade",
    ),
}


def test_the_plan_is_sound_before_anything_is_planted() -> None:
    assert SOUND.bars[0].from_rack
    assert faults_in(SOUND, ORDER) == ()


@pytest.mark.parametrize("name", PLANTED)
def test_a_planted_fault_is_named(name: str) -> None:
    plan, words = PLANTED[name]
    assert any(words in sentence for sentence in faults_in(plan, ORDER))
