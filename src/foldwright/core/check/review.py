"""One shade as the last look over it finds it: what every room made of it, and its company."""

from __future__ import annotations

from dataclasses import dataclass, field, fields

from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.receiving import ReceivedRoll
from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import LayerCut, Layout
from foldwright.core.design.order import Order
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market, edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Chosen, Cloth, ShopList
from foldwright.core.measure.clearances import down_from_top, top_above_floor
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import MountPlace
from foldwright.core.measure.site import Site
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.why.figure import Figure
from foldwright.core.why.trying import on_mark, system_of

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Company:
    """What stands beside one shade in its job: the rolls in hand, and other shades."""

    rolls: tuple[ReceivedRoll, ...] = ()
    sheet: Cloth | None = None  # of the face, where its rolls were measured since
    earlier: tuple[ShadePlan, ...] = ()  # those before it in the job that share room or cloth
    beside: ShadePlan | None = None  # the one it must line up with
    group: ShadeGroup | None = None  # that makes the two line up, where nothing else does


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Review:
    """A planned shade with its company, and the rules it was planned by."""

    plan: ShadePlan
    shop: ShopList
    habits: Habits
    markets: tuple[Market, ...]
    company: Company = field(default_factory=Company)

    @property
    def spec(self) -> ShadeSpec:
        """Give the shade as asked for."""
        return self.plan.spec

    @property
    def chosen(self) -> Chosen:
        """Give the records behind its materials."""
        return self.plan.chosen

    @property
    def size(self) -> FinishedSize | None:
        """Give its finished size, once it is known."""
        return self.plan.size

    @property
    def layout(self) -> Layout | None:
        """Give its layout, once there is one."""
        return self.plan.layout

    @property
    def site(self) -> Site:
        """Give the window as the room of measures knows it."""
        spec = self.spec
        return Site(
            opening=spec.opening,
            mount=spec.mount,
            asked=spec.asked,
            habits=self.habits,
            board=self.chosen.board,
        )

    @property
    def outside(self) -> bool:
        """Tell whether the shade hangs outside the opening."""
        return self.spec.mount.place is MountPlace.OUTSIDE

    @property
    def face_cut(self) -> LayerCut | None:
        """Give the face as it is cut, once that is known."""
        cuts = self.layout.cuts if self.layout else ()
        return next((cut for cut in cuts if cut.layer == "face"), None)

    @property
    def rolls(self) -> tuple[ReceivedRoll, ...]:
        """Give the rolls that the face may be cut from: the one named, or all of its cloth."""
        named = self.spec.cutting.roll
        return tuple(
            roll
            for roll in self.company.rolls
            if (roll.name == named if named else roll.cloth == self.spec.materials.face)
        )

    @property
    def system(self) -> System:
        """Tell in which system the shade was typed."""
        spec = self.spec
        parts = (spec.opening, spec.mount, spec.asked, spec.design, spec.cutting, spec.making)
        values = [getattr(part, slot.name) for part in parts for slot in fields(part)]
        return system_of(value for value in values if isinstance(value, Length))

    def marked(self, length: Length, rounding: Rounding) -> Length:
        """Move a length to a mark that can be typed."""
        return on_mark(length, self.system, rounding)

    def from_top(self, name: str, below_head: Length) -> L | None:
        """Tell how far below the top of the shade something in the window stands."""
        return down_from_top(self.site, name, below_head)

    def top_above_floor(self) -> L | None:
        """Tell how high the top of the shade is above the floor, once that is measured."""
        return top_above_floor(self.site)

    @property
    def order(self) -> Order | None:
        """Give the design as the room of designs is ordered to lay it out, once there is a size."""
        if self.size is None:
            return None
        return Order(
            design=self.spec.design,
            size=self.size,
            chosen=self.chosen,
            habits=self.habits,
            row_cap=row_spacing_cap(self.markets),
            edge_floor=edge_distance_floor(self.markets),
            making=self.spec.making,
        )

    def laid_out(self, design: Choices, chosen: Chosen | None = None) -> Layout | None:
        """Lay the shade out with another design or other cloth, for the numbers of a remedy."""
        if self.size is None:
            return None
        return lay_out(
            design,
            self.size,
            chosen or self.chosen,
            self.habits,
            row_spacing_cap(self.markets),
            edge_distance_floor(self.markets),
            self.spec.making,
        ).result
