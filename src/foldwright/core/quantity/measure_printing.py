"""Print masses, forces, torques and the rest in the units the trade reads.

Three significant figures say all that a workroom can measure. The unit follows the
reader's system, and the size: 350 g, but 1.25 kg.
"""

from __future__ import annotations

from math import floor, isfinite, log10

from foldwright.core.quantity.measure_reading import (
    FOOT_M,
    INCH_M,
    OUNCE_KG,
    POUND_FORCE_N,
    POUND_KG,
    YARD_M,
)
from foldwright.core.quantity.rounding import System

FIGURES = 3
MINUS = "\N{MINUS SIGN}"
NEAR = 1e-9
SMALL_AREA_M2 = 0.1
POUNDS_PER_SQUARE_INCH_PA = POUND_FORCE_N / INCH_M**2


def print_number(value: float, figures: int = FIGURES) -> str:
    """Print a number to so many significant figures, without exponent or idle zeros.

    Takes: the number; how many figures count.

    Gives: digits with a decimal point.

    Raises: ValueError for a number that is not finite.

    Source: common practice.

    >>> print_number(0.0374702), print_number(1234.5), print_number(12.0)
    ('0.0375', '1230', '12')
    """
    if not isfinite(value):
        msg = f"{value} is no number that can be printed"
        raise ValueError(msg)
    if value == 0:
        return "0"
    places = figures - 1 - floor(log10(abs(value)))
    digits = f"{round(value, places):.{max(places, 0)}f}"
    return digits.rstrip("0").rstrip(".") if "." in digits else digits


def print_mass(kg: float, system: System) -> str:
    """Print a mass: g and kg, or oz and lb.

    Takes: kilograms; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959.

    >>> print_mass(0.35, System.METRIC), print_mass(1.76, System.INCH)
    ('350 g', '3.88 lb')
    """
    if system is System.METRIC:
        return _choose(kg, (1.0, "kg"), (0.001, "g"))
    return _choose(kg, (POUND_KG, "lb"), (OUNCE_KG, "oz"))


def print_areal_mass(kg_m2: float, system: System) -> str:
    """Print a cloth weight: g/m² or oz/yd².

    Takes: kilograms per square metre; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959.

    >>> print_areal_mass(0.271246, System.INCH)
    '8 oz/yd²'
    """
    if system is System.METRIC:
        return f"{print_number(kg_m2 / 0.001)} g/m²"
    return f"{print_number(kg_m2 * YARD_M**2 / OUNCE_KG)} oz/yd²"


def print_line_mass(kg_m: float, system: System) -> str:
    """Print a mass per length: g/m, or oz/ft and lb/ft.

    Takes: kilograms per metre; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959.

    >>> print_line_mass(0.4644, System.METRIC)
    '464 g/m'
    """
    if system is System.METRIC:
        return _choose(kg_m, (1.0, "kg/m"), (0.001, "g/m"))
    return _choose(kg_m, (POUND_KG / FOOT_M, "lb/ft"), (OUNCE_KG / FOOT_M, "oz/ft"))


def print_force(n: float, system: System) -> str:
    """Print a force: N or lbf.

    Takes: newtons; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> print_force(22.2411, System.INCH)
    '5 lbf'
    """
    if system is System.METRIC:
        return f"{print_number(n)} N"
    return f"{print_number(n / POUND_FORCE_N)} lbf"


def print_torque(n_m: float, system: System) -> str:
    """Print a torque: N·m or in·lb.

    Takes: newton metres; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> print_torque(0.3423, System.METRIC), print_torque(0.3423, System.INCH)
    ('0.342 N·m', '3.03 in·lb')
    """
    if system is System.METRIC:
        return f"{print_number(n_m)} N·m"
    return f"{print_number(n_m / (POUND_FORCE_N * INCH_M))} in·lb"


def print_rate(n_m_turn: float, system: System) -> str:
    """Print a spring's rate, which is always per turn.

    Takes: newton metres per turn; the reader's system.

    Gives: the number with its unit.

    Source: common practice.

    >>> print_rate(0.03747, System.METRIC)
    '0.0375 N·m a turn'
    """
    return f"{print_torque(n_m_turn, system)} a turn"


def print_turns(turns: float) -> str:
    """Print turns: quarters as they are, eighths of a single turn too, else to a tenth.

    Takes: turns.

    Gives: the number with its unit.

    Source: common practice.

    >>> print_turns(0.125), print_turns(11.3663), print_turns(12.75), print_turns(1.0)
    ('0.125 turn', '11.4 turns', '12.75 turns', '1 turn')
    """
    shown = f"{turns:.{_turn_places(abs(turns))}f}".rstrip("0").rstrip(".")
    shown = "0" if shown in {"-0", ""} else shown
    noun = "turn" if 0 < abs(float(shown)) <= 1 else "turns"
    return f"{shown.replace('-', MINUS)} {noun}"


def _turn_places(turns: float) -> int:
    """Give the decimals that show a quarter or an eighth in full, and no idle ones."""
    if turns < 1:
        return 3 if abs(turns * 8 - round(turns * 8)) < NEAR else 2
    return 2 if abs(turns * 4 - round(turns * 4)) < NEAR else 1


def print_share(share: float) -> str:
    """Print a share as per cent.

    Takes: the share as a part of one.

    Gives: per cent to three figures at most.

    Source: common practice.

    >>> print_share(0.055)
    '5.5 %'
    """
    return f"{print_number(share * 100)} %"


def print_area(m2: float, system: System) -> str:
    """Print an area: m² and cm², or ft² and in².

    Takes: square metres; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959.

    >>> print_area(0.0096774, System.INCH), print_area(1.92, System.METRIC)
    ('15 in²', '1.92 m²')
    """
    small = abs(m2) < SMALL_AREA_M2
    if system is System.METRIC:
        size, unit = (1e-4, "cm²") if small else (1.0, "m²")
    else:
        size, unit = (INCH_M**2, "in²") if small else (FOOT_M**2, "ft²")
    return f"{print_number(m2 / size)} {unit}"


def print_speed(m_s: float, system: System) -> str:
    """Print a speed: m/s, or feet per second.

    Takes: metres per second; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959.

    >>> print_speed(0.5, System.INCH)
    '1.64 ft/s'
    """
    if system is System.METRIC:
        return f"{print_number(m_s)} m/s"
    return f"{print_number(m_s / FOOT_M)} ft/s"


def print_energy(j: float, system: System) -> str:
    """Print an energy: J or ft·lbf.

    Takes: joules; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> print_energy(58.9, System.METRIC)
    '58.9 J'
    """
    if system is System.METRIC:
        return f"{print_number(j)} J"
    return f"{print_number(j / (POUND_FORCE_N * FOOT_M))} ft·lbf"


def print_stiffness(pa: float, system: System) -> str:
    """Print a modulus of elasticity: GPa or million psi.

    Takes: pascals; the reader's system.

    Gives: the number with its unit.

    Source: yard-and-pound-1959; standard-gravity-1901.

    >>> print_stiffness(68.9e9, System.METRIC), print_stiffness(68.9e9, System.INCH)
    ('68.9 GPa', '9.99 million psi')
    """
    if system is System.METRIC:
        return f"{print_number(pa / 1e9)} GPa"
    return f"{print_number(pa / POUNDS_PER_SQUARE_INCH_PA / 1e6)} million psi"


def _choose(value: float, large: tuple[float, str], small: tuple[float, str]) -> str:
    """Use the large unit from one of it upward, else the small one."""
    size, unit = large if abs(value) >= large[0] else small
    return f"{print_number(value / size)} {unit}"
