"""Shades that are let go in the tests: two worked examples of the derivation."""

from __future__ import annotations

from tests.core.lift.worked import PANEL, STIFFNESS_PA, B

from foldwright.core.lift.winding import CordWinding
from foldwright.core.prove.rising import RisingShade
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.load import PanelLoad

CHAIN_PANEL = PanelLoad(
    row_spacings_m=(0.2,) * 5,
    stacked_pitch_m=0.008,
    skirt_cloth_m=0.06,
    top_panel_m=0.2,
    cloth_n_m=9.0,
    bar_n=4.0,
    rows_n=(0.5,) * 6,
    travel_m=1.06,
)
CHAIN_ARM_M = 0.0195
RATE_B = B.rate(STIFFNESS_PA)


def worked(
    turns: float = 11.0, brake_drag_n_m_s: float = 0.0, rate_n_m_turn: float = RATE_B
) -> RisingShade:
    """Give the worked example's spring B, with a brake or without."""
    return RisingShade(
        curve=LoadCurve.of(PANEL),
        winding=CordWinding(tube_radius_m=0.019, cord_diameter_m=0.0014, safety_wraps=3),
        rate_n_m_turn=rate_n_m_turn,
        turns=turns,
        constant_friction_n_m=0.03,
        load_friction=0.12,
        spring_hysteresis=0.05,
        brake_drag_n_m_s=brake_drag_n_m_s,
        turning_inertia_kg_m2=1.5e-4,
    )


def chain(turns: float, drag_n_s_m: float) -> RisingShade:
    """Give the shade that was also run as a chain of links in a physics engine."""
    return RisingShade(
        curve=LoadCurve.of(CHAIN_PANEL),
        winding=CordWinding(tube_radius_m=CHAIN_ARM_M, cord_diameter_m=0.0, safety_wraps=3),
        rate_n_m_turn=0.028,
        turns=turns,
        constant_friction_n_m=0.03,
        load_friction=0.0,
        spring_hysteresis=0.0,
        brake_drag_n_m_s=drag_n_s_m * CHAIN_ARM_M**2,
        turning_inertia_kg_m2=1.2e-4,
    )
