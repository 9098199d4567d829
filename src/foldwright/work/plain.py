"""Results as plain values for JSON: the same names as in the program, units said in words."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import Enum
from typing import Any

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy
from foldwright.core.why.source import Source
from foldwright.core.why.telling import cite, fill, show, tell

LENGTH_UNIT = "mm"


def plain(result: Any, system: System) -> Any:
    """Give any result as text, numbers, lists and tables; lengths in mm, the rest in SI.

    >>> plain({"drop": Length.mm(3)}, System.METRIC)
    {'drop': 3.0}
    """
    if isinstance(result, Figure | Finding | Remedy):
        return _told(result, system)
    if isinstance(result, Mapping):
        return {str(key): plain(value, system) for key, value in result.items()}
    if isinstance(result, tuple | list):
        return [plain(value, system) for value in result]
    if is_dataclass(result) and not isinstance(result, Length | type):
        return {slot.name: plain(getattr(result, slot.name), system) for slot in fields(result)}
    return _single(result)


def plain_faults(faults: tuple[Fault, ...]) -> list[dict[str, str]]:
    """Give faults as plain values."""
    return [{"where": each.where, "what": each.what, "remedy": each.remedy} for each in faults]


def _single(value: Any) -> Any:
    if isinstance(value, Length):
        return value.in_millimetres
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, float) and not math.isfinite(value):
        return None  # JSON knows no endless number
    return value


def _told(result: Figure[Any] | Finding | Remedy, system: System) -> dict[str, Any]:
    """Give what has sentences with them filled in."""
    if isinstance(result, Figure):
        return _figure(result, system)
    return _finding(result, system) if isinstance(result, Finding) else _remedy(result, system)


def _figure(figure: Figure[Any], system: System) -> dict[str, Any]:
    return {
        "name": figure.name,
        "value": _single(figure.value),
        "low": _single(figure.low),
        "high": _single(figure.high),
        "unit": LENGTH_UNIT if figure.unit is Unit.LENGTH else figure.unit.value,
        "text": show(figure, system),
        "why": tell(figure, system),
        "status": figure.status.value,
        "rests_on": figure.rests_on.value,
        "source": _source(figure.source),
    }


def _source(source: Source | None) -> str | None:
    return cite(source) if source else None


def _finding(finding: Finding, system: System) -> dict[str, Any]:
    return {
        "id": finding.id,
        "severity": finding.severity.value,
        "stage": finding.stage.value,
        "sentence": fill(finding.sentence, finding.figures, system),
        "figures": [_figure(each, system) for each in finding.figures],
        "remedies": [_remedy(each, system) for each in finding.remedies],
        "source": _source(finding.source),
    }


def _remedy(remedy: Remedy, system: System) -> dict[str, Any]:
    return {
        "sentence": fill(remedy.sentence, remedy.figures, system),
        "changes": [{"path": each.path, "text": each.text} for each in remedy.changes],
    }
