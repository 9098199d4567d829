"""Read a length as a workroom writes it, exactly, or say in one sentence what is wrong.

The most likely slips of the hand each have their own sentence, because a length
that is misread is a shade that is made again.
"""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.number import DECIMAL, exact_decimal, tidy_text
from foldwright.core.quantity.printing import print_both
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable

EXAMPLE = "35 3/16 or 894 mm"
ABSURD = Length.metres(12)  # no window, and no piece of cloth for one, is longer
TAPE_DENOMINATORS = (2, 4, 8, 16, 32, 64)
TAPE_FRACTIONS = (
    "Tapes have halves, quarters, eighths, sixteenths, thirty-seconds and sixty-fourths."
)
INCHES_IN_A_FOOT = 12
ONE_INCH = Length.inches(1)

UNITS = {
    **dict.fromkeys(("in", "inch", "inches", '"'), "in"),
    **dict.fromkeys(("ft", "foot", "feet", "'"), "ft"),
    **dict.fromkeys(("yd", "yds", "yard", "yards"), "yd"),
    **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
    **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
}
SIZES = {
    "yd": ONE_INCH * 36,
    "ft": ONE_INCH * INCHES_IN_A_FOOT,
    "in": ONE_INCH,
    "m": Length.mm(1000),
    "cm": Length.mm(10),
    "mm": Length.mm(1),
}
INCH_FAMILY = ("yd", "ft", "in")
BARE_UNIT = {System.INCH: "in", System.METRIC: "mm"}

AS_TYPED = str.maketrans(
    {
        "½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8",
        "⅓": " 1/3", "⅔": " 2/3", "⅕": " 1/5", "⅖": " 2/5", "⅗": " 3/5", "⅘": " 4/5",
        "⅙": " 1/6", "⅚": " 5/6",
        "⁄": "/", "∕": "/",  # noqa: RUF001 - the fraction slash and the division slash
        "′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"',  # noqa: RUF001 - quotes
        "−": "-", "–": "-", "—": "-", "‐": "-", "‑": "-",  # noqa: RUF001 - dashes
    }
)  # fmt: skip

TERM = re.compile(
    rf"""\s*
    (?:
      (?:(?P<whole>\d+)(?:\s*-\s*|\s+))?(?P<top>\d+)\s*/\s*(?P<bottom>\d+)
      | (?P<decimal>{DECIMAL})
    )
    \s*(?P<unit>"|''|'|[a-z]+\.?)?
    """,
    re.VERBOSE | re.ASCII,
)


DECIMAL_BY_FRACTION = re.compile(r"\d[.,]\d+\s*(\s\d+\s*)?/|/\s*\d+[.,]\d", re.ASCII)
HALF_A_FRACTION = re.compile(r"/\s*(?!\d)(?!\s)|(?<![\d\s])\s*/", re.ASCII)
THOUSANDTHS = re.compile(r"^(\d+) thousandths? of an inch$", re.ASCII)


def read_length(
    text: str, system: System, *, signed: bool = False, longest: Length = ABSURD
) -> Length:
    """Read one length, exactly, in the units written or else in the job's own.

    Takes: text such as `35 3/16`, `35-3/16`, `35 3/16"`, `2' 11 3/16"`, `35½`, `894`,
    `89.4 cm`, `89,4 cm` or `0.894 m`; the job's system, which a bare number is in; signed,
    whether a leading minus is meant; the longest that makes sense.

    Gives: the exact length, to the nearest nanometre.

    Raises: Unreadable, saying what is wrong and what to type.

    Holds for: lengths up to 12 m, or as told; fractions of an inch down to 64ths.

    Source: yard-and-pound-1959 (25.4 mm); tape fractions are common practice.

    >>> read_length("35 3/16", System.INCH) == Length.inches("35.1875")
    True
    >>> read_length("89,4 cm", System.INCH) == Length.mm(894)
    True
    """
    tidy = _tidy(text)
    negative = tidy.startswith("-")
    if negative and not signed:
        raise Unreadable(
            what=f"“{tidy}” is negative", remedy="Type the length without a minus sign."
        )
    _refuse_torn_fraction(tidy)
    length = sum((_size(term) for term in _terms(tidy[tidy[0] in "+-" :], system)), ZERO)
    if length > longest:
        raise Unreadable(
            what=_absurd(tidy, length, longest, system), remedy=_other_unit(tidy, system)
        )
    return -length if negative else length


def read_bounded_length(
    text: str, system: System, *, least: Length | None = None, greatest: Length | None = None
) -> Length:
    """Read one length that must lie between two limits, the limits included.

    Takes: text and system as `read_length`; the least and the greatest length allowed,
    each or both left out; a least below zero lets a minus sign stand.

    Gives: the exact length.

    Raises: Unreadable, naming the limit that is passed.

    Source: common practice.

    >>> read_bounded_length("2", System.INCH, least=Length.inches(1)) == Length.inches(2)
    True
    """
    length = read_length(text, system, signed=least is not None and least < ZERO)
    shown = text.strip()
    if least is not None and length < least:
        limit = print_both(least, system)
        raise Unreadable(
            what=f"“{shown}” is under the least here, {limit}", remedy=f"Type {limit} or more."
        )
    if greatest is not None and length > greatest:
        limit = print_both(greatest, system)
        raise Unreadable(
            what=f"“{shown}” is over the greatest here, {limit}", remedy=f"Type {limit} or less."
        )
    return length


def _tidy(text: str) -> str:
    """Put the many ways of typing one sign into one; refuse what can be no length."""
    tidy = tidy_text(text.translate(AS_TYPED).replace("''", '"'), EXAMPLE)
    tidy = THOUSANDTHS.sub(lambda found: f"{Decimal(found[1]) / 1000:f} in", tidy)
    if not re.search(r"\d", tidy, re.ASCII):
        raise _not_a_length(tidy)
    return tidy


def _refuse_torn_fraction(tidy: str) -> None:
    """Catch a point where a space was meant, and a fraction with one half missing."""
    if DECIMAL_BY_FRACTION.search(tidy):
        raise Unreadable(
            what=f"“{tidy}” joins a decimal and a fraction",
            remedy="Type 35 3/16 with a space, or 35.1875.",
        )
    if HALF_A_FRACTION.search(tidy):
        raise Unreadable(
            what=f"“{tidy}” has half a fraction", remedy=f"Type for example {EXAMPLE}."
        )


def _terms(tidy: str, system: System) -> list[tuple[Fraction, str]]:
    """Split a length into numbers with units, largest unit first, and check each."""
    terms: list[tuple[Fraction, str]] = []
    at = 0
    while at < len(tidy):
        found = TERM.match(tidy, at)
        if found is None:
            raise _not_a_length(tidy)
        terms.append(_term(found, terms, system, tidy))
        at = found.end()
    return terms


def _term(
    found: re.Match[str], before: list[tuple[Fraction, str]], system: System, tidy: str
) -> tuple[Fraction, str]:
    unit = _unit(found["unit"], before, system, tidy)
    number = (
        _fraction(found, unit, tidy) if found["bottom"] else exact_decimal(found["decimal"], tidy)
    )
    if before:
        _check_order(before[-1][1], number, unit, tidy)
    return number, unit


def _size(term: tuple[Fraction, str]) -> Length:
    number, unit = term
    return SIZES[unit] * number


def _unit(typed: str | None, before: list[tuple[Fraction, str]], system: System, tidy: str) -> str:
    """Find the unit: as typed, inches after feet, else the job's own for a single number."""
    if typed:
        unit = UNITS.get(typed.rstrip("."))
        if unit is None:
            raise Unreadable(
                what=f"“{typed}” in “{tidy}” is no unit of length",
                remedy="Use in, ft, yd, mm, cm or m, or leave the unit out.",
            )
        return unit
    if not before:
        return BARE_UNIT[system]
    if before[-1][1] == "ft":
        return "in"
    raise Unreadable(
        what=f"“{tidy}” holds two numbers, and it is not clear how they belong together",
        remedy="Put a slash into a fraction, as in 35 3/16, or a unit behind each number.",
    )


def _fraction(found: re.Match[str], unit: str, tidy: str) -> Fraction:
    """Take a whole number and a fraction that a tape has marks for."""
    top, bottom = int(found["top"]), int(found["bottom"])
    whole = int(found["whole"] or 0)
    shown = f"{top}/{bottom}"
    if bottom not in TAPE_DENOMINATORS:
        raise Unreadable(
            what=f"“{shown}” in “{tidy}” is on no tape",
            remedy=TAPE_FRACTIONS,
        )
    if unit not in INCH_FAMILY:
        raise Unreadable(
            what=f"“{tidy}” has a fraction, and {unit} are written with decimals",
            remedy=f"Type in behind it if inches are meant, or a decimal such as 35.5 {unit}.",
        )
    if top >= bottom:
        raise Unreadable(
            what=f"“{shown}” in “{tidy}” is a whole inch or more",
            remedy="Check the fraction: its upper number must be the smaller one.",
        )
    return whole + Fraction(top, bottom)


def _check_order(last: str, number: Fraction, unit: str, tidy: str) -> None:
    """Units run from large to small within one family, and inches fill no whole foot."""
    families = {last in INCH_FAMILY, unit in INCH_FAMILY}
    if len(families) > 1 or SIZES[unit] >= SIZES[last]:
        raise Unreadable(
            what=f"“{tidy}” puts {unit} behind {last}",
            remedy="Give one unit, or a larger one before a smaller one, as in 2 ft 11 3/16 in.",
        )
    if last == "ft" and number >= INCHES_IN_A_FOOT:
        raise Unreadable(
            what=f"“{tidy}” has a foot or more of inches behind the feet",
            remedy="Check the inches, or give the whole length in inches.",
        )


def _not_a_length(tidy: str) -> Unreadable:
    return Unreadable(
        what=f"“{tidy}” cannot be read as a length", remedy=f"Type for example {EXAMPLE}."
    )


def _absurd(tidy: str, length: Length, longest: Length, system: System) -> str:
    shown = print_both(length, system)
    return f"“{tidy}” would be {shown}, and nothing here is over {longest.in_metres:g} m"


def _other_unit(tidy: str, system: System) -> str:
    """Guess what a number far too large was meant in: most likely the other units."""
    if system is System.INCH and re.fullmatch(r"[\d.]+", tidy, re.ASCII):
        return f"Type {tidy} mm if millimetres are meant."
    return "Check the number and its unit."
