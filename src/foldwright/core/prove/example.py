"""An invented shade for the examples of this room."""

from __future__ import annotations

from foldwright.core.lift.choices import Brake, Lock
from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.weigh.load import PanelLoad

PANEL = PanelLoad(
    row_spacings_m=(0.2,) * 7,
    stacked_pitch_m=0.005,
    skirt_cloth_m=0.069,
    top_panel_m=0.14,
    cloth_n_m=5.59214,
    bar_n=2.942,
    rows_n=(0.402073,) * 8,
    travel_m=1.407,
)
CASE = LiftCase(
    load=PANEL,
    tube_outside_m=0.038,
    cord_diameter_m=0.0014,
    spring=SpringCase(rate_n_m_turn=Span.within(0.034348, 0.09), greatest_torque_n_m=0.8493),
    brake=Brake.NONE,
    lock=Lock.ONE_WAY,
)
