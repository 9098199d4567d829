"""A job: the windows of one client, with the shop's list and habits to plan them by."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.rounding import System


@dataclass(frozen=True, kw_only=True, slots=True)
class JobHead:
    """What is true of the whole job: the table `[job]` of a job file."""

    name: str
    system: System
    client: str = ""
    date: date | None = None
    markets: tuple[Market, ...] = ()  # none: the strictest of all holds
    note: str = ""
    shop: str = ""  # a folder with the shop's own list, seen from the job file


@dataclass(frozen=True, kw_only=True, slots=True)
class Job:
    """A job as read: everything that planning it needs."""

    head: JobHead
    habits: Habits
    shop: ShopList
    shades: tuple[ShadeSpec, ...] = ()
    rolls: tuple[ReceivedRoll, ...] = ()  # in hand, as they were looked over
    groups: tuple[ShadeGroup, ...] = ()  # shades that are to look like one
    boards: tuple[SharedBoard, ...] = ()  # that carry more than one shade

    @property
    def markets(self) -> tuple[Market, ...]:
        """Give the markets whose rules hold; none named means that the strictest holds."""
        return self.head.markets

    @property
    def system(self) -> System:
        """Give the units the job is written in."""
        return self.head.system


@dataclass(frozen=True, kw_only=True, slots=True)
class JobPlan:
    """A job as computed, shade by shade in the order of the file."""

    job: Job
    shades: tuple[ShadePlan, ...] = field(default=())
