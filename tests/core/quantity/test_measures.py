"""Masses, cloth weights, forces and torques: spellings, traps, and round trips."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.quantity import measures
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable

INCH, METRIC = System.INCH, System.METRIC


@pytest.mark.parametrize(
    "text",
    [
        "8 oz/yd2",
        "8 oz/yd²",
        "8oz/yd^2",
        "8 oz / sq yd",
        "8 oz per sq. yard",
        "8 ounces per square yard",
        "8 OZ/SQ YD",
        "8.0 oz/yd2",
    ],
)
def test_ounces_per_square_yard_in_many_spellings(text: str) -> None:
    assert measures.read_areal_mass(text) == pytest.approx(0.271245980, rel=1e-9)


@pytest.mark.parametrize(
    "text",
    ["270 g/m2", "270 g/m²", "270gsm", "270 g/sqm", "270 g per square metre", "0,27 kg/m2"],
)
def test_grams_per_square_metre_in_many_spellings(text: str) -> None:
    assert measures.read_areal_mass(text) == pytest.approx(0.27)


@pytest.mark.parametrize(
    "text", ["14 oz/lin yd", "14 oz per linear yard", "14 oz/yd", "14 oz a running yard"]
)
def test_a_linear_yard_needs_the_width_of_the_cloth(text: str) -> None:
    width = Length.inches(54)
    assert measures.read_areal_mass(text, width) == pytest.approx(14 / 1.5 * 0.0339057475)
    with pytest.raises(Unreadable, match="the width of the cloth is missing"):
        measures.read_areal_mass(text)


@pytest.mark.parametrize("width", [Length(0), Length(-1)])
def test_a_cloth_without_width_spreads_nothing(width: Length) -> None:
    with pytest.raises(Unreadable, match="the width of the cloth is missing"):
        measures.read_areal_mass("14 oz/lin yd", width)


@pytest.mark.parametrize(
    ("read", "greatest", "more"),
    [
        (measures.read_mass, "500 kg", "500.1 kg"),
        (measures.read_force, "10000 N", "10001 N"),
        (measures.read_torque, "1000 N·m", "1001 N·m"),
        (measures.read_line_mass, "100 kg/m", "100.1 kg/m"),
        (measures.read_areal_mass, "10 kg/m2", "10.1 kg/m2"),
    ],
)
def test_what_no_workroom_has_is_refused(
    read: Callable[[str], float], greatest: str, more: str
) -> None:
    assert read(greatest) > 0
    with pytest.raises(Unreadable, match="more than any"):
        read(more)


def test_grams_of_a_running_metre_are_spread_over_the_width() -> None:
    assert measures.read_areal_mass("420 g/lin m", Length.mm(1400)) == pytest.approx(0.3)


@pytest.mark.parametrize("text", ["14 oz", "300 g"])
def test_bare_ounces_of_cloth_are_refused_because_they_mean_two_things(text: str) -> None:
    with pytest.raises(Unreadable, match=r"does not say of what.*linear yard"):
        measures.read_areal_mass(text, Length.inches(54))


@pytest.mark.parametrize(
    ("text", "n_m"),
    [
        ("0.85 N·m", 0.85),
        ("0.85 Nm", 0.85),
        ("850 N.mm", 0.85),
        ("85 N cm", 0.85),
        ("10 in·lb", 1.129848),
        ("10 lbf-in", 1.129848),
        ("10 inch pounds", 1.129848),
        ("1 ft-lb", 1.355818),
        ("10 kgf·cm", 0.980665),
        ("10 kg cm", 0.980665),
        ("160 in oz", 1.129848),
    ],
)
def test_torques_in_many_spellings(text: str, n_m: float) -> None:
    assert measures.read_torque(text) == pytest.approx(n_m, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "n"),
    [
        ("22 N", 22),
        ("5 lbf", 22.24111),
        ("5 lb", 22.24111),
        ("6 kg", 58.8399),
        ("6 kgf", 58.8399),
        ("80 oz", 22.24111),
        ("80 ozf", 22.24111),
    ],
)
def test_forces(text: str, n: float) -> None:
    assert measures.read_force(text) == pytest.approx(n, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "kg"), [("350 g", 0.35), ("1.25kg", 1.25), ("1 lb", 0.45359237), ("16 oz", 0.45359237)]
)
def test_masses(text: str, kg: float) -> None:
    assert measures.read_mass(text) == pytest.approx(kg)


def test_masses_per_length() -> None:
    assert measures.read_line_mass("465 g/m") == pytest.approx(0.465)
    assert measures.read_line_mass("12 oz/ft") == pytest.approx(12 * 0.028349523125 / 0.3048)


@pytest.mark.parametrize(
    ("read", "text", "what"),
    [
        (measures.read_mass, "", "it is empty"),
        (measures.read_mass, "3", "“3” has no unit"),
        (measures.read_mass, "3 N", "“3 n” has no unit of mass"),
        (measures.read_mass, "-3 kg", "“-3 kg” is negative"),
        (measures.read_mass, "nan kg", "does not begin with one plain number"),
        (measures.read_mass, "1e3 kg", "does not begin with one plain number"),
        (measures.read_mass, "1 2 kg", "does not begin with one plain number"),
        (measures.read_mass, "1,250 g", "can be read in two ways"),
        (measures.read_mass, "1.2.3 kg", "does not begin with one plain number"),
        (measures.read_mass, "501 kg", "more than any mass in a workroom"),
        (measures.read_force, "3 m", "has no unit of force"),
        (measures.read_torque, "3 Nm/turn", "has no unit of torque"),
        (measures.read_areal_mass, "300", "“300” has no unit"),
        (measures.read_areal_mass, "300 kg/m2", "more than any cloth weight in a workroom"),
        (measures.read_number, "twelve", "“twelve” is not a plain number"),
        (measures.read_number, "nan", "“nan” is not a plain number"),
        (measures.read_number, "inf", "“inf” is not a plain number"),
        (measures.read_number, "1e3", "“1e3” is not a plain number"),
        (measures.read_number, "-1", "“-1” is negative"),
        (measures.read_share, "%", "“%” is not a plain number"),
        (measures.read_share, "3", "“3” is more than the whole"),
        (measures.read_share, "300 %", "“300 %” is more than the whole"),
    ],
)
def test_what_is_no_measure_is_refused(read: Callable[[str], float], text: str, what: str) -> None:
    with pytest.raises(Unreadable) as caught:
        read(text)
    assert what in caught.value.what
    assert caught.value.remedy.endswith(".")


def test_numbers_and_shares() -> None:
    assert measures.read_number(" 0,12 ") == 0.12
    assert measures.read_number("-3", signed=True) == -3
    assert measures.read_share("3 %") == measures.read_share("3%") == 0.03
    assert measures.read_share("0.03") == 0.03
    assert measures.read_share("1") == measures.read_share("100 %") == 1


def test_a_share_over_the_whole_asks_for_the_per_cent_sign() -> None:
    with pytest.raises(Unreadable, match="Type 3 % if per cent are meant"):
        measures.read_share("3")


PAIRS = [
    (measures.print_mass, measures.read_mass, 400),
    (measures.print_force, measures.read_force, 9_000),
    (measures.print_torque, measures.read_torque, 900),
    (measures.print_areal_mass, measures.read_areal_mass, 9),
    (measures.print_line_mass, measures.read_line_mass, 90),
]


@given(st.sampled_from(PAIRS), st.floats(min_value=1e-5, max_value=1), st.sampled_from(System))
def test_reading_what_is_printed_gives_it_back_to_three_figures(
    pair: tuple[Callable[[float, System], str], Callable[[str], float], float],
    share: float,
    system: System,
) -> None:
    printed, read, greatest = pair
    value = share * greatest
    assert read(printed(value, system)) == pytest.approx(value, rel=0.0051)


@given(st.floats(min_value=-1e6, max_value=1e6), st.integers(min_value=1, max_value=6))
def test_significant_figures_move_a_number_by_half_its_last_at_most(
    value: float, figures: int
) -> None:
    printed = float(measures.print_number(value, figures))
    last = 10.0 ** (math.floor(math.log10(abs(value))) - figures + 1) if value else 1.0
    assert abs(printed - value) <= last * 0.5000001


@pytest.mark.parametrize(
    ("share", "text"), [(0.12, "12 %"), (0.055, "5.5 %"), (0.0, "0 %"), (1.0, "100 %")]
)
def test_shares_are_printed_as_per_cent(share: float, text: str) -> None:
    assert measures.print_share(share) == text


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_a_number_that_is_none_is_not_printed(value: float) -> None:
    with pytest.raises(ValueError, match="no number that can be printed"):
        measures.print_number(value)


@pytest.mark.parametrize(
    ("printed", "metric", "inch"),
    [
        (measures.print_mass, (0.35, "350 g"), (0.35, "12.3 oz")),
        (measures.print_mass, (1.76, "1.76 kg"), (1.76, "3.88 lb")),
        (measures.print_force, (42.91, "42.9 N"), (42.91, "9.65 lbf")),
        (measures.print_torque, (0.34975, "0.35 N·m"), (0.34975, "3.1 in·lb")),
        (measures.print_rate, (0.03747, "0.0375 N·m a turn"), (0.03747, "0.332 in·lb a turn")),
        (measures.print_areal_mass, (0.271246, "271 g/m²"), (0.271246, "8 oz/yd²")),
        (measures.print_line_mass, (0.4644, "464 g/m"), (0.4644, "4.99 oz/ft")),
        (measures.print_area, (1.858, "1.86 m²"), (1.858, "20 ft²")),
        (measures.print_area, (0.0096774, "96.8 cm²"), (0.0096774, "15 in²")),
        (measures.print_area, (0.0999, "999 cm²"), (0.0999, "155 in²")),
        (measures.print_area, (0.1, "0.1 m²"), (0.1, "1.08 ft²")),
        (measures.print_mass, (1.0, "1 kg"), (0.45359237, "1 lb")),
        (measures.print_speed, (0.5, "0.5 m/s"), (0.5, "1.64 ft/s")),
        (measures.print_energy, (58.9, "58.9 J"), (58.9, "43.4 ft·lbf")),
        (measures.print_stiffness, (68.9e9, "68.9 GPa"), (68.9e9, "9.99 million psi")),
    ],
)
def test_each_system_has_the_trades_unit(
    printed: Callable[[float, System], str], metric: tuple[float, str], inch: tuple[float, str]
) -> None:
    assert printed(metric[0], METRIC) == metric[1]
    assert printed(inch[0], INCH) == inch[1]


@pytest.mark.parametrize(
    ("turns", "text"),
    [
        (0.0, "0 turns"),
        (-1e-12, "0 turns"),
        (0.25, "0.25 turn"),
        (0.125, "0.125 turn"),
        (0.29, "0.29 turn"),
        (0.99, "0.99 turn"),
        (1.0, "1 turn"),
        (1.25, "1.25 turns"),
        (2.0, "2 turns"),
        (10.75, "10.75 turns"),
        (11.3663, "11.4 turns"),
        (12.0, "12 turns"),
        (12.125, "12.1 turns"),
        (100.0, "100 turns"),
        (-0.974, "\N{MINUS SIGN}0.97 turn"),
        (-1.0, "\N{MINUS SIGN}1 turn"),
        (1.04, "1 turn"),
        (9.96, "10 turns"),
    ],
)
def test_turns_show_quarters_and_tenths(turns: float, text: str) -> None:
    assert measures.print_turns(turns) == text
