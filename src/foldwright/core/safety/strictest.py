"""Several markets at once: which rule is the strictest on each thing that is measured."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.safety.report import Governing
from foldwright.core.safety.rule import Comparison, Measure, Rule, Subject
from foldwright.core.why.figure import Figure
from foldwright.core.why.making import derived

Numbered = tuple[Rule, Figure[Any]]


def governing_rules(rules: Iterable[Rule], made_on: date | None) -> tuple[Governing, ...]:
    """Give the strictest rule in force on each subject and measure that has a number.

    Takes: the rules of the markets sold into; the day of making.

    Gives: one line for each subject and measure, which names its market and what it was compared
    with; of two equal numbers the one that refuses the number itself is the stricter.

    Source: derived here; each rule names its own source.

    >>> from foldwright.core.safety.rules import RULES
    >>> [each.rule for each in governing_rules(RULES, None) if each.subject is Subject.LOOP]
    ['australia.loop']
    """
    groups: dict[tuple[Subject, Measure], list[Numbered]] = {}
    for rule in rules:
        if rule.limit is not None and rule.measure and rule.standing.holds_on(made_on):
            groups.setdefault((rule.subject, rule.measure), []).append((rule, rule.limit))
    return tuple(_governing(*alike, group) for alike, group in groups.items())


def _governing(subject: Subject, measure: Measure, group: list[Numbered]) -> Governing:
    ordered = sorted(group, key=_strictness)
    rule, limit = ordered[0]
    figure = derived(
        f"strictest limit on a {subject.value}",
        limit.value,
        limit.unit,
        "; ".join(_told(number, each) for number, (each, _) in enumerate(ordered)) + ".",
        *(figure for _, figure in ordered),
        rounding=limit.rounding,
        source=rule.source,
    )
    return Governing(subject=subject, measure=measure, rule=rule.id, limit=figure)


def _strictness(numbered: Numbered) -> tuple[float, bool]:
    rule, limit = numbered
    value = limit.value.nanometres if isinstance(limit.value, Length) else limit.value
    signed = -value if rule.comparison is Comparison.AT_LEAST else value
    return signed, rule.comparison is not Comparison.UNDER


def _told(number: int, rule: Rule) -> str:
    asks = rule.comparison.value if rule.comparison else "about"
    return f"{rule.market.value} asks for {asks} {{{number}}} ({rule.confidence.value})"
