"""The rules as data: whole, sourced, and never better known than their source."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from itertools import product

import pytest
from tests.docs.reading import sources

from foldwright.core.facts.markets import Market, row_spacing_cap
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.safety.rule import Comparison, Confidence, Measure, Rule, Standing, Subject
from foldwright.core.safety.rules import RULES, RuleVerdict, rule_named, rules_for, verdict_where
from foldwright.core.safety.strictest import governing_rules
from foldwright.core.why.telling import fill

KNOWN = {
    "read": Confidence.READ,
    "secondary": Confidence.SECONDARY,
    "hearsay": Confidence.HEARSAY,
    "from memory": Confidence.MEMORY,
}
SLOT = re.compile(r"\{(\d+)\}")


def ids(rule: Rule) -> str:
    return rule.id


def test_each_id_is_used_once_and_names_its_market() -> None:
    assert len({rule.id for rule in RULES}) == len(RULES)
    prefixes = {rule.id.split(".")[0]: rule.market for rule in RULES}
    assert prefixes == {
        "canada": Market.CANADA,
        "united-states": Market.UNITED_STATES,
        "europe": Market.EUROPE_AND_UK,
        "australia": Market.AUSTRALIA,
    }


@pytest.mark.parametrize("rule", RULES, ids=ids)
def test_no_rule_is_known_better_than_its_source(rule: Rule) -> None:
    assert KNOWN[sources()[rule.source.id]["status"]] is rule.confidence


@pytest.mark.parametrize("rule", RULES, ids=ids)
def test_a_limit_has_its_measure_and_its_side(rule: Rule) -> None:
    assert (rule.limit is None) == (rule.comparison is None) == (rule.measure is None)
    for figure in rule.figures:
        assert figure.source is not None
        assert not figure.inputs


@pytest.mark.parametrize(("rule", "system"), list(product(RULES, System)), ids=str)
def test_what_a_rule_says_can_be_read_aloud(rule: Rule, system: System) -> None:
    assert {int(slot) for slot in SLOT.findall(rule.says)} == set(range(len(rule.figures)))
    for sentence in (fill(rule.says, rule.figures, system), rule.shop_must):
        assert sentence[0].isupper()
        assert sentence.endswith(".")


def test_every_subject_and_measure_is_used() -> None:
    assert {rule.subject for rule in RULES} == set(Subject)
    assert {rule.measure for rule in RULES} - {None} == set(Measure)


def test_the_spacing_caps_of_the_layout_are_the_limits_of_the_rules() -> None:
    spans = {
        rule.market: rule.limit.value
        for rule in RULES
        if rule.subject is Subject.INNER_CORD and rule.limit
    }
    assert len(spans) == 3
    for market, value in spans.items():
        assert row_spacing_cap((market,)).value == value


def test_no_market_named_means_all() -> None:
    assert rules_for(()) == RULES
    assert {rule.market for rule in rules_for((Market.AUSTRALIA,))} == {Market.AUSTRALIA}


@pytest.mark.parametrize(
    ("comparison", "below", "at", "above"),
    [
        (Comparison.AT_MOST, True, True, False),
        (Comparison.UNDER, True, False, False),
        (Comparison.AT_LEAST, False, True, True),
    ],
)
def test_each_comparison_at_its_limit(
    comparison: Comparison, *, below: bool, at: bool, above: bool
) -> None:
    one = Length(1)
    limit = Length.mm(220)
    found = [comparison.holds(each, limit) for each in (limit - one, limit, limit + one)]
    assert found == [below, at, above]


def test_a_length_is_not_compared_with_a_force() -> None:
    with pytest.raises(TypeError, match="length"):
        rule_named("canada.loop").allows(35.0)


def test_a_rule_without_a_number_refuses_to_compare() -> None:
    with pytest.raises(ValueError, match="read its text"):
        rule_named("united-states.inner-cord").allows(35.0)


def test_a_standing_without_dates_holds_and_says_so() -> None:
    assert Standing().holds_on(date(1990, 1, 1))
    assert Standing().words == "date not known here"


@pytest.mark.parametrize(
    ("rule", "within", "tested", "expected"),
    [
        ("canada.loop", None, True, RuleVerdict.MUST_BE_TESTED),
        ("canada.loop", True, False, RuleVerdict.MUST_BE_TESTED),
        ("canada.loop", True, True, RuleVerdict.KEEPS),
        ("canada.loop", False, False, RuleVerdict.BREAKS),
        ("europe.tensioner-height", True, True, RuleVerdict.CHECK_TEXT),
        ("europe.tensioner-height", False, True, RuleVerdict.CHECK_TEXT),
        ("united-states.custom-cords", False, True, RuleVerdict.DOES_NOT_APPLY),
    ],
)
def test_the_verdict_inside_and_outside_a_limit(
    rule: str, *, within: bool | None, tested: bool, expected: RuleVerdict
) -> None:
    assert verdict_where(rule_named(rule), None, within=within, tested=tested) is expected


@pytest.mark.parametrize(
    ("markets", "subject", "governing"),
    [
        ((Market.CANADA,), Subject.LOOP, "canada.loop"),
        ((Market.CANADA, Market.AUSTRALIA), Subject.LOOP, "australia.loop"),
        ((Market.CANADA, Market.UNITED_STATES), Subject.OPERATING_CORD, "united-states.short-cord"),
        ((Market.CANADA, Market.EUROPE_AND_UK), Subject.INNER_CORD, "europe.inner-cord"),
    ],
)
def test_the_strictest_of_several_markets_is_named(
    markets: tuple[Market, ...], subject: Subject, governing: str
) -> None:
    (found,) = [
        each for each in governing_rules(rules_for(markets), None) if each.subject is subject
    ]
    assert found.rule == governing
    assert all(market.value in found.limit.because for market in markets)


def test_of_two_equal_numbers_the_stricter_refuses_the_number_itself() -> None:
    loop = rule_named("australia.loop")
    friendly = rule_named("canada.free-cord")  # the same 220 mm, but still allowed
    assert loop.limit is not None
    assert friendly.limit is not None
    assert loop.limit.value == friendly.limit.value
    alike = replace(friendly, subject=loop.subject, measure=loop.measure)
    (found,) = governing_rules((alike, loop), None)
    assert found.rule == "australia.loop"


def test_a_rule_that_does_not_hold_that_day_governs_nothing() -> None:
    day = date(2021, 4, 30)
    assert governing_rules(rules_for((Market.CANADA,)), day) == ()
