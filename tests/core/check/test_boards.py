"""Shades that share a board: one length, every mark from one end, one tube or a tube each."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.core.boarded import board, hung, shade
from tests.core.layouts import inches

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import fill
from foldwright.work.boards import type_widths
from foldwright.work.document import read_document
from foldwright.work.planning import plan_one, rooms_of

LEFT, RIGHT = shade("Left"), shade("Right", "36")


def marks(lengths: tuple[object, ...]) -> list[Fraction]:
    return [figure.value.in_inches for figure in lengths]  # type: ignore[attr-defined]


def test_the_board_is_as_long_as_all_shades_and_gaps_less_the_habit() -> None:
    """Own arithmetic: 30 and 36 and half an inch, less a quarter; exact."""
    boarding = hung(board(LEFT, RIGHT))
    assert boarding.length is not None
    assert boarding.length.value == inches("66 1/4")


def test_marks_run_from_one_end_as_seen_from_the_back() -> None:
    """Own arithmetic: the cloth hides 1/8 in of the board at each end. From the back the right
    shade hangs first, its cords 2 in and 8 in apart; the left one begins 36 1/2 in on."""
    right, left = hung(board(LEFT, RIGHT)).shades
    assert (right.tag, left.tag) == ("Right", "Left")
    assert right.left.value == -inches("1/8")
    assert marks(right.columns) == [Fraction(15, 8) + 8 * number for number in range(5)]
    assert left.left.value == inches("36 3/8")
    assert left.columns[0].value == inches("38 3/8")
    assert left.columns[-1].value == inches("64 3/8")


def test_a_tube_each_is_held_where_it_would_be_on_a_board_of_its_own() -> None:
    document = board(LEFT, RIGHT)
    job = read_document(document).job
    assert job is not None
    alone = plan_one(job, job.shades[1]).headrail
    assert alone is not None
    right, left = hung(document).shades
    assert [mark.value for mark in right.brackets] == [mark.value for mark in alone.bracket_marks]
    assert left.brackets[0].value > right.brackets[1].value


def test_one_tube_lifts_the_sum_of_all_loads() -> None:
    document = board(LEFT, RIGHT, lift="one tube")
    boarding = hung(document)
    job = read_document(document).job
    assert job is not None
    assert boarding.balance is not None
    singles = [rooms_of(job)(spec).balance for spec in job.shades]
    for name in ("load_lowered", "load_raised"):
        alone = [getattr(each, name).value for each in singles if each]
        together = getattr(boarding.balance, name).value
        assert len(alone) == 2
        assert together == pytest.approx(sum(alone), rel=1e-3)  # the middle of the draws


def test_one_tube_carries_every_cord_of_both() -> None:
    boarding = hung(board(LEFT, RIGHT, lift="one tube"))
    assert boarding.headrail is not None
    assert len(boarding.headrail.lines) == 9
    assert boarding.length is not None
    assert boarding.headrail.board_length.value == boarding.length.value
    assert boarding.headrail.tube_cut.value < boarding.length.value
    assert all(not shade.brackets for shade in boarding.shades)
    columns = [mark.value for one in boarding.shades for mark in one.columns]
    start = boarding.headrail.tube_start.value
    on_tube = [line.column.value for line in boarding.headrail.lines]
    assert on_tube == [column - start for column in columns]


@pytest.mark.parametrize(
    ("other", "said"),
    [
        (shade("Right", "36", "60"), "these have unlike rows"),
        (shade("Right", "36", "54 1/4"), "their rows lie up to"),
        (shade("Right", "36"), "They rise and stop together"),
    ],
)
def test_one_tube_names_its_limits(other: dict[str, object], said: str) -> None:
    limits = hung(board(LEFT, other, lift="one tube")).limits
    assert any(said in fill(each.sentence, each.figures, System.INCH) for each in limits)


def test_shades_with_unlike_rows_are_given_no_tube_in_common() -> None:
    boarding = hung(board(LEFT, shade("Right", "36", "60"), lift="one tube"))
    assert (boarding.balance, boarding.headrail) == (None, None)


@pytest.mark.parametrize(("gap", "rubs"), [("3/16", True), ("1/4", False)])
def test_neighbours_that_hang_too_near_rub(gap: str, *, rubs: bool) -> None:
    limits = hung(board(LEFT, RIGHT, gap=gap)).limits
    assert any("rub and catch" in each.sentence for each in limits) == rubs


def test_a_width_over_all_is_shared_out() -> None:
    """Own arithmetic: 72 in less a gap of 1/2 are 71 1/2, 35 3/4 for each."""
    first, second = shade("Left"), shade("Right")
    for each in (first, second):
        del each["asked"]["width"]
    document = board(first, second, across="72")
    boarding = hung(document)
    assert [way.changes[0].text for _, way in boarding.widths] == ["35 3/4 in", "35 3/4 in"]
    typed = hung(type_widths(document, boarding))
    assert typed.widths == ()
    assert typed.length is not None
    assert typed.length.value == inches("71 3/4")


def test_what_is_left_beside_a_typed_width_goes_to_the_other() -> None:
    other = shade("Right")
    del other["asked"]["width"]
    (tag, way), *rest = hung(board(LEFT, other, across="72")).widths
    assert (tag, way.changes[0].text, rest) == ("Right", "41 1/2 in", [])


def test_a_shade_that_cannot_be_laid_out_yet_is_told() -> None:
    boarding = hung(board(LEFT, {"tag": "Right"}))
    assert boarding.missing == ("“Right” cannot be laid out yet: its own page says why.",)
    assert boarding.length is None


@settings(max_examples=15)
@given(
    st.lists(st.integers(20 * 16, 60 * 16), min_size=2, max_size=4),
    st.integers(1, 32),
    st.sampled_from(["a tube each", "one tube"]),
)
def test_marks_climb_along_the_board_and_mirror_within_each_shade(
    widths: list[int], gap: int, lift: str
) -> None:
    shades = [
        shade(f"S{number}", f"{width // 16} {width % 16}/16") for number, width in enumerate(widths)
    ]
    boarding = hung(board(*shades, gap=f"{gap // 16} {gap % 16}/16", lift=lift))
    assert boarding.length is not None
    columns = [mark.value for one in boarding.shades for mark in one.columns]
    assert columns == sorted(columns)
    assert Length(0) < columns[0]
    assert columns[-1] < boarding.length.value
    assert [one.tag for one in boarding.shades] == [f"S{n}" for n in reversed(range(len(widths)))]
    for one in boarding.shades:
        places = [mark.value - one.left.value for mark in one.columns]
        for first, last in zip(places, reversed(places), strict=True):
            assert abs(first + last - one.width.value) <= Length(1)
