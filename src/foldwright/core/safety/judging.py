"""Judge one shade by every rule of its markets, a line for each."""

from __future__ import annotations

from foldwright.core.safety.judging_chain import CHAINS, chain_line
from foldwright.core.safety.judging_cords import BEHIND, cord_line
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import InnerCord, RuleLine
from foldwright.core.safety.rule import Rule, Subject
from foldwright.core.safety.rules import RuleVerdict, rules_for, verdict_where

HANGING_CORDS = (
    Subject.OPERATING_CORD,
    Subject.JOINED_CORDS,
    Subject.RETRACTABLE,
    Subject.CLEAT,
)


def judge_lines(order: SafetyOrder, inner: InnerCord) -> tuple[RuleLine, ...]:
    """Give a line for every rule of the markets sold into, those not in force among them."""
    return tuple(judge_line(order, inner, rule) for rule in rules_for(order.markets))


def judge_line(order: SafetyOrder, inner: InnerCord, rule: Rule) -> RuleLine:
    """Judge a shade by one rule."""
    if not rule.standing.holds_on(order.made_on):
        made = f"on {order.made_on}" if order.made_on else "from now on"
        return _does_not_apply(rule, f"For a shade made {made}: {rule.standing.words}.")
    if rule.subject in HANGING_CORDS:
        return _hanging_cord(order, rule)
    if rule.subject in CHAINS:
        return chain_line(order, rule)
    if rule.subject in BEHIND:
        return cord_line(order, inner, rule)
    if rule.subject is Subject.SHROUD and not order.is_guarded:
        return _does_not_apply(rule, "The cords behind the shade are not kept out of reach.")
    return _by_the_shop(order, rule)


def _does_not_apply(rule: Rule, sentence: str) -> RuleLine:
    return RuleLine(rule=rule, verdict=RuleVerdict.DOES_NOT_APPLY, sentence=sentence)


def _hanging_cord(order: SafetyOrder, rule: Rule) -> RuleLine:
    if order.lift.kind is None:
        sentence = "What turns the tube is not chosen yet, so whether a cord works it is open."
        return RuleLine(rule=rule, verdict=RuleVerdict.CHECK_TEXT, sentence=sentence)
    if order.has_chain:
        return _does_not_apply(rule, "It is worked by a chain loop, which is judged as such.")
    sentence = f"Raised by a {order.lift.kind.value}, no cord works it; the cords behind it remain."
    return _does_not_apply(rule, sentence)


def _by_the_shop(order: SafetyOrder, rule: Rule) -> RuleLine:
    """Leave to the shop what no drawing shows."""
    if rule.subject is Subject.WHOLE:
        sentence = "Its clauses are not known here."
        return RuleLine(rule=rule, verdict=RuleVerdict.CHECK_TEXT, sentence=sentence)
    verdict = verdict_where(rule, order.made_on, within=None)
    return RuleLine(rule=rule, verdict=verdict, sentence="Only the finished shade can show it.")
