"""One piece of cloth as it is cut, and what joins it to its neighbours."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class PieceToCut:
    """One piece, all allowances in, head up and face towards you.

    A phase is how far behind a motif's centre the left edge or the head lies; None is no
    rule. Hidden ends are those that nobody sees on the hanging shade.
    """

    name: str
    shade: str
    layer: str
    cloth: str  # its name in the shop list
    width: L
    length: L
    phase_across: L | None = None
    phase_along: L | None = None
    hidden_head: L | None = None
    hidden_foot: L | None = None
    side_partner: str | None = None  # the piece that is the other side of the same layer


@dataclass(frozen=True, kw_only=True, slots=True)
class PieceSeam:
    """Two pieces sewn together: `right` begins so far to the right of where `left` begins."""

    left: str
    right: str
    across: L


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadePieces:
    """All pieces of one shade, the seams of its face, and the face in one piece if turned."""

    pieces: tuple[PieceToCut, ...] = ()
    seams: tuple[PieceSeam, ...] = ()
    turned_face: PieceToCut | None = None
