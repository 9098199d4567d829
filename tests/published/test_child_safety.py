"""The rules on cords and children, each boundary from both sides, against their published numbers.

Sizes on either side of a limit are ours; the limit is the rule's. What is known by hearsay or
memory alone is checked for its number, and for never passing anything.
"""

from __future__ import annotations

from datetime import date
from math import pi

import pytest

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.safety.chain import greatest_loop_length
from foldwright.core.safety.choices import ChainDevice
from foldwright.core.safety.rule import Confidence, Force
from foldwright.core.safety.rules import RULES, RuleVerdict, rule_named, verdict
from foldwright.core.why.making import measured

KEEPS, BREAKS = RuleVerdict.KEEPS, RuleVerdict.BREAKS
NEWTONS_IN_A_POUND = 0.45359237 * 9.80665


def pulled(rule: str, millimetres: str) -> RuleVerdict:
    return verdict(rule_named(rule), Length.mm(millimetres), tested=True)


@pytest.mark.parametrize(
    ("rule", "millimetres", "expected"),
    [
        ("canada.free-cord", "220", KEEPS),
        ("canada.free-cord", "221", BREAKS),
        ("canada.inner-cord", "220", KEEPS),
        ("canada.inner-cord", "221", BREAKS),  # 22 cm passes, 22.1 cm fails
        ("canada.loop", "440", KEEPS),
        ("canada.loop", "441", BREAKS),
        ("canada.joined-cords", "220", KEEPS),
        ("canada.joined-cords", "230", BREAKS),  # 120 and 110 mm joined
    ],
)
def test_canada_measures_under_a_pull_of_35_newtons(
    rule: str, millimetres: str, expected: RuleVerdict
) -> None:
    """Source: sor-2019-97, ss. 5 to 8."""
    pull = rule_named(rule).pull
    assert pull is not None
    assert pull.value == 35
    assert pulled(rule, millimetres) is expected


def test_what_was_not_pulled_does_not_pass_in_canada() -> None:
    """Source: sor-2019-97, ss. 5 to 8: a reading before 35 N is reached does not count."""
    for rule in ("canada.free-cord", "canada.inner-cord", "canada.loop"):
        assert verdict(rule_named(rule), Length.mm(100)) is RuleVerdict.MUST_BE_TESTED


@pytest.mark.parametrize(
    ("rule", "value", "allowed"),
    [
        ("canada.small-parts", 90.0, True),
        ("canada.small-parts", 89.9, False),
        ("canada.lead", 90.0, True),
        ("canada.lead", 90.1, False),
        ("canada.signal-word", Length.mm(5), True),
        ("canada.signal-word", Length.mm("4.9"), False),
        ("canada.label", Length.mm("2.5"), True),
        ("canada.label", Length.mm("2.4"), False),
    ],
)
def test_canada_parts_and_letters(rule: str, value: Length | float, *, allowed: bool) -> None:
    """Source: sor-2019-97, ss. 2, 3, 11 and 12."""
    assert rule_named(rule).allows(value) is allowed


@pytest.mark.parametrize(
    ("rule", "millimetres", "expected"),
    [
        ("australia.cleat", "1599", BREAKS),
        ("australia.cleat", "1600", KEEPS),
        ("australia.loop", "219", KEEPS),
        ("australia.loop", "220", BREAKS),  # where Canada still allows its own limit
        ("australia.chain-loop", "1599", BREAKS),
        ("australia.chain-loop", "1600", KEEPS),
    ],
)
def test_australia_below_1600_mm(rule: str, millimetres: str, expected: RuleVerdict) -> None:
    """Source: au-corded-2014, s. 6(1)(a), as quoted in the government guide."""
    assert pulled(rule, millimetres) is expected


def test_australia_lets_a_guide_hang_lower_if_it_holds() -> None:
    """Source: au-corded-2014: 70 N in any direction for 10 s."""
    guide = rule_named("australia.cord-guide")
    assert guide.limit is not None
    assert guide.limit.value == 70
    assert [time.value for time in guide.others] == [10]
    assert guide.allows(70.0)
    assert not guide.allows(69.9)


def test_canada_and_australia_stand_on_opposite_sides_of_their_number() -> None:
    """Sources: sor-2019-97, s. 7; au-corded-2014, s. 6(1)(a)."""
    canada, australia = rule_named("canada.loop"), rule_named("australia.loop")
    assert canada.limit is not None
    assert australia.limit is not None
    assert canada.allows(canada.limit.value)
    assert not australia.allows(australia.limit.value)


@pytest.mark.parametrize(("inches", "expected"), [("8", KEEPS), ("8.0625", BREAKS)])
def test_a_short_cord_in_the_united_states(inches: str, expected: RuleVerdict) -> None:
    """Source: ansi-wcma-2022, questions and answers: 8 in."""
    assert verdict(rule_named("united-states.short-cord"), Length.inches(inches)) is expected


def test_the_rule_on_custom_shades_is_vacated() -> None:
    """Source: 16-cfr-1260; D.C. Cir. No. 22-1300, 12 September 2023."""
    rule = rule_named("united-states.custom-cords")
    assert rule.force is Force.LAW
    assert rule.standing.words == "vacated 2023-09-12, not in force"
    for day in (None, date(2023, 1, 9), date(2023, 6, 1), date(2026, 5, 4)):
        assert verdict(rule, Length.inches(20), day) is RuleVerdict.DOES_NOT_APPLY


@pytest.mark.parametrize(
    ("made_on", "edition"),
    [
        (date(2018, 12, 14), set()),
        (date(2018, 12, 15), {"2018"}),
        (date(2024, 5, 31), {"2018"}),
        (date(2024, 6, 1), {"2022"}),
        (None, {"2022"}),
    ],
)
def test_the_edition_of_the_standard_follows_the_day_of_making(
    made_on: date | None, edition: set[str]
) -> None:
    """Source: ansi-wcma-2022, for goods made on or after 1 June 2024; the first day is hearsay."""
    by_edition = {"2018": "united-states.cord-share-2018", "2022": "united-states.free-cord-2022"}
    holding = {name for name, rule in by_edition.items() if _holds(rule, made_on)}
    assert holding == edition


def _holds(rule: str, made_on: date | None) -> bool:
    return rule_named(rule).standing.holds_on(made_on)


def test_listed_hazards_reach_custom_shades() -> None:
    """Source: 16-cfr-1120, in force from 28 December 2022: inner cords and the label."""
    for name in ("united-states.inner-cord", "united-states.label"):
        rule = rule_named(name)
        assert rule.force is Force.LAW
        assert not rule.standing.holds_on(date(2022, 12, 27))
        assert rule.standing.holds_on(date(2022, 12, 28))


EUROPE = (Market.EUROPE_AND_UK,)


def loop(device: ChainDevice, head: str | None, shade: str, *markets: Market) -> float:
    top = measured("floor to head", Length.mm(head)) if head else None
    drop = measured("drop", Length.mm(shade))
    most = greatest_loop_length(device, top, drop, markets or EUROPE)
    assert most is not None
    return most.value.in_millimetres


@pytest.mark.parametrize(
    ("device", "head", "shade", "expected"),
    [
        (ChainDevice.TENSIONER, "2400", "1800", 900),
        (ChainDevice.BREAKAWAY, "2400", "1800", 1800),
        (ChainDevice.TENSIONER, None, "1800", 1000),
        (ChainDevice.TENSIONER, None, "2500", 1000),
        (ChainDevice.TENSIONER, None, "3000", 1500),
        (ChainDevice.BREAKAWAY, None, "1800", 1200),
        (ChainDevice.BREAKAWAY, None, "3000", 2000),
        (ChainDevice.TENSIONER, "2300", "1500", 800),
        (ChainDevice.BREAKAWAY, "2300", "1500", 1700),
        (ChainDevice.BREAKAWAY, None, "1500", 1000),
    ],
)
def test_chain_loops_in_europe(
    device: ChainDevice, head: str | None, shade: str, expected: float
) -> None:
    """Source: en-13120-summary for the breakaway; en-loop-pages, hearsay, for the tensioner."""
    assert loop(device, head, shade) == pytest.approx(expected, rel=1e-12)


def test_chain_loops_of_several_markets_keep_to_the_strictest() -> None:
    """Sources: en-13120-summary, en-loop-pages, au-corded-2014, sor-2019-97 (half of 440 mm)."""
    breakaway, tensioner = ChainDevice.BREAKAWAY, ChainDevice.TENSIONER
    assert loop(breakaway, "2400", "1800", Market.AUSTRALIA) == 800
    assert loop(breakaway, "2400", "1800", *EUROPE, Market.AUSTRALIA) == 800
    assert loop(tensioner, "2400", "1800", *EUROPE, Market.AUSTRALIA) == 900
    assert loop(tensioner, "2400", "1800", *EUROPE, Market.CANADA) == 220


def test_the_units_of_the_cord_rules() -> None:
    """Source: definition of inch, pound and standard gravity; sor-2019-97; au-corded-2014."""
    short = rule_named("canada.free-cord").limit
    loop = rule_named("canada.loop").limit
    release = rule_named("europe.breakaway-load").limit
    guide = rule_named("australia.cord-guide").limit
    pull = rule_named("canada.loop").pull
    assert short is not None
    assert loop is not None
    assert release is not None
    assert guide is not None
    assert pull is not None
    assert short.value.in_millimetres / 25.4 == pytest.approx(8.661417323, rel=1e-7)
    assert loop.value.in_millimetres / 25.4 == pytest.approx(17.32283465, rel=1e-7)
    assert loop.value.in_millimetres / pi == pytest.approx(140.0563499, rel=1e-7)
    assert pull.value / NEWTONS_IN_A_POUND == pytest.approx(7.868313008, rel=1e-7)
    assert guide.value / NEWTONS_IN_A_POUND == pytest.approx(15.73662602, rel=1e-7)
    assert release.value * 9.80665 == pytest.approx(58.8399, rel=1e-7)


def test_no_rule_known_by_hearsay_or_memory_ever_passes_anything() -> None:
    """Source: definition; a rumour about a rule is no rule."""
    doubtful = [rule for rule in RULES if not rule.confidence.can_pass]
    assert {rule.confidence for rule in doubtful} == {Confidence.HEARSAY, Confidence.MEMORY}
    for rule in doubtful:
        kept = rule.limit.value if rule.limit else None
        day = rule.standing.made_from
        assert verdict(rule, kept, day, tested=True) is RuleVerdict.CHECK_TEXT


def test_every_market_has_rules_of_law_and_standard_told_apart() -> None:
    """Source: definition; a regulation is law, ANSI/WCMA and EN standards are voluntary."""
    forces = {market: {rule.force for rule in RULES if rule.market is market} for market in Market}
    assert forces[Market.CANADA] == {Force.LAW}
    assert forces[Market.UNITED_STATES] == {Force.LAW, Force.STANDARD}
    assert forces[Market.EUROPE_AND_UK] == {Force.STANDARD}
    assert forces[Market.AUSTRALIA] == {Force.LAW}
