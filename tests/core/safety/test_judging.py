"""One shade before its rules: what the drawing settles, and what is left to a test."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from tests.core.safety.shades import CLUTCH, line, shade, verdicts

from foldwright.core.facts.markets import Market
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.measure.opening import MountPlace
from foldwright.core.quantity.length import Length
from foldwright.core.safety.choices import ChainDevice, CordGuard
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.rules import RULES, RuleVerdict, rules_for
from foldwright.core.safety.safe_for import safe_for
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen

CANADA, STATES = Market.CANADA, Market.UNITED_STATES
EUROPE, AUSTRALIA = Market.EUROPE_AND_UK, Market.AUSTRALIA
TESTED, CHECK = RuleVerdict.MUST_BE_TESTED, RuleVerdict.CHECK_TEXT
BREAKS, KEEPS = RuleVerdict.BREAKS, RuleVerdict.KEEPS
NO = RuleVerdict.DOES_NOT_APPLY


def spaced(order: SafetyOrder, spacing: Length) -> SafetyOrder:
    rows = replace(order.layout.rows, spacing=chosen("row spacing", spacing, Unit.LENGTH))
    return replace(order, layout=replace(order.layout, rows=rows))


def test_every_rule_of_the_markets_has_its_line() -> None:
    report = safe_for(shade()).result
    assert report is not None
    assert [each.rule for each in report.lines] == list(RULES)
    report = safe_for(shade(CANADA, AUSTRALIA)).result
    assert report is not None
    assert [each.rule for each in report.lines] == list(rules_for((CANADA, AUSTRALIA)))


@pytest.mark.parametrize(
    ("millimetres", "canada", "europe"),
    [("220", TESTED, CHECK), ("220.000001", BREAKS, CHECK), ("200", TESTED, CHECK)],
)
def test_rows_at_their_limit_are_tested_and_beyond_it_break_the_law(
    millimetres: str, canada: RuleVerdict, europe: RuleVerdict
) -> None:
    found = verdicts(spaced(shade(CANADA, EUROPE), Length.mm(millimetres)))
    assert (found["canada.inner-cord"], found["europe.inner-cord"]) == (canada, europe)


def test_nothing_about_a_cord_is_ever_said_to_keep() -> None:
    for guard in CordGuard:
        found = verdicts(shade(cord_guard=guard))
        about = [name for name in found if name.endswith((".inner-cord", ".loop"))]
        assert len(about) == 6
        assert not {found[name] for name in about} & {KEEPS}


def test_a_drawn_loop_beyond_its_limit_is_a_matter_for_the_test() -> None:
    told = line(shade(CANADA), "canada.loop")
    assert told.verdict is TESTED
    assert told.found is not None
    assert told.limit is not None
    assert told.found.value > told.limit.value
    assert "beyond" in told.sentence


@pytest.mark.parametrize("guard", [CordGuard.SHROUD, CordGuard.OUT_OF_REACH])
def test_a_cord_out_of_reach_must_stay_there(guard: CordGuard) -> None:
    found = verdicts(shade(CANADA, cord_guard=guard))
    assert found["canada.out-of-reach"] is TESTED
    assert found["canada.inner-cord"] is TESTED
    assert verdicts(shade(CANADA))["canada.out-of-reach"] is NO


@pytest.mark.parametrize(
    ("head", "place", "loop"),
    [
        ("3200", MountPlace.INSIDE, TESTED),  # 1600 mm: at or below counts, by the stricter reading
        ("3201", MountPlace.INSIDE, NO),
        ("3150", MountPlace.OUTSIDE, NO),  # hung 2 in above the head
        (None, MountPlace.INSIDE, TESTED),
    ],
)
def test_australia_asks_nothing_of_cords_above_its_height(
    head: str | None, place: MountPlace, loop: RuleVerdict
) -> None:
    order = shade(AUSTRALIA, floor_to_head=head, place=place)
    assert verdicts(order)["australia.loop"] is loop


def test_a_cordless_lift_has_no_operating_cord_and_says_that_others_remain() -> None:
    told = line(shade(STATES), "united-states.short-cord")
    assert told.verdict is NO
    assert "remain" in told.sentence
    assert verdicts(shade(STATES))["united-states.inner-cord"] is TESTED


def test_before_a_lift_is_chosen_its_cords_are_open() -> None:
    order = shade(CANADA, lift=LiftChoices())
    assert verdicts(order)["canada.free-cord"] is CHECK


def test_a_rule_whose_clauses_nobody_read_asks_for_its_text() -> None:
    found = verdicts(shade(AUSTRALIA))
    assert found["australia.supply"] is CHECK
    assert found["australia.review"] is CHECK


def test_the_vacated_rule_is_shown_as_vacated() -> None:
    told = line(shade(STATES, made_on=date(2023, 7, 1)), "united-states.custom-cords")
    assert told.verdict is NO
    assert "vacated 2023-09-12" in told.sentence


@pytest.mark.parametrize(
    ("made_on", "edition_2018", "edition_2022"),
    [(date(2024, 5, 31), True, False), (date(2024, 6, 1), False, True), (None, False, True)],
)
def test_the_day_of_making_chooses_the_edition(
    made_on: date | None, *, edition_2018: bool, edition_2022: bool
) -> None:
    device = ChainDevice.TENSIONER
    found = verdicts(shade(STATES, lift=CLUTCH, made_on=made_on, chain_device=device))
    assert (found["united-states.chain-loop-2022"] is TESTED) is edition_2022
    told = line(shade(STATES, made_on=made_on), "united-states.cord-share-2018").sentence
    assert ("superseded" not in told) is edition_2018


@pytest.mark.parametrize(("millimetres", "expected"), [("1700", KEEPS), ("1700.000001", BREAKS)])
def test_a_breakaway_loop_at_its_height_in_europe(millimetres: str, expected: RuleVerdict) -> None:
    order = shade(
        EUROPE,
        lift=CLUTCH,
        floor_to_head="2300",
        chain_device=ChainDevice.BREAKAWAY,
        chain_loop_length=Length.mm(millimetres),
    )
    found = verdicts(order)
    assert found["europe.breakaway-height"] is expected
    assert found["europe.breakaway-load"] is TESTED
    assert found["europe.tensioner-height"] is NO


def test_what_is_hearsay_is_checked_on_either_side() -> None:
    for millimetres in ("800", "900"):
        order = shade(
            EUROPE,
            lift=CLUTCH,
            floor_to_head="2300",
            chain_device=ChainDevice.TENSIONER,
            chain_loop_length=Length.mm(millimetres),
        )
        assert verdicts(order)["europe.tensioner-height"] is CHECK


@pytest.mark.parametrize(
    ("device", "millimetres", "expected"),
    [
        (ChainDevice.BREAKAWAY, "700", KEEPS),
        (ChainDevice.BREAKAWAY, "701", BREAKS),
        (ChainDevice.TENSIONER, "701", NO),
    ],
)
def test_a_guide_excuses_an_australian_loop_from_its_height(
    device: ChainDevice, millimetres: str, expected: RuleVerdict
) -> None:
    order = shade(
        AUSTRALIA,
        lift=CLUTCH,
        floor_to_head="2300",
        chain_device=device,
        chain_loop_length=Length.mm(millimetres),
    )
    found = verdicts(order)
    assert found["australia.chain-loop"] is expected
    assert (found["australia.cord-guide"] is TESTED) is (device is ChainDevice.TENSIONER)


@pytest.mark.parametrize("device", [None, *ChainDevice])
def test_no_device_saves_a_chain_in_canada(device: ChainDevice | None) -> None:
    order = shade(CANADA, lift=CLUTCH, chain_device=device)
    assert verdicts(order)["canada.chain-loop"] is BREAKS
    assert verdicts(shade(CANADA))["canada.chain-loop"] is NO
