"""Folds that are to show the same part of the print."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import answer, changed, cloth, finding, ids, inches, laid_out, sized, stops

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.design.pattern_lock import cloth_of_a_fold
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length

PRINT = Chosen(face=cloth("118", vertical_repeat=inches("19 1/2")))
PLAIN = Chosen(face=cloth("118"))
FLAT = Choices(alike_after=3)
LOOPED = Choices(style=StyleName.LOOPED, alike_after=3)


def test_a_flat_shade_is_locked_by_whole_parts_of_the_repeat() -> None:
    """Own arithmetic: a third of 19 1/2 in is 6 1/2 in; what is left of the drop is head."""
    size = sized("40", "60")
    found = answer(FLAT, size, PRINT)
    way = finding(found.findings, "design.pattern-unlocked").remedies[0]
    mended = changed(FLAT, "design", way.changes)
    locked = answer(mended, size, PRINT)
    assert "design.pattern-unlocked" not in ids(locked.findings)
    assert stops(locked.findings) <= stops(found.findings)
    assert locked.result is not None
    rows = locked.result.rows
    drift = abs(rows.spacing.value - inches("6 1/2")) * rows.count.value
    assert drift <= inches("1/8")
    assert rows.head_allowance.value > laid_out(Choices(), size, PRINT).rows.head_allowance.value


@pytest.mark.parametrize(("asked", "given"), [(1, 3), (2, 3), (3, 3), (4, 4)])
def test_a_fold_too_deep_for_the_market_gives_way_to_the_next_part(asked: int, given: int) -> None:
    """Half of 19 1/2 in is 9 3/4 in, over the cap of 8 in; a third is not, nor a quarter."""
    found = answer(replace(FLAT, alike_after=asked), sized("40", "60"), PRINT)
    way = finding(found.findings, "design.pattern-unlocked").remedies[0]
    texts = {change.path: change.text for change in way.changes}
    assert texts["design.alike_after"] == str(given)


def test_loops_are_locked_by_their_fullness() -> None:
    size = sized("40", "60")
    found = answer(LOOPED, size, PRINT)
    way = finding(found.findings, "design.pattern-unlocked").remedies[0]
    locked = answer(changed(LOOPED, "design", way.changes), size, PRINT)
    assert "design.pattern-unlocked" not in ids(locked.findings)
    assert "design.loop-too-long" not in ids(locked.findings)
    assert locked.result is not None
    fold = cloth_of_a_fold(locked.result.rows).value
    parts = fold / (inches("19 1/2") / 3)
    assert float(parts) == pytest.approx(round(float(parts)), abs=0.001)
    assert round(float(parts)) % 3 != 0


def test_a_lock_that_the_rule_of_the_loop_refuses_is_kept_with_other_rows() -> None:
    """A 17-in repeat, every third fold alike, on 7 in of tape: 18.3 in is over 16.9 in."""
    size, print_ = sized("36", "70"), Chosen(face=cloth("118", vertical_repeat=inches("17")))
    design = replace(LOOPED, row_count=10, fullness=1.619)
    found = answer(design, size, print_)
    assert "design.pattern-unlocked" not in ids(found.findings)
    way = finding(found.findings, "design.loop-too-long").remedies[0]
    mended = answer(changed(design, "design", way.changes), size, print_)
    assert not {"design.pattern-unlocked", "design.loop-too-long"} & ids(mended.findings)
    assert mended.result is not None
    rows = mended.result.rows
    loop = rows.spacing.value + cloth_of_a_fold(rows).value
    assert loop <= Length.inches("16.9")


def test_a_cloth_without_a_repeat_cannot_be_locked() -> None:
    found = answer(FLAT, sized("40", "60"), PLAIN).findings
    ways = finding(found, "design.lock-without-repeat").remedies
    assert [change.text for way in ways for change in way.changes] == [""]


def test_nobody_is_asked_about_a_lock_that_nobody_asked_for() -> None:
    found = ids(answer(Choices(), sized("40", "60"), PRINT).findings)
    assert not {"design.pattern-unlocked", "design.lock-without-repeat"} & found


def test_rows_a_whole_part_of_the_repeat_apart_are_locked() -> None:
    """Own arithmetic: a 19 1/2-in repeat in three folds takes 6 1/2 in each, in
    four 4 7/8 in; exact.
    """
    for folds, spacing in ((3, "6 1/2"), (4, "4 7/8")):
        drop = inches("3") + inches("1") + inches(spacing) * 9 / 2
        design = Choices(
            head_allowance=inches("3"), skirt=inches("1"), row_count=4, alike_after=folds
        )
        found = answer(design, sized("40", drop), PRINT)
        assert found.result is not None
        assert found.result.rows.spacing.value == inches(spacing)
        assert "design.pattern-unlocked" not in ids(found.findings)


def test_a_print_that_comes_back_after_other_folds_is_not_locked_as_asked() -> None:
    """Rows 4 7/8 in apart show the print after four folds, and so not after three."""
    drop = inches("3") + inches("1") + inches("4 7/8") * 9 / 2
    design = Choices(head_allowance=inches("3"), skirt=inches("1"), row_count=4, alike_after=3)
    assert "design.pattern-unlocked" in ids(answer(design, sized("40", drop), PRINT).findings)
