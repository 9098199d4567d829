"""What the room of designs says, how strongly, and where each limit lies."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import (
    BAR,
    BRACKET,
    ROD,
    answer,
    cloth,
    figure,
    ids,
    inches,
    sized,
    stops,
)

from foldwright.core.design.choices import Choices, RodPlace, StyleName
from foldwright.core.facts.records import Chosen
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.why.finding import Severity, Stage

PLAIN = Chosen(face=cloth("118"))
FULL = Chosen(face=cloth("118"), bar=BAR, bracket=BRACKET, rod=ROD)
SIZE = sized("48", "60")
OVER_GLASS = replace(SIZE, top_above_glass=figure("top to glass", "6"))
IN_REVEAL = replace(SIZE, clear_depth=figure("depth of the reveal", "1"))
LOOPED = Choices(style=StyleName.LOOPED, fullness=2.0)
STOP, ASK, NOTE = Severity.STOP, Severity.ASK, Severity.NOTE


def test_a_sound_shade_has_nothing_to_say() -> None:
    for design in (Choices(), Choices(rods=RodPlace.ROWS), Choices(rods=RodPlace.MID_FOLD), LOOPED):
        assert answer(design, SIZE, FULL).findings == ()


@pytest.mark.parametrize(
    ("design", "size", "materials", "name", "severity"),
    [
        (Choices(row_count=6), SIZE, PLAIN, "rows-too-far-apart", STOP),
        (
            Choices(row_count=7, largest_row_spacing=inches("7")),
            SIZE,
            PLAIN,
            "rows-over-asked",
            NOTE,
        ),
        (Choices(largest_row_spacing=inches("9")), SIZE, PLAIN, "asked-over-cap", NOTE),
        (Choices(row_count=12), SIZE, PLAIN, "fold-depth", NOTE),
        (Choices(head_allowance=inches("2 1/2")), SIZE, FULL, "head-too-short", STOP),
        (Choices(fullness=1.5), SIZE, PLAIN, "fullness-on-flat", ASK),
        (Choices(rods=RodPlace.ROWS), SIZE, PLAIN, "rod-missing", ASK),
        (replace(LOOPED, row_count=9), SIZE, PLAIN, "loop-too-long", STOP),
        (replace(LOOPED, rods=RodPlace.MID_FOLD), SIZE, FULL, "rods-in-loops", ASK),
        (replace(LOOPED, skirt=inches("1"), fullness=1.2), SIZE, FULL, "row-in-pocket", STOP),
        (replace(LOOPED, skirt=inches("1 1/4")), SIZE, FULL, "loop-below-hem", ASK),
        (Choices(edge_distance=inches("1 7/8")), SIZE, PLAIN, "edge-too-near", STOP),
        (Choices(column_count=5), SIZE, PLAIN, "columns-too-far-apart", STOP),
        (Choices(column_count=11), SIZE, PLAIN, "columns-crowded", NOTE),
        (Choices(), SIZE, Chosen(), "face-missing", ASK),
        (
            Choices(column_count=9, edge_distance=inches("2")),
            sized("75", "60"),
            Chosen(face=cloth("54")),
            "seam-on-column",
            STOP,
        ),
        (Choices(), OVER_GLASS, PLAIN, "stack-on-glass", NOTE),
        (
            Choices(stack_allowed_on_glass=inches("0")),
            OVER_GLASS,
            PLAIN,
            "stack-over-allowed",
            STOP,
        ),
        (Choices(), IN_REVEAL, FULL, "headrail-stands-out", STOP),
    ],
)
def test_each_fault_is_found_alone(
    design: Choices, size: FinishedSize, materials: Chosen, name: str, severity: Severity
) -> None:
    found = answer(design, size, materials).findings
    assert [(each.id, each.severity) for each in found] == [(f"design.{name}", severity)]
    stage = Stage.MEASURE if name == "headrail-stands-out" else Stage.ORDER
    assert found[0].stage is stage
    assert found[0].remedies


@pytest.mark.parametrize(
    ("design", "size"),
    [
        # (63 - 3)/7 1/2 is exactly 8 in
        (Choices(row_count=7, head_allowance=inches("3"), skirt=inches("0")), sized("48", "63")),
        (Choices(largest_row_spacing=inches("8")), SIZE),
        (Choices(edge_distance=inches("2")), SIZE),
        (Choices(column_count=6, edge_distance=inches("2")), sized("54", "60")),  # 10 in apart
        (Choices(column_count=9, edge_distance=inches("4")), SIZE),  # exactly 5 in apart
        (Choices(row_count=10, head_allowance=inches("6"), skirt=inches("1 1/2")), SIZE),  # 5 in
        (Choices(fullness=1.0), SIZE),
        (Choices(), sized("9", "30")),  # two columns are never too close
    ],
)
def test_a_limit_just_kept_is_no_fault(design: Choices, size: FinishedSize) -> None:
    assert ids(answer(design, size, PLAIN).findings) == set()


def test_a_loop_of_exactly_the_limit_is_no_fault() -> None:
    """Rows 6 3/4 in apart with cloth 10 3/20 in long make 16.9 in."""
    design = Choices(style=StyleName.LOOPED, row_count=10, fullness=10.15 / 6.75)
    assert ids(answer(design, sized("48", "67 1/2"), PLAIN).findings) == set()


def test_the_pitch_asked_for_goes_before_the_house_s() -> None:
    wide = answer(Choices(largest_pitch=inches("15")), SIZE, PLAIN)
    assert wide.result is not None
    assert wide.result.columns.count.value == 4
    assert stops(wide.findings) == set()


def test_a_head_under_the_floor_is_a_stop_before_the_headrail_is_known() -> None:
    found = answer(Choices(head_allowance=inches("2 1/2")), SIZE, PLAIN).findings
    assert ids(found) == {"design.head-too-short"}
