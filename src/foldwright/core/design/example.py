"""An invented shade, for the examples of the functions beside: 72 by 60 in of 54-in cloth."""

from __future__ import annotations

from foldwright.core.design.choices import Choices
from foldwright.core.design.order import Order
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import Market, edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Chosen, Cloth
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen


def _inches(name: str, inches: str) -> Figure[Length]:
    return chosen(name, Length.inches(inches), Unit.LENGTH)


ORDER = Order(
    design=Choices(head_allowance=Length.inches(3)),
    size=FinishedSize(
        width=_inches("finished width", "72"),
        drop=_inches("finished drop", "60"),
        board_length=_inches("board length", "71.75"),
    ),
    chosen=Chosen(
        face=Cloth(name="plain linen", areal_mass_kg_m2=0.27, usable_width=Length.inches(54))
    ),
    habits=house_habits(),
    row_cap=row_spacing_cap((Market.UNITED_STATES,)),
    edge_floor=edge_distance_floor((Market.UNITED_STATES,)),
)
