"""Each finding on children fires, is silent, and says the figure found before its limit."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from tests.core.safety.shades import CLUTCH, findings, shade

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.safety import chain_findings
from foldwright.core.safety.choices import ChainDevice, Children, CordGuard
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen
from foldwright.core.why.telling import fill

CANADA, STATES = Market.CANADA, Market.UNITED_STATES
EUROPE, AUSTRALIA = Market.EUROPE_AND_UK, Market.AUSTRALIA
LABELLED = {
    "made_on": date(2026, 6, 1),
    "maker_name": "The invented workroom",
    "maker_town": "Nowhere",
    "installer_name": "The same",
    "installer_contact": "At the shop",
}


def with_head(order: SafetyOrder, millimetres: str) -> SafetyOrder:
    """Give the top panel that leaves so much cord up to the tube, 27 mm below the board."""
    panel = Length.mm(millimetres) + Length.mm(27)
    rows = replace(order.layout.rows, top_panel=chosen("top panel", panel, Unit.LENGTH))
    return replace(order, layout=replace(order.layout, rows=rows))


@pytest.mark.parametrize(
    ("markets", "millimetres", "severity"),
    [
        ((CANADA,), "220", None),
        ((CANADA,), "220.000001", Severity.STOP),
        ((STATES,), "300", None),  # its wording speaks of rings alone, here 200 mm apart
        ((EUROPE,), "200", None),
        ((EUROPE,), "200.000001", Severity.ASK),
        ((CANADA, STATES), "215", Severity.ASK),
        ((CANADA, STATES), "221", Severity.STOP),
    ],
)
def test_cord_too_long_at_rest(
    markets: tuple[Market, ...], millimetres: str, severity: Severity | None
) -> None:
    found = findings(with_head(shade(*markets), millimetres)).get("safety.cord-too-long")
    assert (found and found.severity) is severity


@pytest.mark.parametrize(
    ("millimetres", "severity"), [("203.2", None), ("203.200001", Severity.ASK)]
)
def test_rings_too_far_apart_in_the_united_states(
    millimetres: str, severity: Severity | None
) -> None:
    order = shade(STATES)
    spacing = chosen("row spacing", Length.mm(millimetres), Unit.LENGTH)
    order = replace(
        order, layout=replace(order.layout, rows=replace(order.layout.rows, spacing=spacing))
    )
    found = findings(order).get("safety.cord-too-long")
    assert (found and found.severity) is severity


def test_cord_too_long_names_the_figure_and_the_limit_and_that_a_spring_does_not_help() -> None:
    found = findings(with_head(shade(CANADA), "233"))["safety.cord-too-long"]
    told = fill(found.sentence, found.figures, System.METRIC)
    assert "233 mm of cord" in told
    assert "220 mm" in told
    assert "cordless lift does not take these cords away" in told


@pytest.mark.parametrize(
    ("guard", "markets", "silent"),
    [
        (CordGuard.NONE, (CANADA,), False),
        (CordGuard.SHROUD, (CANADA,), True),
        (CordGuard.OUT_OF_REACH, (CANADA,), True),
        (CordGuard.HELD, (CANADA,), True),
        (CordGuard.BREAKAWAY, (CANADA,), False),
        (CordGuard.BREAKAWAY, (EUROPE,), True),
        (CordGuard.BREAKAWAY, (EUROPE, CANADA), False),
        (CordGuard.BREAKAWAY, (), False),
    ],
)
def test_cord_drawn_out(guard: CordGuard, markets: tuple[Market, ...], *, silent: bool) -> None:
    found = findings(shade(*markets, cord_guard=guard))
    assert ("safety.cord-drawn-out" not in found) is silent


def test_a_heavy_bar_keeps_the_cord_from_being_drawn_out() -> None:
    order = shade(CANADA)
    weights = order.weights
    assert weights is not None
    heavy = replace(weights, load=replace(weights.load, bar_n=900.0))
    assert "safety.cord-drawn-out" not in findings(replace(order, weights=heavy))


def test_holding_the_cord_does_not_shorten_a_stretch_that_is_too_long() -> None:
    order = with_head(shade(CANADA, cord_guard=CordGuard.HELD), "233")
    found = findings(order)["safety.cord-too-long"]
    offered = {change.text for each in found.remedies for change in each.changes}
    assert CordGuard.HELD.value not in offered
    assert {CordGuard.SHROUD.value, CordGuard.OUT_OF_REACH.value} <= offered


@pytest.mark.parametrize(
    ("children", "expected"),
    [
        (Children.YES, "safety.chain-near-children"),
        (Children.UNKNOWN, "safety.children"),
        (Children.NO, None),
    ],
)
def test_a_chain_and_children(children: Children, expected: str | None) -> None:
    about = {"safety.chain-near-children", "safety.children"}
    order = shade(STATES, lift=CLUTCH, children=children)
    assert set(findings(order)) & about == ({expected} if expected else set())
    assert not set(findings(shade(STATES, children=children))) & about


@pytest.mark.parametrize(
    ("device", "expected"),
    [
        (None, "safety.chain-device"),
        (ChainDevice.NONE, "safety.chain-loose"),
        (ChainDevice.TENSIONER, None),
        (ChainDevice.BREAKAWAY, None),
    ],
)
def test_a_chain_and_its_device(device: ChainDevice | None, expected: str | None) -> None:
    about = {"safety.chain-device", "safety.chain-loose"}
    order = shade(STATES, lift=CLUTCH, chain_device=device)
    assert set(findings(order)) & about == ({expected} if expected else set())


@pytest.mark.parametrize(
    ("device", "millimetres", "too_long"),
    [
        (ChainDevice.TENSIONER, "800", False),
        (ChainDevice.TENSIONER, "800.000001", True),
        (ChainDevice.BREAKAWAY, "1700", False),
        (ChainDevice.BREAKAWAY, "1700.000001", True),
    ],
)
def test_a_chain_and_its_length(device: ChainDevice, millimetres: str, *, too_long: bool) -> None:
    order = shade(
        EUROPE,
        lift=CLUTCH,
        floor_to_head="2300",
        chain_device=device,
        chain_loop_length=Length.mm(millimetres),
    )
    found = findings(order)
    assert ("safety.chain-too-long" in found) is too_long
    assert "safety.chain-length" not in found


def test_a_chain_too_long_is_shortened_to_its_limit_or_parted() -> None:
    order = shade(
        EUROPE,
        lift=CLUTCH,
        floor_to_head="2300",
        chain_device=ChainDevice.TENSIONER,
        chain_loop_length=Length.mm(1000),
    )
    found = findings(order)["safety.chain-too-long"]
    typed = {change.path: change.text for each in found.remedies for change in each.changes}
    assert typed["safety.chain_loop_length"] == "800 mm"
    assert typed["safety.chain_device"] == "breakaway"


def test_in_inches_a_chain_is_shortened_to_the_mark_below_its_limit() -> None:
    """90 in less 1500 mm are 30.94 in: 30 15/16 in keeps to it, 31 in would not."""
    order = shade(EUROPE, lift=CLUTCH, floor_to_head="2286", chain_device=ChainDevice.TENSIONER)
    found = findings(order)["safety.chain-length"]
    typed = [change.text for each in found.remedies for change in each.changes]
    assert typed == ["30 15/16 in"]


def test_a_chain_of_unsaid_length_is_asked_for_with_what_is_allowed() -> None:
    order = shade(AUSTRALIA, lift=CLUTCH, floor_to_head="2300", chain_device=ChainDevice.BREAKAWAY)
    found = findings(order)["safety.chain-length"]
    assert found.severity is Severity.ASK
    typed = [change.text for each in found.remedies for change in each.changes]
    assert typed == ["700 mm"]


@pytest.mark.parametrize(
    ("market", "head", "refused"),
    [
        (CANADA, "2300", True),
        (AUSTRALIA, "1899", True),
        (AUSTRALIA, "1900", False),
        (EUROPE, "900", False),
        (EUROPE, "899", True),
    ],
)
def test_a_market_that_leaves_no_useful_loop(market: Market, head: str, *, refused: bool) -> None:
    device = ChainDevice.BREAKAWAY
    order = shade(market, lift=CLUTCH, floor_to_head=head, chain_device=device)
    found = findings(order)
    assert ("safety.no-chain-allowed" in found) is refused
    assert ("safety.chain-length" in found) is not refused


@pytest.mark.parametrize("market", Market)
def test_the_label_is_asked_for_until_it_is_filled(market: Market) -> None:
    assert "safety.label" in findings(shade(market))
    assert "safety.label" not in findings(shade(market, **LABELLED))


def test_a_missing_label_is_a_listed_hazard_in_the_united_states() -> None:
    found = findings(shade(STATES, **(LABELLED | {"maker_town": " "})))["safety.label"]
    assert found.sentence == "The label still lacks maker's town."
    assert found.source is not None
    assert found.source.id == "16-cfr-1120"


def test_the_shop_is_always_told_to_read_and_to_test() -> None:
    found = findings(shade(**LABELLED))["safety.test"]
    assert found.severity is Severity.NOTE
    assert "certifies" in found.sentence
    told = [each.sentence.split(":")[0] for each in found.remedies]
    assert told == ["Canada", "United States", "Europe and United Kingdom", "Australia"]


def test_every_finding_has_a_way_out() -> None:
    for lift in (CLUTCH, shade().lift):
        for found in findings(with_head(shade(lift=lift), "300")).values():
            assert found.remedies, found.id


def test_no_lift_is_tried_before_a_finding_is_to_be_shown(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every trial of a remedy drafts all findings again, so drafting must cost nothing."""

    def refuse(*_: object) -> None:
        pytest.fail("a lift was tried")

    monkeypatch.setattr(chain_findings, "lift", refuse)
    order = shade(lift=CLUTCH, chain_device=ChainDevice.NONE)
    drafted = {draft.finding.id for draft in chain_findings.draft_chain_checks(order)}
    assert {"safety.children", "safety.no-chain-allowed"} <= drafted
