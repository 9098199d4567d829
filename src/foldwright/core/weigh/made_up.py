"""A made-up shade as the scale finds it: the layout, its size and what it is made of."""

from __future__ import annotations

from dataclasses import dataclass, fields

from foldwright.core.design.layout import LayerCut, Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen, Cloth
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure


@dataclass(frozen=True, kw_only=True, slots=True)
class MadeUp:
    """One shade and everything that says what it weighs."""

    layout: Layout
    size: FinishedSize
    chosen: Chosen
    habits: Habits

    @property
    def layers(self) -> tuple[tuple[LayerCut, Cloth], ...]:
        """Give each cut with its cloth, as far as the cloths are chosen."""
        pairs = ((cut, self.cloth_named(cut.cloth)) for cut in self.layout.cuts)
        return tuple((cut, cloth) for cut, cloth in pairs if cloth is not None)

    def cloth_named(self, name: str) -> Cloth | None:
        """Find a cloth of this shade by its name."""
        parts = (getattr(self.chosen, slot.name) for slot in fields(self.chosen))
        cloths = (part for part in parts if isinstance(part, Cloth))
        return next((cloth for cloth in cloths if cloth.name == name), None)

    @property
    def stacked_pitch(self) -> Length:
        """Give how far apart the rows lie in the stack."""
        own = self.layout.rows.stacked_pitch
        return (own or self.habits.stacked_row_pitch).value

    @property
    def top_allowance_m(self) -> float:
        """Give the cloth above the top line, in m: it lies on the board."""
        return _metres(self.layout.top_allowance)

    @property
    def hem_allowance_m(self) -> float:
        """Give the cloth turned up at the hem, in m."""
        return _metres(self.layout.hem_allowance)


def _metres(length: Figure[Length] | None) -> float:
    return 0.0 if length is None else length.value.in_metres
