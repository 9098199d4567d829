"""What the room of measures says about a window, and what mends it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from tests.core.layouts import BOARD, HABITS, changed, finding, ids, inches
from tests.core.measure.test_sizing import INSIDE, OUTSIDE, WINDOW

from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Face, Mount, MountPlace, Opening, Substrate
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Finding, Severity
from foldwright.core.why.telling import fill

SQUARE = replace(
    WINDOW,
    diagonal_falling=inches("69 7/8"),
    diagonal_rising=inches("69 7/8"),
    depth_head=inches("4"),
    wall_above=inches("8"),
    wall_left=inches("6"),
    wall_right=inches("6"),
    casing_width=inches("41"),
    casing_height=inches("63"),
    sill=True,
    substrate=Substrate.WOOD,
)


def said(opening: Opening, mount: Mount, asked: AskedSize | None = None) -> tuple[Finding, ...]:
    return finished_size(opening, mount, asked or AskedSize(), HABITS, BOARD).findings


def opened(**facts: Any) -> Opening:
    return replace(SQUARE, **facts)


def test_a_sound_window_has_nothing_to_say() -> None:
    assert said(SQUARE, INSIDE) == ()
    assert said(SQUARE, OUTSIDE) == ()


@pytest.mark.parametrize(
    ("opening", "mount", "name", "severity"),
    [
        (opened(width_top=None), INSIDE, "widths-few", Severity.ASK),
        (opened(height_left=None), INSIDE, "heights-few", Severity.ASK),
        (SQUARE, replace(INSIDE, deduction=inches("0")), "width-binds", Severity.STOP),
        (SQUARE, replace(INSIDE, deduction=inches("1/16")), "width-tight", Severity.NOTE),
        (opened(height_left=inches("61")), INSIDE, "heights-spread", Severity.NOTE),
        (opened(depth_head=inches("15/16")), INSIDE, "reveal-shallow", Severity.STOP),
        (opened(obstruction_projection=inches("3 5/8")), INSIDE, "handle-hits", Severity.STOP),
        (opened(sill=None), OUTSIDE, "sill", Severity.ASK),
        (opened(wall_above=inches("2 5/8")), OUTSIDE, "headroom", Severity.STOP),
        (opened(wall_left=inches("1 1/2")), OUTSIDE, "wall-left", Severity.STOP),
        (opened(wall_right=inches("2 1/4")), OUTSIDE, "wall-right", Severity.NOTE),
        (SQUARE, replace(OUTSIDE, overlap_left=inches("1")), "overlap-left", Severity.NOTE),
        (SQUARE, replace(OUTSIDE, above=inches("1/2")), "board-near-frame", Severity.NOTE),
        (opened(head_fall=inches("1/8")), INSIDE, "head-falls", Severity.NOTE),
        (opened(substrate=Substrate.VINYL), INSIDE, "substrate", Severity.NOTE),
        (opened(substrate=Substrate.TILE), OUTSIDE, "substrate", Severity.NOTE),
        (SQUARE, replace(INSIDE, above=inches("4")), "above-clash", Severity.ASK),
        (SQUARE, replace(INSIDE, returns=True), "returns-clash", Severity.ASK),
        (SQUARE, replace(OUTSIDE, deduction=inches("1/4")), "deduction-clash", Severity.ASK),
    ],
)
def test_each_fault_is_found_alone(
    opening: Opening, mount: Mount, name: str, severity: Severity
) -> None:
    found = said(opening, mount)
    assert [(each.id, each.severity) for each in found] == [(f"measure.{name}", severity)]


@pytest.mark.parametrize(
    ("opening", "mount"),
    [
        (SQUARE, replace(INSIDE, deduction=inches("1/4"))),
        (opened(height_left=inches("60 7/16")), INSIDE),  # a spread of exactly 1/4 in
        (opened(depth_head=inches("1")), INSIDE),
        (opened(obstruction_projection=inches("3 1/2")), INSIDE),
        (opened(wall_above=inches("2 3/4")), OUTSIDE),  # board 3/4 in and 2 in over it
        (opened(wall_left=inches("2 1/2")), OUTSIDE),
        (SQUARE, replace(OUTSIDE, overlap_left=inches("2"))),
        (SQUARE, replace(OUTSIDE, above=inches("1"))),
        (opened(head_fall=inches("1/16")), INSIDE),
    ],
)
def test_a_limit_just_kept_is_no_fault(opening: Opening, mount: Mount) -> None:
    assert said(opening, mount) == ()


@pytest.mark.parametrize(
    ("width", "drop", "name"),
    [("96 1/16", "60", "wide"), ("11 15/16", "40", "narrow"), ("14", "56 1/16", "tall")],
)
def test_an_unusual_size_wants_the_owner(width: str, drop: str, name: str) -> None:
    asked = AskedSize(width=inches(width), drop=inches(drop), given_by="the designer")
    found = said(Opening(), INSIDE, asked)
    assert [(each.id, each.severity) for each in found] == [
        (f"measure.unusually-{name}", Severity.NOTE)
    ]


def test_a_size_nobody_signed_is_asked_about() -> None:
    asked = AskedSize(width=inches("35"), drop=inches("60"))
    assert "measure.size-unsigned" in ids(said(Opening(), INSIDE, asked))


def test_a_width_and_a_deduction_are_one_too_many() -> None:
    asked = AskedSize(width=inches("35"), given_by="the designer")
    mount = replace(INSIDE, deduction=inches("1/4"))
    twice = finding(said(SQUARE, mount, asked), "measure.width-twice")
    assert [remedy.changes[0].path for remedy in twice.remedies] == [
        "mount.deduction",
        "asked.width",
    ]


@pytest.mark.parametrize(
    ("width", "drop"), [("96", "60"), ("12", "40"), ("14", "56")], ids=["wide", "narrow", "tall"]
)
def test_a_size_just_usual_wants_nobody(width: str, drop: str) -> None:
    asked = AskedSize(width=inches(width), drop=inches(drop), given_by="the designer")
    assert ids(said(Opening(), Mount(), asked)) == {"measure.place"}


def test_diagonals_that_cannot_be_are_a_question() -> None:
    wrong = opened(diagonal_falling=inches("72"), diagonal_rising=inches("72"))
    found = finding(said(wrong, INSIDE), "measure.diagonals-disagree")
    assert found.severity is Severity.ASK


def test_a_shade_of_no_width_at_all_is_refused() -> None:
    found = said(SQUARE, replace(INSIDE, deduction=inches("35 7/16")))
    assert finding(found, "measure.no-width").severity is Severity.STOP
    nothing = replace(INSIDE, deduction=inches("35 7/16"))
    assert finished_size(SQUARE, nothing, AskedSize(), HABITS).result is None


def test_fixings_into_drywall_are_cautioned() -> None:
    assert ids(said(opened(substrate=Substrate.DRYWALL), INSIDE)) == {"measure.substrate"}
    assert said(opened(substrate=Substrate.MASONRY), INSIDE) == ()


def test_the_sentence_carries_the_figure_and_its_limit() -> None:
    stop = finding(said(opened(wall_above=inches("2")), OUTSIDE), "measure.headroom")
    assert fill(stop.sentence, stop.figures, System.INCH) == (
        "There is 2 in of wall above the casing; the shade needs 2 3/4 in."
    )


def test_headroom_can_be_mended_on_the_casing_or_inside() -> None:
    stop = finding(said(opened(wall_above=inches("2")), OUTSIDE), "measure.headroom")
    changes = [[(each.path, each.text) for each in way.changes] for way in stop.remedies]
    assert changes == [[("mount.above", "0 in")], [("mount.place", "inside")], []]


def test_a_handle_is_cleared_by_the_other_edge_of_the_board() -> None:
    opening = opened(obstruction_projection=inches("2 1/2"))
    mount = replace(INSIDE, board_edge=Face.WINDOW)
    stop = finding(said(opening, mount), "measure.handle-hits")
    ways = {way.changes[0].path for way in stop.remedies if way.changes}
    assert "mount.board_edge" in ways
    forward = stop.remedies[-1]
    assert forward.figures[0].value == inches("1/2")


def test_a_remedy_that_leads_into_another_stop_is_not_offered() -> None:
    """Outside there is no wall to fix it to, so a shallow reveal gets no such remedy."""
    shallow = opened(depth_head=inches("1/2"), wall_above=inches("0"))
    stop = finding(said(shallow, INSIDE), "measure.reveal-shallow")
    assert all(not way.changes for way in stop.remedies)
    roomy = finding(said(opened(depth_head=inches("1/2")), INSIDE), "measure.reveal-shallow")
    assert roomy.remedies[0].changes[0].text == "outside"


def test_moving_the_shade_leaves_behind_what_belongs_to_the_other_mount() -> None:
    mount = Mount(
        place=MountPlace.OUTSIDE,
        height_rule=INSIDE.height_rule,
        above=inches("3"),
        overlap_left=inches("2"),
        returns=True,
    )
    stop = finding(said(opened(wall_above=inches("1")), mount), "measure.headroom")
    inside = next(way for way in stop.remedies if "inside" in way.sentence)
    moved = changed(mount, "mount", inside.changes)
    assert moved == Mount(place=MountPlace.INSIDE, height_rule=INSIDE.height_rule)


def test_a_metric_window_gets_metric_remedies() -> None:
    opening = Opening(
        width_top=Length.mm(900),
        width_middle=Length.mm(901),
        width_bottom=Length.mm(900),
        height_left=Length.mm(1500),
        height_centre=Length.mm(1500),
        height_right=Length.mm(1500),
        diagonal_falling=Length.mm(1753),
        diagonal_rising=Length.mm(1745),
    )
    stop = finding(said(opening, INSIDE), "measure.racking-binds")
    assert stop.remedies[0].changes[0].text == "22 mm"


def test_a_window_without_a_sill_takes_back_a_rule_that_speaks_of_one() -> None:
    """The rule is left alone where it covers, and where it was never typed."""
    for rule, texts in ((INSIDE.height_rule, ["false", ""]), (None, ["false"])):
        asked = said(opened(sill=None), replace(OUTSIDE, height_rule=rule))
        without = finding(asked, "measure.sill").remedies[1]
        assert [change.text for change in without.changes] == texts
