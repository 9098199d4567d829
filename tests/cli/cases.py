"""Lifts in plain SI for the tests."""

from __future__ import annotations

import json
from typing import Any

PANEL: dict[str, Any] = {
    "row_spacings_m": [0.2] * 7,
    "stacked_pitch_m": 0.005,
    "skirt_cloth_m": 0.069,
    "top_panel_m": 0.14,
    "cloth_n_m": 5.59214,
    "bar_n": 2.942,
    "rows_n": [0.402073] * 8,
    "travel_m": 1.407,
}
CASE: dict[str, Any] = {
    "name": "worked example",
    "load": PANEL,
    "tube_outside_m": 0.038,
    "cord_diameter_m": 0.0014,
    "constant_friction_n_m": 0.03,
    "load_friction": 0.12,
    "spring_hysteresis": 0.05,
    "cloth_mass_spread": 0.0,
    "load_margin": 0.1,
    "spring": {"rate_n_m_turn": 0.034348, "greatest_torque_n_m": 0.8493},
    "brake": "none",
    "lock": "one-way",
}


def line(**changes: Any) -> str:
    """Give the case as one line, with changes."""
    return json.dumps(CASE | changes)
