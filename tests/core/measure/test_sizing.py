"""The finished width and drop, by mount, rule and what was asked for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import BOARD, HABITS, ids, inches

from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, HeightRule, Mount, MountPlace, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.source import Status

WINDOW = Opening(
    width_top=inches("35 1/2"),
    width_middle=inches("35 7/16"),
    width_bottom=inches("35 9/16"),
    height_left=inches("60 1/4"),
    height_centre=inches("60 3/16"),
    height_right=inches("60 5/16"),
)
INSIDE = Mount(place=MountPlace.INSIDE, height_rule=HeightRule.CLEAR_SILL)
OUTSIDE = Mount(place=MountPlace.OUTSIDE)


def size_of(opening: Opening, mount: Mount, asked: AskedSize | None = None) -> FinishedSize:
    size = finished_size(opening, mount, asked or AskedSize(), HABITS, BOARD).result
    assert size is not None
    return size


def test_a_usual_opening_loses_a_quarter_inch_and_a_wide_one_half() -> None:
    assert size_of(WINDOW, INSIDE).width.value == inches("35 3/16")
    wide = replace(WINDOW, width_top=None, width_middle=None, width_bottom=inches("60"))
    assert size_of(wide, INSIDE).width.value == inches("59 1/2")


def test_a_typed_deduction_goes_before_the_house_s() -> None:
    mount = replace(INSIDE, deduction=inches("3/8"))
    assert size_of(WINDOW, mount).width.value == inches("35 1/16")


def test_an_inside_width_is_printed_down_so_that_it_fits() -> None:
    assert size_of(WINDOW, INSIDE).width.rounding is Rounding.MUST_FIT


def test_clearing_the_sill_takes_a_clearance_off_the_shortest_height() -> None:
    assert size_of(WINDOW, INSIDE).drop.value == inches("59 15/16")


def test_without_a_rule_the_drop_cannot_drag_and_counts_as_a_house_default() -> None:
    drop = size_of(WINDOW, Mount(place=MountPlace.INSIDE)).drop
    assert drop.value == inches("59 15/16")
    assert drop.rests_on is Status.HOUSE


def test_a_window_without_a_sill_is_covered_and_no_rule_is_asked() -> None:
    opening = replace(WINDOW, sill=False)
    found = finished_size(opening, Mount(place=MountPlace.INSIDE), AskedSize(), HABITS)
    assert found.result is not None
    assert found.result.drop.value == inches("60 5/16")
    assert "measure.height-rule" not in ids(found.findings)


def test_an_outside_shade_covers_the_casing_else_the_opening() -> None:
    assert size_of(WINDOW, OUTSIDE).width.value == inches("39 9/16")
    cased = replace(WINDOW, casing_width=inches("41"))
    assert size_of(cased, OUTSIDE).width.value == inches("45")


def test_overlaps_may_differ() -> None:
    mount = replace(OUTSIDE, overlap_left=inches("1"), overlap_right=inches("3 1/2"))
    assert size_of(WINDOW, mount).width.value == inches("40 1/16")


@pytest.mark.parametrize(
    ("sill", "below", "drop"),
    [
        (True, None, "62 5/16"),
        (None, None, "62 5/16"),
        (False, None, "63 13/16"),
        (True, "1/2", "62 13/16"),
    ],
)
def test_an_outside_shade_ends_on_the_sill_or_below(
    sill: bool | None,  # noqa: FBT001 - the fact under test
    below: str | None,
    drop: str,
) -> None:
    mount = replace(OUTSIDE, below=inches(below) if below else None)
    assert size_of(replace(WINDOW, sill=sill), mount).drop.value == inches(drop)


def test_a_size_asked_for_is_enough() -> None:
    asked = AskedSize(width=Length.mm(900), drop=Length.mm(1500), given_by="the designer")
    found = finished_size(Opening(), Mount(), asked, HABITS)
    assert found.result is not None
    assert found.result.width.value == Length.mm(900)
    assert "given by the designer" in found.result.width.because
    assert found.result.side_gap_left is None
    assert found.result.sill_gap is None


def test_a_giver_s_braces_stay_out_of_the_sentence() -> None:
    asked = AskedSize(width=Length.mm(900), drop=Length.mm(1500), given_by="{0}")
    found = finished_size(Opening(), Mount(), asked, HABITS).result
    assert found is not None
    assert "{" not in found.width.because


def test_a_size_asked_for_goes_before_the_opening_but_the_opening_still_speaks() -> None:
    asked = AskedSize(width=inches("35"), given_by="the designer")
    size = size_of(WINDOW, INSIDE, asked)
    assert size.width.value == inches("35")
    assert size.drop.value == inches("59 15/16")
    assert size.side_gap_left is not None
    assert size.side_gap_left.value == inches("7/32")


@pytest.mark.parametrize("mount", [Mount(), INSIDE, OUTSIDE])
def test_without_measures_there_is_no_size(mount: Mount) -> None:
    found = finished_size(Opening(), mount, AskedSize(), HABITS)
    assert found.result is None
    assert {"measure.width-missing", "measure.drop-missing"} <= ids(found.findings)


def test_a_mount_unknown_gives_no_size_but_shows_both() -> None:
    found = finished_size(WINDOW, Mount(), AskedSize(), HABITS)
    assert found.result is None
    place = next(each for each in found.findings if each.id == "measure.place")
    shown = [[figure.value for figure in remedy.figures] for remedy in place.remedies]
    assert shown[:2] == [
        [inches("35 3/16"), inches("59 15/16")],
        [inches("39 9/16"), inches("62 5/16")],
    ]


def test_a_deduction_that_leaves_nothing_is_refused() -> None:
    found = finished_size(WINDOW, replace(INSIDE, deduction=inches("36")), AskedSize(), HABITS)
    assert found.result is None
    assert "measure.no-width" in ids(found.findings)


def test_the_board_is_shorter_than_the_shade() -> None:
    assert size_of(WINDOW, INSIDE).board_length.value == inches("34 15/16")


def test_returns_reach_from_the_board_to_the_wall() -> None:
    mount = replace(OUTSIDE, returns=True)
    opening = replace(WINDOW, casing_projection=inches("3/4"))
    on_wall, on_casing = size_of(opening, mount), size_of(opening, replace(mount, above=Length(0)))
    assert on_wall.return_depth is not None
    assert on_casing.return_depth is not None
    assert on_wall.return_depth.value == inches("1 1/2")
    assert on_casing.return_depth.value == inches("2 1/4")
    assert size_of(opening, OUTSIDE).return_depth is None
    assert finished_size(opening, mount, AskedSize(), HABITS).result is not None
