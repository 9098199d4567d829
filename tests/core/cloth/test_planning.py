"""The planner: always a sound plan, better ones as they are found, and what it says of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from itertools import count

import pytest
from benchmarks.cloth_jobs import FAMILIES, order
from tests.core.cloth.orders import IN_HAND, mm, piece, roll, to_buy

from foldwright.core.cloth import keeping, way
from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.order import Buying, ClothOrder, ClothPlan, Flaw, Pattern, RemnantUse
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.why.fault import Fault
from foldwright.core.why.finding import Severity


def ticking(step: float = 0.02) -> Callable[[], float]:
    """Give a clock that counts how often it is read."""
    ticks = count()
    return lambda: next(ticks) * step


def planned(asked: ClothOrder, seconds: float = 2.0) -> ClothPlan:
    plan = plan_cloth(asked, time_given_s=seconds, clock=ticking()).result
    assert plan is not None
    return plan


@pytest.mark.parametrize("shades", [1, 3, 12])
@pytest.mark.parametrize("family", FAMILIES)
def test_every_plan_is_sound_and_no_worse_than_the_first_fit(family: str, shades: int) -> None:
    asked = order(family, shades, 3)
    plan = planned(asked)
    assert faults_of(plan, asked) == ()
    assert plan.comparison is not None
    assert plan.bound <= plan.bought
    if family != "stock with flaws":
        assert plan.bought <= plan.comparison.first_fit <= plan.comparison.shade_by_shade


@pytest.mark.parametrize("family", FAMILIES)
def test_the_same_steps_give_the_same_plan(family: str) -> None:
    asked = order(family, 6, 5)
    assert planned(asked) == planned(asked)


def test_without_time_the_first_plan_comes_marked() -> None:
    answer = plan_cloth(order("mixed head and sill", 30, 1), time_given_s=0.0, clock=lambda: 0.0)
    assert answer.result is not None
    assert answer.result.cut_short
    assert [finding.id for finding in answer.findings] == ["cloth.cut-short"]


def test_a_cancelled_search_gives_the_best_plan_so_far_marked() -> None:
    shown: list[ClothPlan] = []

    def stop(plan: ClothPlan) -> bool:
        shown.append(plan)
        return False

    asked = order("plain", 40, 1)
    answer = plan_cloth(asked, time_given_s=60.0, clock=lambda: 0.0, watch=stop)
    assert answer.result is not None
    assert len(shown) == 1
    assert answer.result.placements == shown[0].placements
    assert answer.result.cut_short


def test_each_plan_that_is_shown_is_better_than_the_one_before() -> None:
    bought: list[int] = []

    def look(plan: ClothPlan) -> bool:
        bought.append(plan.bought.nanometres)
        return True

    plan_cloth(order("half drop, centred", 20, 0), time_given_s=60.0, clock=lambda: 0.0, watch=look)
    assert len(bought) > 1
    assert bought == sorted(bought, reverse=True)


def test_a_plan_that_fails_the_checker_is_never_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    fault = Fault(where="1", what="it covers a flaw", remedy="")
    monkeypatch.setattr(keeping, "faults_of", lambda *_: (fault,))
    shown: list[ClothPlan] = []
    asked = to_buy(piece("1", 900, 1500))
    answer = plan_cloth(
        asked, time_given_s=1.0, clock=lambda: 0.0, watch=lambda p: not shown.append(p)
    )
    assert answer.result is None
    assert shown == []
    assert answer.findings[0].severity is Severity.STOP
    assert "it covers a flaw" in answer.findings[0].sentence


def test_a_bound_above_the_plan_is_an_alarm_and_the_plan_is_not_shown(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(way, "SLACK_MM", -10_000)
    asked = order("plain", 8, 0)
    answer = plan_cloth(asked, time_given_s=2.0, clock=ticking())
    assert answer.result is None
    assert "bound" in answer.findings[0].sentence


def test_faults_of_the_order_come_as_stops_with_their_remedies() -> None:
    answer = plan_cloth(to_buy(piece("1", 1500, 900)), time_given_s=1.0, clock=lambda: 0.0)
    assert answer.result is None
    assert answer.findings[0].forbids
    assert "wider than any roll" in answer.findings[0].sentence
    assert "1400 mm" in answer.findings[0].remedies[0].sentence


def test_too_little_cloth_is_said_with_how_much_more() -> None:
    short = replace(IN_HAND, rolls=(roll("one", 2300), IN_HAND.rolls[1]))
    answer = plan_cloth(short, time_given_s=1.0, clock=ticking())
    assert answer.result is None
    assert "no way was found" in answer.findings[0].sentence
    assert "Add a roll of" in answer.findings[0].remedies[0].sentence


def test_rolls_in_hand_of_two_lots_keep_each_room_to_one() -> None:
    plan = planned(IN_HAND)
    rolls = {each.piece: each.roll for each in plan.placements}
    assert rolls["AC"] == rolls["AL"] == rolls["AR"]


def test_a_flaw_may_lie_where_it_is_hidden() -> None:
    one = piece("1", 1400, 1000, hidden_foot=mm(100))
    flaw = Flaw(along=mm(900), across=ZERO, length=mm(100), width=mm(1400))
    asked = ClothOrder(pieces=(one,), rolls=(roll("a", 3000, flaws=(flaw,)),))
    assert planned(asked).bought == mm(1000)
    seen = replace(asked, pieces=(replace(one, hidden_foot=mm(99)),))
    assert planned(seen).bought == mm(2000)


def test_what_is_lost_to_a_flaw_is_told_from_what_is_lost_to_the_repeat() -> None:
    one = piece("1", 1400, 1000, phase_along=mm(100))
    flaw = Flaw(along=mm(500), across=ZERO, length=mm(100), width=mm(1400))
    asked = ClothOrder(
        pieces=(one,),
        rolls=(roll("a", 3000, flaws=(flaw,)),),
        pattern=Pattern(vertical_repeat=mm(400)),
    )
    level = planned(asked).levels[0]
    assert (level.start, level.waits_for_repeat, level.waits_for_flaw) == (
        mm(900),
        mm(100),
        mm(800),
    )


def test_whole_rolls_and_a_least_order_are_bought_as_they_are_sold() -> None:
    pieces = tuple(piece(str(n), 1400, 3000) for n in range(5))
    sold = Buying(
        usable_width=mm(1400), increment=mm(100), start_allowance=mm(50), whole_roll=mm(7000)
    )
    asked = ClothOrder(pieces=pieces, buying=sold)
    plan = planned(asked)
    assert plan.bought == mm(21_000)
    assert len(plan.rolls) == 3
    assert plan.proven
    least = replace(asked, buying=replace(sold, whole_roll=None, least=mm(20_000)))
    assert planned(least).bought == mm(20_000)


def test_railroading_is_taken_for_the_whole_cloth_where_it_saves() -> None:
    wide = piece("1", 2000, 1300)
    parts = (piece("a", 1000, 1300), piece("b", 1000, 1300))
    plan = planned(to_buy(*parts, railroaded=(wide,)))
    assert plan.railroaded
    assert all(each.turned for each in plan.placements)
    assert plan.bought == mm(2000)


def test_a_remnant_names_what_it_is_good_for() -> None:
    use = RemnantUse(name="tie", width=mm(400), length=mm(900))
    plan = planned(to_buy(piece("1", 1000, 1500), remnant_uses=(use,)))
    assert [remnant.uses for remnant in plan.remnants] == [("tie",)]


def test_an_imperial_repeat_does_not_drift() -> None:
    """25 1/4 in is 641.35 mm: forty repeats on, a rounded one would be 14 mm off."""
    repeat = mm(Fraction(64135, 100))
    pieces = tuple(piece(str(n), 1400, 1200, phase_along=ZERO) for n in range(20))
    plan = planned(to_buy(*pieces, pattern=Pattern(vertical_repeat=repeat)))
    starts = sorted(each.along - plan.rolls[0].origin_along for each in plan.placements)
    assert all((start / repeat).denominator == 1 for start in starts)
    assert mm(38 * Fraction(64135, 100) + 1200) == mm(Fraction(255713, 10))
    assert plan.bought == mm(25572)


def test_a_roll_of_six_and_seven_eighths_yards_leaves_an_inch_and_a_half() -> None:
    """Four cuts of 61 1/2 in need 246 of its 247 1/2 in."""
    inch = Length.inches(1)
    cut = replace(piece("1", 1300, 1), length=inch * Fraction(123, 2))
    pieces = tuple(replace(cut, name=str(number)) for number in range(4))
    full = replace(roll("a", 1), length=inch * 36 * Fraction(55, 8))
    plan = planned(ClothOrder(pieces=pieces, rolls=(full,)))
    assert plan.bought == inch * 246
    assert plan.remnants[0].length == inch * Fraction(3, 2)
