"""Conversions and exact lengths against definitions and published examples.

Each check names its source: an id of docs/sources.toml with the clause or page.
"""

from __future__ import annotations

import pytest

from foldwright.core.facts.constants import ACCESSIBLE_FORCE, GRAVITY
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import (
    print_force,
    read_areal_mass,
    read_force,
    read_mass,
    read_torque,
)
from foldwright.core.quantity.printing import print_both, print_length
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import Rounding, System

INCH, METRIC = System.INCH, System.METRIC


def test_an_ounce_per_square_yard_is_33_9057_grams_per_square_metre() -> None:
    """yard-and-pound-1959: 28.349523125 g over 0.83612736 m2 = 33.9057475 g/m2; tolerance 1e-9."""
    assert read_areal_mass("1 oz/yd2") * 1000 == pytest.approx(33.9057475, rel=1e-9)


def test_two_cloth_weights() -> None:
    """yard-and-pound-1959: 8 and 21 oz/yd2 are 271.24598 and 712.020697 g/m2; tolerance 1e-8."""
    assert read_areal_mass("8 oz/yd2") * 1000 == pytest.approx(271.24598, rel=1e-8)
    assert read_areal_mass("21 oz/yd2") * 1000 == pytest.approx(712.020697, rel=1e-8)


def test_a_linear_yard_weight_is_no_area_weight() -> None:
    """cloth-weight-page, formula: 7 oz in a linear yard of 68 in is 125.650711 g/m2; 1e-8."""
    width = Length.inches(68)
    assert read_areal_mass("7 oz/lin yd", width) * 1000 == pytest.approx(125.650711, rel=1e-8)


def test_inches_in_millimetres() -> None:
    """yard-and-pound-1959: 34 5/16 in = 871.5375 mm and 54 in = 1371.6 mm, exactly."""
    assert read_length("34 5/16", INCH).nanometres == 871_537_500
    assert read_length("54", INCH).nanometres == 1_371_600_000


def test_a_sixteenth_and_an_eighth_are_exact() -> None:
    """yard-and-pound-1959: 1/8 in = 3.175 mm and 1/16 in = 1.5875 mm, exactly."""
    assert read_length("1/8", INCH).nanometres == 3_175_000
    assert read_length("1/16", INCH).nanometres == 1_587_500


def test_a_printed_number_is_never_converted_back() -> None:
    """yard-and-pound-1959: 35 3/16 in = 893.7625 mm; 894 mm is not 35 3/16 in but prints so."""
    exact = read_length("35 3/16", INCH)
    assert exact.in_millimetres == 893.7625
    assert print_both(exact, INCH) == "35 3/16 in (894 mm)"
    assert print_both(read_length("894", METRIC), METRIC) == "894 mm (35 3/16 in)"
    assert read_length("894", METRIC) != exact


def test_the_limits_of_the_cord_rules_in_inches_and_pounds() -> None:
    """sor-2019-97, ss. 5 to 7: 22 cm = 8.66142 in, 44 cm = 17.32283 in, 35 N = 7.868313 lbf.

    au-corded-2014: 70 N = 15.736626 lbf. Conversions within 1e-7.
    """
    assert float(read_length("22 cm", METRIC).in_inches) == pytest.approx(8.66141732, rel=1e-8)
    assert float(read_length("44 cm", METRIC).in_inches) == pytest.approx(17.3228347, rel=1e-8)
    assert read_force("7.86831301 lbf") == pytest.approx(35, rel=1e-7)
    assert read_force("15.736626 lbf") == pytest.approx(70, rel=1e-7)


def test_the_breakaway_mass_as_a_force() -> None:
    """en-13120-summary: 6 kg hung on a loop pull with 58.8399 N; tolerance 1e-9."""
    assert read_force("6 kg") == pytest.approx(58.8399, rel=1e-9)
    assert 6 * GRAVITY.value == pytest.approx(58.8399, rel=1e-9)


def test_the_accessible_hand_force() -> None:
    """ada-2010, 309.4: 5 pounds (22.2 N) maximum; tolerance half the last printed digit."""
    assert ACCESSIBLE_FORCE.value == pytest.approx(22.2, abs=0.05)
    assert print_force(ACCESSIBLE_FORCE.value, METRIC) == "22.2 N"
    assert print_force(ACCESSIBLE_FORCE.value, INCH) == "5 lbf"


def test_cloth_by_the_yard() -> None:
    """yard-and-pound-1959: 32 yd of 54 in at 14 oz/yd2 weigh 42 lb, at 4 oz/yd2 12 lb; 1e-9."""
    area = 32 * 36 * 0.0254 * 54 * 0.0254
    assert area * read_areal_mass("14 oz/yd2") == pytest.approx(read_mass("42 lb"), rel=1e-9)
    assert area * read_areal_mass("4 oz/yd2") == pytest.approx(read_mass("12 lb"), rel=1e-9)


def test_a_spring_rate_in_inch_pounds() -> None:
    """yard-and-pound-1959, standard-gravity-1901: 29.226618 lbf in = 3.30216444 N m; 1e-8."""
    assert read_torque("29.226618 lbf in") == pytest.approx(3.30216444, rel=1e-8)


def test_an_inside_width_rounds_down_at_the_sixteenth() -> None:
    """make-your-own-page: 35 7/16 in less 1/4 in; the sum is exact and prints 35 3/16 in."""
    finished = read_length("35 7/16", INCH) - read_length("1/4", INCH)
    assert print_length(finished, INCH, Rounding.MUST_FIT) == "35 3/16 in"
