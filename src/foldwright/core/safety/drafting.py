"""Draft the findings of child safety, each with the ways out that are then tried."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from foldwright.core.safety.order import SafetyOrder
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way


def draft(  # noqa: PLR0913 - all that a finding carries
    severity: Severity,
    name: str,
    sentence: str,
    *figures: Figure[Any],
    ways: Iterable[Way[SafetyOrder]],
    stage: Stage = Stage.HEADRAIL,
    source: Source | None = None,
) -> Draft[SafetyOrder]:
    """Draft one finding of the room of safety."""
    finding = Finding(
        id=f"safety.{name}",
        severity=severity,
        stage=stage,
        sentence=sentence,
        figures=figures,
        source=source,
    )
    return Draft(finding=finding, ways=ways)
