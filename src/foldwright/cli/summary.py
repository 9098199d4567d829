"""A planned job in plain lines: sizes, verdicts, turns, and what the rooms have to say."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity
from foldwright.core.why.telling import fill, show, show_value
from foldwright.work.job import JobPlan

UNKNOWN = "not known yet"


def summary(plan: JobPlan) -> Iterator[str]:
    """Give the lines of a job's summary."""
    job = plan.job
    markets = ", ".join(market.value for market in job.markets) or "any market"
    yield f"{job.head.name}: {len(plan.shades)} shades, for {markets}"
    for shade in plan.shades:
        yield ""
        yield from shade_lines(shade, job.system)
    yield ""
    yield _count(plan)


def shade_lines(plan: ShadePlan, system: System) -> Iterator[str]:
    """Give the lines of one shade."""
    room = f" ({plan.spec.room})" if plan.spec.room else ""
    yield f"{plan.spec.tag}{room}: {_size(plan, system)}"
    yield from (f"  {line}" for line in _facts(plan, system))
    for finding in plan.findings:
        yield from _finding_lines(finding, system)


def _size(plan: ShadePlan, system: System) -> str:
    if plan.size is None:
        return f"finished size {UNKNOWN}"
    width, drop = (show_value(each, system) for each in (plan.size.width, plan.size.drop))
    return f"finished {width} wide, {drop} drop"


def _facts(plan: ShadePlan, system: System) -> Iterator[str]:
    if plan.layout is not None:
        rows, columns = plan.layout.rows, plan.layout.columns
        yield (
            f"{rows.count.value} ring rows {show_value(rows.spacing, system)} apart,"
            f" {columns.count.value} cord columns"
        )
    if plan.balance is not None:
        yield _verdict(plan, system)


def _verdict(plan: ShadePlan, system: System) -> str:
    balance = plan.balance
    if balance is None:
        return UNKNOWN
    kind = balance.kind.value if balance.kind else "lift not chosen"
    turns = balance.window.recommended_turns if balance.window else None
    return f"{kind}: {balance.verdict.value}" + _wind(turns, system)


def _wind(turns: Figure[float] | None, system: System) -> str:
    return f"; wind {show(turns, system)} at the up-stop" if turns else ""


def _finding_lines(finding: Finding, system: System) -> Iterator[str]:
    sentence = fill(finding.sentence, finding.figures, system)
    yield f"  {finding.severity.value.upper()} {finding.stage.value}: {sentence}"
    if finding.override is not None:
        yield f"    Overridden: {finding.override.name} answers for it: {finding.override.reason}"
    if finding.severity is Severity.NOTE or finding.override is not None:
        return
    for remedy in finding.remedies:
        yield f"    - {fill(remedy.sentence, remedy.figures, system)}"


def _count(plan: JobPlan) -> str:
    findings = [finding for shade in plan.shades for finding in shade.findings]
    counts = {
        each: sum(f.severity is each and f.override is None for f in findings) for each in Severity
    }
    overridden = sum(finding.override is not None for finding in findings)
    return (
        f"{counts[Severity.STOP]} to stop at, {counts[Severity.ASK]} to ask about,"
        f" {counts[Severity.NOTE]} to note" + (f", {overridden} overridden." if overridden else ".")
    )
