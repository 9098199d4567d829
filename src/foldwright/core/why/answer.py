"""What a room answers: a result where there can be one, and what it has to say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, TypeVar

from foldwright.core.why.finding import Finding

T_co = TypeVar("T_co", covariant=True)


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer(Generic[T_co]):
    """A room's result, or None where facts are still missing, with its findings."""

    result: T_co | None
    findings: tuple[Finding, ...] = ()
