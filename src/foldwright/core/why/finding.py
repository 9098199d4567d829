"""What the tool has to say about an order: stop, ask or note, with the remedy."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Any

from foldwright.core.why.figure import Figure
from foldwright.core.why.source import Source


class Severity(Enum):
    """How strongly a finding speaks."""

    STOP = "stop"
    ASK = "ask"
    NOTE = "note"


class Stage(Enum):
    """The moment in the job by which a finding must be settled."""

    MEASURE = "at the measure"
    ORDER = "before cloth is ordered"
    TABLE = "when the roll is on the table"
    HEADRAIL = "before headrail parts are cut"
    BENCH = "at the bench"
    INSTALL = "at the installation"


@dataclass(frozen=True, kw_only=True, slots=True)
class Change:
    """One field of the shade's job file, by dotted path, and what to type there."""

    path: str
    text: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Remedy:
    """One way to mend a finding, in a sentence with its number; applied by its changes.

    A remedy without changes can only be done by hand (measure again, fit a brake guard).
    """

    sentence: str
    figures: tuple[Figure[Any], ...] = ()
    changes: tuple[Change, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Override:
    """A stop that somebody answers for: which finding, who, and for what reason."""

    finding: str
    name: str
    reason: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Finding:
    """One sentence about the order, the figure found, the limit, and what to do.

    `{0}`, `{1}` … in the sentences stand for `figures` in order; by custom the
    first is the figure found and the second its limit.
    """

    id: str
    severity: Severity
    stage: Stage
    sentence: str
    figures: tuple[Figure[Any], ...] = ()
    remedies: tuple[Remedy, ...] = ()
    source: Source | None = None
    override: Override | None = None  # of a stop that is set aside

    @property
    def forbids(self) -> bool:
        """Tell whether it forbids going on: a stop that nobody answers for."""
        return self.severity is Severity.STOP and self.override is None
