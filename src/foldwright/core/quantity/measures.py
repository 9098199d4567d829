"""The measures of a workroom, to read and to print: one door to both."""

from __future__ import annotations

from foldwright.core.quantity.measure_printing import (
    print_area,
    print_areal_mass,
    print_energy,
    print_force,
    print_line_mass,
    print_mass,
    print_number,
    print_rate,
    print_share,
    print_speed,
    print_stiffness,
    print_torque,
    print_turns,
)
from foldwright.core.quantity.measure_reading import (
    read_areal_mass,
    read_force,
    read_line_mass,
    read_mass,
    read_torque,
)
from foldwright.core.quantity.number import read_number, read_share

__all__ = [
    "print_area",
    "print_areal_mass",
    "print_energy",
    "print_force",
    "print_line_mass",
    "print_mass",
    "print_number",
    "print_rate",
    "print_share",
    "print_speed",
    "print_stiffness",
    "print_torque",
    "print_turns",
    "read_areal_mass",
    "read_force",
    "read_line_mass",
    "read_mass",
    "read_number",
    "read_share",
    "read_torque",
]
