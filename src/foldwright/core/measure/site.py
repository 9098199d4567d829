"""The window, the mount and the habits together: what the finished size is worked from."""

from __future__ import annotations

from dataclasses import dataclass, fields

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board
from foldwright.core.measure.opening import AskedSize, Mount, MountPlace, Opening
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived, measured, supplied
from foldwright.core.why.trying import system_of

L = Figure[Length]

WIDTH_NAMES = {
    "width_top": "width at the top",
    "width_middle": "width in the middle",
    "width_bottom": "width at the bottom",
}
HEIGHT_NAMES = {
    "height_left": "height at the left",
    "height_centre": "height in the centre",
    "height_right": "height at the right",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Site:
    """Everything the room of measures knows; field names are those of the job file."""

    opening: Opening
    mount: Mount
    asked: AskedSize
    habits: Habits
    board: Board | None = None

    @property
    def inside(self) -> bool:
        """Tell whether the shade hangs inside the reveal."""
        return self.mount.place is MountPlace.INSIDE

    @property
    def outside(self) -> bool:
        """Tell whether the shade hangs outside, over casing or wall."""
        return self.mount.place is MountPlace.OUTSIDE

    @property
    def system(self) -> System:
        """Tell in which system the window was measured."""
        parts = (self.opening, self.mount, self.asked)
        values = [getattr(part, field.name) for part in parts for field in fields(part)]
        return system_of(value for value in values if isinstance(value, Length))

    @property
    def widths(self) -> tuple[L, ...]:
        """Give the widths that were measured, top to bottom."""
        return _measured(self.opening, WIDTH_NAMES)

    @property
    def heights(self) -> tuple[L, ...]:
        """Give the heights that were measured, left to right."""
        return _measured(self.opening, HEIGHT_NAMES)

    @property
    def projection(self) -> L | None:
        """Give how far the board stands out, once it is chosen."""
        if self.board is None:
            return None
        return supplied("board depth", self.board.depth, Unit.LENGTH, self.board.name)


def _measured(opening: Opening, names: dict[str, str]) -> tuple[L, ...]:
    values = {name: getattr(opening, field) for field, name in names.items()}
    return tuple(measured(name, value) for name, value in values.items() if value is not None)


def listed(count: int, first: int = 0) -> str:
    """Write the slots of a sentence as a list.

    Takes: how many slots; the number of the first.

    Gives: text such as "{0}, {1} and {2}".

    Source: derived here.

    >>> listed(3)
    '{0}, {1} and {2}'
    """
    slots = [f"{{{number}}}" for number in range(first, first + count)]
    return " and ".join([", ".join(slots[:-1]), slots[-1]] if count > 1 else slots)


def least(name: str, figures: tuple[L, ...], reason: str) -> L:
    """Take the least of some lengths.

    Takes: the new figure's name; one length or more; why the least counts.

    Gives: the least, resting on all of them.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> pair = (measured("a", Length.mm(3)), measured("b", Length.mm(2)))
    >>> least("narrowest", pair, "both must pass").value == Length.mm(2)
    True
    """
    value = min(figure.value for figure in figures)
    because = f"The least of {listed(len(figures))}: {reason}."
    return derived(name, value, Unit.LENGTH, because, *figures)


def greatest(name: str, figures: tuple[L, ...], reason: str) -> L:
    """Take the greatest of some lengths.

    Takes: the new figure's name; one length or more; why the greatest counts.

    Gives: the greatest, resting on all of them.

    Source: derived here.

    >>> from foldwright.core.why.making import measured
    >>> pair = (measured("a", Length.mm(3)), measured("b", Length.mm(2)))
    >>> greatest("longest", pair, "it must reach").value == Length.mm(3)
    True
    """
    value = max(figure.value for figure in figures)
    because = f"The greatest of {listed(len(figures))}: {reason}."
    return derived(name, value, Unit.LENGTH, because, *figures)


def typed_or(name: str, value: Length | None, habit: L) -> L:
    """Take what was typed, or else the house's habit.

    Takes: the figure's name; the typed length or None; the habit.

    Gives: a chosen figure, or the habit itself.

    Source: derived here.

    >>> habit = measured("overlap", Length.mm(50))
    >>> typed_or("overlap", Length.mm(60), habit).status.value
    'chosen'
    """
    return habit if value is None else chosen(name, value, Unit.LENGTH)


def nothing(name: str, because: str) -> L:
    """Make a figure of no length at all, with the reason.

    Takes: the figure's name; one sentence that says why there is none.

    Gives: a figure of zero length.

    Source: derived here.

    >>> nothing("below the sill", "The shade ends on the sill.").value == Length.mm(0)
    True
    """
    return derived(name, ZERO, Unit.LENGTH, because)
