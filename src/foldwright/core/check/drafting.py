"""Draft findings of the last look over an order in few words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from foldwright.core.check.plan import ShadeSpec
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way


def draft(  # noqa: PLR0913 - all that a finding carries
    severity: Severity,
    name: str,
    sentence: str,
    *figures: Figure[Any],
    ways: Iterable[Way[ShadeSpec]],
    stage: Stage,
    source: Source | None = None,
) -> Draft[ShadeSpec]:
    """Draft one finding about a shade as a whole, with the ways out that are then tried."""
    finding = Finding(
        id=f"check.{name}",
        severity=severity,
        stage=stage,
        sentence=sentence,
        figures=figures,
        source=source,
    )
    return Draft(finding=finding, ways=ways)
