"""The layers of one shade as pieces: face, lining, interlining; and the cover of its board."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from foldwright.core.design.layout import LayerCut, Layout, Piece, Rides
from foldwright.core.design.widths import full_pieces, full_widths, joins_in
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Board, Chosen, Cloth
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.pieces.matching import (
    Ends,
    Matching,
    before_shrinking,
    phase_across,
    phase_along,
    phase_as_it_falls,
    widest_about_motif,
)
from foldwright.core.pieces.own_shrinkage import LINING
from foldwright.core.pieces.piece import PieceToCut, ShadePieces
from foldwright.core.pieces.strips import Joins, cut_strips, seams_between, strips_of
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, supplied

L = Figure[Length]
N = Figure[float]

LIE_ACROSS = {Rides.BOARD, Rides.OWN_BOARD, Rides.BAND}
FACE, COVER = "face", "board cover"


@dataclass(frozen=True, kw_only=True, slots=True)
class ShadeToCut:
    """One shade as laid out, with how its pattern is to lie and what steam takes."""

    tag: str
    layout: Layout
    size: FinishedSize
    chosen: Chosen
    habits: Habits
    shrinkage: N
    board_length: L | None  # to cover; None where the cover of another shade covers it
    matching: Matching = field(default_factory=Matching)


def cut_pieces(shade: ShadeToCut) -> ShadePieces:
    """Tell every piece that a shade is cut from.

    Takes: the shade as laid out, and how its pattern is to lie.

    Gives: the face, whole or in strips with its seams; the lining and interlining; the
    pieces that are cut besides; the cover of the board. Layers without a cloth are left out.

    Holds for: layers of which the cloth is chosen.

    Source: common practice (full width in the centre, equal sides).

    >>> from foldwright.core.pieces.example import SHADE
    >>> [piece.name for piece in cut_pieces(SHADE).pieces]
    ['Stair face', 'Stair lining', 'Stair board cover']
    """
    cloths = _cloths(shade.chosen)
    cuts = [cut for cut in shade.layout.cuts if cut.cloth in cloths]
    face = next((cut for cut in cuts if cut.layer == FACE), None)
    faced = ShadePieces() if face is None else _face(shade, face, cloths[face.cloth])
    behind = [
        piece
        for cut in cuts
        if cut.layer != FACE
        for piece in _behind(shade, cut, cloths[cut.cloth])
    ]
    return ShadePieces(
        pieces=(*faced.pieces, *behind, *_besides(shade, cloths), *_board_cover(shade)),
        seams=faced.seams,
        turned_face=faced.turned_face,
    )


def _cloths(chosen: Chosen) -> dict[str, Cloth]:
    cloths = (chosen.face, chosen.lining, chosen.interlining, chosen.band, chosen.valance)
    return {cloth.name: cloth for cloth in cloths if cloth is not None}


def _face(shade: ShadeToCut, cut: LayerCut, cloth: Cloth) -> ShadePieces:
    ends = _ends(shade, cut)
    sewn = _as_sewn(shade, cut)
    whole = PieceToCut(
        name=f"{shade.tag} {FACE}",
        shade=shade.tag,
        layer=FACE,
        cloth=cut.cloth,
        width=sewn,
        length=cut.length,
        phase_across=phase_across(sewn, cloth, shade.matching),
        phase_along=phase_along(ends, cloth, shade.matching, shade.shrinkage),
        hidden_head=ends.head,
        hidden_foot=ends.hem,
    )
    joins = _face_joins(shade)
    if joins is None:
        return ShadePieces(pieces=(whole,), turned_face=whole)
    strips = strips_of(joins)
    falls = whole.phase_across or phase_as_it_falls(strips[1].begins, cloth)
    pieces = cut_strips(replace(whole, phase_across=falls), strips)
    seams = tuple(seams_between(pieces, strips))
    return ShadePieces(pieces=pieces, seams=seams, turned_face=whole)


def _ends(shade: ShadeToCut, cut: LayerCut) -> Ends:
    layout = shade.layout
    return Ends(
        length=cut.length,
        head=_as_cut("head as cut", layout.top_allowance, shade.shrinkage),
        hem=_as_cut("hem as cut", layout.hem_allowance, shade.shrinkage),
    )


def _as_cut(name: str, allowance: L | None, shrink: N) -> L:
    if allowance is None:
        return derived(name, ZERO, Unit.LENGTH, "Nothing is turned here.")
    value = before_shrinking(allowance.value, shrink)
    because = "{0}, longer by the shrinkage {1}."
    return derived(name, value, Unit.LENGTH, because, allowance, shrink)


def _as_sewn(shade: ShadeToCut, cut: LayerCut) -> L:
    """Give the width of the face with its strips sewn together, which is its width uncut."""
    joins, allowance = joins_in(shade.layout.widths.widths.value), shade.habits.seam_allowance
    if not joins:
        return cut.width
    value = cut.width.value - allowance.value * (2 * joins)
    because = f"{{0}} less {joins} seams with twice {{1}} each."
    return derived("width of the face as sewn", value, Unit.LENGTH, because, cut.width, allowance)


def _face_joins(shade: ShadeToCut) -> Joins | None:
    widths, allowance = shade.layout.widths, shade.habits.seam_allowance
    if widths.side_cut is None:
        return None
    pairs = zip(widths.seams, widths.seams[1:], strict=False)
    middles = tuple(_between(left, right) for left, right in pairs)
    return Joins(side_cut=widths.side_cut, middles=middles, allowance=allowance)


def _between(left: L, right: L) -> L:
    value = right.value - left.value
    because = "From the seam at {0} to the seam at {1}."
    return derived("middle piece showing", value, Unit.LENGTH, because, left, right)


def _behind(shade: ShadeToCut, cut: LayerCut, cloth: Cloth) -> tuple[PieceToCut, ...]:
    whole = PieceToCut(
        name=f"{shade.tag} {cut.layer}",
        shade=shade.tag,
        layer=cut.layer,
        cloth=cut.cloth,
        width=cut.width,
        length=cut.length,
    )
    joins = _behind_joins(shade, cut, cloth)
    return (whole,) if joins is None else cut_strips(whole, strips_of(joins))


def _behind_joins(shade: ShadeToCut, cut: LayerCut, cloth: Cloth) -> Joins | None:
    """Join a layer behind the face: full widths in the middle, equal sides."""
    widths = 1 if cut.widths is None else cut.widths.value
    if widths == 1:
        return None
    middles = full_pieces(widths)
    usable = supplied("usable width", cloth.usable_width, Unit.LENGTH, cloth.name)
    allowance = _allowance(shade, cut)
    because = "The usable width {0} less what the join takes, {1}, at each side."
    shown = usable.value - allowance.value * 2
    full = derived("full width showing", shown, Unit.LENGTH, because, usable, allowance)
    side = derived(
        "side piece as cut",
        (cut.width.value - usable.value * middles) / 2,
        Unit.LENGTH,
        f"Half of what {full_widths(middles)} of {{1}} leaves of {{0}}.",
        cut.width,
        usable,
        rounding=Rounding.CUT_OVERSIZE,
    )
    return Joins(side_cut=side, middles=(full,) * middles, allowance=allowance)


def _allowance(shade: ShadeToCut, cut: LayerCut) -> L:
    """Give what a join takes of each of its two pieces: a seam allowance, or half a lap."""
    if cut.lap is None:
        return shade.habits.seam_allowance
    because = "Half of the lap {0}."
    return derived("half a lap", cut.lap.value / 2, Unit.LENGTH, because, cut.lap)


def _besides(shade: ShadeToCut, cloths: dict[str, Cloth]) -> Iterator[PieceToCut]:
    """Cut what is cut besides the layers, as often as it is wanted."""
    for piece in shade.layout.pieces:
        if piece.cloth not in cloths:
            continue
        for number in range(1, piece.count.value + 1):
            numbered = f" {number}" if piece.count.value > 1 else ""
            cut = PieceToCut(
                name=f"{shade.tag} {piece.name}{numbered}",
                shade=shade.tag,
                layer=piece.name,
                cloth=piece.cloth,
                width=piece.width,
                length=piece.length,
                phase_across=_centred(piece, cloths[piece.cloth], shade.matching),
            )
            yield _as_it_fits(cut, cloths[piece.cloth])


def _centred(piece: Piece, cloth: Cloth, matching: Matching) -> L | None:
    """Let the pattern of a valance or band stand as on the face under it, where it can.

    Both lie about the middle of the shade, so that motif stands over motif.
    """
    alone = piece.count.value == 1 and piece.layer != LINING and piece.rides in LIE_ACROSS
    if not alone or piece.width.value > widest_about_motif(cloth, matching.across):
        return None
    return phase_across(piece.width, cloth, matching)


def _as_it_fits(piece: PieceToCut, cloth: Cloth) -> PieceToCut:
    """Lay a strip that is wider than its cloth along the roll, where the cloth has no up."""
    if piece.width.value <= cloth.usable_width or cloth.directional:
        return piece
    return replace(piece, width=piece.length, length=piece.width)


def _board_cover(shade: ShadeToCut) -> Iterator[PieceToCut]:
    """Cover the board all round like a parcel, with lining if there is any."""
    cloth, board = shade.chosen.lining or shade.chosen.face, shade.chosen.board
    if cloth is None or board is None or shade.board_length is None:
        return
    cover = PieceToCut(
        name=f"{shade.tag} {COVER}",
        shade=shade.tag,
        layer=COVER,
        cloth=cloth.name,
        width=_cover_width(shade.board_length, shade.habits),
        length=_cover_length(board, shade.habits),
    )
    yield _as_it_fits(cover, cloth)


def _cover_width(length: L, habits: Habits) -> L:
    beyond = habits.cover_beyond_board
    return derived(
        "board cover along the board",
        length.value + beyond.value,
        Unit.LENGTH,
        "The board {0}, and {1} to wrap both ends.",
        length,
        beyond,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _cover_length(board: Board, habits: Habits) -> L:
    thickness = supplied("board thickness", board.thickness, Unit.LENGTH, board.name)
    depth = supplied("board depth", board.depth, Unit.LENGTH, board.name)
    return derived(
        "board cover around the board",
        (thickness.value + depth.value) * 2 + habits.cover_overlap.value,
        Unit.LENGTH,
        "Twice {0} and twice {1}, and an overlap of {2}.",
        thickness,
        depth,
        habits.cover_overlap,
        rounding=Rounding.CUT_OVERSIZE,
    )
