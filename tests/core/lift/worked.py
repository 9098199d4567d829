"""An invented shade worked by hand, with springs, for the tests of the lift."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from foldwright.core.facts.wire import NEWER_METRIC, OLDER_METRIC, WireStrength
from foldwright.core.lift.case import LiftCase, answer_case
from foldwright.core.lift.case_answer import CaseAnswer, CaseWindow
from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.spring import SpringCase
from foldwright.core.lift.wire import WireSpring, tensile_strength
from foldwright.core.weigh.load import PanelLoad

PANEL = PanelLoad(
    row_spacings_m=(0.2,) * 7,
    stacked_pitch_m=0.005,
    skirt_cloth_m=0.06 * 1.15,
    top_panel_m=0.14,
    cloth_n_m=5.59214,
    bar_n=2.94200,
    rows_n=(0.402073,) * 8,
    travel_m=1.407,
)

A = WireSpring(wire_m=0.0019, mean_coil_m=0.0225, body_coils=200)
B = WireSpring(wire_m=0.0021, mean_coil_m=0.0225, body_coils=440)
C = WireSpring(wire_m=0.0021, mean_coil_m=0.0225, body_coils=480)
STIFFNESS_PA = 206e9
ALLOWABLE = 0.55

LIKELIEST = np.full((1, 16), 0.5)


def wound(wire: WireSpring, table: WireStrength = OLDER_METRIC) -> SpringCase:
    """Give a spring of the worked example, its strength by one table."""
    allowable = ALLOWABLE * tensile_strength(wire.wire_m, table)
    return SpringCase(
        rate_n_m_turn=wire.rate(STIFFNESS_PA),
        greatest_torque_n_m=wire.greatest_torque(allowable),
    )


def case(spring: SpringCase | None = None, **more: Any) -> LiftCase:
    """Give the worked shade, everything known exactly unless told otherwise."""
    exact = LiftCase(
        load=PANEL,
        tube_outside_m=0.038,
        cord_diameter_m=0.0014,
        safety_wraps=3,
        spring=spring,
        constant_friction_n_m=0.03,
        load_friction=0.12,
        spring_hysteresis=0.05,
        cloth_mass_spread=0.0,
        load_margin=0.10,
        release_turns=0.25,
        brake=Brake.NONE,
        speed_limit_m_s=0.5,
        hand_force_limit_n=50.0,
        winding_step_turns=0.5,
        lock=Lock.ONE_WAY,
        turning_inertia_kg_m2=1.5e-4,
    )
    return replace(exact, **more)


def answered(spring: SpringCase | None = None, **more: Any) -> CaseAnswer:
    return answer_case(case(spring, **more), LIKELIEST)


def window(spring: SpringCase, **more: Any) -> CaseWindow:
    found = answered(spring, **more).window
    assert found is not None
    return found


NEWER, OLDER = NEWER_METRIC, OLDER_METRIC
