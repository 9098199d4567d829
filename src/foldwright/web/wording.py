"""Figures and sentences as a page shows them: each figure a link to its why."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from markupsafe import Markup, escape

from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.source import Status
from foldwright.core.why.telling import SLOT, fill, show, show_value
from foldwright.web.figures import FigureIndex

LONGEST_UNBROKEN = 20  # letters; a longer text may run over two lines


class Wording:
    """Shows the figures of one plan to one reader."""

    def __init__(self, figures: FigureIndex, system: System, why_url: str, keep: str = "") -> None:
        self._figures = figures
        self._system = system
        self._why = f"{why_url}?{keep}figure="  # `keep` goes before: what else the why must know

    def link(self, figure: Figure[Any], *, ranged: bool = False) -> Markup:
        """Show a figure, with its range where asked, as a link to its why."""
        text = show(figure, self._system) if ranged else show_value(figure, self._system)
        path = self._figures.path_of(figure)
        if not path:
            return escape(text)
        long = " long" if len(text) > LONGEST_UNBROKEN else ""
        address = f"{self._why}{path}"
        return Markup(f'<a class="figure{long}" href="{address}" data-why>{escape(text)}</a>')  # noqa: S704 - addresses and paths are our own

    def linked(self, sentence: str, figures: Sequence[Figure[Any]]) -> Markup:
        """Fill a sentence, each of its figures a link."""
        shown = Markup()
        place = 0
        for slot in SLOT.finditer(sentence):
            shown += escape(sentence[place : slot.start()])
            shown += self.link(figures[int(slot[1])], ranged=bool(slot[2]))
            place = slot.end()
        return shown + escape(sentence[place:])

    def filled(self, sentence: str, figures: Sequence[Figure[Any]]) -> str:
        """Fill a sentence without links, for a list that leads to the page that has them."""
        return fill(sentence, figures, self._system)

    def other(self, figure: Figure[Any]) -> str:
        """Show a figure in the units that the reader did not choose."""
        return show_value(figure, other_system(self._system))


def other_system(system: System) -> System:
    """Give the other system."""
    return System.METRIC if system is System.INCH else System.INCH


def known(figure: Figure[Any]) -> str:
    """Say what a figure rests on, where that is not plain from the work itself."""
    weakest = figure.rests_on if figure.status is Status.DERIVED else figure.status
    said = (Status.PRACTICE, Status.HOUSE, Status.MEMORY)
    return weakest.value if figure.status is not Status.DERIVED or weakest in said else ""
