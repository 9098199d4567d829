"""One shade for the tests beside, with what the test is about put in."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import Market
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.opening import Mount, MountPlace, Opening
from foldwright.core.measure.site import Site
from foldwright.core.quantity.length import Length
from foldwright.core.safety.choices import SafetyChoices
from foldwright.core.safety.example import ORDER
from foldwright.core.safety.inner_cord import inner_cord
from foldwright.core.safety.judging import judge_lines
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import RuleLine
from foldwright.core.safety.rules import RuleVerdict
from foldwright.core.safety.safe_for import safe_for
from foldwright.core.why.finding import Finding

CLUTCH = LiftChoices(kind=LiftKind.CLUTCH)


def shade(
    *markets: Market,
    lift: LiftChoices = ORDER.lift,
    floor_to_head: str | None = None,
    place: MountPlace = MountPlace.INSIDE,
    **safety: Any,
) -> SafetyOrder:
    """Give the example, 1600 mm long with rows 200 mm apart, with what is said here."""
    head = Length.mm(floor_to_head) if floor_to_head else None
    site = Site(
        opening=Opening(floor_to_head=head),
        mount=Mount(place=place),
        asked=ORDER.site.asked,
        habits=house_habits(),
    )
    return replace(ORDER, site=site, lift=lift, markets=markets, safety=SafetyChoices(**safety))


def verdicts(order: SafetyOrder) -> dict[str, RuleVerdict]:
    return {line.rule.id: line.verdict for line in judge_lines(order, inner_cord(order))}


def line(order: SafetyOrder, rule: str) -> RuleLine:
    lines = judge_lines(order, inner_cord(order))
    return next(each for each in lines if each.rule.id == rule)


def findings(order: SafetyOrder) -> dict[str, Finding]:
    return {finding.id: finding for finding in safe_for(order).findings}
