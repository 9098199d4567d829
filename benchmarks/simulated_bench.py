"""Shades that are not quite as their case says, and a bench on which they are tested.

Nothing of the inference is used here. A true shade has its own spring, weights and friction
within the ranges of its case, and besides what no case knows: cloth stiffer than drawn,
ring friction that grows or falls on the way up, places that drag, a hand that wavers, turns
miscounted.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.sampling import case_winding
from foldwright.core.lift.span import Span, span_of
from foldwright.core.lift.spring import SpringCase
from foldwright.core.prove.observing import GuidedStall, ScalePair, SpringTorque, Weighed
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad

Reals = NDArray[np.float64]
HEIGHTS = 240
STIFFEST_M = 0.04
FRICTION_TILT = 0.3
DRAG_SHARE = 0.02
STALL_READ_M = 0.008
HAND_N = 0.6
COUNT_TURNS = 0.15
WEIGHING = 0.02
GRAVITY = 9.80665


def some_case(chance: np.random.Generator) -> LiftCase:
    """Draw a flat spring shade of a usual size, its spring neither much too stiff nor too soft."""
    rows = int(chance.integers(5, 11))
    spacing, pitch = float(chance.uniform(0.15, 0.21)), 0.006
    panel = PanelLoad(
        row_spacings_m=(spacing,) * (rows - 1),
        stacked_pitch_m=pitch,
        skirt_cloth_m=0.07,
        top_panel_m=0.15,
        cloth_n_m=float(chance.uniform(3, 8)),
        bar_n=float(chance.uniform(2, 5)),
        rows_n=(0.4,) * rows,
        travel_m=(rows - 1) * (spacing - pitch) + 0.03,
    )
    tube = float(chance.choice([0.032, 0.038]))
    top = float(LoadCurve.of(panel).greatest_load())
    rate = 1.3 * top * (tube / 2 + 0.0007) / float(chance.uniform(9, 14))
    return LiftCase(
        load=panel,
        tube_outside_m=tube,
        cord_diameter_m=Span.within(0.0014, 0.1),
        spring=SpringCase(rate_n_m_turn=Span.within(rate, 0.09), greatest_torque_n_m=rate * 40),
        hand_force_limit_n=200.0,
        brake=Brake.NONE,
        lock=Lock.ONE_WAY,
        bar_mass_spread=0.03,
    )


@dataclass(frozen=True, kw_only=True)
class TrueShade:
    """One shade as it really is."""

    case: LiftCase
    rate: float
    friction: float
    tilt: float
    still: float
    hysteresis: float
    heights: Reals
    loads: Reals
    arm: float
    to_go: Reals
    miscount: float
    panel_kg: float

    @classmethod
    def drawn(cls, case: LiftCase, chance: np.random.Generator) -> TrueShade:
        """Draw one, by the ranges of the case and what no case knows."""

        def one(value: float | Span | None) -> float:
            return float(span_of(value or 0.0).at(chance.random(1))[0])

        cloth, bar = (one(Span.within(1.0, spread)) for spread in _spreads(case))
        panel = replace(
            case.load,
            cloth_n_m=case.load.cloth_n_m * cloth,
            bar_n=case.load.bar_n * bar,
            bending_length_m=float(chance.uniform(0, STIFFEST_M)),
        )
        curve, heights = LoadCurve.of(panel), np.linspace(0, panel.travel_m, HEIGHTS)
        winding = case_winding(case, chance.random(1))
        return cls(
            case=case,
            rate=one(case.spring.rate_n_m_turn if case.spring else None),
            friction=one(case.load_friction),
            tilt=float(chance.uniform(-FRICTION_TILT, FRICTION_TILT)),
            still=one(case.constant_friction_n_m),
            hysteresis=one(case.spring_hysteresis),
            heights=heights,
            loads=_loads(curve, heights, chance),
            arm=float(winding.arm(0.0)[0]),
            to_go=np.array([float(winding.turns_to_go(x, panel.travel_m)[0]) for x in heights]),
            miscount=float(chance.normal(0, COUNT_TURNS)),
            panel_kg=_panel_n(panel) / GRAVITY,
        )

    @property
    def rubbing(self) -> Reals:
        """Give the friction with the load at each height."""
        share = self.heights / self.heights[-1]
        return self.friction * (1 + self.tilt * (2 * share - 1))

    @property
    def needed(self) -> Reals:
        """Give the turns, as counted, with which each height is just passed."""
        torque = self.arm * self.loads * (1 + self.rubbing) + self.still
        return torque / (self.rate * (1 - self.hysteresis)) - self.to_go - self.miscount

    @property
    def least_turns(self) -> float:
        """Give the turns, as counted, that lift it all the way."""
        return float(self.needed.max())

    def stall(self, turns: float, chance: np.random.Generator) -> GuidedStall | None:
        """Guide it up and read where it stops; None where it does not move, or arrives."""
        stuck = np.flatnonzero(self.needed > turns)
        if not stuck.size or not stuck[0]:
            return None
        raise_m = float(self.heights[stuck[0]]) + float(chance.normal(0, STALL_READ_M))
        return GuidedStall(turns=turns, raise_m=min(max(raise_m, 0.0), self.case.load.travel_m))

    def scale(self, turns: float, share: float, chance: np.random.Generator) -> ScalePair:
        """Draw the bar slowly down and let it slowly up with a spring scale."""
        at = round(share * (HEIGHTS - 1))
        torque = self.rate * (turns + self.miscount + self.to_go[at])
        mean = torque / self.arm - self.loads[at]
        half = (self.hysteresis * torque + self.still) / self.arm
        half += self.rubbing[at] * self.loads[at]
        down, up = mean + half, mean - half
        wavers = chance.normal(0, HAND_N, 2)
        return ScalePair(
            turns=turns,
            raise_m=float(self.heights[at]),
            down_n=float(down + wavers[0]),
            up_n=float(up + wavers[1]),
        )

    def weighed(self, chance: np.random.Generator) -> Weighed:
        """Put the panel on a scale."""
        return Weighed(mass_kg=self.panel_kg * float(chance.normal(1, WEIGHING)))

    def spring_torque(self, turns: float, chance: np.random.Generator) -> SpringTorque:
        """Measure the spring alone."""
        torque = self.rate * turns * float(chance.normal(1, WEIGHING))
        return SpringTorque(turns=turns, torque_n_m=torque)


def _spreads(case: LiftCase) -> tuple[float, float]:
    return case.cloth_mass_spread, case.bar_mass_spread


def _loads(curve: LoadCurve, heights: Reals, chance: np.random.Generator) -> Reals:
    """Give the load at each height, stiffness and places that drag with it."""
    smooth = curve.load_after(heights) + curve.stiffness_extra(heights)
    middle = float(curve.load_after(curve.panel.travel_m / 2))
    places = chance.normal(0, DRAG_SHARE * middle, 12)
    return smooth + np.interp(heights, np.linspace(0, heights[-1], 12), places)


def _panel_n(panel: PanelLoad) -> float:
    cloth_m = panel.skirt_cloth_m + sum(panel.row_spacings_m) + panel.top_panel_m
    return panel.cloth_n_m * cloth_m + panel.bar_n + sum(panel.rows_n)
