"""One step of the bench card: what to do, what to note, and what was made of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import Any

from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.rig.headrail import Headrail
from foldwright.core.weigh.load import Weights
from foldwright.core.why.figure import Figure

L = Figure[Length]
Reading = Length | float | int | str
Readings = Mapping[str, Reading]


@dataclass(frozen=True, kw_only=True, slots=True)
class CardOrder:
    """The shade as planned: all that its bench card is written from."""

    size: FinishedSize
    layout: Layout
    weights: Weights
    balance: Balance
    headrail: Headrail
    lift: LiftChoices
    habits: Habits
    markets: tuple[Market, ...] = ()
    blackout: bool = False
    loop_limit: L | None = None  # the strictest rule on the way round a loop


class Reads(Enum):
    """What is typed into a field of the card."""

    LENGTH = "length"
    FORCE = "force"
    MASS = "mass"
    TURNS = "turns"
    NUMBER = "number"
    CHOICE = "choice"
    TEXT = "text"


@dataclass(frozen=True, kw_only=True, slots=True)
class Ask:
    """One field of a step."""

    name: str
    label: str
    reads: Reads
    options: tuple[tuple[str, str], ...] = ()  # of a choice: what is kept, what is shown
    usual: Figure[Any] | None = None  # stands there until something else is typed
    now: bool = False  # the turns that are in the spring when the step is done
    signed: bool = False
    optional: bool = False  # the step is done without it
    group: str = ""  # fields under one heading


@dataclass(frozen=True, kw_only=True, slots=True)
class CardStep:
    """One step of the card."""

    id: str
    title: str
    instruction: str  # {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...] = ()
    reason: str = ""
    caution: str = ""
    asks: tuple[Ask, ...] = ()
    repeats: bool = False  # each time it is done it is noted anew, at the turns of the moment


class Outcome(Enum):
    """What the bench says to a step."""

    PASS = "pass"  # noqa: S105 - it passes the test, and is no word to get in by
    ASK = "ask"
    STOP = "stop"


ORDER = (Outcome.STOP, Outcome.ASK, Outcome.PASS)


@dataclass(frozen=True, kw_only=True, slots=True)
class Judgement:
    """One thing found, held against its limit, in one sentence."""

    outcome: Outcome
    sentence: str
    figures: tuple[Figure[Any], ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Judged:
    """All that a step's readings were found to be."""

    judgements: tuple[Judgement, ...] = field(default=())

    @property
    def outcome(self) -> Outcome | None:
        """Give the worst of them; None while nothing was read."""
        found = {one.outcome for one in self.judgements}
        return next((outcome for outcome in ORDER if outcome in found), None)
