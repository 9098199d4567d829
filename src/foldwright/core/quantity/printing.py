"""Print lengths as a tape shows them: fractions of an inch, or millimetres."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from math import ceil, floor

from foldwright.core.quantity.length import NANOMETRES_PER_MILLIMETRE, Length
from foldwright.core.quantity.rounding import Rounding, System

USUAL_MARK = {
    System.INCH: Length.inches(Fraction(1, 16)),
    System.METRIC: Length.mm(1),
}
CLOTH_MARK = {
    System.INCH: Length.inches(Fraction(36, 8)),  # an eighth of a yard
    System.METRIC: Length.mm(10),
}
FINE_BELOW_MARKS = 8  # under half an inch, or 8 mm, a rounded mark would hide the figure
FINE_MARK = Length.inches(Fraction(1, 64))
FINEST_BELOW = Length.inches(Fraction(1, 8))  # under it even a sixty-fourth hides too much
THOUSANDTH = Length.inches(Fraction(1, 1000))


def round_length(length: Length, mark: Length, rounding: Rounding) -> Length:
    """Move a length to a whole number of marks, the way its use asks for.

    Takes: the exact length; the mark, above zero; the rounding. A length that must fit
    goes down, one cut oversize goes up, a mark goes to the nearest (ties go up).

    Gives: a whole multiple of the mark, at most half a mark away when nearest.

    Source: common practice.

    >>> round_length(Length.mm("10.6"), Length.mm(1), Rounding.MUST_FIT) == Length.mm(10)
    True
    """
    marks = Fraction(length.nanometres, mark.nanometres)
    whole = {
        Rounding.MUST_FIT: floor(marks),
        Rounding.CUT_OVERSIZE: ceil(marks),
        Rounding.MARK: floor(marks + Fraction(1, 2)),
    }[rounding]
    return Length(whole * mark.nanometres)


def print_length(
    length: Length,
    system: System,
    rounding: Rounding = Rounding.MARK,
    *,
    mark: Length | None = None,
) -> str:
    """Print a length at the mark, with its unit.

    Takes: the exact length; the reader's system; the rounding its use asks for; the mark,
    by default 1/16 in or 1 mm (in inches a mark is 1/2, 1/4 … 1/64 in or whole inches).

    Gives: text that `read_length` reads back as the same length at the mark.

    Source: common practice (print to 1/16 in or 1 mm).

    >>> print_length(Length.inches("35.1875"), System.INCH)
    '35 3/16 in'
    >>> print_length(Length.inches("35.1875"), System.METRIC)
    '894 mm'
    """
    at_mark = round_length(length, mark or USUAL_MARK[system], rounding)
    return _in_inches(at_mark) if system is System.INCH else _in_millimetres(at_mark)


def print_both(length: Length, system: System, rounding: Rounding = Rounding.MARK) -> str:
    """Print a length in the reader's system first and the other in brackets.

    Takes: the exact length; the reader's system; the rounding its use asks for.

    Gives: text such as "35 3/16 in (894 mm)"; each number is rounded from the exact length.

    Source: common practice.

    >>> print_both(Length.mm(894), System.METRIC)
    '894 mm (35 3/16 in)'
    """
    other = System.METRIC if system is System.INCH else System.INCH
    first = print_length(length, system, rounding)
    return f"{first} ({print_length(length, other, rounding)})"


def print_fine(length: Length, system: System, rounding: Rounding = Rounding.MARK) -> str:
    """Print a length at the usual mark, or finer where the mark would hide it.

    Takes: the exact length; the reader's system; the rounding its use asks for.

    Gives: the tape's fraction where the length lies on it or is long enough; otherwise
    sixty-fourths of an inch, from an eighth of an inch down thousandths, called so; or tenths
    of a millimetre.

    Holds for: short lengths that are not marked with a tape, such as a cord's diameter.

    Source: common practice.

    >>> print_fine(Length.mm("1.4"), System.METRIC), print_fine(Length.mm("1.4"), System.INCH)
    ('1.4 mm', '55 thousandths of an inch')
    >>> print_fine(Length.mm(5), System.INCH)
    '13/64 in'
    """
    mark = USUAL_MARK[system]
    on_the_tape = length.nanometres % mark.nanometres == 0
    if on_the_tape or rounding is not Rounding.MARK or abs(length) >= mark * FINE_BELOW_MARKS:
        return print_length(length, system, rounding)
    if system is System.METRIC:
        return print_length(length, system, rounding, mark=Length.mm("0.1"))
    if abs(length) >= FINEST_BELOW:
        return print_length(length, system, rounding, mark=FINE_MARK)
    thousandths = round_length(length, THOUSANDTH, rounding).nanometres // THOUSANDTH.nanometres
    noun = "thousandth" if abs(thousandths) == 1 else "thousandths"
    return f"{thousandths} {noun} of an inch"


def print_cloth(length: Length, system: System, rounding: Rounding = Rounding.CUT_OVERSIZE) -> str:
    """Print a length of cloth as it is bought: yards and eighths, or metres to the centimetre.

    Takes: the exact length; the reader's system; the rounding: up for what is bought, down
    for what is proven to be needed.

    Gives: text such as "6 7/8 yd" or "6.29 m".

    Source: common practice.

    >>> print_cloth(Length.inches(246), System.INCH), print_cloth(Length.inches(246), System.METRIC)
    ('6 7/8 yd', '6.25 m')
    """
    at_mark = round_length(length, CLOTH_MARK[system], rounding)
    if system is System.METRIC:
        return f"{at_mark.in_millimetres / 1000:.2f} m"
    yards = Length.inches(at_mark.in_inches / 36)
    return f"{_in_inches(yards).removesuffix(' in')} yd"


def _in_inches(length: Length) -> str:
    """Write a length that lies on a tape mark as whole inches and a reduced fraction."""
    sign = "-" if length.nanometres < 0 else ""
    whole, part = divmod(abs(length).in_inches, 1)
    words = [str(whole)] if whole or not part else []
    if part:
        words.append(f"{part.numerator}/{part.denominator}")
    return f"{sign}{' '.join(words)} in"


def _in_millimetres(length: Length) -> str:
    """Write millimetres with as many decimals as the mark needs, and no more."""
    millimetres = Decimal(length.nanometres) / NANOMETRES_PER_MILLIMETRE
    digits = f"{millimetres:f}"
    return f"{digits.rstrip('0').rstrip('.') if '.' in digits else digits} mm"
