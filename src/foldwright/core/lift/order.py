"""All that is known of a shade when its lift is chosen."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Chosen, ShopList, Spring, Tube
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.lift.span import Reals
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.load import Weights


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class LiftOrder:
    """One shade as the lift finds it; `draws` are uniform numbers made outside."""

    choices: LiftChoices
    weights: Weights
    layout: Layout
    size: FinishedSize
    chosen: Chosen
    shop: ShopList
    habits: Habits
    draws: Reals

    @property
    def tube_cut(self) -> Length | None:
        """Give the length to which the tube is cut, once the brackets are chosen."""
        if self.chosen.bracket is None:
            return None
        return self.size.board_length.value - self.chosen.bracket.tube_deduction

    @property
    def tube_inside(self) -> Length | None:
        """Give the inside of the tube, once it is chosen."""
        tube = self.chosen.tube
        return None if tube is None else tube.outside - 2 * tube.wall

    @property
    def travel_share(self) -> float:
        """Give the share of the design travel that the shade is raised."""
        share = self.choices.raise_limit_share
        return 1.0 if share is None else share


def tube_inertia(tube: Tube, length: Length) -> float:
    """Give the moment of inertia of a tube about its axis.

    Takes: a tube of the shop list; its length.

    Gives: kg m2.

    Holds for: thin walls.

    Source: derived here.

    >>> tube = Tube(
    ...     name="T", outside=Length.mm(38), wall=Length.mm("1.2"), stiffness_pa=68.9e9,
    ...     line_mass_kg_m=0.375,
    ... )
    >>> round(tube_inertia(tube, Length.mm(1160)) * 1e4, 2)
    1.47
    """
    middle_radius_m = (tube.outside - tube.wall).in_metres / 2
    return tube.line_mass_kg_m * length.in_metres * middle_radius_m**2


def obstacle(order: LiftOrder, spring: Spring) -> str:
    """Say why a spring cannot go into the tube, or nothing where it can.

    Takes: the order; a spring of the shop list.

    Gives: a sentence without its full stop, empty where nothing known stands in the way.

    Holds for: springs that lie end to end in one tube.

    Source: derived here, from the sheets.
    """
    need = spring.body_length and order.choices.springs_side_by_side * spring.body_length
    if need and order.tube_cut and need > order.tube_cut:
        return "too long for the tube"
    inside = order.tube_inside
    if spring.least_tube_inside and inside and spring.least_tube_inside > inside:
        return "too thick for the tube"
    return ""
