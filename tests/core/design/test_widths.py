"""Widths of cloth, and where the seams fall."""

from __future__ import annotations

import pytest
from tests.core.layouts import answer, cloth, figure, ids, inches, laid_out, sized

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
