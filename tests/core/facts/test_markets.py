"""The strictest market sold into wins, and says that it does."""

from __future__ import annotations

from itertools import combinations

import pytest

from foldwright.core.facts.markets import (
    EDGE_DISTANCE,
    ROW_SPACING,
    Market,
    edge_distance_floor,
    row_spacing_cap,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.source import Status
from foldwright.core.why.telling import show_value, tell

SETS = [markets for size in range(1, len(Market) + 1) for markets in combinations(Market, size)]


def test_every_market_has_a_rule_or_says_that_none_was_found() -> None:
    assert set(ROW_SPACING) == set(EDGE_DISTANCE) == set(Market)
    for rules in (ROW_SPACING, EDGE_DISTANCE):
        for rule in rules.values():
            assert rule.source or "No rule" in rule.because
            assert (rule.status is Status.HOUSE) == rule.because.startswith("No ")


@pytest.mark.parametrize("markets", SETS)
def test_the_cap_satisfies_every_market_and_no_less(markets: tuple[Market, ...]) -> None:
    cap = row_spacing_cap(markets)
    assert cap.value == min(ROW_SPACING[market].value for market in markets)
    assert set(cap.inputs) == {ROW_SPACING[market] for market in markets}


@pytest.mark.parametrize("markets", SETS)
def test_the_floor_satisfies_every_market_and_no_more(markets: tuple[Market, ...]) -> None:
    floor = edge_distance_floor(markets)
    assert floor.value == max(EDGE_DISTANCE[market].value for market in markets)


def test_hearsay_of_a_rule_is_never_called_published() -> None:
    assert ROW_SPACING[Market.CANADA].status is Status.PUBLISHED
    assert ROW_SPACING[Market.EUROPE_AND_UK].status is Status.PRACTICE


def test_an_unknown_destination_means_all_markets() -> None:
    assert row_spacing_cap(()).value == row_spacing_cap(tuple(Market)).value


@pytest.mark.parametrize(
    ("markets", "value", "named"),
    [
        ((Market.CANADA,), Length.mm(220), "Canada"),
        ((Market.CANADA, Market.UNITED_STATES), Length.inches(8), "United States"),
        ((Market.UNITED_STATES, Market.EUROPE_AND_UK), Length.mm(200), "Europe"),
        ((Market.AUSTRALIA,), Length.mm(200), "Australia"),
        ((Market.AUSTRALIA, Market.EUROPE_AND_UK), Length.mm(200), "Europe"),
    ],
)
def test_the_governing_market_is_named(
    markets: tuple[Market, ...], value: Length, named: str
) -> None:
    cap = row_spacing_cap(markets)
    assert cap.value == value
    assert tell(cap, System.METRIC).startswith(named)


def test_a_single_market_is_compared_with_nobody() -> None:
    cap = row_spacing_cap((Market.CANADA,))
    assert tell(cap, System.METRIC) == "Canada is the only market sold into: 220 mm."


def test_the_other_markets_are_told_beside_the_strictest() -> None:
    cap = row_spacing_cap((Market.CANADA, Market.UNITED_STATES))
    assert tell(cap, System.METRIC) == (
        "United States is the strictest of the markets sold into: 203 mm against 220 mm."
    )


def test_what_is_practised_is_quoted_before_a_default_of_the_same_size() -> None:
    cap = row_spacing_cap((Market.AUSTRALIA, Market.EUROPE_AND_UK))
    assert cap.inputs[0].status is Status.PRACTICE
    assert cap.source is not None
    assert cap.source.id == "uk-inner-cord-page"


def test_a_cap_is_never_shown_as_more_than_it_is() -> None:
    assert show_value(row_spacing_cap((Market.CANADA,)), System.INCH) == "8 5/8 in"
