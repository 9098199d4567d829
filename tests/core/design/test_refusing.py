"""Orders that cannot be drawn, and the way out of each."""

from __future__ import annotations

import pytest
from tests.core.layouts import answer, changed, cloth, inches, sized, stops

from foldwright.core.design.choices import Choices, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length


@pytest.mark.parametrize(
    ("design", "width", "drop", "name"),
    [
        (Choices(), "40", "4", "drop-too-short"),
        (Choices(row_count=0), "40", "60", "rows-too-few"),
        (Choices(row_count=-3), "40", "60", "rows-too-few"),
        (Choices(row_count=1_000_000), "40", "60", "rows-too-many"),
        (Choices(row_count=40, head_allowance=inches("55")), "40", "60", "rows-too-many"),
        (Choices(largest_row_spacing=Length(1)), "40", "60", "rows-too-many"),
        (Choices(column_count=1), "40", "60", "columns-too-few"),
        (Choices(), "4", "60", "too-narrow"),
        (Choices(edge_distance=inches("20")), "40", "60", "too-narrow"),
        (Choices(shrinkage=1.0), "40", "60", "shrinkage"),
        (Choices(shrinkage=-0.1), "40", "60", "shrinkage"),
        (Choices(style=StyleName.LOOPED, fullness=0.5), "40", "60", "fullness-under-one"),
    ],
)
def test_what_cannot_be_drawn_is_refused_with_a_way_out(
    design: Choices, width: str, drop: str, name: str
) -> None:
    size = sized(width, drop)
    found = answer(design, size)
    assert found.result is None
    assert stops(found.findings) == {f"design.{name}"}
    for refusal in found.findings:
        assert refusal.remedies
        for remedy in refusal.remedies:
            if remedy.changes:
                mended = answer(changed(design, "design", remedy.changes), size)
                assert mended.result is not None


def test_cloth_that_its_seams_use_up_is_refused() -> None:
    found = answer(Choices(), sized("40", "60"), Chosen(face=cloth("2")))
    assert found.result is None
    assert stops(found.findings) == {"design.cloth-too-narrow"}


def test_all_refusals_come_at_once() -> None:
    design = Choices(row_count=0, column_count=1, shrinkage=2.0)
    assert len(stops(answer(design, sized("40", "60")).findings)) == 3
