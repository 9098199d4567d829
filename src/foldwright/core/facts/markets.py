"""What each market asks of cords behind a soft shade; the strictest market sold into wins.

Nothing here is legal advice. Rules change: the text of the rule decides, not this file.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, fact
from foldwright.core.why.source import Source, Status


class Market(Enum):
    """Where the shade will hang."""

    CANADA = "Canada"
    UNITED_STATES = "United States"
    EUROPE_AND_UK = "Europe and United Kingdom"
    AUSTRALIA = "Australia"


Rules = dict[Market, Figure[Length]]

ROW_SPACING: Rules = {
    Market.CANADA: fact(
        "row spacing allowed in Canada",
        Length.mm(220),
        Unit.LENGTH,
        "Reachable cord between two contact points may be at most 22 cm under a pull of 35 N;"
        " slack counts, so the shade itself must be pulled to know.",
        Status.PUBLISHED,
        source=Source(id="sor-2019-97", clause="s. 6"),
        rounding=Rounding.MUST_FIT,  # a limit is never shown as more than it is
    ),
    Market.UNITED_STATES: fact(
        "row spacing allowed in the United States",
        Length.inches(8),
        Unit.LENGTH,
        "The older voluntary wording allows 8 in between the rings of an accessible inner cord;"
        " later editions were not read, and hazardous inner cords are a listed hazard.",
        Status.PUBLISHED,
        source=Source(id="ansi-wcma-2012", clause="4.5.3"),
        rounding=Rounding.MUST_FIT,
    ),
    Market.EUROPE_AND_UK: fact(
        "row spacing allowed in Europe and the United Kingdom",
        Length.mm(200),
        Unit.LENGTH,
        "Where cord is held more than 200 mm apart it needs a breakaway, says a trade page on"
        " the European standard, which itself was not read.",
        Status.PRACTICE,
        source=Source(id="uk-inner-cord-page"),
        rounding=Rounding.MUST_FIT,
    ),
    Market.AUSTRALIA: fact(
        "row spacing used for Australia",
        Length.mm(200),
        Unit.LENGTH,
        "No Australian rule on row spacing was found (a loose cord may form no loop of 220 mm"
        " below 1600 mm); the strictest of the other markets is used.",
        Status.HOUSE,
        source=Source(id="au-corded-2014", clause="s. 6(1)(a)"),
        rounding=Rounding.MUST_FIT,
    ),
}

EDGE_DISTANCE: Rules = {
    Market.UNITED_STATES: fact(
        "edge distance asked in the United States",
        Length.inches(2),
        Unit.LENGTH,
        "The older voluntary wording asks at least 2 in between an accessible side cord and the"
        " edge, unless it has a release.",
        Status.PUBLISHED,
        source=Source(id="ansi-wcma-2012", clause="4.5.3.2"),
    ),
    **{
        market: fact(
            f"edge distance used for {market.value}",
            Length.inches(2),
            Unit.LENGTH,
            f"No rule on the edge distance was found for {market.value}; the 2 in of the older"
            " United States wording are kept.",
            Status.HOUSE,
        )
        for market in (Market.CANADA, Market.EUROPE_AND_UK, Market.AUSTRALIA)
    },
}


def row_spacing_cap(markets: Sequence[Market]) -> Figure[Length]:
    """Give the largest row spacing that every market sold into allows.

    Takes: the markets; none means all, because the destination is unknown.

    Gives: the strictest cap, with the market that asks for it in its sentence.

    Holds for: reachable cord through rings, shades raised by cords at the back.

    Source: sor-2019-97, s. 6; ansi-wcma-2012, 4.5.3; uk-inner-cord-page; au-corded-2014.

    >>> row_spacing_cap((Market.CANADA, Market.UNITED_STATES)).value == Length.inches(8)
    True
    """
    rules = _rules_of(markets, ROW_SPACING)
    return _strictest("largest row spacing", rules, min(rule.value for rule in rules.values()))


def counts_to_the_tube(cap: Figure[Length]) -> bool:
    """Tell whether a cap on row spacing also holds from the top row to the tube.

    Takes: the cap, as `row_spacing_cap` gives it.

    Gives: no where the wording of the United States alone is behind it, which speaks of rings.

    Source: ansi-wcma-2012, 4.5.3; sor-2019-97, s. 6.

    >>> counts_to_the_tube(row_spacing_cap((Market.UNITED_STATES,)))
    False
    """
    rules = (rule for market, rule in ROW_SPACING.items() if market is not Market.UNITED_STATES)
    return any(rule in cap.inputs for rule in rules)


def edge_distance_floor(markets: Sequence[Market]) -> Figure[Length]:
    """Give the least distance from a side cord to the edge that satisfies every market.

    Takes: the markets; none means all, because the destination is unknown.

    Gives: the strictest floor, with the market that asks for it in its sentence.

    Source: ansi-wcma-2012, 4.5.3.2.

    >>> edge_distance_floor((Market.CANADA,)).value == Length.inches(2)
    True
    """
    rules = _rules_of(markets, EDGE_DISTANCE)
    return _strictest("least edge distance", rules, max(rule.value for rule in rules.values()))


def _rules_of(markets: Sequence[Market], rules: Rules) -> Rules:
    return {market: rules[market] for market in (markets or tuple(Market))}


def _strictest(name: str, rules: Rules, value: Length) -> Figure[Length]:
    """Pick the rule with the strictest value, and among equals the one that is best known."""
    ties = [market for market, rule in rules.items() if rule.value == value]
    governing = min(ties, key=lambda market: list(Status).index(rules[market].status))
    others = [rule for market, rule in rules.items() if market is not governing]
    return derived(
        name,
        value,
        Unit.LENGTH,
        _sentence(governing, len(others)),
        rules[governing],
        *others,
        rounding=rules[governing].rounding,
        source=rules[governing].source,
    )


def _sentence(governing: Market, others: int) -> str:
    if not others:
        return f"{governing.value} is the only market sold into: {{0}}."
    compared = " and ".join(f"{{{number}}}" for number in range(1, others + 1))
    return f"{governing.value} is the strictest of the markets sold into: {{0}} against {compared}."
