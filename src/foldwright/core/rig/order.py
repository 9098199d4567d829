"""Everything a headrail is made from, with nothing missing."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board, Bracket, Clutch, Cord, Motor, Spring, Tape, Tube
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Mount
from foldwright.core.rig.sides import read_hand
from foldwright.core.weigh.load import Weights


@dataclass(frozen=True, kw_only=True, slots=True)
class Order:
    """The results of the rooms before, and the records of the parts that were chosen."""

    mount: Mount
    size: FinishedSize
    layout: Layout
    balance: Balance
    weights: Weights
    choices: LiftChoices
    habits: Habits
    kind: LiftKind
    bracket: Bracket
    tube: Tube
    line: Cord | Tape
    board: Board | None
    drive: Spring | Clutch | Motor | None

    @property
    def hand_as_written(self) -> str | None:
        """Give what the spring's sheet says of its hand."""
        return self.drive.hand if isinstance(self.drive, Spring) else None

    @property
    def hand(self) -> str | None:
        """Give the hand of the coil, where its sheet names one that can be read."""
        return read_hand(self.hand_as_written)

    @property
    def clutch(self) -> Clutch | None:
        """Give the clutch, whose own deduction goes before the brackets'."""
        return self.drive if isinstance(self.drive, Clutch) else None
