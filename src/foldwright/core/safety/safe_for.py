"""Judge one shade by the rules on children of every market sold into."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from foldwright.core.safety.chain_findings import allowed_loop, draft_chain_checks
from foldwright.core.safety.cord_findings import draft_cord_checks
from foldwright.core.safety.duty_findings import draft_duties
from foldwright.core.safety.inner_cord import inner_cord
from foldwright.core.safety.judging import judge_lines
from foldwright.core.safety.labels import label_texts
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.report import SafetyReport
from foldwright.core.safety.reworking import rework
from foldwright.core.safety.rules import rules_for
from foldwright.core.safety.strictest import governing_rules
from foldwright.core.why.answer import Answer
from foldwright.core.why.finding import Finding
from foldwright.core.why.trying import Draft, settle


def safe_for(order: SafetyOrder) -> Answer[SafetyReport]:
    """Judge a shade by the rules on children of every market sold into.

    Takes: the shade as designed, with what is chosen for safety; no market means all of them.

    Gives: a line for every rule, the strictest of them, the cord behind the shade, the labels;
    and findings whose remedies have been tried. Nothing in it certifies the shade.

    Holds for: shades raised by cords or tapes through rings.

    Source: sor-2019-97; 16-cfr-1120; 16-cfr-1260 (vacated); ansi-wcma-2022; en-13120-summary;
    au-corded-2014; derived here for what a pull draws out.

    >>> from foldwright.core.safety.example import ORDER
    >>> answer = safe_for(ORDER)
    >>> [finding.id for finding in answer.findings]
    ['safety.cord-drawn-out', 'safety.label', 'safety.test']
    """
    report = _report(order)
    findings = settle(_drafts(order, report), _judge_like(order))
    return Answer(result=report, findings=findings)


def _report(order: SafetyOrder) -> SafetyReport:
    inner = inner_cord(order)
    return SafetyReport(
        lines=judge_lines(order, inner),
        governing=governing_rules(rules_for(order.markets), order.made_on),
        inner_cord=inner,
        labels=label_texts(order.safety, order.tag, order.markets),
        greatest_loop_length=allowed_loop(order),
    )


def _drafts(order: SafetyOrder, report: SafetyReport) -> Iterator[Draft[SafetyOrder]]:
    yield from draft_chain_checks(order)
    yield from draft_cord_checks(order, report.inner_cord, report.lines)
    yield from draft_duties(order, report.labels)


def _judge_like(first: SafetyOrder) -> Callable[[SafetyOrder], list[Finding]]:
    """Make what finds fault with a changed order; earlier rooms are asked where they must be."""

    def judge(order: SafetyOrder) -> list[Finding]:
        if order.design == first.design and order.lift == first.lift:
            return _found(order)
        reworked = rework(order)
        return [*reworked.findings, *(_found(reworked.result) if reworked.result else ())]

    return judge


def _found(order: SafetyOrder) -> list[Finding]:
    """Find fault with an order, its remedies left untried."""
    return [draft.finding for draft in _drafts(order, _report(order))]
