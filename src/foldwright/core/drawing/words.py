"""The few words that stand in a drawing."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.figure import Figure

UNIT_WORDS = {System.INCH: "in", System.METRIC: "mm"}
UNIT_NOTES = {System.INCH: "Sizes in inches", System.METRIC: "Sizes in millimetres"}


def in_full(figure: Figure[Length], system: System) -> str:
    """Write a length with its unit, rounded as its use asks for.

    Takes: the figure; the reader's system.

    Gives: text such as "35 3/16 in".

    Source: common practice.

    >>> from foldwright.core.why.making import measured
    >>> in_full(measured("width", Length.inches("35.1875")), System.INCH)
    '35 3/16 in'
    """
    return print_length(figure.value, system, figure.rounding)


def bare(figure: Figure[Length], system: System) -> str:
    """Write a length without its unit, for a drawing that states the unit once.

    Takes: the figure; the reader's system.

    Gives: text such as "35 3/16".

    Source: ISO 129 (from memory).

    >>> from foldwright.core.why.making import measured
    >>> bare(measured("width", Length.inches("35.1875")), System.INCH)
    '35 3/16'
    """
    return in_full(figure, system).removesuffix(UNIT_WORDS[system]).rstrip()
