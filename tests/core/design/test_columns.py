"""Ring columns, and the search that keeps them off the seams."""

from __future__ import annotations

from itertools import pairwise

import pytest
from tests.core.layouts import ROD, answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace
from foldwright.core.design.columns import Spread
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length

WIDE_ROLL = Chosen(face=cloth("118"))


@pytest.mark.parametrize(
    ("width", "pitch", "marks"),
    [
        ("48", "10", ["2", "10 4/5", "19 3/5", "28 2/5", "37 1/5", "46"]),
        ("28", "12", ["2", "14", "26"]),
    ],
)
def test_columns_by_hand(width: str, pitch: str, marks: list[str]) -> None:
    """Own arithmetic; exact."""
    columns = laid_out(Choices(largest_pitch=inches(pitch)), sized(width, "60"), WIDE_ROLL).columns
    assert [mark.value for mark in columns.marks] == [inches(mark) for mark in marks]


def test_a_rod_at_every_row_carries_a_wider_pitch() -> None:
    materials = Chosen(face=cloth("118"), rod=ROD)
    count = [
        laid_out(Choices(rods=rods), sized("76", "60"), materials).columns.count.value
        for rods in (RodPlace.NONE, RodPlace.MID_FOLD, RodPlace.ROWS)
    ]
    assert count == [9, 9, 7]


def test_seams_far_from_the_columns_leave_them_alone() -> None:
    """Own arithmetic: 72 in, seams at 9 1/2 and 62 1/2: 8 columns, nearest 2.214 in; 0.0005."""
    layout = laid_out(Choices(), sized("72", "60"))
    assert [seam.value for seam in layout.widths.seams] == [inches("9 1/2"), inches("62 1/2")]
    assert layout.columns.count.value == 8
    assert layout.widths.nearest_column is not None
    assert float(layout.widths.nearest_column.value.in_inches) == pytest.approx(2.214, abs=0.0005)


def test_the_edge_moves_first_and_may_save_a_column() -> None:
    """Own arithmetic: 75 in, seams at 11 and 64: at 2 in 9 columns stand 1/8 in from a seam;
    at 2 1/2 in 8 columns stand 1 1/2 in off; exact."""
    layout = laid_out(Choices(), sized("75", "60"))
    columns = layout.columns
    assert (columns.count.value, columns.pitch.value) == (8, inches("10"))
    assert columns.edge_distance.value == inches("2 1/2")
    assert layout.widths.nearest_column is not None
    assert layout.widths.nearest_column.value == inches("1 1/2")
    assert "Moved in from" in columns.edge_distance.because


def test_typed_columns_stay_and_the_seam_speaks() -> None:
    design = Choices(edge_distance=inches("2"), column_count=9)
    found = answer(design, sized("75", "60"))
    assert found.result is not None
    assert found.result.columns.count.value == 9
    stop = finding(found.findings, "design.seam-on-column")
    assert [each.value for each in stop.figures] == [inches("1/8"), inches("1/2")]
    told = [[figure.value for figure in way.figures] for way in stop.remedies]
    assert told == [
        [9, inches("2 7/8")],
        [10, inches("2")],
        [8, inches("2 1/2")],
        [inches("52 1/4"), inches("3/8")],
        [inches("3/8")],
    ]


def test_a_typed_edge_under_the_floor_is_a_stop() -> None:
    found = answer(Choices(edge_distance=inches("1 1/2")), sized("40", "60")).findings
    stop = finding(found, "design.edge-too-near")
    assert stop.remedies[0].changes[0].text == "2 in"
    kept = answer(Choices(edge_distance=inches("2")), sized("40", "60")).findings
    assert "design.edge-too-near" not in ids(kept)


def test_too_few_typed_columns_are_a_stop_and_too_many_a_note() -> None:
    few = answer(Choices(column_count=4), sized("40", "60")).findings
    changes = [
        way.changes[0]
        for way in finding(few, "design.columns-too-far-apart").remedies
        if way.changes
    ]
    assert (changes[0].path, changes[0].text) == ("design.column_count", "5")
    assert "design.columns-crowded" in ids(
        answer(Choices(column_count=9), sized("40", "60")).findings
    )


def test_rods_are_a_way_out_of_a_wide_pitch_where_they_are_enough() -> None:
    """36 in between 4 columns is 12 in: too wide bare, right with rods."""
    found = answer(Choices(column_count=4), sized("40", "60"))
    ways = finding(found.findings, "design.columns-too-far-apart").remedies
    assert any(way.changes and way.changes[0].text == "at rows" for way in ways)
    wider = answer(Choices(column_count=3), sized("40", "60"))
    ways = finding(wider.findings, "design.columns-too-far-apart").remedies
    assert not any(way.changes and way.changes[0].text == "at rows" for way in ways)


@pytest.mark.parametrize("place", [0, 1, 2, 2.5, 5, 6.999, 7, 8.4, 9, 10, 11, 18, 19, 20])
@pytest.mark.parametrize("count", [2, 3, 4, 5])
def test_the_quick_test_of_a_place_agrees_with_the_marks(place: float, count: int) -> None:
    spread = Spread(width=Length.mm(20), edge=Length.mm(2), count=count)
    here = Length.metres(place / 1000)
    gap = min(abs(mark - here) for mark in spread.marks)
    assert spread.keeps_off(here, gap - Length(1))
    assert not spread.keeps_off(here, gap + Length(2))


def test_marks_of_an_odd_count_stand_in_the_centre() -> None:
    marks = Spread(width=Length.mm(1001), edge=Length.mm(50), count=5).marks
    assert marks[2] == Length.mm("500.5")
    assert all(left < right for left, right in pairwise(marks))


def test_a_column_exactly_as_far_from_a_seam_as_it_must_be_stays() -> None:
    """76 in: seams at 11 1/2 and 64 1/2, columns 9 in apart from 2 in, the second at 11; exact."""
    layout = laid_out(Choices(), sized("76", "60"))
    assert layout.widths.nearest_column is not None
    assert layout.widths.nearest_column.value == inches("1/2")
    assert layout.columns.edge_distance.value == inches("2")
