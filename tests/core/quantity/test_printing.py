"""Printing moves a length by half a mark at most, and reads back as it was printed."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import (
    USUAL_MARK,
    print_both,
    print_cloth,
    print_fine,
    print_length,
    round_length,
)
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import Rounding, System

INCH, METRIC = System.INCH, System.METRIC

lengths = st.integers(min_value=-11_000_000_000, max_value=11_000_000_000).map(Length)
systems = st.sampled_from(System)
inch_marks = st.sampled_from([1, 2, 4, 8, 16, 32, 64]).map(lambda n: Length.inches(Fraction(1, n)))
metric_marks = st.sampled_from(["0.1", "0.5", "1", "5", "10"]).map(Length.mm)
MARKS = {INCH: inch_marks, METRIC: metric_marks}


@pytest.mark.parametrize(
    ("length", "inch", "metric"),
    [
        (Length.inches("35.1875"), "35 3/16 in", "894 mm"),
        (Length.mm(894), "35 3/16 in", "894 mm"),
        (Length.inches(35), "35 in", "889 mm"),
        (Length.inches(Fraction(3, 8)), "3/8 in", "10 mm"),
        (Length(0), "0 in", "0 mm"),
        (-Length.inches("0.25"), "-1/4 in", "-6 mm"),
        (Length.inches(Fraction(63, 64)), "1 in", "25 mm"),
    ],
)
def test_lengths_as_they_are_printed(length: Length, inch: str, metric: str) -> None:
    assert print_length(length, INCH) == inch
    assert print_length(length, METRIC) == metric


def test_the_way_of_rounding_follows_the_use() -> None:
    length = Length.inches(Fraction(563, 16)) + Length.inches(Fraction(1, 64))
    assert print_length(length, INCH, Rounding.MUST_FIT) == "35 3/16 in"
    assert print_length(length, INCH, Rounding.MARK) == "35 3/16 in"
    assert print_length(length, INCH, Rounding.CUT_OVERSIZE) == "35 1/4 in"
    assert print_length(Length.mm("893.2"), METRIC, Rounding.CUT_OVERSIZE) == "894 mm"
    assert print_length(Length.mm("893.8"), METRIC, Rounding.MUST_FIT) == "893 mm"


def test_what_must_fit_is_never_printed_larger_below_zero_either() -> None:
    assert print_length(-Length.mm("0.4"), METRIC, Rounding.MUST_FIT) == "-1 mm"


def test_both_units_are_rounded_from_the_exact_length() -> None:
    length = Length.mm("893.7625")
    assert print_both(length, INCH) == "35 3/16 in (894 mm)"
    assert print_both(length, METRIC) == "894 mm (35 3/16 in)"
    assert print_both(length, METRIC, Rounding.MUST_FIT) == "893 mm (35 3/16 in)"


@pytest.mark.parametrize("inches", ["0.001", "0.055", "0.118"])
def test_thousandths_are_read_as_they_are_printed(inches: str) -> None:
    length = Length.inches(inches)
    assert read_length(print_fine(length, INCH), INCH) == length


def test_a_cord_is_not_hidden_by_the_mark() -> None:
    cord = Length.mm("1.4")
    assert print_fine(cord, METRIC) == "1.4 mm"
    assert print_fine(cord, INCH) == "55 thousandths of an inch"
    assert print_fine(Length.inches(Fraction(3, 8)), INCH) == "3/8 in"
    assert print_fine(Length.mm("7.9"), METRIC) == "7.9 mm"
    assert print_fine(Length.mm("8.4"), METRIC) == "8 mm"
    assert print_fine(Length.inches("0.49"), INCH) == "31/64 in"
    assert print_fine(Length.inches("0.51"), INCH) == "1/2 in"
    assert print_fine(Length.inches("0.126"), INCH) == "1/8 in"
    assert print_fine(Length.inches("0.124"), INCH) == "124 thousandths of an inch"
    assert print_fine(Length.inches("0.0012"), INCH) == "1 thousandth of an inch"
    assert print_fine(Length.mm("1.4"), METRIC, Rounding.CUT_OVERSIZE) == "2 mm"


@given(lengths, systems, st.data())
def test_printing_moves_a_length_by_half_a_mark_at_most(
    length: Length, system: System, data: st.DataObject
) -> None:
    mark = data.draw(MARKS[system])
    read = read_length(print_length(length, system, mark=mark), system, signed=True)
    assert abs(read - length) * 2 <= mark


@given(lengths, systems, st.sampled_from(Rounding), st.data())
def test_reading_what_is_printed_gives_the_same_value_at_the_mark(
    length: Length, system: System, rounding: Rounding, data: st.DataObject
) -> None:
    mark = data.draw(MARKS[system])
    read = read_length(print_length(length, system, rounding, mark=mark), system, signed=True)
    assert read == round_length(length, mark, rounding)


@given(lengths, systems)
def test_rounding_goes_the_way_its_use_asks(length: Length, system: System) -> None:
    mark = USUAL_MARK[system]
    fitting = round_length(length, mark, Rounding.MUST_FIT)
    oversize = round_length(length, mark, Rounding.CUT_OVERSIZE)
    assert fitting <= length <= oversize
    assert oversize - fitting <= mark
    assert round_length(length, mark, Rounding.MARK) in {fitting, oversize}


@given(lengths, systems, st.sampled_from(Rounding))
def test_a_length_on_the_mark_is_never_moved(
    length: Length, system: System, rounding: Rounding
) -> None:
    mark = USUAL_MARK[system]
    on_the_mark = round_length(length, mark, Rounding.MARK)
    assert round_length(on_the_mark, mark, rounding) == on_the_mark


def test_cloth_is_written_in_yards_and_eighths_or_metres() -> None:
    assert print_cloth(Length.inches(246), INCH) == "6 7/8 yd"
    assert print_cloth(Length.inches(252), INCH) == "7 yd"
    assert print_cloth(Length.mm(6248), METRIC) == "6.25 m"
    assert print_cloth(Length.mm(6248), METRIC, Rounding.MUST_FIT) == "6.24 m"
    assert print_cloth(Length.mm(0), METRIC) == "0.00 m"
