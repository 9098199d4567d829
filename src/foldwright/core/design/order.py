"""The design as ordered, with the size, the materials and the rules it must keep."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields
from typing import Any

from foldwright.core.design.choices import Choices
from foldwright.core.design.making import PLAIN, Making
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen, Cloth
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.source import Source, Status
from foldwright.core.why.trying import Draft, Way, on_mark, system_of

L = Figure[Length]
N = Figure[float]

TYPED = {Status.MEASURED, Status.CHOSEN}


@dataclass(frozen=True, kw_only=True, slots=True)
class Order:
    """Everything the room of designs knows; `design` and `making` as in the job file."""

    design: Choices
    size: FinishedSize
    chosen: Chosen
    habits: Habits
    row_cap: L
    edge_floor: L
    making: Making = PLAIN

    @property
    def width(self) -> L:
        """Give the finished width."""
        return self.size.width

    @property
    def drop(self) -> L:
        """Give the finished drop."""
        return self.size.drop

    @property
    def layers(self) -> tuple[Cloth, ...]:
        """Give the cloths chosen so far, face first."""
        cloths = (self.chosen.face, self.chosen.lining, self.chosen.interlining)
        return tuple(cloth for cloth in cloths if cloth is not None)

    @property
    def system(self) -> System:
        """Tell in which system the shade was measured or typed."""
        figures = (*self.size.width.family(), *self.size.drop.family())
        typed = [f.value for f in figures if f.unit is Unit.LENGTH and f.status in TYPED]
        values = (getattr(self.design, field.name) for field in fields(self.design))
        return system_of([*typed, *(value for value in values if isinstance(value, Length))])

    def length(self, name: str, typed: Length | None, habit: L) -> L:
        """Take a typed length, or else the house's habit.

        Takes: the figure's name; the typed length or None; the habit.

        Gives: a chosen figure, or the habit itself.

        Source: derived here.
        """
        return habit if typed is None else chosen(name, typed, Unit.LENGTH)

    def number(self, name: str, typed: float | None, unit: Unit, habit: N) -> N:
        """Take a typed number, or else the house's habit.

        Takes: the figure's name; the typed number or None; its unit; the habit.

        Gives: a chosen figure, or the habit itself.

        Source: derived here.
        """
        return habit if typed is None else chosen(name, float(typed), unit)

    def marked(self, length: Length, rounding: Rounding) -> Length:
        """Move a length to a mark that can be typed.

        Takes: the exact length; the rounding its use asks for.

        Gives: a whole number of sixteenths of an inch, or of millimetres.

        Source: common practice.
        """
        return on_mark(length, self.system, rounding)


def head_allowance(order: Order) -> L:
    """Tell how far below the top of the board the raised rows must stay.

    Takes: the order.

    Gives: as typed; else what the headrail needs, and never less than the house's floor.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> head_allowance(ORDER).value == Length.inches(3)
    True
    """
    typed = order.design.head_allowance
    if typed is not None:
        return chosen("head allowance", typed, Unit.LENGTH)
    return least_head_allowance(order)


def least_head_allowance(order: Order) -> L:
    """Tell the least head allowance with which the shade still raises fully.

    Takes: the order.

    Gives: the headrail's height and the room under it, or the house's floor, whichever is
    greater; the floor alone while no headrail is chosen.

    Source: common practice.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
    >>> from foldwright.core.rig.example import SIZE
    >>> order = Order(
    ...     design=Choices(), size=SIZE, chosen=Chosen(), habits=house_habits(),
    ...     row_cap=row_spacing_cap(()), edge_floor=edge_distance_floor(()))
    >>> least_head_allowance(order).value.in_millimetres
    65.0
    """
    floor, bracket = order.habits.head_allowance_floor, order.chosen.bracket
    if bracket is None:
        return floor
    height = supplied("headrail height", bracket.height, Unit.LENGTH, bracket.name)
    beyond = order.habits.head_allowance_beyond_rail
    return derived(
        "head allowance",
        max(height.value + beyond.value, floor.value),
        Unit.LENGTH,
        "The headrail {0} and {1} under it, but at least {2}.",
        height,
        beyond,
        floor,
        rounding=Rounding.CUT_OVERSIZE,
    )


def skirt(order: Order) -> L:
    """Tell how far the hem shows below the raised folds.

    Takes: the order.

    Gives: as typed, else the house's.

    Source: common practice.

    >>> from foldwright.core.design.example import ORDER
    >>> skirt(ORDER).value == Length.inches("1.5")
    True
    """
    return order.length("skirt", order.design.skirt, order.habits.skirt)


def stacked_pitch(order: Order) -> L:
    """Tell how far apart the rows lie when they are stacked.

    Takes: the order.

    Gives: the house's pitch for rings and cloth, or the rod where rods lie at the rows and
    are thicker.

    Holds for: rows whose rings lie one on another.

    Source: common practice; derived here for rods.

    >>> from foldwright.core.design.example import ORDER
    >>> stacked_pitch(ORDER).value == Length.inches("0.125")
    True
    """
    habit, rod = order.habits.stacked_row_pitch, order.chosen.rod
    if not order.design.rods.at_rows or rod is None or rod.diameter <= habit.value:
        return habit
    return supplied("pitch of the stacked rods", rod.diameter, Unit.LENGTH, rod.name)


def draft(  # noqa: PLR0913 - all that a finding carries
    severity: Severity,
    name: str,
    sentence: str,
    *figures: Figure[Any],
    ways: Iterable[Way[Order]],
    stage: Stage = Stage.ORDER,
    source: Source | None = None,
) -> Draft[Order]:
    """Draft one finding of the room of designs.

    Takes: its severity; its name within the room; its sentence and the figures in it; the
    ways out; the stage by which it must be settled; its source where it has one.

    Gives: the draft.

    Source: derived here.

    >>> draft(Severity.NOTE, "plain", "The shade is plain.", ways=()).finding.id
    'design.plain'
    """
    finding = Finding(
        id=f"design.{name}",
        severity=severity,
        stage=stage,
        sentence=sentence,
        figures=figures,
        source=source,
    )
    return Draft(finding=finding, ways=ways)
