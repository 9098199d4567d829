"""The cut sheet of one cloth: what to cut from which mark, roll by roll, and the roll drawn."""

from __future__ import annotations

from typing import Any

from foldwright.core.cloth.finding.listing import Cut, CutPiece, RollCuts, cut_list
from foldwright.core.cloth.order import ClothOrder, ClothPlan, Remnant
from foldwright.core.cloth.wording import comparison_rows, gap_in_words
from foldwright.core.drawing.frame import Frame
from foldwright.core.drawing.model import Drawing
from foldwright.core.drawing.roll import roll_drawings
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_cloth, print_length
from foldwright.core.quantity.rounding import System
from foldwright.papers.header import SIZES, Header, Paper
from foldwright.papers.typesetting import WORDS_PT, lettered, picture, typeset

TITLE = "Cut sheet"
TEMPLATE = "cut.typ"
BAND_HEIGHTS = (110.0, 95.0, 80.0, 65.0)  # largest first
ROOM_FOR_BANDS = 140.0  # of a page's height, so that the first cuts stand under the drawing


def cut_sheet(  # noqa: PLR0913 - a plan, its order and its cloth, and what every sheet takes
    plan: ClothPlan, order: ClothOrder, *, cloth: str, header: Header, paper: Paper, system: System
) -> bytes:
    """Print the cuts of one cloth in the order of the table, with the roll to scale.

    Takes: a plan that has been checked and its order; the name of the cloth; the header; the
    paper; the reader's system.

    Gives: a tagged PDF, of as many pages as the rolls need.

    Source: common practice (what a cut sheet holds).
    """
    size = SIZES[paper]
    data = {
        "paper": paper.value,
        "margin": size.margin,
        "title": TITLE,
        "tag": cloth,
        "job": header.job,
        "takes": print_cloth(plan.bought, system),
        "in_hand": bool(order.rolls),
        "gap": gap_in_words(plan, system),
        "turned": plan.railroaded,
        "comparison": comparison_rows(plan, system),
        "rolls": [_roll(roll, order, system, size.inside_width) for roll in cut_list(plan, order)],
        "foot": _foot(header),
    }
    return typeset(TEMPLATE, [lettered(data, WORDS_PT)], header.printed_at)


def _roll(roll: RollCuts, order: ClothOrder, system: System, width: float) -> dict[str, Any]:
    """Print one roll: how it was measured, its drawing, its cuts and what is left."""
    return {
        "name": _roll_name(roll),
        "facts": _facts(roll, order, system),
        "views": [picture(band) for band in _bands(roll, order, system, width)],
        "cuts": [_cut(cut, system) for cut in roll.cuts],
        "repeat": any(cut.start_in_repeat is not None for cut in roll.cuts),
        "balance": any(cut.left_on_roll is not None for cut in roll.cuts),
        "remnants": [_remnant(left, system) for left in roll.worth_keeping],
        "used": print_cloth(roll.use.used, system),
        "lost": _lost(roll, system),
    }


def _roll_name(roll: RollCuts) -> str:
    return f"Roll {roll.use.name}" if roll.in_hand else "To be cut from what is bought"


def _bands(roll: RollCuts, order: ClothOrder, system: System, width: float) -> tuple[Drawing, ...]:
    """Draw the roll as large as its bands together find room over the cuts."""
    bands: tuple[Drawing, ...] = ()
    for height in BAND_HEIGHTS:
        bands = roll_drawings(roll, order, system, Frame(width=width, height=height))
        if len(bands) * height <= ROOM_FOR_BANDS:
            break
    return bands


def _facts(roll: RollCuts, order: ClothOrder, system: System) -> list[list[str]]:
    """List what was measured on the roll; the cutter holds it against the cloth."""
    pattern = order.pattern
    lengths = [
        ("Usable width", roll.use.usable_width),
        ("Length", roll.use.length),
        ("Repeat along", pattern.vertical_repeat),
        ("Repeat across", pattern.horizontal_repeat),
    ]
    facts = [[name, print_length(length, system)] for name, length in lengths if length]
    return [["Lot", roll.use.lot or "not noted"], *facts]


def _lost(roll: RollCuts, system: System) -> str:
    """Say what is lost between the cuts, and to what."""
    lost = [
        f"{print_length(length, system)} to {cause}"
        for length, cause in ((roll.lost_to_repeat, "the repeat"), (roll.lost_to_flaws, "flaws"))
        if length
    ]
    return f"Lost between cuts: {' and '.join(lost)}." if lost else ""


def _cut(cut: Cut, system: System) -> dict[str, Any]:
    return {
        "number": cut.number,
        "start": print_length(cut.start, system),
        "end": print_length(cut.end, system),
        "length": print_length(cut.length, system),
        "repeat": _known(cut.start_in_repeat, system),
        "left": _known(cut.left_on_roll, system),
        "pieces": [_piece(piece, system) for piece in cut.pieces],
    }


def _known(length: Length | None, system: System) -> str:
    return "" if length is None else print_length(length, system)


def _piece(piece: CutPiece, system: System) -> dict[str, Any]:
    trims = [
        f"{print_length(trim, system)} off its {end}"
        for trim, end in ((piece.head_trim, "start"), (piece.foot_trim, "end"))
        if trim
    ]
    return {
        "key": piece.key,
        "name": piece.name,
        "size": f"{print_length(piece.width, system)} by {print_length(piece.length, system)}",
        "rip": f"{print_length(piece.rip_from, system)} to {print_length(piece.rip_to, system)}",
        "joins": ", ".join(piece.partners),
        "trims": ", ".join(trims),
        "turned": piece.turned,
    }


def _remnant(left: Remnant, system: System) -> dict[str, str]:
    return {
        "at": print_length(left.along, system),
        "across": print_length(left.across, system),
        "size": f"{print_length(left.width, system)} by {print_length(left.length, system)}",
        "uses": ", ".join(left.uses),
    }


def _foot(header: Header) -> str:
    printed = f"{header.printed_at:%Y-%m-%d %H:%M}"
    replaces = f", replaces version {header.replaces}" if header.replaces else ""
    return f"Version {header.version}{replaces}. Printed {printed}."
