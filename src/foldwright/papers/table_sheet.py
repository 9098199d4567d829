"""The table layout sheet: the panel face down with every mark, and what is cut for it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import RodPlace, RodPocket
from foldwright.core.design.layout import LayerCut, Layout, Piece
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.table import table_layout
from foldwright.core.drawing.words import in_full
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure
from foldwright.core.why.telling import show
from foldwright.papers.header import SIZES, Header, Paper
from foldwright.papers.heading import shared
from foldwright.papers.runs import runs
from foldwright.papers.typesetting import SMALLER_WORDS_PT, WORDS_PT, lettered, picture, typeset

TITLE = "Table layout"
TEMPLATE = "table.typ"
BROAD_FROM = 1.15  # width over drop from which the drawing takes the whole width of the page
LISTS_WIDTH, GAP = 60.0, 4.0
# Of the height of the paper, roomiest first.
BESIDE_SHARES = (0.72, 0.68, 0.64, 0.6, 0.54, 0.47)
ABOVE_SHARES = (0.48, 0.44, 0.4, 0.36, 0.3, 0.25)


def table_sheet(plan: ShadePlan, header: Header, paper: Paper, system: System) -> bytes:
    """Print what is cut and marked on the table, on one page.

    Takes: the plan, with size and layout; the header; the paper; the reader's system.

    Gives: a tagged PDF of one page.

    Raises: ValueError when the shade has no finished size or no layout yet.

    Source: common practice (what a table layout holds).
    """
    if plan.layout is None or plan.size is None:
        message = f"shade {plan.spec.tag} has no layout yet: see its findings before printing"
        raise ValueError(message)
    broad = _broad(plan.layout, plan.size)
    layout, lists = plan.layout, _lists(plan, plan.layout, system)
    data = shared(plan, header, paper, system, TITLE) | {
        "broad": broad,
        "cuts": _cuts(layout, system),
        "lists": [{"name": name, "lines": lines} for name, lines in lists if lines],
        "whys": [_why(figure, system) for figure in _explained(layout, plan.size)],
    }
    return typeset(TEMPLATE, _drafts(plan, data, paper, system), header.printed_at)


def _broad(layout: Layout, size: FinishedSize) -> bool:
    """Tell whether the cloth lies broad on the table, flat, before it is gathered or looped."""
    across = layout.widths.cloth_width or size.width
    along = layout.cuts[0].body if layout.rows.cloth_marks and layout.cuts else None
    return across.value / (along or size.drop).value >= BROAD_FROM


def _drafts(
    plan: ShadePlan, data: dict[str, Any], paper: Paper, system: System
) -> Iterator[dict[str, Any]]:
    """Let first the drawing give way to stops and whys, then the letters."""
    draft = data
    for frame in _frames(paper, broad=data["broad"]):
        draft = data | {"view": picture(table_layout(plan, system, frame))}
        yield lettered(draft, WORDS_PT)
    for size in SMALLER_WORDS_PT:
        yield lettered(draft, size)


def _frames(paper: Paper, *, broad: bool) -> Iterator[Frame]:
    """Give a broad shade the width of the page, any other the height beside the lists."""
    size = SIZES[paper]
    width = size.inside_width if broad else size.inside_width - LISTS_WIDTH - GAP
    for share in ABOVE_SHARES if broad else BESIDE_SHARES:
        yield Frame(width=width, height=size.height * share)


def _cuts(layout: Layout, system: System) -> list[dict[str, str]]:
    """List each layer, and each piece beside the layers, as it is cut."""
    layers = [_cut(cut.layer, cut, system) for cut in layout.cuts]
    return layers + [_cut(_counted(piece), piece, system) for piece in layout.pieces]


def _cut(name: str, cut: LayerCut | Piece, system: System) -> dict[str, str]:
    return {
        "layer": name,
        "cloth": cut.cloth,
        "width": in_full(cut.width, system),
        "length": in_full(cut.length, system),
    }


def _counted(piece: Piece) -> str:
    return piece.name if piece.count.value == 1 else f"{piece.name} ({piece.count.value} of it)"


POCKETS = {
    RodPocket.SEWN_ON: "sewn on",
    RodPocket.LINING: "in the lining",
    RodPocket.TO_THE_BACK: "folded to the back",
    RodPocket.TO_THE_ROOM: "folded to the room",
}

Lines = list[tuple[str, str]]


def _lists(plan: ShadePlan, layout: Layout, system: System) -> Iterator[tuple[str, Lines]]:
    """List what is turned, marked and sewn, each with a name and a figure."""
    turns = (layout.side_turn, layout.hem_allowance, layout.top_allowance)
    tape = () if layout.tape is None else (layout.tape.width, layout.tape.length)
    yield "Turns and allowances", _named([figure for figure in (*turns, *tape) if figure], system)
    rows = layout.rows
    marks: list[Figure[Any]] = [rows.count, rows.spacing, rows.first_row]
    marks += [rows.top_panel, rows.skirt]
    if rows.fullness.value != 1:
        marks.append(rows.fullness)
    if rows.pouf is not None:
        marks += [rows.tied_rows, rows.pouf]
    yield "Rows", _named(marks, system)
    columns = layout.columns
    yield "Columns", _named([columns.count, columns.pitch, columns.edge_distance], system)
    yield "Seams", _seams(layout, system)
    yield "Rods", _rods(plan, layout, system)
    yield "Valance and flaps", _named(list(_before_the_rail(layout)), system)


def _named(figures: list[Figure[Any]], system: System) -> Lines:
    return [(figure.name, show(figure, system)) for figure in figures]


def _before_the_rail(layout: Layout) -> Iterator[Figure[Any]]:
    """Give the finished sizes of what hangs before the headrail and at its ends."""
    plan = layout.valance
    sizes = () if plan is None else (plan.depth, plan.width, plan.return_depth)
    board = () if plan is None else (plan.board_length, plan.board_depth)
    yield from (figure for figure in (*sizes, *board, layout.flap_length) if figure is not None)


def _seams(layout: Layout, system: System) -> Lines:
    """List the pieces of a joined face."""
    widths = layout.widths
    pieces = (widths.centre_visible, widths.side_visible, widths.side_cut)
    return _named([piece for piece in pieces if piece], system) if widths.seams else []


def _rods(plan: ShadePlan, layout: Layout, system: System) -> Lines:
    """Name the rods and where they lie."""
    if layout.rows.rods is RodPlace.NONE:
        return []
    count = len(layout.rows.rod_marks)
    rods = (plan.spec.materials.rod or "rods", f"{count} {layout.rows.rods.value}")
    return [rods, *_pockets(layout, system)]


def _pockets(layout: Layout, system: System) -> Lines:
    """List the pockets that are folded for the rods; no drawing shows those of the lining."""
    pockets = layout.pockets
    if pockets is None:
        return []
    marks = pockets.marks if pockets.place is RodPocket.LINING else ()
    return [("pockets", POCKETS[pockets.place]), *_named([pockets.allowance, *marks], system)]


def _explained(layout: Layout, size: FinishedSize) -> Iterator[Figure[Any]]:
    """Choose the figures whose why the table wants to check with a calculator."""
    yield from (size.width, size.drop)
    yield from (layout.rows.spacing, layout.rows.first_row, layout.rows.head_allowance)
    yield layout.columns.pitch
    for cut in layout.cuts:
        yield from (cut.width, cut.length)
    if layout.widths.side_cut is not None:
        yield layout.widths.side_cut


def _why(figure: Figure[Any], system: System) -> dict[str, Any]:
    """Print a figure with its sentence."""
    return {
        "name": figure.name,
        "value": show(figure, system),
        "runs": runs(figure.because, figure.inputs, system),
    }
