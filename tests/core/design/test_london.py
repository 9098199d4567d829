"""Pleats, swags, tails and the tied pouf of London shades."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.layout import Sewn
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Severity

LONDON = Choices(
    style=StyleName.LONDON,
    head_allowance=inches("3"),
    skirt=inches("1"),
    dip=inches("6"),
    pouf=inches("12"),
    tied_rows=1,
    shrinkage=0.0,
)
SIZE = sized("42", "60")


def test_a_pleat_stands_one_tail_from_each_edge_and_takes_its_cloth() -> None:
    """Own arithmetic: 42 in with 6-in tails and two pleats of 12 in lies 66 in wide flat."""
    layout = laid_out(LONDON, SIZE)
    assert [mark.value for mark in layout.columns.marks] == [inches("6"), inches("36")]
    assert layout.widths.cloth_width is not None
    assert layout.widths.cloth_width.value == inches("66")
    assert [mark.value for mark in layout.columns.cloth_marks] == [inches("12"), inches("54")]


def test_the_folds_of_a_pleat_lie_half_its_cloth_from_its_column() -> None:
    layout = laid_out(LONDON, SIZE)
    assert {(line.kind, line.upright) for line in layout.sewn} == {(Sewn.PLEAT, True)}
    folds = [line.at.value for line in layout.sewn]
    assert folds == [inches(each) for each in ("6", "18", "48", "60")]


def test_pleats_folded_away_leave_the_finished_width() -> None:
    layout = laid_out(replace(LONDON, column_count=4, dip=inches("3")), SIZE)
    flat = [mark.value for mark in layout.columns.cloth_marks]
    for number, (mark, on_cloth) in enumerate(zip(layout.columns.marks, flat, strict=True)):
        assert on_cloth - mark.value == inches("12") * number + inches("6")


def test_a_seam_is_held_against_the_columns_of_the_flat_cloth() -> None:
    """The seams of a 54-in cloth lie at 6 1/2 in and 59 1/2 in of 66; pleats at 12 and 54 in."""
    layout = laid_out(LONDON, SIZE, Chosen(face=cloth("54")))
    assert [seam.value for seam in layout.widths.seams] == [inches("6 1/2"), inches("59 1/2")]
    assert layout.widths.nearest_column is not None
    assert layout.widths.nearest_column.value == inches("5 1/2")


def test_the_pouf_hangs_below_its_ring_and_the_swag_below_the_pouf() -> None:
    """Own arithmetic: half of 12 in and a dip of 6 in, so the lowest row hangs 12 in up.

    60 - 3 - 12 - 1/8 in are left to seven free rows: 6.4107 in each.
    """
    rows = laid_out(replace(LONDON, row_count=8), SIZE).rows
    assert rows.first_row.value == inches("12")
    assert rows.marks[1].value - rows.marks[0].value == inches("1/8")
    assert float(rows.spacing.value.in_inches) == pytest.approx(44.875 / 7, abs=1e-4)
    assert float(rows.top_panel.value.in_inches) == pytest.approx(3 + 44.875 / 7, abs=1e-4)


def test_the_flat_cloth_is_longer_by_the_pouf_and_shorter_by_what_hangs_below() -> None:
    """Own arithmetic: 60 in, less the 12 in under the lowest row, and skirt 1 in and pouf 12 in."""
    layout = laid_out(LONDON, SIZE)
    body = layout.cuts[0].body
    assert body is not None
    assert body.value == inches("61")
    flat = [mark.value for mark in layout.rows.cloth_marks]
    assert flat[0] == inches("1")
    assert flat[1] - flat[0] == inches("12 1/8")
    assert abs(flat[2] - flat[1] - layout.rows.spacing.value) <= Length(1)


def test_two_tied_rows_share_the_pouf() -> None:
    rows = laid_out(replace(LONDON, tied_rows=2), SIZE).rows
    assert rows.first_row.value == inches("9")
    flat = [mark.value for mark in rows.cloth_marks[:3]]
    assert flat == [inches("1"), inches("7 1/8"), inches("13 1/4")]
    assert abs(rows.top_panel.value - inches("3") - rows.spacing.value) <= Length(1)


def test_without_a_pouf_the_rows_are_those_of_a_flat_shade() -> None:
    flat = Choices(head_allowance=inches("3"), skirt=inches("1"))
    untied, plain = (laid_out(each, SIZE).rows for each in (replace(LONDON, tied_rows=0), flat))
    assert [mark.value for mark in untied.marks] == [mark.value for mark in plain.marks]
    assert untied.cloth_marks == ()
    assert untied.pouf is None


@pytest.mark.parametrize(("width", "pleats"), [("57", 2), ("57 1/8", 3), ("102", 3)])
def test_a_swag_is_at_most_forty_five_inches_wide(width: str, pleats: int) -> None:
    assert laid_out(LONDON, sized(width, "60")).columns.count.value == pleats


def test_pleats_too_small_for_their_swag_are_told_what_they_need() -> None:
    """A dip of 6 in over 30 in takes a hem of about 33 in, so 3 in of pleat are needed."""
    found = answer(replace(LONDON, pleat_allowance=inches("2")), SIZE).findings
    stop = finding(found, "design.pleats-too-small")
    assert float(stop.figures[0].value.in_inches) == pytest.approx(33.0, abs=0.1)
    assert stop.figures[1].value == inches("32")
    text = stop.remedies[0].changes[0].text
    mended = replace(LONDON, pleat_allowance=inches(text.removesuffix(" in")))
    assert "design.pleats-too-small" not in ids(answer(mended, SIZE).findings)


def test_a_dip_too_deep_is_refused() -> None:
    found = answer(replace(LONDON, dip=inches("12 1/4")), SIZE)
    assert found.result is None
    assert finding(found.findings, "design.dip-too-deep").severity is Severity.STOP


def test_a_pouf_that_leaves_no_row_is_refused_with_a_way_out() -> None:
    found = answer(replace(LONDON, pouf=inches("110")), SIZE)
    assert found.result is None
    ways = finding(found.findings, "design.pouf-too-long").remedies
    changes = {change.path: change.text for way in ways for change in way.changes}
    assert changes == {"design.tied_rows": "0", "design.pouf": ""}


def test_tying_every_row_is_refused() -> None:
    found = answer(replace(LONDON, row_count=2, tied_rows=2), SIZE)
    assert found.result is None
    (stop,) = [each for each in found.findings if each.severity is Severity.STOP]
    assert stop.id == "design.all-rows-tied"
    assert [way.changes[0].text for way in stop.remedies if way.changes] == ["0"]


def test_raised_the_swag_hangs_below_its_stack() -> None:
    """Head 3 in, seven stacked rows, half of the pouf and the dip."""
    layout = laid_out(replace(LONDON, row_count=8), SIZE)
    assert layout.stack.raised_size.value == inches("3") + inches("1/8") * 7 + inches("12")


def test_the_pleats_are_folded_before_and_the_pouf_is_tied_after_the_rings() -> None:
    titles = [step.title for step in laid_out(LONDON, SIZE).sewing]
    assert titles.index("Fold the pleats") < titles.index("Turn the sides")
    assert titles.index("Sew the rings") < titles.index("Tie the pouf")
    untied = laid_out(replace(LONDON, tied_rows=0), SIZE).sewing
    assert "Tie the pouf" not in {step.title for step in untied}
