"""Lengths as a workroom writes them, and the slips of the hand that are caught."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.reading import ABSURD, read_bounded_length, read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable

INCH, METRIC = System.INCH, System.METRIC
THREE_SIXTEENTHS = Length.inches("35.1875")


@pytest.mark.parametrize(
    "text",
    [
        "35 3/16",
        "35-3/16",
        "35 - 3/16",
        "  35   3/16  ",
        "35.1875",
        "35,1875",
        "35 3/16 in",
        "35 3/16in.",
        "35 3/16 inches",
        '35 3/16"',
        "35 3/16″",
        "35 3/16''",
        "35 3⁄16",  # noqa: RUF001 - the fraction slash is what is tested
        "2' 11 3/16\"",
        "2′ 11 3/16″",  # noqa: RUF001 - the prime is what is tested
        "2' 11 3/16",
        "2 ft 11 3/16 in",
        "2 FT 11.1875 IN",
        "35 12/64",
    ],
)
def test_thirty_five_and_three_sixteenths_in_many_hands(text: str) -> None:
    assert read_length(text, INCH) == THREE_SIXTEENTHS


@pytest.mark.parametrize(
    "text",
    ["894", "894 mm", "894mm", "894.0", "89.4 cm", "89,4 cm", "0.894 m", "0,894 m", "894 MM"],
)
def test_eight_hundred_ninety_four_millimetres_in_many_hands(text: str) -> None:
    assert read_length(text, METRIC) == Length.mm(894)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("½", Fraction(1, 2)),
        ("35½", Fraction(71, 2)),
        ("35 ¾″", Fraction(143, 4)),
        ("7⅜", Fraction(59, 8)),
        (".5", Fraction(1, 2)),
        ("3/64", Fraction(3, 64)),
        ("0", Fraction(0)),
        ("6'", Fraction(72)),
        ("2 yd", Fraction(72)),
        ("1 yd 2 ft 3 in", Fraction(63)),
        ("+5", Fraction(5)),
    ],
)
def test_other_ways_of_writing_inches(text: str, inches: Fraction) -> None:
    assert read_length(text, INCH) == Length.inches(inches)


def test_units_written_stand_against_the_jobs_own() -> None:
    assert read_length("894 mm", INCH) == Length.mm(894)
    assert read_length('35"', METRIC) == Length.inches(35)
    assert read_length("1 m 20 cm", INCH) == Length.mm(1200)


@pytest.mark.parametrize(
    ("text", "system", "what", "remedy"),
    [
        ("", INCH, "it is empty", "35 3/16"),
        ("   ", INCH, "it is empty", "35 3/16"),
        ("35 3/15", INCH, "“3/15” in “35 3/15” is on no tape", "sixteenths"),
        ("35⅓", INCH, "“1/3” in “35 1/3” is on no tape", "sixteenths"),
        ("3/0", INCH, "“3/0” in “3/0” is on no tape", "sixteenths"),
        ("35 1/1", INCH, "“1/1” in “35 1/1” is on no tape", "sixteenths"),
        ("35 17/16", INCH, "“17/16” in “35 17/16” is a whole inch or more", "Check the fraction"),
        ("35 16", INCH, "“35 16” holds two numbers", "slash"),
        ("35.3/16", INCH, "“35.3/16” joins a decimal and a fraction", "35 3/16"),
        ("35.5 3/16", INCH, "“35.5 3/16” joins a decimal and a fraction", "35.1875"),
        ("35 3/", INCH, "“35 3/” has half a fraction", "35 3/16"),
        ("/16", INCH, "“/16” has half a fraction", "35 3/16"),
        ("35 /16", INCH, "“35/16” in “35 /16” is a whole inch or more", "Check the fraction"),
        ("-5", INCH, "“-5” is negative", "without a minus"),
        ("−5 mm", INCH, "“-5 mm” is negative", "without a minus"),  # noqa: RUF001 - a true minus
        ("nan", INCH, "“nan” cannot be read as a length", "35 3/16"),
        ("inf", METRIC, "“inf” cannot be read as a length", "894 mm"),
        ("1e3", METRIC, "“e” in “1e3” is no unit of length", "Use in, ft"),
        ("35 km", METRIC, "“km” in “35 km” is no unit of length", "Use in, ft"),
        ("1,234", METRIC, "“1,234” in “1,234” can be read in two ways", "Type 1234"),
        ("1,234.5", METRIC, "“1,234” in “1,234.5” can be read in two ways", "Type 1234"),
        ("35.", INCH, "“35.” ends a number in its decimal point", "decimals"),
        ("35 3/16", METRIC, "“35 3/16” has a fraction, and mm are written with decimals", "in"),
        ("35 1/2 cm", INCH, "“35 1/2 cm” has a fraction, and cm are written with decimals", "35.5"),
        ("2 ft 14 in", INCH, "a foot or more of inches behind the feet", "Check the inches"),
        ("11 in 2 ft", INCH, "“11 in 2 ft” puts ft behind in", "larger one before"),
        ("2 in 3 in", INCH, "“2 in 3 in” puts in behind in", "larger one before"),
        ("2 ft 30 mm", INCH, "“2 ft 30 mm” puts mm behind ft", "larger one before"),
        ("894", INCH, "nothing here is over 12 m", "Type 894 mm if millimetres are meant."),
        ("40 m", METRIC, "nothing here is over 12 m", "Check the number"),
        ("wide", INCH, "“wide” cannot be read as a length", "35 3/16"),
        ("-", INCH, "“-” cannot be read as a length", "35 3/16"),
        ("+", INCH, "“+” cannot be read as a length", "35 3/16"),
        ("35x60", INCH, "“x” in “35x60” is no unit of length", "Use in, ft"),
        ("٣٥", METRIC, "“٣٥” cannot be read as a length", "35 3/16"),
        ("1" * 41, METRIC, "it is longer than 40 characters", "894 mm"),
    ],
)
def test_slips_of_the_hand_each_have_their_sentence(
    text: str, system: System, what: str, remedy: str
) -> None:
    with pytest.raises(Unreadable) as caught:
        read_length(text, system)
    assert what in caught.value.what
    assert remedy in caught.value.remedy
    assert not caught.value.what.endswith(".")
    assert caught.value.remedy.endswith(".")


def test_the_longest_length_and_the_longest_text_are_still_read() -> None:
    assert read_length("12 m", METRIC) == ABSURD
    with pytest.raises(Unreadable, match="over 12 m"):
        read_length("12.001 m", METRIC)
    assert read_length("894".rjust(40, "0"), METRIC) == Length.mm(894)


@pytest.mark.parametrize("text", ["35 16/16", "16/16", "2 ft 12 in"])
def test_a_whole_one_is_never_written_as_its_parts(text: str) -> None:
    with pytest.raises(Unreadable, match=r"a whole inch or more|a foot or more"):
        read_length(text, INCH)


def test_a_minus_sign_stands_where_it_is_meant() -> None:
    assert read_length("-1/4", INCH, signed=True) == -Length.inches(Fraction(1, 4))
    assert read_length("−3 mm", METRIC, signed=True) == -Length.mm(3)  # noqa: RUF001 - a true minus


def test_limits_hold_and_are_included() -> None:
    least, greatest = Length.inches(6), Length.inches(144)
    assert read_bounded_length("6", INCH, least=least, greatest=greatest) == least
    assert read_bounded_length("144", INCH, least=least, greatest=greatest) == greatest
    with pytest.raises(Unreadable, match=r"under the least here, 6 in \(152 mm\)\. Type 6 in"):
        read_bounded_length("5 63/64", INCH, least=least)
    with pytest.raises(Unreadable, match=r"over the greatest here, 144 in .* or less\."):
        read_bounded_length("144 1/64", INCH, greatest=greatest)


def test_a_zero_is_refused_where_something_is_asked() -> None:
    assert read_bounded_length("0", INCH, least=ZERO) == ZERO
    with pytest.raises(Unreadable, match="under the least here"):
        read_bounded_length("0", INCH, least=Length.mm(1))
    with pytest.raises(Unreadable, match="is negative"):
        read_bounded_length("-1", INCH, least=ZERO)


def test_a_least_below_zero_lets_a_minus_stand() -> None:
    least = -Length.inches(1)
    assert read_bounded_length("-1", INCH, least=least) == least
    with pytest.raises(Unreadable, match="under the least here"):
        read_bounded_length("-1 1/16", INCH, least=least)


def read_or_refused(text: str, system: System, *, signed: bool = False) -> Length | Unreadable:
    try:
        return read_length(text, system, signed=signed)
    except Unreadable as refused:
        return refused


@given(st.text(max_size=60), st.sampled_from(System), st.booleans())
def test_any_text_is_read_or_refused_with_a_remedy(
    text: str,
    system: System,
    signed: bool,  # noqa: FBT001 - drawn
) -> None:
    outcome = read_or_refused(text, system, signed=signed)
    if isinstance(outcome, Unreadable):
        assert outcome.what
        assert outcome.remedy
    else:
        assert abs(outcome) <= ABSURD
        assert signed or outcome >= ZERO


@given(
    st.text(alphabet="0123456789 /.,-'\"inftcmyd½⅜", max_size=16),
    st.sampled_from(System),
)
def test_texts_near_to_lengths_never_break_the_reader(text: str, system: System) -> None:
    outcome = read_or_refused(text, system)
    assert isinstance(outcome, Unreadable) or ZERO <= outcome <= ABSURD


@given(
    st.integers(min_value=0, max_value=400),
    st.sampled_from([2, 4, 8, 16, 32, 64]),
    st.data(),
)
def test_every_tape_fraction_is_read_exactly(whole: int, bottom: int, data: st.DataObject) -> None:
    top = data.draw(st.integers(min_value=0, max_value=bottom - 1))
    exact = Length.inches(whole + Fraction(top, bottom))
    assert read_length(f"{whole} {top}/{bottom}", INCH) == exact
    assert read_length(f"{whole}-{top}/{bottom} in", METRIC) == exact
