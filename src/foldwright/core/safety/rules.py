"""All the rules that are known here, by market, and how one of them judges a figure."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from enum import Enum

from foldwright.core.facts.markets import Market
from foldwright.core.safety.australia import AUSTRALIA
from foldwright.core.safety.canada import CANADA
from foldwright.core.safety.europe import EUROPE_AND_UK
from foldwright.core.safety.rule import Found, Rule
from foldwright.core.safety.united_states import UNITED_STATES

RULES: tuple[Rule, ...] = (*CANADA, *UNITED_STATES, *EUROPE_AND_UK, *AUSTRALIA)


class RuleVerdict(Enum):
    """What can be said of a shade under one rule; none of these words certifies anything."""

    BREAKS = "breaks"
    MUST_BE_TESTED = "must be tested"
    CHECK_TEXT = "check the text"
    KEEPS = "keeps"
    DOES_NOT_APPLY = "does not apply"


def rules_for(markets: Sequence[Market]) -> tuple[Rule, ...]:
    """Give the rules of the markets sold into.

    Takes: the markets; none means all, because the destination is unknown.

    Gives: every rule of those markets, those included that are not in force.

    Source: sor-2019-97; 16-cfr-1120; 16-cfr-1260; ansi-wcma-2022; en-13120-summary;
    au-corded-2014.

    >>> {rule.market.value for rule in rules_for((Market.CANADA,))}
    {'Canada'}
    """
    sold_into = markets or tuple(Market)
    return tuple(rule for rule in RULES if rule.market in sold_into)


def rule_named(name: str) -> Rule:
    """Give the rule with an id.

    Takes: the id, such as canada.loop.

    Gives: the rule.

    Raises: KeyError where no rule has it.

    Source: derived here.

    >>> rule_named("canada.loop").source.clause
    's. 7'
    """
    return {rule.id: rule for rule in RULES}[name]


def verdict(
    rule: Rule, found: Found | None, made_on: date | None = None, *, tested: bool = False
) -> RuleVerdict:
    """Say what can be said of a figure under a rule.

    Takes: the rule; what was found, or None where only the shop can find it; the day of making,
    None for a day still to come; whether the figure was found by the test that the rule demands.

    Gives: the verdict. A rule known by hearsay or memory never passes anything, and a limit that
    holds under a pull passes only what was pulled.

    Source: derived here; each rule names its own source.

    >>> from foldwright.core.quantity.length import Length
    >>> verdict(rule_named("canada.loop"), Length.mm(440), tested=True).value
    'keeps'
    >>> verdict(rule_named("canada.loop"), Length.mm(440)).value
    'must be tested'
    """
    within = None if found is None or rule.limit is None else rule.allows(found)
    return verdict_where(rule, made_on, within=within, tested=tested)


def verdict_where(
    rule: Rule, made_on: date | None, *, within: bool | None, tested: bool = False
) -> RuleVerdict:
    """Say what can be said of a shade that lies within a rule's limit, or beyond it; None: unknown.

    What lies beyond its limit breaks the rule even untested; only a test lets it keep a limit
    that holds under a pull.
    """
    if not rule.standing.holds_on(made_on):
        return RuleVerdict.DOES_NOT_APPLY
    if not rule.confidence.can_pass:
        return RuleVerdict.CHECK_TEXT
    if within is None:
        return RuleVerdict.MUST_BE_TESTED
    if not within:
        return RuleVerdict.BREAKS
    needs_test = rule.pull is not None and not tested
    return RuleVerdict.MUST_BE_TESTED if needs_test else RuleVerdict.KEEPS
