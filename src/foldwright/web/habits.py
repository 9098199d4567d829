"""The habits of one job as a form: what it leaves empty, the house's habits answer."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

from foldwright.core.facts.house import (
    AT_THE_BENCH,
    AT_THE_DRAWING,
    AT_THE_TABLE,
    AT_THE_WINDOW,
    IN_THE_LIFT,
    ON_THE_SCALE,
)
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.telling import show_value
from foldwright.web.desk import capital
from foldwright.web.fields import Field, Group, Kind
from foldwright.web.forms import Filled, fill, form_laid_in
from foldwright.work.document import Document

HOUSE = {
    "At the window": AT_THE_WINDOW,
    "At the drawing": AT_THE_DRAWING,
    "At the table": AT_THE_TABLE,
    "On the scale": ON_THE_SCALE,
    "In the lift": IN_THE_LIFT,
    "At the bench": AT_THE_BENCH,
}
BARE_NUMBERS = {
    Unit.MASS: " A bare number is in kilograms.",
    Unit.TORQUE: " A bare number is in newton metres.",
    Unit.FORCE: " A bare number is in newtons.",
    Unit.SPEED: " A bare number is in metres a second.",
}


@cache
def habit_groups(system: System) -> tuple[Group, ...]:
    """Give the fields of the habits in the order of the work, for a job in these units."""
    return tuple(
        Group(
            id=title.lower().replace(" ", "-"),
            title=title,
            fields=tuple(_field(name, habit, system) for name, habit in habits.items()),
        )
        for title, habits in HOUSE.items()
    )


def with_habits(document: Document, form: Mapping[str, str], system: System) -> Document:
    """Lay the form into a document's habits; an empty field leaves a habit to the house."""
    return form_laid_in(form, document, _every(habit_groups(system)))


@dataclass(frozen=True, kw_only=True)
class HabitsView:
    """The habits of a job as typed, for their form."""

    document: Document
    system: System  # of the job's bare numbers
    version: int
    faults: tuple[Fault, ...] = ()

    @property
    def groups(self) -> tuple[Group, ...]:
        """Give the groups of fields."""
        return habit_groups(self.system)

    @cached_property
    def fields(self) -> dict[str, Filled]:
        """Give every field as the form shows it."""
        every = _every(self.groups)
        return {one.path: fill(one, self.document, self.faults, "", self.system) for one in every}

    @property
    def gist(self) -> str:
        """Say how many habits are the job's own."""
        own = sum(filled.typed for filled in self.fields.values())
        return f"{own} of its own" if own else "all as the house has them"

    def wants(self, group: Group) -> bool:
        """Tell whether a group is to be open: something in it is typed or wrong."""
        shown = [self.fields[one.path] for one in group.every()]
        return any(filled.typed or filled.faults for filled in shown)

    def stand_in(self, _field: Field) -> str:
        """Leave it to the hint to tell what the house takes."""
        return ""


def _field(name: str, habit: Figure[Any], system: System) -> Field:
    is_length = habit.unit is Unit.LENGTH
    shown = show_value(habit, system)
    return Field(
        path=f"habits.{name}",
        label=capital(habit.name),
        kind=Kind.LENGTH if is_length else Kind.NUMBER,
        hint=f"House: {shown}, {habit.status.value}.{BARE_NUMBERS.get(habit.unit, '')}",
        placeholder=shown if is_length else f"{habit.value:g}",
    )


def _every(groups: Iterable[Group]) -> Iterator[Field]:
    for group in groups:
        yield from group.every()
