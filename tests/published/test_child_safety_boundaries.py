"""Every number of every rule on children, from both sides, and what a whole shade makes of it.

The numbers are those of the sources named in docs/sources.toml under each rule's own id; how well
each is known is the rule's own confidence. Sizes on either side of a limit are ours.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.core.check.sound import Order, found, ids, planned

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.safety.rule import Confidence, Force
from foldwright.core.safety.rules import RULES, RuleVerdict, rule_named, verdict
from foldwright.core.why.telling import fill

SOURCES = Path(__file__).parents[2] / "src" / "foldwright"
PUBLISHED = {  # rule: (just kept, just broken), lengths in millimetres; source beside each market
    # sor-2019-97, ss. 2 to 13
    "canada.free-cord": ("220", "220.001"),
    "canada.inner-cord": ("220", "220.001"),
    "canada.loop": ("440", "440.001"),
    "canada.chain-loop": ("440", "440.001"),
    "canada.joined-cords": ("220", "220.001"),
    "canada.small-parts": (90.0, 89.99),
    "canada.lead": (90.0, 90.01),
    "canada.signal-word": ("5", "4.999"),
    "canada.label": ("2.5", "2.499"),
    # 16-cfr-1260 (8 in); ansi-wcma-2022; ansi-wcma-2012, 4.5.3; the others by hearsay or memory
    "united-states.custom-cords": ("203.2", "203.201"),
    "united-states.cord-share-2018": (0.4, 0.4001),
    "united-states.short-cord": ("203.2", "203.201"),
    "united-states.retractable": ("304.8", "304.801"),
    "united-states.ring-spacing-2012": ("203.2", "203.201"),
    # en-13120-summary for the breakaway; en-loop-pages and uk-inner-cord-page, hearsay
    "europe.breakaway-height": ("600", "599.999"),
    "europe.breakaway-share": (0.6666, 0.6667),
    "europe.breakaway-load": (6.0, 6.01),
    "europe.breakaway-time": (5.0, 5.01),
    "europe.tensioner-height": ("1500", "1499.999"),
    "europe.tensioner-length": ("1000", "1000.001"),
    "europe.tensioner-tall": ("1500", "1499.999"),
    "europe.retractable": ("1500", "1499.999"),
    "europe.inner-cord": ("200", "200.001"),
    # au-corded-2014, s. 6(1)(a): less than 220 mm, not 220 mm itself
    "australia.loop": ("219.999", "220"),
    "australia.chain-loop": ("1600", "1599.999"),
    "australia.cord-guide": (70.0, 69.99),
    "australia.cleat": ("1600", "1599.999"),
}


def size(value: str | float) -> Length | float:
    return Length.mm(value) if isinstance(value, str) else value


def test_every_rule_with_a_number_has_its_two_sides_here() -> None:
    """Source: definition; the numbers stand above with their sources."""
    assert {rule.id for rule in RULES if rule.limit is not None} == set(PUBLISHED)


@pytest.mark.parametrize("name", PUBLISHED)
def test_each_number_holds_on_one_side_and_breaks_on_the_other(name: str) -> None:
    """Sources: sor-2019-97, 16-cfr-1260, ansi-wcma-2022, en-13120-summary, au-corded-2014."""
    kept, broken = (size(value) for value in PUBLISHED[name])
    assert rule_named(name).allows(kept)
    assert not rule_named(name).allows(broken)


@pytest.mark.parametrize("name", PUBLISHED)
def test_beyond_its_number_a_rule_is_broken_only_where_it_is_in_force_and_was_read(
    name: str,
) -> None:
    """Source: definition; a rumour about a rule is no rule."""
    rule = rule_named(name)
    said = verdict(rule, size(PUBLISHED[name][1]), tested=True)
    if not rule.standing.holds_on(None):
        assert said is RuleVerdict.DOES_NOT_APPLY
    elif rule.confidence in {Confidence.READ, Confidence.SECONDARY}:
        assert said is RuleVerdict.BREAKS
    else:
        assert said is RuleVerdict.CHECK_TEXT


def test_law_is_told_apart_from_what_is_voluntary_and_from_what_was_not_read() -> None:
    """Own reading of the sources: 16-cfr-1260 is a law that was vacated, EN standards are none."""
    laws = {rule.id for rule in RULES if rule.force is Force.LAW}
    assert {"canada.loop", "united-states.custom-cords", "australia.loop"} <= laws
    assert not any(name.startswith("europe.") for name in laws)
    assert rule_named("europe.inner-cord").confidence is Confidence.HEARSAY
    assert rule_named("united-states.retractable").confidence is Confidence.MEMORY


# On whole shades


def spaced(market: str, spacing_mm: str) -> ShadePlan:
    """Plan a shade whose rows lie just so far apart: one row, head and skirt take the rest."""
    head, skirt = Length.mm(100), Length.mm(40)
    drop = head + skirt + Length.mm(spacing_mm) * 3 / 2
    typed = {
        "asked.drop": f"{drop.in_millimetres} mm",
        "asked.given_by": "the client",
        "design.row_count": 1,
        "design.skirt": f"{skirt.in_millimetres} mm",
        "design.head_allowance": f"{head.in_millimetres} mm",
        "safety.cord_guard": "none",
    }
    return planned(Order(of="print", typed=typed, markets=(market,)).document)


@pytest.mark.parametrize(
    ("market", "within", "beyond"),
    [
        ("Canada", "220", "221"),  # sor-2019-97, s. 6
        ("United States", "203.2", "204"),  # ansi-wcma-2012, 4.5.3: 8 in, kept as a cap
        ("Europe and United Kingdom", "200", "201"),  # uk-inner-cord-page, hearsay
    ],
)
def test_rows_at_the_cap_of_a_market_pass_and_a_millimetre_more_stops(
    market: str, within: str, beyond: str
) -> None:
    """Sources: sor-2019-97, s. 6; ansi-wcma-2012, 4.5.3; uk-inner-cord-page."""
    assert "design.rows-too-far-apart" not in ids(spaced(market, within))
    stopped = found(spaced(market, beyond), "design.rows-too-far-apart")
    assert stopped.forbids


@pytest.mark.parametrize(
    ("edge", "stopped"), [("2 in", False), ("1.99 in", True), ("50 mm", True), ("51 mm", False)]
)
def test_the_outer_column_stands_two_inches_in_for_the_united_states(
    edge: str, *, stopped: bool
) -> None:
    """Source: ansi-wcma-2012, 4.5.3.2: 2 in from a side cord to the edge."""
    plan = planned(Order(of="spring", typed={"design.edge_distance": edge}).document)
    assert ("design.edge-too-near" in ids(plan)) is stopped


@pytest.mark.parametrize(
    ("device", "market", "kept", "beyond"),
    [
        # The sound shade hangs 82 in above the floor, its top a head's clearance below: 2082.8 mm.
        ("fixed tensioner", "Europe and United Kingdom", "582 mm", "583 mm"),  # to 1500 mm
        ("breakaway", "Europe and United Kingdom", "1482 mm", "1483 mm"),  # to 600 mm
        ("breakaway", "Australia", "482 mm", "483 mm"),  # to 1600 mm
    ],
)
def test_a_chain_ends_at_the_height_of_its_market(
    device: str, market: str, kept: str, beyond: str
) -> None:
    """Sources: en-loop-pages (hearsay), en-13120-summary, au-corded-2014, s. 6(1)(a)."""

    def too_long(length: str) -> bool:
        typed = {"safety.chain_device": device, "safety.chain_loop_length": length}
        plan = planned(Order(of="chain", typed=typed, markets=(market,)).document)
        return "safety.chain-too-long" in ids(plan)

    assert not too_long(kept)
    assert too_long(beyond)


EVERYWHERE = ("Canada", "United States", "Europe and United Kingdom", "Australia")


def test_of_several_markets_the_strictest_stops_the_shade_and_is_named() -> None:
    """Sources: uk-inner-cord-page, 200 mm, the least of all caps on an inner cord."""
    over = {"design.row_count": 5, "safety.cord_guard": "none"}
    plan = planned(Order(of="spring", typed=over, markets=EVERYWHERE).document)
    stop = found(plan, "design.rows-too-far-apart")
    assert stop.figures[1].value == Length.mm(200)
    assert "Europe" in stop.figures[1].because
    assert plan.safety is not None
    governing = {each.subject.value: each.rule for each in plan.safety.governing}
    assert governing["inner cord between contact points"] == "europe.inner-cord"
    assert governing["loop that a cord can form"] == "australia.loop"


def test_a_cordless_lift_comes_first_where_children_can_be_and_a_chain_not_at_all() -> None:
    """Sources: 16-cfr-1260 and en-13120-summary, for where small children can be."""
    for children in ("yes", "don't know", "no"):
        typed = {"lift.kind": None, "safety.children": children}
        plan = planned(Order(of="spring", typed=typed).document)
        kinds = [
            change.text for remedy in found(plan, "lift.kind").remedies for change in remedy.changes
        ]
        assert kinds[0] == "spring"
        assert ("clutch" in kinds) is (children != "yes")


@pytest.mark.parametrize(
    ("made_on", "law_holds"), [("2021-04-30", False), ("2021-05-01", True), (None, True)]
)
def test_the_day_of_making_decides_which_rules_hold(
    made_on: str | None, *, law_holds: bool
) -> None:
    """Source: sor-2019-97, in force from 1 May 2021."""
    typed = {"safety.made_on": made_on, "safety.cord_guard": "none"}
    plan = planned(Order(of="spring", typed=typed, markets=("Canada",)).document)
    assert plan.safety is not None
    said = {line.rule.id: line.verdict for line in plan.safety.lines}
    applies = said["canada.inner-cord"] is not RuleVerdict.DOES_NOT_APPLY
    assert applies is law_holds


def test_a_vacated_and_a_superseded_rule_are_shown_with_their_dates() -> None:
    """Sources: 16-cfr-1260, vacated 12 September 2023; ansi-wcma-2022, from 1 June 2024."""
    plan = planned(Order(of="chain").document)
    assert plan.safety is not None
    lines = {line.rule.id: line for line in plan.safety.lines}
    vacated = lines["united-states.custom-cords"]
    superseded = lines["united-states.cord-share-2018"]
    for line, words in ((vacated, "vacated 2023-09-12"), (superseded, "superseded on 2024-06-01")):
        assert line.speaks
        assert line.verdict is RuleVerdict.DOES_NOT_APPLY
        assert words in fill(line.sentence, line.figures, System.INCH)


CLAIM = re.compile(r"(?i)\b(certif\w*|complian\w*|complies|approved|guarantee\w*|child[- ]?safe)\b")
DENIED = re.compile(r"(?i)nothing|not certify|none of|as it is received|the shade complies$")
ENDINGS = ("py", "html", "typ", "toml")


def claims(path: Path) -> list[str]:
    lines = (line.strip().strip('"') for line in path.read_text(encoding="utf-8").splitlines())
    return [line for line in lines if CLAIM.search(line) and not DENIED.search(line)]


def test_no_word_of_the_tool_claims_that_a_shade_is_certified() -> None:
    """Source: definition; a tool that reckons tests nothing."""
    files = [path for ending in ENDINGS for path in SOURCES.rglob(f"*.{ending}")]
    assert len(files) > 100
    assert {path.name: claims(path) for path in files if claims(path)} == {}
