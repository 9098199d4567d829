"""Every figure of a plan under a name of its own, so that a page can point at it.

The name is the dotted path through the plan, parts of a tuple counted from 0:
`layout.rows.marks.0`. The drawings use the same names.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.why.figure import Figure
from foldwright.core.why.walking import walk_places

ROOMS = ("size", "layout", "weights", "balance", "headrail", "safety", "findings")


class FigureIndex:
    """The figures of one plan, and of what stands beside it, by name and by themselves."""

    def __init__(self, plan: ShadePlan | None, beside: Mapping[str, Any] | None = None) -> None:
        self._by_path = dict(_figures_of_rooms(plan)) if plan else {}
        self._by_path |= dict(walk_places(beside or {}))
        self._paths = {id(figure): path for path, figure in reversed(self._by_path.items())}

    def at(self, path: str) -> Figure[Any] | None:
        """Give the figure of that name, or None."""
        return self._by_path.get(path)

    def path_of(self, figure: Figure[Any]) -> str:
        """Give the first name of a figure of this plan, or nothing for a stranger."""
        return self._paths.get(id(figure), "")

    def in_room(self, room: str) -> Iterator[tuple[str, Figure[Any]]]:
        """Give the figures of one room, or of one part of it, in the order of its fields."""
        for path, figure in self._by_path.items():
            if path.startswith(f"{room}."):
                yield path, figure


def _figures_of_rooms(plan: ShadePlan) -> Iterator[tuple[str, Figure[Any]]]:
    for room in ROOMS:
        for place, figure in walk_places(getattr(plan, room)):
            yield f"{room}.{place}", figure
