"""The shade as designed: rows, columns, widths, seams, cut sizes and the raised stack."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum
from typing import Any

from foldwright.core.design.choices import RodPlace, RodPocket, StyleName
from foldwright.core.design.making import BandSewing, Valance
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class RowPlan:
    """Ring rows from the bottom edge up: the exact marks sum to the drop."""

    count: Figure[int]
    marks: tuple[L, ...]  # cumulative from the bottom edge, lowest first
    spacing: L  # row to row; where they differ, the greatest
    fold_depth: L
    first_row: L  # bottom edge to the lowest row
    skirt: L
    head_allowance: L
    top_panel: L  # top row to the top of the shade
    fullness: N  # cloth length per unit of row spacing; 1 for flat
    tied_rows: Figure[int]  # rows permanently tied to the lowest
    rod_marks: tuple[L, ...] = ()  # rods from the bottom edge up, wherever they are placed
    rod_cloth_marks: tuple[L, ...] = ()  # rods on the flat cloth, where pockets take some of it up
    rods: RodPlace = RodPlace.NONE
    stacked_pitch: L | None = None  # row to row when stacked
    spacings: tuple[L, ...] = ()  # row to row where they differ, lowest first
    ridges: tuple[L, ...] = ()  # sewn tucks, from the bottom edge up
    pouf: L | None = None  # cloth gathered up for good between the tied rows
    shirred: bool = False  # the fullness is gathered along the drop and hangs in no loops
    cloth_marks: tuple[L, ...] = ()  # rows on the flat cloth, where sewing takes some of it up


@dataclass(frozen=True, kw_only=True, slots=True)
class ColumnPlan:
    """Cord columns from the left edge as seen from the back; mirrored about the centre."""

    count: Figure[int]
    marks: tuple[L, ...]
    pitch: L
    edge_distance: L
    cloth_marks: tuple[L, ...] = ()  # columns on the flat cloth, where it is wider than the shade


@dataclass(frozen=True, kw_only=True, slots=True)
class WidthPlan:
    """Widths of cloth joined for the face: one full width in the centre, equal sides."""

    widths: Figure[int]
    seams: tuple[L, ...]  # on the flat cloth, from the left edge as seen from the back
    centre_visible: L | None = None
    side_visible: L | None = None
    side_cut: L | None = None
    nearest_column: L | None = None  # least distance from a seam to a column
    cloth_width: L | None = None  # of the flat face, side to side, before pleats and gathers


@dataclass(frozen=True, kw_only=True, slots=True)
class LayerCut:
    """One layer before sewing."""

    layer: str  # "face", "lining", "second layer", "interlining"
    cloth: str  # its name in the shop list
    width: L
    length: L
    body: L | None = None  # of the length, what lies between hem and top line
    widths: Figure[int] | None = None  # of a lining: joined from so many, no seam in the centre
    lap: L | None = None  # its widths overlap by this much, and no needle pierces the join


class Rides(Enum):
    """Where the weight of a piece beside the layers lies."""

    BOARD = "on the board"
    OWN_BOARD = "on a board of its own"
    ROWS = "at the ring rows"
    DROP = "along the drop"
    BAND = "across the shade"


@dataclass(frozen=True, kw_only=True, slots=True)
class Piece:
    """A piece that is cut besides the layers: a strip, a valance, a flap, a band.

    `length` runs along the drop and `width` across it, as the piece hangs.
    """

    name: str
    layer: str  # whose cloth it is cut from
    cloth: str  # its name in the shop list
    count: Figure[int]
    width: L
    length: L
    rides: Rides
    above_hem: L | None = None  # of a band across: its middle over the bottom edge


@dataclass(frozen=True, kw_only=True, slots=True)
class TapePlan:
    """Hook-and-loop tape that holds the head of the shade on the edge of its board."""

    width: L
    length: L


@dataclass(frozen=True, kw_only=True, slots=True)
class BandPlan:
    """Where bands lie on the face, before any seam or turn."""

    sewing: BandSewing
    lower: L | None = None  # of the band across, over the bottom edge
    upper: L | None = None
    side_edges: tuple[L, ...] = ()  # of the bands down the sides, from the left edge


@dataclass(frozen=True, kw_only=True, slots=True)
class ValancePlan:
    """A valance before the headrail; one on a board of its own says how that is cut."""

    kind: Valance
    depth: L
    width: L  # of its face, as it hangs
    return_depth: L | None = None  # round each end of its board
    board_depth: L | None = None
    board_length: L | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class SwagPlan:
    """A hem that nothing holds straight: how it hangs between two columns."""

    chord: L  # column to column, as they hang
    edge_length: L  # along the hem, from column to column
    dip: L  # the middle of the hem below its columns
    draw_in: L | None = None  # of each side, at the hem
    tapered_gap: N | None = None  # open at both sides, from the head to the hem
    flare: L | None = None  # the hem is cut so much wider than the head
    pinched: bool = False  # rings draw every fold up to the row at their columns
    tails: bool = False  # the cloth beyond the outer columns hangs free


@dataclass(frozen=True, kw_only=True, slots=True)
class PocketPlan:
    """Pockets that are folded for the rods, from the lining or from all layers."""

    place: RodPocket
    count: Figure[int]
    allowance: L  # cloth that each takes
    marks: tuple[L, ...]  # the middle of each on its flat cloth, from the bottom edge up


class Sewn(Enum):
    """What is sewn along a line that is marked on the flat cloth."""

    TUCK = "tuck"
    POCKET = "pocket"
    PLEAT = "pleat"


@dataclass(frozen=True, kw_only=True, slots=True)
class SewnLine:
    """A line marked on the flat cloth: across it, or upright.

    It is measured from the bottom edge up, or from the left edge as seen from the back.
    """

    kind: Sewn
    at: L
    upright: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class SewingStep:
    """One step at the table or the machine: what to do, and with which figures."""

    title: str
    instruction: str  # {0}, {1} … stand for figures
    figures: tuple[Figure[Any], ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Stack:
    """The shade fully raised."""

    raised_size: L  # top of board to the lowest visible edge
    depth: L
    glass_covered: L | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Layout:
    """All that is marked, cut and sewn."""

    style: StyleName
    rows: RowPlan
    columns: ColumnPlan
    widths: WidthPlan
    cuts: tuple[LayerCut, ...]
    stack: Stack
    travel: L  # design raise of the lowest ring row from fully down
    swag: SwagPlan | None = None
    side_turn: L | None = None  # turned in at each side, once
    hem_allowance: L | None = None  # turned up below the finished bottom edge
    top_allowance: L | None = None  # left above the top line, over the board and its staples
    lined: Figure[str] | None = None  # in words: unlined, lined, dim-out, blackout
    pieces: tuple[Piece, ...] = ()  # cut besides the layers
    pockets: PocketPlan | None = None  # for rods, where they are folded from the cloth
    tape: TapePlan | None = None  # at the head; None: stapled over the board
    bands: BandPlan | None = None
    valance: ValancePlan | None = None
    flap_length: L | None = None  # of the flaps at the ends of the board
    sewn: tuple[SewnLine, ...] = ()  # what is marked on the flat cloth besides rows and columns
    sewing: tuple[SewingStep, ...] = ()  # in the order of the work
