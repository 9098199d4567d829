"""What hangs on the cords: the masses, and the panel as plain SI numbers."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.why.figure import Figure

N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Lump:
    """A weight fixed to one panel of cloth: a mid-fold rod, a trim.

    `panel` counts from 0, the panel between row 0 and row 1; `arc_m` is measured
    along the cloth up from the lower row.
    """

    panel: int
    arc_m: float
    weight_n: float


@dataclass(frozen=True, kw_only=True, slots=True)
class PanelLoad:
    """A shade as the lift feels it, in SI; rows are counted from the bottom.

    `row_spacings_m[i]` is the vertical distance from row i to row i + 1 when fully
    down, so there is one fewer than rows. Weights are in newtons, weights per length
    of cloth in newtons per metre of *cloth length* over the whole width, all layers.
    """

    row_spacings_m: tuple[float, ...]
    stacked_pitch_m: float
    skirt_cloth_m: float  # cloth below row 0, turn-up included
    top_panel_m: float  # top row to the fixing
    cloth_n_m: float
    bar_n: float  # bar, end caps and hem pocket
    rows_n: tuple[float, ...]  # rings and rod of each row
    travel_m: float
    fullness: float = 1.0
    backing_n_m: float = 0.0  # looped: support or tape, per metre of its own length
    lumps: tuple[Lump, ...] = ()
    tied_rows: int = 0
    bending_length_m: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Weights:
    """The made-up shade on the scale."""

    layers: tuple[N, ...]  # one mass for each layer of cloth
    bar: N
    rods: N
    rings: N
    total: N
    load: PanelLoad
    pieces: tuple[N, ...] = ()  # on the cords: strips and bands
    beside: tuple[N, ...] = ()  # on the board, not on the cords: valance and flaps
    apart: tuple[N, ...] = ()  # on a board of its own
    bound: Figure[str] | None = None  # why the load is the most it can be, and not what it is
