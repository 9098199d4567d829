"""The raised shade: travel, raised size, glass, depth."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import (
    BRACKET,
    answer,
    cloth,
    figure,
    finding,
    habit,
    ids,
    inches,
    laid_out,
    sized,
)

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length
from foldwright.core.why.finding import Severity

CAP = figure("largest row spacing", "8")
BENCH = Choices(head_allowance=inches("3"), skirt=inches("1 1/2"))
FLAT_ROWS = habit("stacked_row_pitch", Length(0))


def test_the_rule_of_thumb_s_travel_is_ours_with_rows_of_no_thickness() -> None:
    """Own arithmetic: 60 - 5.2 - 3 = 51.8 in, 10.604 turns of a 1.5-in tube and 0.055-in cord.

    Stacked rows of 1/8 in take six times that off, and the figure's sentence says so.
    """
    thin = laid_out(BENCH, sized("48", "60"), cap=CAP, habits=FLAT_ROWS)
    assert thin.travel.value == inches("51 4/5")
    turns = float(thin.travel.value.in_inches) / (3.14159265 * 1.555)
    assert turns == pytest.approx(10.604, abs=0.0005)
    usual = laid_out(BENCH, sized("48", "60"), cap=CAP)
    assert usual.travel.value == inches("51 4/5") - inches("6/8")
    assert "rule of thumb" in usual.travel.because
    assert usual.travel.inputs[-1].value == inches("3/4")


def test_the_raised_size_by_hand() -> None:
    """Own arithmetic: 3 + 3.7 + 1 1/2 = 8.2 in, and bunching; exact."""
    thin = laid_out(BENCH, sized("48", "60"), cap=CAP, habits=FLAT_ROWS)
    assert thin.stack.raised_size.value == inches("8 1/5")
    usual = laid_out(BENCH, sized("48", "60"), cap=CAP)
    assert usual.stack.raised_size.value == inches("8 1/5") + inches("3/4")


def test_a_looped_stack_hangs_by_its_loop() -> None:
    design = Choices(
        style=StyleName.LOOPED,
        fullness=2.0,
        row_count=12,
        head_allowance=inches("3"),
        skirt=inches("3/2"),
    )
    raised = laid_out(design, sized("36", "63"), habits=FLAT_ROWS).stack.raised_size
    assert raised.value == inches("8 1/4")


def test_glass_covered_by_hand() -> None:
    """Own arithmetic: raised 8.2 in, 6 in above the glass: 2.2 in covered; exact."""
    size = sized("48", "60", top_above_glass=figure("top to glass", "6"))
    found = answer(BENCH, size, cap=CAP, habits=FLAT_ROWS)
    assert found.result is not None
    assert found.result.stack.glass_covered is not None
    assert found.result.stack.glass_covered.value == inches("2 1/5")
    assert "design.stack-on-glass" in ids(found.findings)
    high = replace(size, top_above_glass=figure("top to glass", "9"))
    clear = answer(BENCH, high, cap=CAP, habits=FLAT_ROWS)
    assert clear.result is not None
    assert clear.result.stack.glass_covered is not None
    assert clear.result.stack.glass_covered.value == Length(0)
    assert "design.stack-on-glass" not in ids(clear.findings)


@pytest.mark.parametrize(("allowed", "stopped"), [("2", True), ("2 1/4", False)])
def test_a_stack_over_what_the_client_allows_is_a_stop(allowed: str, stopped: bool) -> None:  # noqa: FBT001
    size = sized("48", "60", top_above_glass=figure("top to glass", "6"))
    design = replace(BENCH, stack_allowed_on_glass=inches(allowed))
    found = answer(design, size, cap=CAP, habits=FLAT_ROWS).findings
    assert ("design.stack-over-allowed" in ids(found)) is stopped
    if stopped:
        ways = finding(found, "design.stack-over-allowed").remedies
        assert [way.changes[0].path for way in ways if way.changes] == [
            "design.row_count",
            "design.skirt",
        ]
        assert ways[-1].figures[0].value == inches("1/4")


def test_the_depth_of_the_pressed_folds_by_hand() -> None:
    """Own arithmetic: 2 x 8 folds x 1.6 x 0.9 mm and a ring of 4 mm: 27.04 mm."""
    lined = Chosen(face=cloth(thickness=Length.mm("0.5")), lining=cloth(thickness=Length.mm("0.4")))
    stack = laid_out(Choices(row_count=8), sized("48", "64"), lined).stack
    assert stack.depth.value == Length.mm("27.04")
    assert stack.depth.low is not None
    assert stack.depth.high is not None
    assert stack.depth.low < stack.depth.value < stack.depth.high


def test_stiff_cloth_stands_out_by_the_nose_of_its_fold() -> None:
    stiff = Chosen(face=cloth(thickness=Length.mm("0.5"), bending_length=Length.mm(40)))
    assert laid_out(Choices(), sized("48", "60"), stiff).stack.depth.value == Length.mm(80)


def test_a_headrail_deeper_than_its_reveal_is_a_stop_and_a_stack_a_note() -> None:
    materials = Chosen(face=cloth(), bracket=BRACKET)

    def said(depth: str) -> list[tuple[str, Severity]]:
        size = sized("48", "60", clear_depth=figure("depth of the reveal", depth))
        return [(each.id, each.severity) for each in answer(Choices(), size, materials).findings]

    assert said("1 11/16") == [("design.headrail-stands-out", Severity.STOP)]
    assert said("1 3/4") == [("design.stack-stands-out", Severity.NOTE)]
    assert said("6") == []
