"""What no drawing can settle: the label's missing words, and the tests that the shop must do."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.markets import Market
from foldwright.core.safety.drafting import draft
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import LabelField, LabelText
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, by_hand

DUTIES = {
    Market.CANADA: "Canada: read the current regulations (sor-2019-97); pull the finished shade at"
    " every column with the force that they name, and at small parts.",
    Market.UNITED_STATES: "United States: read the current part on listed hazards (16-cfr-1120) and"
    " the edition of the standard that holds; do its tests on inner cords. The rule of 2022 on"
    " custom shades (16-cfr-1260) was vacated and is not in force.",
    Market.EUROPE_AND_UK: "Europe and United Kingdom: read the standard, which was not read here;"
    " hang its load on every loop.",
    Market.AUSTRALIA: "Australia: read the current text, and ask whether a later one has replaced"
    " it; pull at guides, and draw at every low cord.",
}


def draft_duties(order: SafetyOrder, labels: tuple[LabelText, ...]) -> Iterator[Draft[SafetyOrder]]:
    """Draft what the label still lacks, and what the shop itself must read and test.

    Takes: the order; the labels of its markets.

    Gives: one draft for the label where something is missing, and one for the tests.

    Source: sor-2019-97, ss. 10 to 13; 16-cfr-1120; common practice.
    """
    missing = _missing(labels)
    if missing:
        yield draft(
            Severity.ASK,
            "label",
            f"The label still lacks {_listed(missing)}.",
            ways=(by_hand("Type it under Safety; the label goes on before the shade goes out."),),
            stage=Stage.BENCH,
            source=_why_a_label(labels),
        )
    sold_into = order.markets or tuple(Market)
    yield draft(
        Severity.NOTE,
        "test",
        "Nothing here certifies the shade: the rules for children ask for the finished shade to be"
        " tested.",
        ways=tuple(by_hand(DUTIES[market]) for market in sold_into),
        stage=Stage.BENCH,
    )


def _missing(labels: tuple[LabelText, ...]) -> list[LabelField]:
    """Give each empty field once, though several labels lack it."""
    return list({each.path: each for label in labels for each in label.missing}.values())


def _listed(fields: list[LabelField]) -> str:
    *most, last = [each.name for each in fields]
    return f"{', '.join(most)} and {last}" if most else last


def _why_a_label(labels: tuple[LabelText, ...]) -> Source | None:
    markets = {label.market for label in labels}
    if Market.UNITED_STATES in markets:
        return Source(id="16-cfr-1120", clause="summary")
    return Source(id="sor-2019-97", clause="s. 13") if Market.CANADA in markets else None
