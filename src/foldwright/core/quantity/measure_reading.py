"""Read masses, cloth weights, forces and torques in the units that suppliers print.

One trap has cost many shades: a mill's "14 oz" may be ounces in a *linear* yard of
its own width, not in a square yard. So a cloth weight in bare ounces is refused.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.number import DECIMAL, exact_decimal, tidy_text
from foldwright.core.quantity.unreadable import Unreadable

POUND_KG = 0.45359237  # by definition, yard-and-pound-1959
OUNCE_KG = POUND_KG / 16
GRAVITY_M_S2 = 9.80665  # by definition, standard-gravity-1901
POUND_FORCE_N = POUND_KG * GRAVITY_M_S2
INCH_M = 0.0254  # by definition, yard-and-pound-1959
FOOT_M = 12 * INCH_M
YARD_M = 36 * INCH_M

WORDS = {
    "ounces": "oz", "ounce": "oz", "grams": "g", "gram": "g", "grammes": "g", "kilograms": "kg",
    "kilogram": "kg", "pounds": "lb", "pound": "lb", "lbs": "lb", "square": "sq", "linear": "lin",
    "running": "lin", "yards": "yd", "yard": "yd", "yds": "yd", "metres": "m", "metre": "m",
    "meters": "m", "meter": "m", "newtons": "n", "newton": "n", "inches": "in", "inch": "in",
    "feet": "ft", "foot": "ft", "millimetres": "mm", "millimetre": "mm", "millimeters": "mm",
    "millimeter": "mm", "per": "/", "a": "/",
}  # fmt: skip


@dataclass(frozen=True, kw_only=True, slots=True)
class Kind:
    """One kind of measure: its units with their size in SI, an example, and what is absurd."""

    name: str
    units: Mapping[str, float]
    example: str
    greatest: float  # nothing in a workroom is larger


MASS = Kind(
    name="mass",
    units={"g": 0.001, "kg": 1.0, "lb": POUND_KG, "oz": OUNCE_KG},
    example="1.2 kg or 3 lb",
    greatest=500.0,
)
FORCE = Kind(
    name="force",
    units={
        "n": 1.0, "lbf": POUND_FORCE_N, "lb": POUND_FORCE_N, "kgf": GRAVITY_M_S2,
        "kg": GRAVITY_M_S2, "ozf": POUND_FORCE_N / 16, "oz": POUND_FORCE_N / 16,
    },
    example="22 N or 5 lbf",
    greatest=10_000.0,
)  # fmt: skip
TORQUE = Kind(
    name="torque",
    units={
        "nm": 1.0, "nmm": 0.001, "ncm": 0.01, "kgfcm": GRAVITY_M_S2 * 0.01,
        "kgcm": GRAVITY_M_S2 * 0.01,
        **dict.fromkeys(("inlb", "inlbf", "lbin", "lbfin"), POUND_FORCE_N * INCH_M),
        **dict.fromkeys(("ftlb", "ftlbf", "lbft", "lbfft"), POUND_FORCE_N * FOOT_M),
        **dict.fromkeys(("inoz", "inozf", "ozin", "ozfin"), POUND_FORCE_N / 16 * INCH_M),
    },
    example="0.85 N·m or 7.5 in·lb",
    greatest=1_000.0,
)  # fmt: skip
LINE_MASS = Kind(
    name="mass per length",
    units={
        "kg/m": 1.0, "g/m": 0.001, "g/cm": 0.1, "lb/ft": POUND_KG / FOOT_M,
        "lb/in": POUND_KG / INCH_M, "oz/ft": OUNCE_KG / FOOT_M, "oz/in": OUNCE_KG / INCH_M,
    },
    example="465 g/m or 0.31 lb/ft",
    greatest=100.0,
)  # fmt: skip
AREAL_MASS = Kind(
    name="cloth weight",
    units={"g/m2": 0.001, "gsm": 0.001, "kg/m2": 1.0, "oz/yd2": OUNCE_KG / YARD_M**2},
    example="270 g/m2 or 8 oz/yd2",
    greatest=10.0,
)
PER_LENGTH_OF_CLOTH = {
    **dict.fromkeys(("oz/linyd", "oz/yd"), OUNCE_KG / YARD_M),
    **dict.fromkeys(("g/linm", "g/m"), 0.001),
}


def read_mass(text: str) -> float:
    """Read a mass.

    Takes: a number with g, kg, oz or lb.

    Gives: kilograms.

    Raises: Unreadable.

    Source: yard-and-pound-1959.

    >>> read_mass("1 lb")
    0.45359237
    """
    return _read(text, MASS)


def read_force(text: str) -> float:
    """Read a force, or a weight hung on a scale.

    Takes: a number with N, lbf, kgf or ozf; lb, kg and oz are taken as their weight.

    Gives: newtons.

    Raises: Unreadable.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> round(read_force("5 lbf"), 4)
    22.2411
    """
    return _read(text, FORCE)


def read_torque(text: str) -> float:
    """Read a torque.

    Takes: a number with N·m, N·cm, N·mm, in·lb, ft·lb, in·oz or kgf·cm, in any usual spelling.

    Gives: newton metres.

    Raises: Unreadable.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> round(read_torque("7.5 in-lb"), 4)
    0.8474
    """
    return _read(text, TORQUE)


def read_line_mass(text: str) -> float:
    """Read the mass of a bar, rod or tube per length.

    Takes: a number with g/m, kg/m, oz/ft, lb/ft, oz/in or lb/in.

    Gives: kilograms per metre.

    Raises: Unreadable.

    Source: yard-and-pound-1959.

    >>> round(read_line_mass("0.42 lb/ft"), 4)
    0.625
    """
    return _read(text, LINE_MASS)


def read_areal_mass(text: str, width: Length | None = None) -> float:
    """Read a cloth weight, per area or, with the cloth's width, per linear yard or metre.

    Takes: a number with g/m2, gsm, kg/m2, oz/yd2, or oz/lin yd or g/lin m; the full width
    of the cloth, needed for the last two.

    Gives: kilograms per square metre.

    Raises: Unreadable, among others for bare ounces, which can mean either.

    Source: yard-and-pound-1959; cloth-weight-page.

    >>> round(read_areal_mass("8 oz/yd2"), 6)
    0.271246
    >>> round(read_areal_mass("7 oz per linear yard", Length.inches(68)), 6)
    0.125651
    """
    size, unit, tidy = _split(text, AREAL_MASS)
    if unit in PER_LENGTH_OF_CLOTH:
        return _over_width(size * PER_LENGTH_OF_CLOTH[unit], width, tidy)
    if unit in {"oz", "g"}:
        raise Unreadable(
            what=f"“{tidy}” does not say of what",
            remedy="Type oz/yd2 for a square yard, or oz/lin yd for a linear yard of the cloth.",
        )
    return _in_si(size, unit, tidy, AREAL_MASS)


def _over_width(line_mass_kg_m: float, width: Length | None, tidy: str) -> float:
    """Spread the mass of a running length of cloth over the cloth's width."""
    if width is None or width.nanometres <= 0:
        raise Unreadable(
            what=f"“{tidy}” is per running length, and the width of the cloth is missing",
            remedy="Give the width of the cloth, or the weight as oz/yd2 or g/m2.",
        )
    return line_mass_kg_m / width.in_metres


def _read(text: str, kind: Kind) -> float:
    size, unit, tidy = _split(text, kind)
    return _in_si(size, unit, tidy, kind)


def _in_si(size: float, unit: str, tidy: str, kind: Kind) -> float:
    factor = kind.units.get(unit)
    if factor is None:
        told = f"has no unit of {kind.name}" if unit else "has no unit"
        raise Unreadable(what=f"“{tidy}” {told}", remedy=f"Type for example {kind.example}.")
    if size * factor > kind.greatest:
        raise Unreadable(
            what=f"“{tidy}” is more than any {kind.name} in a workroom",
            remedy="Check the number and its unit.",
        )
    return size * factor


def _split(text: str, kind: Kind) -> tuple[float, str, str]:
    """Part a text into its number, its unit in one spelling, and the tidied text."""
    tidy = tidy_text(text, kind.example)
    if tidy.startswith("-"):
        raise Unreadable(what=f"“{tidy}” is negative", remedy="Type it without a minus sign.")
    found = re.fullmatch(rf"\+?({DECIMAL})\s*(.*)", tidy, re.ASCII)
    if found is None or re.match(r"[\d.,]|e[-+]?\d", found[2]):
        raise Unreadable(
            what=f"“{tidy}” does not begin with one plain number",
            remedy=f"Type for example {kind.example}.",
        )
    return float(exact_decimal(found[1], tidy)), _one_spelling(found[2]), tidy


def _one_spelling(unit: str) -> str:
    """Bring the usual spellings of a unit to one: "oz per sq. yard" to "oz/yd2"."""
    parts = re.findall(r"[a-z]+|/|\d", unit.replace("²", "2").replace("^", ""))
    joined = "".join(WORDS.get(part, part) for part in parts)
    return re.sub(r"sq(yd|m)", r"\g<1>2", joined)
