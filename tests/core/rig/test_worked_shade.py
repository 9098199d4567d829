"""One shade worked by hand in inches.

Finished drop 60, head allowance 3, lowest row 5 1/5 above the bottom edge, so 51.8 of
travel; tube 1 1/2 with its centre 1 1/2 below the top, cord 0.055, three safety wraps,
6 to tie off.
"""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.rig.building import headrail, layout, length

from foldwright.core.design.layout import Layout
from foldwright.core.facts.records import Cord
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.printing import print_length
from foldwright.core.quantity.rounding import System
from foldwright.core.rig import example
from foldwright.core.rig.headrail import Headrail

CORD = Cord(name="cord", diameter=Length.inches("0.055"))
TUBE = replace(example.TUBE, outside=Length.inches("1.5"))
BRACKET = replace(example.BRACKET, tube_centre_below_board=Length.inches("1.5"))
FINISHED = FinishedSize(
    width=length("width", Length.inches(48)),
    drop=length("drop", Length.inches(60)),
    board_length=length("board", Length.inches("47.75")),
)


def worked_layout() -> Layout:
    made = layout(4, 60, 1219.2)
    rows = replace(made.rows, first_row=length("first row", Length.inches("5.2")))
    return replace(made, rows=rows, travel=length("travel", Length.inches("51.8")))


@pytest.fixture(scope="module")
def rail() -> Headrail:
    return headrail(
        made=worked_layout(), finished=FINISHED, line=CORD, wound_on=TUBE, bracket=BRACKET
    )


def in_inches(length: Length) -> float:
    return float(length.in_inches)


def test_turns_of_travel_and_wraps_on_the_tube(rail: Headrail) -> None:
    """51.8 at 4.885 a turn: 10.604 turns, and 13.604 wraps with the safety wraps.

    The tool also counts the cord's slant from wrap to wrap: 0.001 turn less.
    """
    assert rail.travel_wraps.value == pytest.approx(10.604, abs=1.5e-3)
    assert rail.travel_wraps.value + rail.safety_wraps.value == pytest.approx(13.604, abs=1.5e-3)


def test_cord_cut_length(rail: Headrail) -> None:
    """53.3 to the bottom ring, 14.656 in the safety wraps, 6 to tie off: 73.956, cut 74."""
    cut = rail.lines[0].cut_length
    assert in_inches(cut.value) == pytest.approx(73.956, abs=1.5e-3)
    eighth = Length.inches("0.125")
    assert print_length(cut.value, System.INCH, cut.rounding, mark=eighth) == "74 in"


def test_band_of_wraps(rail: Headrail) -> None:
    """13.604 wraps of 0.055: 0.748 tight."""
    first = rail.lines[0]
    band = abs(first.band_start.value - first.band_end.value)
    assert in_inches(band) == pytest.approx(0.748, abs=5e-4)


def test_a_climbed_wrap_raises_its_column(rail: Headrail) -> None:
    """A cord of 0.055 on its own wraps gains about 0.35 a turn."""
    tilted = next(each for each in rail.adjustments if "level" in each.symptom)
    assert in_inches(tilted.amount.value) == pytest.approx(0.35, abs=5e-3)


def test_the_bottom_edge_at_the_stop(rail: Headrail) -> None:
    """The lowest row stops at the head allowance of 3, the bottom edge at 8.2."""
    assert in_inches(rail.up_stop.value) == pytest.approx(3.0, abs=1e-6)
    assert in_inches(rail.hem_at_stop.value) == pytest.approx(8.2, abs=1e-6)


@pytest.mark.parametrize(
    ("outside", "quarter"),
    [("1.25", 0.982), ("1.5", 1.178), ("2", 1.571)],
)
def test_release_pull(outside: str, quarter: float) -> None:
    """A quarter turn of the bare tube; the cord's middle adds an eighth of its girth."""
    tube = replace(example.TUBE, outside=Length.inches(outside))
    rail = headrail(made=worked_layout(), finished=FINISHED, line=CORD, wound_on=tube)
    cord = 0.055 * 3.14159265 / 4
    assert in_inches(rail.release_travel.value) == pytest.approx(quarter + cord, abs=1e-3)
