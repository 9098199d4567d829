"""One check of an order: what is looked at, by when, how strongly, and what it rests on."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source


@dataclass(frozen=True, kw_only=True, slots=True)
class Check:
    """What is looked at, and the findings that can come of it.

    `limits` are those that are the same for every shade; others follow from the shade, the
    shop's list or the market. A check without findings is kept by the way the tool works.
    """

    id: str
    looks_at: str
    stage: Stage
    severity: Severity  # the strongest with which it speaks
    findings: tuple[str, ...] = ()
    limits: tuple[Figure[Any], ...] = ()
    source: Source | None = None
    kept_by: str = ""

    @property
    def rooms(self) -> tuple[str, ...]:
        """Name the rooms that find it, in the order of its findings."""
        return tuple(dict.fromkeys(name.partition(".")[0] for name in self.findings))

    @property
    def sources(self) -> tuple[Source, ...]:
        """Give its own source and those of its limits, each once."""
        cited = (self.source, *(limit.source for limit in self.limits))
        return tuple(dict.fromkeys(source for source in cited if source is not None))
