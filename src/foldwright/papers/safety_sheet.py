"""The child safety sheet: every rule with its verdict, the labels, the tests, the cautions."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.lift.choices import LiftKind
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import cautions
from foldwright.core.safety.report import Governing, LabelText, RuleLine, SafetyReport
from foldwright.core.safety.rules import RuleVerdict
from foldwright.core.why.telling import cite, show
from foldwright.papers.header import Header, Paper
from foldwright.papers.heading import shared
from foldwright.papers.runs import runs
from foldwright.papers.typesetting import SMALLER_WORDS_PT, WORDS_PT, lettered, typeset

TITLE = "Child safety and label"
TEMPLATE = "safety.typ"
TESTS, MAINS = "safety.test", "lift.motor-mains"
BY_LIFT = {LiftKind.SPRING: cautions.WOUND_SPRING, LiftKind.CLUTCH: cautions.CHAIN}


def safety_sheet(plan: ShadePlan, header: Header, paper: Paper, system: System) -> bytes:
    """Print what the rules on children say of a shade, what its label says, and what is to do.

    Takes: the plan, with size and safety report; the header; the paper; the reader's system.

    Gives: a tagged PDF; it is one page for one market, and may be two for all.

    Raises: ValueError when the shade has no finished size or no safety report yet.

    Source: common practice; the rules name their own sources.
    """
    if plan.safety is None:
        message = f"shade {plan.spec.tag} has no layout to judge yet: see its findings"
        raise ValueError(message)
    report = plan.safety
    data = shared(plan, header, paper, system, TITLE) | {
        "verdict": _verdict(report),
        "markets": list(_markets(report, system)),
        "strictest": [_strictest(each, report, system) for each in _told(report)],
        "labels": [_label(label, system) for label in report.labels],
        "tests": _tests(plan, system),
        "cautions": list(_cautions(plan)),
    }
    return typeset(TEMPLATE, _drafts(data), header.printed_at)


def _drafts(data: dict[str, Any]) -> Iterator[dict[str, Any]]:
    for size in (WORDS_PT, *SMALLER_WORDS_PT):
        yield lettered(data, size)


def _speaking(report: SafetyReport) -> list[RuleLine]:
    return [line for line in report.lines if line.speaks]


def _verdict(report: SafetyReport) -> list[list[str]]:
    """Count the rules by what can be said of the shade under them, the worst first."""
    counted = [line.verdict for line in _speaking(report)]
    return [
        [verdict.value, str(counted.count(verdict))]
        for verdict in RuleVerdict
        if verdict in counted
    ]


def _markets(report: SafetyReport, system: System) -> Iterator[dict[str, Any]]:
    for market, lines in groupby(_speaking(report), key=lambda line: line.rule.market):
        yield {"name": market.value, "lines": [_line(line, system) for line in lines]}


def _line(line: RuleLine, system: System) -> dict[str, Any]:
    rule = line.rule
    return {
        "verdict": line.verdict.value,
        "applies": line.verdict is not RuleVerdict.DOES_NOT_APPLY,
        "says": runs(rule.says, rule.figures, system),
        "found": runs(line.sentence, line.figures, system),
        "known": f"{rule.force.value}, {rule.confidence.value}; {rule.standing.words};"
        f" {cite(rule.source)}",
    }


def _told(report: SafetyReport) -> list[Governing]:
    """Take those of the strictest rules that have to do with this shade."""
    spoken = {line.rule.id for line in _speaking(report)}
    return [each for each in report.governing if each.rule in spoken]


def _strictest(one: Governing, report: SafetyReport, system: System) -> dict[str, Any]:
    rule = next(line.rule for line in report.lines if line.rule.id == one.rule)
    bound = rule.comparison.value if rule.comparison else ""
    return {
        "about": f"{one.subject.value}, {one.measure.value}: {bound}",
        "limit": show(one.limit, system),
        "market": rule.market.value,
    }


def _label(label: LabelText, system: System) -> dict[str, Any]:
    return {
        "market": label.market.value,
        "languages": " and ".join(label.languages),
        "fields": [[each.name, each.text] for each in label.fields],
        "warnings": list(label.warnings),
        "letters": [show(height, system) for height in label.letter_heights],
        "note": label.note,
    }


def _tests(plan: ShadePlan, system: System) -> list[dict[str, Any]]:
    """List what must be read and tested, market by market, as the finding says it."""
    asked = (finding for finding in plan.findings if finding.id == TESTS)
    return [
        {"runs": runs(remedy.sentence, remedy.figures, system)}
        for finding in asked
        for remedy in finding.remedies
    ]


def _cautions(plan: ShadePlan) -> Iterator[str]:
    """Give the cautions that go with this shade wherever it is handled."""
    yield cautions.CORDS
    if plan.spec.lift.kind in BY_LIFT:
        yield BY_LIFT[plan.spec.lift.kind]
    if any(finding.id == MAINS for finding in plan.findings):
        yield cautions.MAINS
    yield cautions.FIXINGS
    yield cautions.LADDER
