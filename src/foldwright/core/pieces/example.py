"""An invented shade of a printed cloth, for the examples of the functions beside."""

from __future__ import annotations

from foldwright.core.design.choices import Choices
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.facts.house import house_habits
from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import Board, Chosen, Cloth
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.pieces.layers import ShadeToCut
from foldwright.core.pieces.matching import Matching
from foldwright.core.quantity.length import Length

HABITS = house_habits()

PRINT = Cloth(
    name="print",
    areal_mass_kg_m2=0.2,
    usable_width=Length.inches(54),
    vertical_repeat=Length.inches(25),
    horizontal_repeat=Length.inches("13.5"),
    directional=True,
)
SATEEN = Cloth(name="sateen", areal_mass_kg_m2=0.13, usable_width=Length.inches(54))
BOARD = Board(
    name="board",
    thickness=Length.mm(19),
    depth=Length.mm(38),
    stiffness_pa=8.5e9,
    density_kg_m3=420.0,
)
PARTS = Chosen(face=PRINT, lining=SATEEN, board=BOARD)


def shade_to_cut(  # noqa: PLR0913 - all that its tests turn
    width: Length,
    drop: Length,
    *,
    tag: str = "Stair",
    parts: Chosen = PARTS,
    design: Choices = Choices(),  # noqa: B008 - frozen
    matching: Matching = Matching(),  # noqa: B008 - frozen
) -> ShadeToCut:
    """Measure and lay out a shade of an asked size.

    Takes: its width and drop; its parts, its design, how its pattern is to lie.

    Gives: the shade, ready to be cut.

    Source: derived here.

    >>> shade_to_cut(Length.inches(36), Length.inches(60)).tag
    'Stair'
    """
    asked = AskedSize(width=width, drop=drop, given_by="client")
    size = finished_size(Opening(), Mount(), asked, HABITS).result or _unsized()
    return ShadeToCut(
        tag=tag,
        layout=_laid_out(design, size, parts),
        size=size,
        chosen=parts,
        habits=HABITS,
        shrinkage=HABITS.shrinkage,
        board_length=size.board_length,
        matching=matching,
    )


def _laid_out(choices: Choices, size: FinishedSize, parts: Chosen) -> Layout:
    rules = (row_spacing_cap(()), edge_distance_floor(()))
    layout = lay_out(choices, size, parts, HABITS, *rules).result
    if layout is None:
        message = "This shade cannot be laid out."
        raise ValueError(message)
    return layout


def _unsized() -> FinishedSize:
    message = "This shade has no size."
    raise ValueError(message)


SHADE = shade_to_cut(Length.inches(36), Length.inches(60))
