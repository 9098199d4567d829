"""The made-up shade put into plain SI numbers, as the cords feel it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from foldwright.core.design.panels import looped_fullness, panel_heights
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.stiffness import bending_length_m
from foldwright.core.weigh.layers import ClothLie
from foldwright.core.weigh.load import Lump, PanelLoad
from foldwright.core.weigh.made_up import MadeUp


@dataclass(frozen=True, kw_only=True, slots=True)
class PartMasses:
    """What hangs besides the layers, in kg: the bar, one rod, what lies at one row."""

    bar_kg: float
    rod_kg: float
    row_of_rings_kg: float
    strip_kg: float = 0.0  # under the rings of one row
    bands: tuple[tuple[float, float], ...] = ()  # across: over the bottom edge in m, and kg


def hang_up(shade: MadeUp, cloth: ClothLie, parts: PartMasses) -> PanelLoad:
    """Put a shade into the numbers from which its load curve is made.

    Takes: the shade; where its cloth lies; what its hardware weighs.

    Gives: the panel in SI; all of the shade's weight but what lies on the board is in it.

    Source: derived here.
    """
    gravity, rows = GRAVITY.value, shade.layout.rows
    *spacings, top_panel = (height.in_metres for height in panel_heights(rows))
    return PanelLoad(
        row_spacings_m=tuple(spacings),
        stacked_pitch_m=shade.stacked_pitch.in_metres,
        skirt_cloth_m=cloth.below_lowest_row_kg / cloth.line_kg_m,
        top_panel_m=top_panel,
        cloth_n_m=gravity * cloth.line_kg_m,
        bar_n=gravity * (parts.bar_kg + _below_the_rows_kg(shade, parts)),
        rows_n=(gravity * _row_kg(shade, parts),) * rows.count.value,
        travel_m=shade.layout.travel.value.in_metres,
        fullness=looped_fullness(rows),
        lumps=(
            *_rods_between_rows(shade, gravity * parts.rod_kg),
            *_bands_between_rows(shade, parts),
        ),
        tied_rows=rows.tied_rows.value,
        bending_length_m=bending_length_m(cloth for _, cloth in shade.layers),
    )


def _row_kg(shade: MadeUp, parts: PartMasses) -> float:
    rod_at_row = shade.layout.rows.rods.at_rows
    return parts.row_of_rings_kg + parts.strip_kg + (parts.rod_kg if rod_at_row else 0.0)


def _below_the_rows_kg(shade: MadeUp, parts: PartMasses) -> float:
    """Add up rods and bands that lie below the lowest row, and rise with the bar."""
    lowest_m = shade.layout.rows.marks[0].value.in_metres
    bands = sum(mass_kg for above_m, mass_kg in parts.bands if above_m <= lowest_m)
    return parts.rod_kg * _rods_in_the_skirt(shade) + bands


def _bands_between_rows(shade: MadeUp, parts: PartMasses) -> Iterator[Lump]:
    """Fix each band above the lowest row to its panel, as far along the cloth as it lies."""
    rows = shade.layout.rows
    for above_m, mass_kg in parts.bands:
        below = [mark.value.in_metres for mark in rows.marks if mark.value.in_metres < above_m]
        if below:
            arc = (above_m - below[-1]) * looped_fullness(rows)
            weight = GRAVITY.value * mass_kg
            yield Lump(panel=len(below) - 1, arc_m=arc, weight_n=weight)


def _rods_in_the_skirt(shade: MadeUp) -> int:
    """Count the rods that lie below the lowest row, and rise with the bar."""
    if not shade.layout.rows.rods.between_rows:
        return 0
    lowest = shade.layout.rows.marks[0].value
    return sum(mark.value < lowest for mark in shade.layout.rows.rod_marks)


def _rods_between_rows(shade: MadeUp, weight_n: float) -> Iterator[Lump]:
    """Fix each mid-fold rod to its panel, as far along the cloth as it is marked."""
    rows = shade.layout.rows
    at_rows = {mark.value for mark in rows.marks} if rows.rods.at_rows else set()
    for rod in (rod for rod in rows.rod_marks if rod.value not in at_rows):
        below = [mark.value for mark in rows.marks if mark.value <= rod.value]
        if below:
            arc = (rod.value - below[-1]).in_metres * looped_fullness(rows)
            yield Lump(panel=len(below) - 1, arc_m=arc, weight_n=weight_n)
