"""Rows of a cascade: each fold a step shorter than the one below it."""

from __future__ import annotations

from itertools import pairwise

import pytest
from tests.core.layouts import answer, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.drawing.folding import hang
from foldwright.core.quantity.length import Length

CASCADE = Choices(style=StyleName.CASCADE, head_allowance=inches("3"), skirt=inches("1 1/2"))
SIZE = sized("48", "60")


def with_step(step: str, rows: int | None = None) -> Choices:
    return Choices(
        style=StyleName.CASCADE,
        head_allowance=inches("3"),
        skirt=inches("1 1/2"),
        step=inches(step),
        row_count=rows,
    )


def test_the_spacings_and_half_the_lowest_share_the_drop() -> None:
    """Own arithmetic: 60 - 3 - 1 1/2 = 55 1/2 in, and nine rows that lack 0, 1/2, 1 … 4 in.

    The lowest is (55 1/2 + 18)/9 1/2 = 7.7368 in, the top one 4 in less; tolerance 0.0001 in.
    """
    rows = laid_out(with_step("1/4", 9), SIZE).rows
    spacings = [float(each.value.in_inches) for each in rows.spacings]
    assert spacings == pytest.approx([7.7368 - 0.5 * number for number in range(8)], abs=1e-4)
    assert float(rows.first_row.value.in_inches) == pytest.approx(1.5 + 7.7368 / 2, abs=1e-4)
    assert float(rows.top_panel.value.in_inches) == pytest.approx(3 + 3.7368, abs=1e-4)
    assert rows.spacing.value == max(each.value for each in rows.spacings)


def test_raised_every_fold_shows_a_step_below_the_one_before_it() -> None:
    """The rows stack one pitch apart, which adds to the step."""
    layout = laid_out(with_step("1/4", 9), SIZE)
    assert layout.rows.stacked_pitch is not None
    pitch = layout.rows.stacked_pitch.value.in_millimetres
    up = hang(layout, drop_mm=60 * 25.4, pitch_mm=pitch, raise_share=1.0)
    edges = [panel.fold_edge for panel in up.panels]
    shown = [above - below for below, above in pairwise(edges[:-1])]
    assert shown == pytest.approx([0.25 * 25.4 + pitch] * 7, abs=0.001)


def test_a_step_too_great_for_the_market_is_a_stop_with_a_step_that_fits() -> None:
    """One-inch steps want a lowest spacing of 13.7 in; 8 in are allowed."""
    found = answer(with_step("1"), SIZE).findings
    stop = finding(found, "design.rows-too-far-apart")
    assert float(stop.figures[0].value.in_inches) == pytest.approx(75.5 / 5.5, abs=0.001)
    (way,) = [each for each in stop.remedies if each.changes]
    assert [change.text for change in way.changes] == ["1/8 in", ""]


def test_left_to_the_house_the_step_is_the_most_that_fits() -> None:
    """With an eighth, 8 rows of 7.353 in at most do; with a quarter no number of rows does."""
    layout = laid_out(CASCADE, SIZE)
    assert layout.rows.count.value == 8
    assert float(layout.rows.spacing.value.in_inches) == pytest.approx(62.5 / 8.5, abs=0.0001)
    for rows in range(1, 30):
        tried = answer(with_step("1/4", rows), SIZE)
        if tried.result is not None:
            top = tried.result.rows.top_panel.value - inches("3")
            lowest = tried.result.rows.spacing.value
            assert top < inches("5") or lowest > inches("8")


def test_on_a_short_shade_the_step_may_be_larger() -> None:
    rows = laid_out(CASCADE, sized("36", "42")).rows
    first, second = rows.spacings[:2]
    assert abs(first.value - second.value - inches("1/2")) <= Length(1)


def test_a_shallow_top_fold_is_a_note() -> None:
    found = answer(with_step("1/4", 9), SIZE).findings
    note = finding(found, "design.fold-depth")
    assert float(note.figures[0].value.in_inches) == pytest.approx(3.7368 / 2, abs=1e-3)
    assert "design.fold-depth" not in ids(answer(CASCADE, SIZE).findings)


def test_no_step_at_all_is_a_flat_shade() -> None:
    plain = Choices(head_allowance=inches("3"), skirt=inches("1 1/2"), row_count=7)
    flat = laid_out(plain, SIZE).rows
    stepless = laid_out(with_step("0", 7), SIZE).rows
    assert [mark.value for mark in stepless.marks] == [mark.value for mark in flat.marks]


def test_a_step_that_uses_up_the_top_row_is_refused() -> None:
    found = answer(with_step("2", 9), SIZE)
    assert found.result is None
    ways = finding(found.findings, "design.rows-too-many").remedies
    assert {change.path for way in ways for change in way.changes} >= {"design.step"}


def test_the_stack_hangs_as_low_as_its_lowest_fold_and_skirt() -> None:
    layout = laid_out(with_step("1/8", 8), SIZE)
    pitch = layout.rows.stacked_pitch
    assert pitch is not None
    hem = layout.rows.first_row.value
    assert layout.stack.raised_size.value == inches("3") + pitch.value * 7 + hem
    assert hem > Length(0)
