"""Draft the findings of the scale in few words."""

from __future__ import annotations

from typing import Any

from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage


def ask(name: str, sentence: str, *figures: Figure[Any], remedy: str) -> Finding:
    """Ask for something, with what to do about it."""
    return _finding(Severity.ASK, name, sentence, figures, Remedy(sentence=remedy))


def note(
    name: str,
    sentence: str,
    *figures: Figure[Any],
    remedy: str,
    in_remedy: tuple[Figure[Any], ...] = (),
) -> Finding:
    """Note something, with what to do about it."""
    way = Remedy(sentence=remedy, figures=in_remedy)
    return _finding(Severity.NOTE, name, sentence, figures, way)


def _finding(
    severity: Severity, name: str, sentence: str, figures: tuple[Figure[Any], ...], remedy: Remedy
) -> Finding:
    return Finding(
        id=f"weigh.{name}",
        severity=severity,
        stage=Stage.ORDER,
        sentence=sentence,
        figures=figures,
        remedies=(remedy,),
    )
