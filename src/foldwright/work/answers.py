"""What a program is answered: the shapes of the JSON that goes out."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.check.boards.boarding import Boarding
from foldwright.core.check.groups.matching import Matching
from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.plan import ShadePlan
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure
from foldwright.core.why.telling import Line
from foldwright.work.job import JobHead


@dataclass(frozen=True, kw_only=True, slots=True)
class PlanAnswer:
    """A job as planned; lengths in mm, the rest in SI."""

    program_version: str
    job: JobHead
    shades: tuple[ShadePlan, ...]
    papers: tuple[str, ...] = ()  # the files written


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeLayouts:
    """The layouts offered for one shade; null while none can be drawn."""

    shade: str
    layouts: Offers | None


@dataclass(frozen=True, kw_only=True, slots=True)
class LayoutsAnswer:
    """The best layout of every shade and two others; lengths in mm, the rest in SI."""

    program_version: str
    job: JobHead
    shades: tuple[ShadeLayouts, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class GroupsAnswer:
    """How the shades of each group match; lengths in mm, the rest in SI."""

    program_version: str
    job: JobHead
    groups: tuple[Matching, ...]
    drawings: tuple[str, ...] = ()  # the files written


@dataclass(frozen=True, kw_only=True, slots=True)
class BoardsAnswer:
    """Every shared board, marked; lengths in mm, the rest in SI."""

    program_version: str
    job: JobHead
    boards: tuple[Boarding, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class WhyAnswer:
    """One figure, and all that it rests on."""

    shade: str
    place: str
    figure: Figure[float]
    lines: tuple[Line, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class FaultsAnswer:
    """What stands in the way of an answer."""

    faults: tuple[Fault, ...]
