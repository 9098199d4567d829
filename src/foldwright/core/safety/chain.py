"""How far a chain loop may hang below the headrail, rule by rule; the strictest wins."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from typing import Any

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.safety.choices import ChainDevice
from foldwright.core.safety.report import L
from foldwright.core.safety.rule import Measure, Rule, Subject
from foldwright.core.safety.rules import rules_for
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

SUBJECTS = {
    Subject.CHAIN: (None, *ChainDevice),
    Subject.CHAIN_TENSIONER: (ChainDevice.TENSIONER,),
    Subject.CHAIN_BREAKAWAY: (ChainDevice.BREAKAWAY,),
}


@dataclass(frozen=True, kw_only=True, slots=True)
class LoopLimit:
    """One rule, and how long a loop it allows on this shade."""

    rule: Rule
    most: L


def governs(rule: Rule, device: ChainDevice | None) -> bool:
    """Tell whether a rule is about a chain with a device; None is not said yet.

    A guide excuses an Australian loop from its height, if it keeps the loop taut.
    """
    if rule.id == "australia.chain-loop" and device in {None, ChainDevice.TENSIONER}:
        return False
    return device in SUBJECTS.get(rule.subject, ())


def loop_limits(
    device: ChainDevice | None,
    top: L | None,
    drop: L,
    markets: Sequence[Market],
    made_on: date | None = None,
) -> tuple[LoopLimit, ...]:
    """Give how long a loop each rule in force allows, where it can be reckoned."""
    ruling = (rule for rule in rules_for(markets) if governs(rule, device))
    return tuple(_limits((rule for rule in ruling if rule.standing.holds_on(made_on)), top, drop))


def greatest_loop_length(
    device: ChainDevice | None,
    top: L | None,
    drop: L,
    markets: Sequence[Market],
    made_on: date | None = None,
) -> L | None:
    """Give how far a chain loop may hang below the headrail in every market sold into.

    Takes: the device that secures the loop, None where it is not said; the height of the
    shade's top above the floor, None where it is not known; the shade's drop; the markets, none
    for all; the day of making.

    Gives: the strictest length, with its rule in its sentence; at or below nothing where no
    loop can hang; None where no rule gives a number.

    Holds for: a loop that hangs straight from the headrail.

    Source: en-13120-summary and en-loop-pages for Europe; au-corded-2014; sor-2019-97, s. 7.

    >>> from foldwright.core.why.making import measured
    >>> top, drop = measured("top", Length.mm(2300)), measured("drop", Length.mm(1500))
    >>> europe = (Market.EUROPE_AND_UK,)
    >>> greatest_loop_length(ChainDevice.TENSIONER, top, drop, europe).value.in_millimetres
    800.0
    """
    limits = loop_limits(device, top, drop, markets, made_on)
    if not limits:
        return None
    strictest = min(limits, key=lambda limit: limit.most.value)
    return derived(
        "greatest length of the chain loop",
        strictest.most.value,
        Unit.LENGTH,
        f"{strictest.rule.market.value} allows the least: {{0}}"
        f" ({strictest.rule.confidence.value}).",
        strictest.most,
        rounding=Rounding.MUST_FIT,
        source=strictest.rule.source,
    )


def _limits(rules: Iterator[Rule], top: L | None, drop: L) -> Iterator[LoopLimit]:
    for rule in rules:
        most = _most(rule, top, drop)
        if most is not None:
            yield LoopLimit(rule=rule, most=most)


def _most(rule: Rule, top: L | None, drop: L) -> L | None:
    """Turn a rule's own limit into the length of a loop, where its case is this shade's."""
    if rule.limit is None or rule.measure is None:
        return None
    if rule.measure is Measure.LOOP:
        return _made(rule, rule.limit.value / 2, "Half the way round, {0}: down and up again.")
    if rule.measure is Measure.CHAIN_ABOVE_FLOOR:
        return top and _made(rule, top.value - rule.limit.value, "The top {1} less {0}.", top)
    return _by_shade_height(rule, rule.limit, drop) if top is None else None


def _by_shade_height(rule: Rule, limit: Figure[Any], drop: L) -> L | None:
    """Take the rules for a window whose height above the floor is not known."""
    if rule.measure is Measure.CHAIN_SHARE:
        share = Fraction(limit.value).limit_denominator(1000)
        return _made(rule, drop.value * share, "{0} of the shade's height {1}.", drop)
    if rule.measure is Measure.CHAIN_LENGTH and not _is_tall(rule, drop):
        return _made(rule, limit.value, "{0} on a shade {1} high, which is not tall.", drop)
    if rule.measure is Measure.CHAIN_SHORTER_BY and _is_tall(rule, drop):
        return _made(rule, drop.value - limit.value, "The shade's height {1} less {0}.", drop)
    return None


def _is_tall(rule: Rule, drop: L) -> bool:
    """Tell whether a shade is higher than the figure beside the rule's limit."""
    return any(drop.value > tall.value for tall in rule.others)


def _made(rule: Rule, value: Length, because: str, *inputs: L) -> L:
    return derived(
        "length of a chain loop by this rule",
        value,
        Unit.LENGTH,
        because,
        *rule.figures[:1],
        *inputs,
        rounding=Rounding.MUST_FIT,
        source=rule.source,
    )
