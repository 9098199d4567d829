"""Set a stop aside where somebody answers for it by name and with a reason."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Finding, Override, Remedy, Severity, Stage
from foldwright.core.why.making import chosen


def set_aside(findings: Iterable[Finding], overrides: tuple[Override, ...]) -> tuple[Finding, ...]:
    """Set aside the stops that are answered for, and say which answers no longer meet a stop."""
    answers = {override.finding: override for override in overrides}
    found = tuple(_answered(finding, answers) for finding in findings)
    met = {finding.id for finding in found if finding.override is not None}
    return (*found, *_idle(override for override in overrides if override.finding not in met))


def _answered(finding: Finding, answers: dict[str, Override]) -> Finding:
    if finding.severity is Severity.STOP and finding.id in answers:
        return replace(finding, override=answers[finding.id])
    return finding


def _idle(overrides: Iterable[Override]) -> Iterator[Finding]:
    for override in overrides:
        yield Finding(
            id="check.override-idle",
            severity=Severity.NOTE,
            stage=Stage.ORDER,
            sentence="{0} answers for “{1}”, but nothing stops the shade there now.",
            figures=(
                chosen("who answers", override.name, Unit.WORD),
                chosen("finding set aside", override.finding, Unit.WORD),
            ),
            remedies=(Remedy(sentence="Take the override back."),),
        )
