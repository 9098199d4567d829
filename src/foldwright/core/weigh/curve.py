"""The load on all cords together while a shade is raised slowly, without friction.

One mechanism makes every figure here: a panel of cloth between a rising row and a
resting row hangs as a hairpin; only the half that hangs from the rising row is on the
cords. When the rows meet, the other half and the row's own weight arrive in one step.
The load is therefore the weight of all that hangs from a picked-up row.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Self

import numpy as np

from foldwright.core.facts.loads import (
    PICK_UP_TOLERANCE,
    STIFF_FADE,
    STIFF_REACH,
    STIFF_START,
)
from foldwright.core.weigh.folds import closing_lengths, loop_lengths, lump_raises, opening_raises
from foldwright.core.weigh.impossible import check_panel
from foldwright.core.weigh.load import PanelLoad
from foldwright.core.weigh.staircase import Samples, Staircase

Raise = float | Samples
Scale = float | Samples


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class LoadCurve:
    """The load of one shade against the raise of its lowest row, in newtons and metres.

    The cloth's part is kept apart from the hardware's, so that an uncertain cloth
    mass is a plain factor: `load = cloth_scale * cloth + hardware`. Raise and scale
    may be numbers or arrays that broadcast.

    Holds for: shades of limp cloth, moved slowly, cords without friction;
    any row spacings greater than the stacked pitch, equal or not.

    Source: derived here from the hairpin rule.

    >>> from foldwright.core.weigh.load import PanelLoad
    >>> panel = PanelLoad(
    ...     row_spacings_m=(0.2, 0.2), stacked_pitch_m=0.0, skirt_cloth_m=0.1, top_panel_m=0.2,
    ...     cloth_n_m=5.0, bar_n=3.0, rows_n=(0.5, 0.5, 0.5), travel_m=0.398,
    ...     bending_length_m=0.02,
    ... )
    >>> curve = LoadCurve.of(panel)
    >>> curve.pick_ups
    (0.2, 0.4)
    >>> float(curve.load_lowered()), float(curve.load_before(0.2)), float(curve.load_after(0.2))
    (4.0, 4.5, 5.5)
    >>> round(float(curve.load(0.398)), 3), round(float(curve.greatest_load()), 3)
    (5.995, 6.995)
    >>> round(float(curve.stiffness_extra(0.0)), 3), float(curve.stiffness_extra(0.1))
    (0.22, 0.0)
    """

    panel: PanelLoad
    cloth: Staircase
    hardware: Staircase
    pick_ups: tuple[float, ...]  # raise at which each further row is picked up, lowest first

    @classmethod
    def of(cls, panel: PanelLoad) -> Self:
        """Build the curve of a panel, or raise ImpossiblePanel where its parts contradict."""
        check_panel(panel)
        return cls(
            panel=panel,
            cloth=_cloth(panel),
            hardware=_hardware(panel),
            pick_ups=tuple(opening_raises(panel)[panel.tied_rows + 1 :]),
        )

    def load_after(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load just after a raise: what the lift must manage there."""
        return cloth_scale * self.cloth.after(raise_m) + self.hardware.after(raise_m)

    def load_before(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load just before a raise: what helps the hand least there."""
        return cloth_scale * self.cloth.before(raise_m) + self.hardware.before(raise_m)

    def load(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load at a raise, the upper value where a row is being picked up."""
        return self.load_after(raise_m, cloth_scale)

    def load_lowered(self, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load just lifted from fully down: bar, skirt, lowest row, lowest loop."""
        return self.load_after(0.0, cloth_scale)

    def greatest_load(self, raise_m: Raise | None = None, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load held at the stop, safe against a row spacing a few millimetres out.

        The stop is at the design travel unless told otherwise; a row picked up within
        the tolerance above it is counted.
        """
        stop = self.panel.travel_m if raise_m is None else raise_m
        reach = PICK_UP_TOLERANCE.value.in_metres
        cloth = self.cloth.after(stop, reach_m=reach)
        return cloth_scale * cloth + self.hardware.after(stop, reach_m=reach)

    def even_climb(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give the load if the same cloth and rows were gathered evenly, without steps.

        It is what the staircase tends to with ever more rows; with even panels, the top panel
        among them, it is touched just after each pick-up and never passed.
        """
        cloth_n_m, hardware_n_m = _even_slopes(self.panel)
        slope = cloth_scale * cloth_n_m + hardware_n_m
        return self.load_lowered(cloth_scale) + slope * np.asarray(raise_m, dtype=np.float64)

    def energy(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give the work done in raising from fully down, in joules, exactly."""
        return cloth_scale * self.cloth.work(raise_m) + self.hardware.work(raise_m)

    def into_fold(self, raise_m: Raise) -> Samples:
        """Give how far the open panel has been raised since its row was picked up, in m."""
        raised = np.asarray(raise_m, dtype=np.float64)
        starts = np.concatenate(([0.0], np.asarray(self.pick_ups, dtype=np.float64)))
        return raised - starts[np.searchsorted(starts, raised, side="right") - 1]

    def stiffness_extra(self, raise_m: Raise, cloth_scale: Scale = 1.0) -> Samples:
        """Give what stiff cloth adds to the load at a raise; 0 where no bending length is known.

        It is greatest just after each pick-up, so the load with it may fall a little
        inside a fold. A fit to simulated chains, good up to about 60 mm; no measurement.
        """
        bending_m = self.panel.bending_length_m
        into = self.into_fold(raise_m)
        if not bending_m:
            return np.zeros_like(into)
        fading = (into / (STIFF_REACH.value * bending_m)) ** STIFF_FADE.value
        extra = STIFF_START.value * self.panel.cloth_n_m * bending_m * np.maximum(0.0, 1 - fading)
        return cloth_scale * extra


def _even_slopes(panel: PanelLoad) -> tuple[float, float]:
    """Give what cloth and hardware add for each length of raise, taken over all free panels."""
    free = panel.row_spacings_m[panel.tied_rows :] or (1.0,)
    rows_n = sum(panel.rows_n[panel.tied_rows + 1 :])
    pitch_m = panel.stacked_pitch_m if panel.row_spacings_m[panel.tied_rows :] else 0.0
    travel_m = sum(free) - pitch_m * len(free)
    cloth_n = panel.cloth_n_m * panel.fullness * sum(free)
    return cloth_n / travel_m, (panel.backing_n_m * sum(free) + rows_n) / travel_m


def _cloth(panel: PanelLoad) -> Staircase:
    """Give the staircase of the cloth alone: closing half, then the next panel's loop."""
    loops = loop_lengths(panel)
    lengths = zip(panel.row_spacings_m, closing_lengths(panel), loops[1:], strict=True)
    steps = [
        panel.cloth_n_m * (panel.fullness * spacing - closed + next_loop)
        for spacing, closed, next_loop in lengths
    ]
    return _from_rest(
        panel,
        start_n=panel.cloth_n_m * (panel.skirt_cloth_m + loops[0]),
        slope_n_m=panel.cloth_n_m / 2,
        steps=list(zip(opening_raises(panel)[1:], steps, strict=True)),
    )


def _hardware(panel: PanelLoad) -> Staircase:
    """Give the staircase of bar, rows, lumps and the looped shade's backing."""
    rows = [
        row_n + panel.backing_n_m * (spacing + panel.stacked_pitch_m) / 2
        for row_n, spacing in zip(panel.rows_n[1:], panel.row_spacings_m, strict=True)
    ]
    lumps = [lump.weight_n for lump in panel.lumps]
    return _from_rest(
        panel,
        start_n=panel.bar_n + panel.rows_n[0],
        slope_n_m=panel.backing_n_m / 2,
        steps=[
            *zip(opening_raises(panel)[1:], rows, strict=True),
            *zip(lump_raises(panel), lumps, strict=True),
        ],
    )


def _from_rest(
    panel: PanelLoad, *, start_n: float, slope_n_m: float, steps: list[tuple[float, float]]
) -> Staircase:
    """Give the staircase from fully down, where rows tied together hang already."""
    tied_m = -opening_raises(panel)[0]
    hanging_n = sum(step_n for raise_m, step_n in steps if raise_m <= 0)
    return Staircase.build(
        start_n=start_n + slope_n_m * tied_m + hanging_n,
        slope_n_m=slope_n_m,
        steps=[step for step in steps if step[0] > 0],
    )
