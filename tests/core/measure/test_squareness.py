"""Racking from the diagonals, and the gaps it leaves at the sides."""

from __future__ import annotations

from dataclasses import replace
from math import atan, degrees

import pytest
from tests.core.layouts import HABITS, changed, finding, ids, inches
from tests.core.measure.test_sizing import INSIDE, WINDOW, size_of

from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Opening
from foldwright.core.measure.squareness import racking_of
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System

SKEW = Opening(
    width_top=inches("36"),
    width_middle=inches("36"),
    width_bottom=inches("36"),
    height_left=inches("60"),
    height_centre=inches("60"),
    height_right=inches("60"),
    diagonal_falling=inches("70 1/4"),
    diagonal_rising=inches("69 7/8"),
)


def test_racking_of_a_skew_reveal() -> None:
    """Own arithmetic: 0.365 in, 0.348 degrees over 60 in, printed 3/8; tolerance 0.0005."""
    shift = racking_of(inches("70 1/4"), inches("69 7/8"), inches("36"))
    assert float(shift.in_inches) == pytest.approx(0.365, abs=0.0005)
    assert degrees(atan(shift / inches("60"))) == pytest.approx(0.348, abs=0.0005)
    assert print_length(shift, System.INCH) == "3/8 in"


def test_racking_of_a_drawn_parallelogram() -> None:
    """A head shifted 12 mm to the left over 900 by 1500 mm makes these two diagonals."""
    falling = Length.mm(1) * round((912**2 + 1500**2) ** 0.5)
    rising = Length.mm(1) * round((888**2 + 1500**2) ** 0.5)
    found = racking_of(falling, rising, Length.mm(900))
    assert found.in_millimetres == pytest.approx(12, abs=0.9)  # tapes read to 1 mm


def test_a_head_to_the_left_takes_from_the_left_gap() -> None:
    size = size_of(SKEW, INSIDE)
    assert size.racking is not None
    assert size.side_gap_left is not None
    assert size.side_gap_right is not None
    square = inches("1/8")
    assert size.side_gap_left.value == square - size.racking.value
    assert size.side_gap_right.value == square
    turned = replace(SKEW, diagonal_falling=inches("69 7/8"), diagonal_rising=inches("70 1/4"))
    mirrored = size_of(turned, INSIDE)
    assert mirrored.side_gap_right is not None
    assert mirrored.side_gap_right.value == size.side_gap_left.value


def test_racking_over_the_gap_is_a_stop_with_the_deduction_that_restores_it() -> None:
    found = finished_size(SKEW, INSIDE, AskedSize(), HABITS).findings
    stop = finding(found, "measure.racking-binds")
    assert [figure.value for figure in stop.figures] == [
        racking_of(inches("70 1/4"), inches("69 7/8"), inches("36")),
        inches("1/8"),
    ]
    assert "rubs at the left" in stop.sentence
    deduct = stop.remedies[0].changes
    assert [(change.path, change.text) for change in deduct] == [("mount.deduction", "1 in")]
    mended = size_of(SKEW, changed(INSIDE, "mount", deduct))
    assert mended.side_gap_left is not None
    assert mended.side_gap_left.value >= inches("1/8")


def test_racking_of_a_typed_width_is_mended_in_the_width() -> None:
    asked = AskedSize(width=inches("35 3/4"), given_by="the designer")
    stop = finding(finished_size(SKEW, INSIDE, asked, HABITS).findings, "measure.racking-binds")
    assert stop.remedies[0].changes[0].path == "asked.width"
    assert stop.remedies[0].changes[0].text == "35 in"


def test_racking_within_the_gap_is_no_finding() -> None:
    little = replace(SKEW, diagonal_rising=inches("70 3/16"))
    assert "measure.racking-binds" not in ids(
        finished_size(little, INSIDE, AskedSize(), HABITS).findings
    )


def test_diagonals_missing_are_noted_and_diagonals_that_cannot_be_are_asked_about() -> None:
    none = finished_size(WINDOW, INSIDE, AskedSize(), HABITS).findings
    assert "measure.diagonals-missing" in ids(none)
    wrong = replace(SKEW, diagonal_falling=inches("82 1/4"))
    found = finished_size(wrong, INSIDE, AskedSize(), HABITS).findings
    assert "measure.diagonals-disagree" in ids(found)
    true = finished_size(SKEW, INSIDE, AskedSize(), HABITS).findings
    assert "measure.diagonals-disagree" not in ids(true)


def test_the_gap_is_the_least_over_all_heights() -> None:
    tapered = Opening(
        width_top=inches("36"),
        width_bottom=inches("37"),
        height_centre=inches("60"),
        diagonal_falling=inches("70 1/4"),
        diagonal_rising=inches("69 7/8"),
    )
    size = size_of(tapered, INSIDE)
    assert size.side_gap_left is not None
    assert size.racking is not None
    below = inches("37") - size.width.value
    assert size.side_gap_left.value == min(inches("1/8"), below / 2 - size.racking.value)
