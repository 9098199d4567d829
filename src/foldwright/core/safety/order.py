"""All that is known of a shade when its safety is judged."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from foldwright.core.design.choices import Choices
from foldwright.core.design.layout import Layout
from foldwright.core.design.making import PLAIN, Making
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market
from foldwright.core.facts.records import Chosen, ShopList
from foldwright.core.lift.choices import LiftChoices, LiftKind
from foldwright.core.lift.span import Reals
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.opening import MountPlace
from foldwright.core.measure.site import Site, typed_or
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.safety.choices import CordGuard, SafetyChoices
from foldwright.core.weigh.load import Weights
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, measured

L = Figure[Length]

OUT_OF_REACH = (CordGuard.SHROUD, CordGuard.OUT_OF_REACH)


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class SafetyOrder:
    """One shade as child safety finds it; `draws` are uniform numbers made outside.

    `safety`, `lift` and `design` are named as in the job file, so that remedies can be tried.
    """

    tag: str
    site: Site
    safety: SafetyChoices
    lift: LiftChoices
    design: Choices
    size: FinishedSize
    layout: Layout
    chosen: Chosen
    shop: ShopList
    habits: Habits
    markets: tuple[Market, ...]
    draws: Reals
    making: Making = PLAIN
    weights: Weights | None = None
    stops: frozenset[str] = frozenset()  # ids of what stops the shade already

    @property
    def system(self) -> System:
        """Tell in which system the window was measured."""
        return self.site.system

    @property
    def made_on(self) -> date | None:
        """Give the day of making, if it is known."""
        return self.safety.made_on

    @property
    def has_chain(self) -> bool:
        """Tell whether the shade is worked by a chain."""
        return self.lift.kind is LiftKind.CLUTCH

    @property
    def is_guarded(self) -> bool:
        """Tell whether the cords behind are kept out of reach."""
        return self.safety.cord_guard in OUT_OF_REACH

    @property
    def top_above_floor(self) -> L | None:
        """Give the height of the shade's top above the floor, once the window's is measured."""
        if self.site.opening.floor_to_head is None:
            return None
        head = measured("floor to head", self.site.opening.floor_to_head)
        if self.site.mount.place is not MountPlace.OUTSIDE:
            return head
        above = typed_or("mounted above", self.site.mount.above, self.habits.outside_above)
        value = head.value + above.value
        because = "The head {0} above the floor and the shade {1} above it."
        return derived("top of the shade above the floor", value, Unit.LENGTH, because, head, above)

    @property
    def bottom_above_floor(self) -> L | None:
        """Give the height of the bottom edge above the floor, fully down."""
        top = self.top_above_floor
        if top is None:
            return None
        return derived(
            "bottom edge above the floor",
            top.value - self.size.drop.value,
            Unit.LENGTH,
            "The top {0} above the floor less the drop {1}.",
            top,
            self.size.drop,
        )
