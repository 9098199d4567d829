"""Judge the cords behind a shade: what their spacing shows, what only a pull can show."""

from __future__ import annotations

from foldwright.core.facts.markets import Market
from foldwright.core.safety.australia import SAFE_HEIGHT
from foldwright.core.safety.choices import CordGuard
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import InnerCord, L, RuleLine
from foldwright.core.safety.rule import Measure, Rule, Subject
from foldwright.core.safety.rules import RuleVerdict, verdict_where

BEHIND = (Subject.INNER_CORD, Subject.LOOP)


def cord_line(order: SafetyOrder, inner: InnerCord, rule: Rule) -> RuleLine:
    """Judge the cords behind the shade by one rule."""
    bottom = order.bottom_above_floor
    if rule.market is Market.AUSTRALIA and bottom and bottom.value > SAFE_HEIGHT.value:
        return RuleLine(
            rule=rule,
            verdict=RuleVerdict.DOES_NOT_APPLY,
            sentence="Even fully down its bottom edge is {0} above the floor.",
            found=bottom,
        )
    if order.is_guarded or order.safety.cord_guard is CordGuard.BREAKAWAY:
        return _guarded(order, rule)
    return _open(order, inner, rule)


def _guarded(order: SafetyOrder, rule: Rule) -> RuleLine:
    guard = order.safety.cord_guard.value
    sentence = f"The cords are guarded ({guard}); show by the rule's own test that it suffices."
    verdict = verdict_where(rule, order.made_on, within=None)
    return RuleLine(rule=rule, verdict=verdict, sentence=sentence)


def _open(order: SafetyOrder, inner: InnerCord, rule: Rule) -> RuleLine:
    """Let the taut cord break a rule, and nothing keep it: slack and a pull come on top."""
    breaks = rule.measure is Measure.SPAN and not rule.allows(inner.stretch.value)
    verdict = verdict_where(rule, order.made_on, within=False if breaks else None)
    if breaks or rule.limit is None:
        found: L | None = inner.stretch
        sentence = "Taut, {0} of cord lies between two contact points."
    else:
        found = inner.span if rule.measure is Measure.SPAN else inner.loop
        sentence = _reckoned(found, rule)
    return RuleLine(rule=rule, verdict=verdict, sentence=sentence, found=found, limit=rule.limit)


def _reckoned(found: L | None, rule: Rule) -> str:
    if found is None:
        return "How much a pull draws out is open until the shade is weighed."
    within = "within" if rule.allows(found.value) else "beyond"
    what = "of cord" if rule.measure is Measure.SPAN else "round"
    return f"By reckoning a child's pull makes it {{0}} {what}, {within} {{1}}; a test decides."
