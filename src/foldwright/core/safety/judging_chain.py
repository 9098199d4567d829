"""Judge a chain loop by the rules about chains."""

from __future__ import annotations

from foldwright.core.facts.cords import LEAST_USEFUL_LOOP
from foldwright.core.safety.chain import governs, loop_limits
from foldwright.core.safety.choices import ChainDevice
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import L, RuleLine
from foldwright.core.safety.rule import Rule, Subject
from foldwright.core.safety.rules import RuleVerdict, verdict_where
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import chosen

CHAINS = (Subject.CHAIN, Subject.CHAIN_TENSIONER, Subject.CHAIN_BREAKAWAY)


def loop_length(order: SafetyOrder) -> L | None:
    """Give how far the chain loop hangs, where it is said."""
    typed = order.safety.chain_loop_length
    return None if typed is None else chosen("length of the chain loop", typed, Unit.LENGTH)


def chain_line(order: SafetyOrder, rule: Rule) -> RuleLine:
    """Judge the chain loop by one rule."""
    device = order.safety.chain_device
    if not order.has_chain:
        return _does_not_apply(rule, "No chain works it.")
    if device is None and rule.subject is not Subject.CHAIN:
        sentence = "Whether the loop has a fixed tensioner or a breakaway is not said yet."
        return RuleLine(rule=rule, verdict=RuleVerdict.CHECK_TEXT, sentence=sentence)
    if not governs(rule, device):
        said = device.value if device else "not said yet"
        return _does_not_apply(rule, f"The chain's device: {said}.")
    return _measured(order, rule, device)


def _does_not_apply(rule: Rule, sentence: str) -> RuleLine:
    return RuleLine(rule=rule, verdict=RuleVerdict.DOES_NOT_APPLY, sentence=sentence)


def _measured(order: SafetyOrder, rule: Rule, device: ChainDevice | None) -> RuleLine:
    """Hold the loop against the length that the rule allows on this shade."""
    found, most = loop_length(order), _allowed(order, rule, device)
    if most is not None and most.value < LEAST_USEFUL_LOOP.value:
        verdict = verdict_where(rule, order.made_on, within=False)
        sentence = "At most {0} is allowed on this shade; less than {1} cannot be worked."
        return RuleLine(
            rule=rule, verdict=verdict, sentence=sentence, found=most, limit=LEAST_USEFUL_LOOP
        )
    if found is None or most is None:
        verdict = verdict_where(rule, order.made_on, within=None)
        return RuleLine(rule=rule, verdict=verdict, sentence="Only the finished loop can show it.")
    return RuleLine(
        rule=rule,
        verdict=verdict_where(rule, order.made_on, within=found.value <= most.value),
        sentence="The loop hangs {0}; at most {1} is allowed on this shade.",
        found=found,
        limit=most,
    )


def _allowed(order: SafetyOrder, rule: Rule, device: ChainDevice | None) -> L | None:
    limits = loop_limits(
        device, order.top_above_floor, order.size.drop, order.markets, order.made_on
    )
    return next((each.most for each in limits if each.rule.id == rule.id), None)
