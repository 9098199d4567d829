"""The child safety sheet says all that the report says, and certifies nothing."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest
from tests.papers.reading import Sheet, read
from tests.papers.shades import HEADER, demo_job, demo_plan, overridden_plan
from tests.papers.test_sheets import plain

from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.markets import Market
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import cautions
from foldwright.core.safety.rules import RuleVerdict
from foldwright.core.why.telling import fill
from foldwright.papers.safety_sheet import safety_sheet
from foldwright.papers.sheets import Paper
from foldwright.work.planning import plan_one


@cache
def sold(tag: str, markets: tuple[Market, ...]) -> ShadePlan:
    job = demo_job()
    spec = next(each for each in job.shades if each.tag == tag)
    return plan_one(replace(job, head=replace(job.head, markets=markets)), spec)


def run_on(words: str) -> str:
    """Leave out every blank: a source's name may be broken at its hyphens."""
    return words.replace(" ", "")


def printed(plan: ShadePlan) -> Sheet:
    return read(safety_sheet(plan, HEADER, Paper.A4, System.INCH))


@pytest.mark.parametrize("market", Market)
@pytest.mark.parametrize("tag", ["Kitchen", "Nursery"])
def test_one_market_takes_one_page_with_every_rule_label_and_test(tag: str, market: Market) -> None:
    plan = sold(tag, (market,))
    assert plan.safety is not None
    found = printed(plan)
    said = run_on(found.said())
    assert found.pages == 1
    for line in plan.safety.lines:
        told = fill(line.rule.says, line.rule.figures, System.INCH)
        assert (run_on(told) in said) is line.speaks, told
    (label,) = plan.safety.labels
    for words in (*label.warnings, label.note, *(each.name for each in label.fields)):
        assert run_on(words) in said
    (tests,) = [each for each in plan.findings if each.id == "safety.test"]
    for remedy in tests.remedies:
        assert run_on(fill(remedy.sentence, remedy.figures, System.INCH)) in said


def test_a_rule_that_was_vacated_or_superseded_is_shown_as_such_with_its_date() -> None:
    said = plain(printed(sold("Kitchen", (Market.UNITED_STATES,))))
    assert "vacated 2023-09-12, not in force" in said
    assert "superseded on 2024-06-01 by the edition of 2022" in said
    assert f"3 {RuleVerdict.DOES_NOT_APPLY.value}" in said


def test_several_markets_name_the_strictest_and_whose_it_is() -> None:
    markets = (Market.UNITED_STATES, Market.AUSTRALIA)
    plan = sold("Kitchen", markets)
    assert plan.safety is not None
    assert "way round the loop: less than 8 5/8 in (Australia)" in plain(printed(plan))


def test_what_the_label_lacks_is_left_open() -> None:
    said = plain(printed(sold("Kitchen", (Market.AUSTRALIA,))))
    assert "installer's name: still lacking" in said


def test_it_never_claims_that_the_shade_is_certified() -> None:
    said = plain(printed(demo_plan("Nursery")))
    assert "Nothing here certifies the shade." in said
    assert "certified" not in said
    assert "complies" not in said


def test_it_warns_of_what_can_hurt_on_this_shade() -> None:
    spring, chain = plain(printed(demo_plan("Nursery"))), plain(printed(demo_plan("Kitchen")))
    motor = plain(printed(demo_plan("Dining")))
    assert cautions.WOUND_SPRING in spring
    assert cautions.WOUND_SPRING not in chain
    assert cautions.CHAIN in chain
    assert cautions.MAINS in motor
    assert all(cautions.CORDS in said for said in (spring, chain, motor))


def test_a_stop_that_is_set_aside_is_printed_with_name_and_reason() -> None:
    said = plain(printed(overridden_plan()))
    assert "The maker answers for it: The client asked for it in writing." in said


def test_a_shade_without_a_layout_has_no_such_sheet() -> None:
    bare = ShadePlan(spec=demo_plan("Garden").spec)
    with pytest.raises(ValueError, match="Garden has no layout to judge yet"):
        safety_sheet(bare, HEADER, Paper.A4, System.INCH)
