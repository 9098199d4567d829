"""Change a document as a remedy says, and tell which figures moved."""

from __future__ import annotations

from collections.abc import Sequence
from copy import deepcopy
from dataclasses import dataclass
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.finding import Change
from foldwright.core.why.telling import show_value
from foldwright.work.asking import figures_of
from foldwright.work.document import Document


def change_shade(document: Document, index: int, changes: Sequence[Change]) -> Document:
    """Give the document with changes made to one shade; the one given stays as it is.

    Takes: the document; which shade, counted from 0; the changes, where empty text takes
    a field out.

    >>> change = Change(path="mount.place", text="outside")
    >>> change_shade({"shades": [{"tag": "A"}]}, 0, [change])
    {'shades': [{'tag': 'A', 'mount': {'place': 'outside'}}]}
    """
    changed = deepcopy(document)
    for change in changes:
        _type_in(changed["shades"][index], change.path.split("."), change.text)
    return changed


def _type_in(table: dict[str, Any], keys: list[str], text: str) -> None:
    for key in keys[:-1]:
        table = table.setdefault(key, {})
    if text.strip():
        table[keys[-1]] = text
    else:
        table.pop(keys[-1], None)


@dataclass(frozen=True, kw_only=True, slots=True)
class Moved:
    """A figure that an edit changed; None where it was not there before, or is gone."""

    place: str
    name: str
    old: Figure[Any] | None
    new: Figure[Any] | None


def compare_plans(old: ShadePlan, new: ShadePlan, system: System) -> list[Moved]:
    """List the figures that read differently in two plans of one shade, in their order."""
    before, after = _figures(old), _figures(new)
    places = [*after, *(place for place in before if place not in after)]
    moved = (_moved(place, before.get(place), after.get(place), system) for place in places)
    return [each for each in moved if each is not None]


def _figures(plan: ShadePlan) -> dict[str, Figure[Any]]:
    return {asked.place: asked.figure for asked in figures_of(plan)}


def _moved(
    place: str, old: Figure[Any] | None, new: Figure[Any] | None, system: System
) -> Moved | None:
    shown = [show_value(figure, system) if figure else None for figure in (old, new)]
    either = new or old
    if shown[0] == shown[1] or either is None:
        return None
    return Moved(place=place, name=either.name, old=old, new=new)
