"""All that the bench steps are read from, and the shape of a step."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from foldwright.core.design.layout import TapePlan
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import Face
from foldwright.core.quantity.length import Length
from foldwright.core.rig.clips import Stretch
from foldwright.core.rig.headrail import CordLine, Step
from foldwright.core.rig.sides import DriveEnd
from foldwright.core.rig.tube import TubePlace
from foldwright.core.rig.wraps import Wraps
from foldwright.core.why.figure import Figure

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Parts:
    """The headrail, piece by piece, before its steps are written down."""

    kind: LiftKind
    size: FinishedSize
    board: Board | None
    choices: LiftChoices
    balance: Balance
    habits: Habits
    place: TubePlace
    cradles: tuple[L, ...]
    end: DriveEnd
    wraps: Wraps
    depth: L  # of the tube's centre below the top
    room: L  # for a clip beside the tightest column
    offset: L  # clip to column
    lines: tuple[CordLine, ...]
    taken: tuple[Stretch, ...]  # pieces of the tube that clips and wraps need
    pretension: N | None
    travel: L  # raise of the lowest row, fully down to the up-stop
    up_stop: L
    hem_at_stop: L
    top_ring: L  # at the up-stop, under the top of the board
    lowest_lock: L
    release: L
    handle: L
    tape: TapePlan | None = None  # at the head of the shade; None: stapled
    cloth_edge: Face = Face.ROOM  # of the board, which the cloth leaves

    @property
    def many(self) -> str:
        """Give the cords or tapes in the plural."""
        return f"{self.wraps.noun}s"


Maker = Callable[[Parts], Step | None]


def step(
    title: str, instruction: str, *figures: Figure[Any], reason: str, caution: str = ""
) -> Step:
    """Write down one step; its number follows from the order.

    Takes: a title; the instruction, in which {0}, {1} … stand for the figures; the reason
    for the step; what to beware of.

    Gives: a step numbered 0.

    Source: derived here.

    >>> step("level", "Level the bar.", reason="It is seen.").number
    0
    """
    return Step(
        number=0,
        title=title,
        instruction=instruction,
        figures=figures,
        reason=reason,
        caution=caution,
    )


def listed(first: int, count: int) -> str:
    """Give slots for a list of figures: "{1}, {2} and {3}".

    Takes: the number of the first slot; how many there are.

    Gives: the slots as a person would say the list.

    Source: derived here.

    >>> listed(1, 3)
    '{1}, {2} and {3}'
    """
    slots = [f"{{{first + place}}}" for place in range(count)]
    return " and ".join(filter(None, (", ".join(slots[:-1]), slots[-1]))) if slots else ""


def known(figure: Figure[Any] | None) -> tuple[Figure[Any], ...]:
    """Give the figure for a step's list, or nothing where it is not known.

    Takes: a figure or None.

    Gives: one figure, or none.

    Source: derived here.

    >>> known(None)
    ()
    """
    return () if figure is None else (figure,)
