"""Where every piece of a shade hangs, and the potential energy of its weights.

Written from the picture alone, piece by piece, so that the load curve can be held to it:
a panel of cloth of length L across a gap D hangs as a hairpin, (L - D)/2 from its lower
row and (L + D)/2 from its upper row.
"""

from __future__ import annotations

import itertools

from foldwright.core.weigh.load import PanelLoad


def row_heights(shade: PanelLoad, raise_m: float) -> list[float]:
    """Give the height of each row and of the fixing, above the lowest row when untied."""
    tied = sum(s - shade.stacked_pitch_m for s in shade.row_spacings_m[: shade.tied_rows])
    down = [0.0]
    for spacing in (*shade.row_spacings_m, shade.top_panel_m):
        down.append(down[-1] + spacing)
    heights = [tied + raise_m]
    for height in down[1:-1]:
        heights.append(max(height, heights[-1] + shade.stacked_pitch_m))
    return [*heights, down[-1]]


def hairpin_energy(lower: float, upper: float, length: float, weight_n_m: float) -> float:
    """Give the energy of the two hanging halves of one panel."""
    from_lower = (length - (upper - lower)) / 2
    from_upper = length - from_lower
    return weight_n_m * (
        from_lower * (lower - from_lower / 2) + from_upper * (upper - from_upper / 2)
    )


def point_height(lower: float, upper: float, length: float, arc: float) -> float:
    """Give the height of a point that lies `arc` up the cloth from the lower row."""
    from_lower = (length - (upper - lower)) / 2
    return lower - arc if arc <= from_lower else upper - (length - arc)


def potential_energy(shade: PanelLoad, raise_m: float) -> float:
    """Give the energy of bar, skirt, rows, cloth, backing and lumps at a raise, in joules."""
    rows = row_heights(shade, raise_m)
    spans = list(itertools.pairwise(rows))
    lengths = (*shade.row_spacings_m, shade.top_panel_m)
    energy = (shade.bar_n + shade.cloth_n_m * shade.skirt_cloth_m) * rows[0]
    energy += sum(weight * height for weight, height in zip(shade.rows_n, rows, strict=False))
    for (lower, upper), length in zip(spans, lengths, strict=True):
        energy += hairpin_energy(lower, upper, shade.fullness * length, shade.cloth_n_m)
        energy += hairpin_energy(lower, upper, length, shade.backing_n_m)
    for lump in shade.lumps:
        cloth = shade.fullness * lengths[lump.panel]
        energy += lump.weight_n * point_height(*spans[lump.panel], cloth, lump.arc_m)
    return energy
