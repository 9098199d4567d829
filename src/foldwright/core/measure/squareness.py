"""How far the opening is from square, and what that leaves at the sides."""

from __future__ import annotations

from fractions import Fraction
from math import hypot

from foldwright.core.measure.site import Site, listed
from foldwright.core.measure.sizing import narrowest_width
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived, measured

L = Figure[Length]


def racking(site: Site) -> L | None:
    """Work out from the diagonals how far the head is shifted sideways against the sill.

    Takes: the site; the falling diagonal runs from the top left to the bottom right corner.

    Gives: (falling² - rising²) / (4 width); above zero the head lies to the left of the
    sill as seen from the room, below zero to the right. None while a diagonal or every
    width is missing.

    Holds for: exact for a parallelogram.

    Source: derived here.
    """
    falling, rising = site.opening.diagonal_falling, site.opening.diagonal_rising
    if falling is None or rising is None or not site.widths:
        return None
    width = narrowest_width(site)
    return derived(
        "racking",
        racking_of(falling, rising, width.value),
        Unit.LENGTH,
        "The squares of the diagonals {0} and {1} differ by four times the width {2} times"
        " the shift of the head against the sill.",
        measured("falling diagonal", falling),
        measured("rising diagonal", rising),
        width,
    )


def racking_of(falling: Length, rising: Length, width: Length) -> Length:
    """Work out the sideways shift of a parallelogram's head against its foot.

    Takes: both diagonals; the width, above zero.

    Gives: (falling² - rising²) / (4 width), to the nanometre.

    Holds for: exact for a parallelogram.

    Source: derived here.

    >>> shift = racking_of(Length.inches("70.25"), Length.inches("69.875"), Length.inches(36))
    >>> round(float(shift.in_inches), 3)
    0.365
    """
    squares = falling.nanometres**2 - rising.nanometres**2
    return Length(round(Fraction(squares, 4 * width.nanometres)))


def diagonal_disagreement(site: Site) -> L | None:
    """Compare the diagonals with the widths and heights.

    Takes: the site.

    Gives: how far the root mean square of the diagonals lies from the diagonal that mean
    width and mean height make; None while something is missing.

    Holds for: any parallelogram, racked or not.

    Source: derived here (parallelogram law).
    """
    falling, rising = site.opening.diagonal_falling, site.opening.diagonal_rising
    if falling is None or rising is None or not site.widths or not site.heights:
        return None
    found = hypot(falling.in_metres, rising.in_metres) / 2**0.5
    asked = hypot(_mean(site.widths).in_metres, _mean(site.heights).in_metres)
    return derived(
        "disagreement of the diagonals",
        Length.metres(abs(found - asked)),
        Unit.LENGTH,
        "The diagonals {0} and {1} against those that the widths and heights make.",
        measured("falling diagonal", falling),
        measured("rising diagonal", rising),
        *site.widths,
        *site.heights,
    )


def side_gaps(site: Site, width: L) -> tuple[L, L] | None:
    """Work out the least gap at each side of an inside shade.

    Takes: the site; the finished width. The board is centred at the head and the shade
    hangs plumb, so the reveal of a racked window leans against it.

    Gives: the least gap at the left and at the right, as seen from the room; below zero
    the shade does not pass. None outside, or while no width is measured.

    Holds for: reveals whose sides narrow alike.

    Source: derived here.
    """
    if not site.inside or not site.widths:
        return None
    shift = racking(site)
    gaps = _gaps(site, width.value, shift.value if shift else Length(0))
    left, right = zip(*gaps, strict=True)
    return _gap("left", min(left), site, width, shift), _gap(
        "right", min(right), site, width, shift
    )


def _gaps(site: Site, width: Length, shift: Length) -> list[tuple[Length, Length]]:
    """Give the gaps at each measured height; a shift to the left takes from the left below."""
    opening = site.opening
    levels = ((opening.width_top, 0), (opening.width_middle, 1), (opening.width_bottom, 2))
    return [
        ((wide - width) / 2 - shift * level / 2, (wide - width) / 2 + shift * level / 2)
        for wide, level in levels
        if wide is not None
    ]


def _gap(side: str, least: Length, site: Site, width: L, shift: L | None) -> L:
    last = len(site.widths) + 1
    racked = f", with the head {{{last}}} off the sill" if shift else ""
    return derived(
        f"gap at the {side}",
        least,
        Unit.LENGTH,
        f"The least that a shade {{0}} wide, centred at the head, leaves at the {side}"
        f" in a reveal {listed(len(site.widths), 1)} wide{racked}.",
        width,
        *site.widths,
        *((shift,) if shift else ()),
        rounding=Rounding.MUST_FIT,
    )


def _mean(figures: tuple[L, ...]) -> Length:
    return Length(round(Fraction(sum(f.value.nanometres for f in figures), len(figures))))
