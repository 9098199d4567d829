"""Read a plain number, exactly, with a point or an unmistakable comma."""

from __future__ import annotations

import re
from fractions import Fraction

from foldwright.core.quantity.unreadable import Unreadable

LONGEST_TEXT = 40  # characters; no figure in a workroom needs more
THOUSANDS_DIGITS = 3
DECIMAL = r"\d+(?:[.,]\d*)?|[.,]\d+"
MINUS_SIGNS = str.maketrans({"−": "-", "–": "-"})  # noqa: RUF001 - a minus and a dash


def exact_decimal(typed: str, whole_text: str) -> Fraction:
    """Take digits with a decimal point, or with a comma where it can be nothing else.

    Takes: the digits as typed; the whole text they stand in, for the message.

    Gives: the exact number.

    Raises: Unreadable for a comma that might mark thousands, and for a number that
    ends in its point.

    Source: common practice.

    >>> exact_decimal("89,4", "89,4 cm")
    Fraction(447, 5)
    """
    before, comma, after = typed.partition(",")
    if comma and len(after) == THOUSANDS_DIGITS and before.strip("0"):
        raise Unreadable(
            what=f"“{typed}” in “{whole_text}” can be read in two ways",
            remedy=f"Type {before}{after} for thousands or {before}.{after} for a decimal.",
        )
    if typed.endswith((".", ",")):
        raise Unreadable(
            what=f"“{whole_text}” ends a number in its decimal point",
            remedy="Type the decimals too, or leave the point out.",
        )
    return Fraction(typed.replace(",", "."))


def tidy_text(text: str, example: str) -> str:
    """Lower the letters and single the spaces; refuse a text that is empty or endless.

    Takes: the text as typed; an example of what could be typed, for the message.

    Gives: the tidied text.

    Raises: Unreadable.

    Source: derived here.

    >>> tidy_text("  8  OZ ", "8 oz")
    '8 oz'
    """
    tidy = " ".join(text.translate(MINUS_SIGNS).lower().split())
    if not tidy:
        raise Unreadable(what="it is empty", remedy=f"Type for example {example}.")
    if len(tidy) > LONGEST_TEXT:
        raise Unreadable(
            what=f"it is longer than {LONGEST_TEXT} characters",
            remedy=f"Type for example {example}.",
        )
    return tidy


def read_number(text: str, *, signed: bool = False) -> float:
    """Read one plain number without a unit.

    Takes: text such as `12`, `0.12` or `0,12`; signed, whether a minus sign is meant.

    Gives: the number.

    Raises: Unreadable for anything else, among it nan, inf and exponents.

    Source: common practice.

    >>> read_number("0,12")
    0.12
    """
    tidy = tidy_text(text, "12.5")
    negative = tidy.startswith("-")
    if negative and not signed:
        raise Unreadable(what=f"“{tidy}” is negative", remedy="Type it without a minus sign.")
    if not re.fullmatch(rf"[-+]?(?:{DECIMAL})", tidy, re.ASCII):
        raise Unreadable(
            what=f"“{tidy}” is not a plain number", remedy="Type digits, for example 12.5."
        )
    size = float(exact_decimal(tidy.lstrip("-+"), tidy))
    return -size if negative else size


def read_share(text: str) -> float:
    """Read a share, as per cent or as a part of one.

    Takes: text such as `3 %`, `3%` or `0.03`.

    Gives: the share, 0 to 1.

    Raises: Unreadable for a share over the whole, with a question about the per cent sign.

    Source: common practice.

    >>> read_share("3 %") == read_share("0.03") == 0.03
    True
    """
    tidy = tidy_text(text, "3 %")
    digits = tidy.removesuffix("%").rstrip()
    share = read_number(digits or "%") / (100 if tidy.endswith("%") else 1)
    if share > 1:
        raise Unreadable(
            what=f"“{tidy}” is more than the whole",
            remedy=f"Type {digits} % if per cent are meant."
            if digits == tidy
            else "Type 100 % or less.",
        )
    return share
