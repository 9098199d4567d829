"""A shade of invented parts, measured, designed and ready for the scale."""

from __future__ import annotations

from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Bar, Board, Bracket, Chosen, Cloth, Rod
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.weigh.load import Weights
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.answer import Answer

HABITS = house_habits()
WIDE_ENOUGH = Length.mm(3000)

FACE = Cloth(name="face", areal_mass_kg_m2=0.28, usable_width=WIDE_ENOUGH, weighed=True)
LINING = Cloth(name="lining", areal_mass_kg_m2=0.16, usable_width=WIDE_ENOUGH)
INTERLINING = Cloth(
    name="interlining",
    areal_mass_kg_m2=0.2,
    areal_mass_spread=0.1,
    usable_width=WIDE_ENOUGH,
    bending_length=Length.mm(60),
)
BAR = Bar(
    name="bar",
    line_mass_kg_m=0.6,
    width=Length.mm(25),
    thickness=Length.mm(3),
    stiffness_pa=200e9,
)
ROD = Rod(name="rod", line_mass_kg_m=0.03, diameter=Length.mm(4))
BOARD = Board(
    name="board",
    thickness=Length.mm(19),
    depth=Length.mm(50),
    stiffness_pa=8.5e9,
    density_kg_m3=400.0,
)
BRACKET = Bracket(
    name="bracket",
    tube_deduction=Length.mm(40),
    width=Length.mm(20),
    inset=Length.mm(5),
    tube_centre_below_board=Length.mm(30),
    height=Length.mm(60),
    depth=Length.mm(50),
)
PARTS = Chosen(face=FACE, lining=LINING, bar=BAR, rod=ROD, board=BOARD, bracket=BRACKET)


def made(choices: Choices, parts: Chosen = PARTS) -> tuple[Layout, FinishedSize]:
    """Measure and lay out a shade of 1200 by 1600 mm."""
    asked = AskedSize(width=Length.mm(1200), drop=Length.mm(1600), given_by="client")
    size = finished_size(Opening(), Mount(), asked, HABITS).result
    assert size is not None
    rules = (row_spacing_cap(()), edge_distance_floor(()))
    layout = lay_out(choices, size, parts, HABITS, *rules).result
    assert layout is not None
    return layout, size


def weighed(choices: Choices, parts: Chosen = PARTS) -> Answer[Weights]:
    """Weigh a shade of 1200 by 1600 mm."""
    layout, size = made(choices, parts)
    return weigh_shade(layout, size, parts, HABITS)
