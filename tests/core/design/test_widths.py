"""Widths of cloth, and where the seams fall."""

from __future__ import annotations

import pytest
from tests.core.layouts import (
    answer,
    changed,
    cloth,
    figure,
    finding,
    ids,
    inches,
    laid_out,
    sized,
)

from foldwright.core.design.choices import Choices
from foldwright.core.facts.records import Chosen
from foldwright.core.quantity.length import Length


@pytest.mark.parametrize(
    ("width", "usable", "count"), [("48", "53 1/2", 1), ("72", "54", 2), ("110", "54", 3)]
)
def test_three_numbers_of_widths_by_hand(width: str, usable: str, count: int) -> None:
    """Own arithmetic: seams 1/2 in, turns 1 1/2 in; exact."""
    layout = laid_out(Choices(), sized(width, "60"), Chosen(face=cloth(usable)))
    assert layout.widths.widths.value == count


def test_a_full_width_in_the_centre_and_equal_pieces_at_the_sides() -> None:
    """Own arithmetic: 72 in of 54-in cloth: 53 in the centre, 9 1/2 showing, 11 1/2 cut; exact."""
    widths = laid_out(Choices(), sized("72", "60")).widths
    pieces = (widths.centre_visible, widths.side_visible, widths.side_cut)
    assert [piece.value for piece in pieces if piece] == [
        inches("53"),
        inches("9 1/2"),
        inches("11 1/2"),
    ]


def test_one_width_has_no_seams() -> None:
    widths = laid_out(Choices(), sized("51", "60")).widths
    assert (widths.widths.value, widths.seams, widths.nearest_column) == (1, (), None)


def test_a_width_that_only_a_centre_seam_would_save_takes_one_more() -> None:
    """104 1/2 in and turns are 107 1/2; one seam makes 108 1/2, two make 109 1/2, and two
    widths give 108: with a seam of 1/4 in the centre seam would just do."""
    design = Choices(side_turn=inches("1"))
    assert laid_out(design, sized("104", "60")).widths.widths.value == 2
    assert laid_out(design, sized("104 1/2", "60")).widths.widths.value == 3


def test_a_sliver_at_the_side_is_widened_out_of_the_centre() -> None:
    """54 in of 54-in cloth would leave half an inch at each side."""
    widths = laid_out(Choices(), sized("54", "60")).widths
    assert widths.side_visible is not None
    assert widths.centre_visible is not None
    assert widths.side_visible.value == inches("2")
    assert widths.centre_visible.value == inches("50")


def test_four_widths_put_two_seams_on_each_side() -> None:
    """53 in full pieces: 170 in leaves (170 - 159)/2 at each side, and both share a width."""
    widths = laid_out(Choices(), sized("170", "60")).widths
    assert widths.widths.value == 4
    seams = [seam.value for seam in widths.seams]
    assert seams == [inches(each) for each in ("5 1/2", "58 1/2", "111 1/2", "164 1/2")]


def test_returns_widen_the_cut_but_not_the_face() -> None:
    size = sized("72", "60", return_depth=figure("return", "2"))
    layout = laid_out(Choices(), size)
    assert layout.cuts[0].width.value == inches("81")  # 72 + 4 + 3 + 2 seams with 1 in each
    assert layout.widths.side_cut is not None
    assert layout.widths.side_cut.value == inches("13 1/2")
    assert layout.widths.seams[0].value == inches("9 1/2")


def test_without_a_face_one_width_is_taken_and_the_face_asked_for() -> None:
    found = answer(Choices(), sized("72", "60"), Chosen())
    assert found.result is not None
    assert found.result.widths.widths.value == 1
    assert found.result.cuts[0].cloth == ""
    assert "design.face-missing" in ids(found.findings)


def test_seams_mirror_where_the_width_is_odd() -> None:
    width = Length(2_000_000_001)
    seams = laid_out(Choices(), sized(width, "60")).widths.seams
    assert seams[0].value + seams[1].value == width


def test_a_middle_piece_asked_for_moves_the_seams() -> None:
    """72 in with a middle of 48: the sides show (72 - 48)/2 = 12; exact."""
    widths = laid_out(Choices(middle_piece=inches("48")), sized("72", "60")).widths
    assert [seam.value for seam in widths.seams] == [inches("12"), inches("60")]
    assert widths.centre_visible is not None
    assert widths.centre_visible.value == inches("48")
    assert widths.widths.value == 2


def test_a_middle_piece_so_narrow_that_the_sides_need_a_width_each_takes_one_more() -> None:
    """Both sides come out of one width of 54 in: each may be cut 27, 25 in of it shown."""
    for middle, count in (("22", 2), ("20", 3)):
        design = Choices(middle_piece=inches(middle))
        assert laid_out(design, sized("72", "60")).widths.widths.value == count


@pytest.mark.parametrize(("middle", "asks"), [("53", False), ("53 1/16", True)])
def test_a_middle_piece_wider_than_its_cloth_is_asked_about(middle: str, *, asks: bool) -> None:
    found = answer(Choices(middle_piece=inches(middle)), sized("72", "60"))
    assert ("design.middle-too-wide" in ids(found.findings)) == asks
    assert found.result is not None
    assert found.result.widths.centre_visible is not None
    assert found.result.widths.centre_visible.value == inches("53")
    for each in found.findings:
        for remedy in each.remedies:
            assert [change.path for change in remedy.changes] == ["design.middle_piece"]


def test_typed_columns_on_a_seam_are_cleared_by_a_narrower_middle() -> None:
    """75 in with 9 columns 2 in from the edge: a seam 1/8 in from one moves 3/8 in outward."""
    design = Choices(column_count=9, edge_distance=inches("2"))
    said = finding(answer(design, sized("75", "60")).findings, "design.seam-on-column")
    remedy = next(one for one in said.remedies if "middle" in one.sentence)
    assert [change.text for change in remedy.changes] == ["52 1/4 in"]
    after = answer(changed(design, "design", remedy.changes), sized("75", "60"))
    assert "design.seam-on-column" not in ids(after.findings)
