"""The shared boards of a job as its page shows them: every mark from one end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.check.boards.boarding import Boarding
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Finding, Remedy, Severity
from foldwright.core.why.telling import fill, show, show_value
from foldwright.web.opened import OpenJob


@dataclass(frozen=True, kw_only=True)
class BoardView:
    """One shared board, marked, for one reader."""

    url: str
    number: int
    boarding: Boarding
    system: System

    @property
    def title(self) -> str:
        """Give its name, and what lifts its shades."""
        return f"{self.boarding.board.name}, {self.boarding.board.lift.value}"

    def told(self, said: Remedy | Finding) -> str:
        """Fill a sentence."""
        return fill(said.sentence, said.figures, self.system)

    def shown(self, *figures: Figure[Any]) -> str:
        """Show marks one after another."""
        return ", ".join(show_value(figure, self.system) for figure in figures)

    @property
    def lift(self) -> str:
        """Say what the one tube does."""
        balance, rail = self.boarding.balance, self.boarding.headrail
        if balance is None:
            return ""
        turns = balance.window.recommended_turns if balance.window else None
        wind = f"; wind {show(turns, self.system)} at the up-stop" if turns else ""
        cut = f", cut to {self.shown(rail.tube_cut)}" if rail else ""
        return f"The one tube{cut}: {balance.verdict.value}{wind}."

    @property
    def pressing(self) -> tuple[Finding, ...]:
        """Give what stops or asks about the one tube."""
        return tuple(each for each in self.boarding.findings if each.severity is not Severity.NOTE)


def board_views(job: OpenJob) -> list[BoardView]:
    """Hang every shared board of a job that was read; none while it has faults."""
    if job.reading.job is None:
        return []
    boards = job.desk.shelf.boards(job.entry.document, job.reading.job)
    return [
        BoardView(
            url=f"{job.url}/boards/{number}", number=number, boarding=boarding, system=job.system
        )
        for number, boarding in enumerate(boards, start=1)
    ]
