"""What the maker chooses about a shade; None leaves the choice to the house rule."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.quantity.length import Length


class StyleName(Enum):
    """The styles computed here."""

    FLAT = "flat"
    LOOPED = "looped"
    CASCADE = "cascade"
    TUCKED = "tucked"
    RELAXED = "relaxed"
    LONDON = "london"
    BALLOON = "balloon"
    GATHERED = "gathered"
    AUSTRIAN = "austrian"


class RodPlace(Enum):
    """Where rods cross the shade."""

    NONE = "none"
    ROWS = "at rows"
    MID_FOLD = "mid-fold"
    SLATS = "at rows and mid-fold"

    @property
    def at_rows(self) -> bool:
        """Tell whether a rod lies at every row."""
        return self in {RodPlace.ROWS, RodPlace.SLATS}

    @property
    def between_rows(self) -> bool:
        """Tell whether a rod lies where every fold turns."""
        return self in {RodPlace.MID_FOLD, RodPlace.SLATS}


class RodPocket(Enum):
    """What holds the rods."""

    SEWN_ON = "sewn on at the back"
    LINING = "in the lining"
    TO_THE_BACK = "folded from all layers, to the back"
    TO_THE_ROOM = "folded from all layers, to the room"


@dataclass(frozen=True, kw_only=True, slots=True)
class Choices:
    """The design as the client signed it."""

    style: StyleName = StyleName.FLAT
    rods: RodPlace = RodPlace.NONE
    rod_pocket: RodPocket = RodPocket.SEWN_ON
    pocket_allowance: Length | None = None  # cloth that the pocket of one rod takes
    head_allowance: Length | None = None
    skirt: Length | None = None
    row_count: int | None = None
    largest_row_spacing: Length | None = None
    column_count: int | None = None
    edge_distance: Length | None = None
    largest_pitch: Length | None = None
    middle_piece: Length | None = None  # wide cloth: each width in the middle shows so much
    fullness: float | None = None  # looped, gathered, Austrian: cloth to one of drop
    alike_after: int | None = (
        None  # flat, relaxed, looped: the print comes back after so many folds
    )
    width_fullness: float | None = None  # balloon, gathered: flat cloth to one of finished width
    step: Length | None = None  # cascade: each fold is so much shorter than the one below
    tuck: Length | None = None  # tucked: cloth sewn into each tuck
    dip: Length | None = None  # the hem hangs so much lower between its columns
    widened_hem: bool = False  # relaxed: cut wider at the hem, so that the sides hang plumb
    scallop: Length | None = None  # Austrian: each scallop is cut so much wider than its space
    pleat_allowance: Length | None = None  # London: cloth folded into each inverted pleat
    tied_rows: int | None = None  # rows tied to the lowest for good, with a pouf between them
    pouf: Length | None = None  # cloth gathered up for good between the tied rows
    side_turn: Length | None = None
    hem_allowance: Length | None = None
    top_allowance: Length | None = None
    shrinkage: float | None = None  # share, from the shop's own steam test
    stack_allowed_on_glass: Length | None = None


PLAIN_FOLDS = frozenset({StyleName.FLAT, StyleName.CASCADE})
GATHERS = frozenset({StyleName.BALLOON, StyleName.GATHERED})
POUFED = GATHERS | {StyleName.LONDON}

ONLY_FOR: dict[str, frozenset[StyleName]] = {
    "fullness": frozenset({StyleName.LOOPED, StyleName.GATHERED, StyleName.AUSTRIAN}),
    "alike_after": frozenset({StyleName.FLAT, StyleName.RELAXED, StyleName.LOOPED}),
    "width_fullness": GATHERS,
    "step": frozenset({StyleName.CASCADE}),
    "tuck": frozenset({StyleName.TUCKED}),
    "dip": frozenset({StyleName.RELAXED, StyleName.LONDON}),
    "widened_hem": frozenset({StyleName.RELAXED}),
    "scallop": frozenset({StyleName.AUSTRIAN}),
    "pleat_allowance": frozenset({StyleName.LONDON}),
    "tied_rows": POUFED,
    "pouf": POUFED,
}
"""The fields of the design that mean something in some styles alone."""
