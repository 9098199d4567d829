"""Read what only suppliers' sheets state: a spring's rate and a material's stiffness."""

from __future__ import annotations

import re

from foldwright.core.quantity.measure_reading import INCH_M, POUND_FORCE_N
from foldwright.core.quantity.measures import read_number, read_torque
from foldwright.core.quantity.unreadable import Unreadable

_EACH_TURN = re.compile(r"\s*(?:/|\ba\b|\bper\b)\s*turn\s*$", re.IGNORECASE)
_STIFFNESS_UNITS = {
    "gpa": 1e9,
    "mpa": 1e6,
    "n/mm2": 1e6,
    "million psi": 1e6 * POUND_FORCE_N / INCH_M**2,
}


def read_rate(text: str) -> float:
    """Read a spring's rate, which is per turn, in N.m.

    >>> read_rate("0.03 N.m a turn"), read_rate("30 N.mm/turn")
    (0.03, 0.03)
    """
    torque, found = _EACH_TURN.subn("", text)
    if not found:
        raise Unreadable(
            what=f"“{text}” does not say that it is per turn",
            remedy="Type for example 0.03 N.m/turn; a rate per radian is 6.28 times smaller.",
        )
    return read_torque(torque)


def read_stiffness(text: str) -> float:
    """Read a modulus of elasticity, in Pa.

    >>> read_stiffness("69 GPa")
    69000000000.0
    """
    tidy = text.strip().lower().replace("²", "2")
    for unit, pascals in _STIFFNESS_UNITS.items():
        if tidy.endswith(unit):
            return read_number(tidy.removesuffix(unit)) * pascals
    raise Unreadable(what=f"“{text}” has no unit of stiffness", remedy="Type for example 69 GPa.")
