"""Draft findings of this room in few words."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from foldwright.core.measure.site import Site
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.source import Source
from foldwright.core.why.trying import Draft, Way


def draft(  # noqa: PLR0913 - all that a finding carries
    severity: Severity,
    name: str,
    sentence: str,
    *figures: Figure[Any],
    ways: Iterable[Way[Site]],
    stage: Stage = Stage.MEASURE,
    source: Source | None = None,
) -> Draft[Site]:
    """Draft one finding of the room of measures.

    Takes: its severity; its name within the room; its sentence and the figures in it; the
    ways out; the stage by which it must be settled; its source where it has one.

    Gives: the draft.

    Source: derived here.

    >>> draft(Severity.NOTE, "square", "The reveal is square.", ways=()).finding.id
    'measure.square'
    """
    finding = Finding(
        id=f"measure.{name}",
        severity=severity,
        stage=stage,
        sentence=sentence,
        figures=figures,
        source=source,
    )
    return Draft(finding=finding, ways=ways)
