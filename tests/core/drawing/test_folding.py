from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.core.drawing.building import length, plan, with_rods

from foldwright.core.design.choices import RodPlace
from foldwright.core.drawing.folding import Hang, Panel, hang, stacked_pitch
from foldwright.core.drawing.loops import loops

INCH = 25.4
PITCH = 4.0


def hung(raise_share: float, *, fullness: float = 1.0, pitch: float = PITCH) -> Hang:
    made = plan(fullness=fullness)
    assert made.layout is not None
    return hang(made.layout, drop_mm=60 * INCH, pitch_mm=pitch, raise_share=raise_share)


def test_fully_down_every_row_is_at_its_mark_and_nothing_folds() -> None:
    down = hung(0.0)
    inches = [row / INCH for row in down.rows]
    assert inches == pytest.approx([5.2, 12.6, 20.0, 27.4, 34.8, 42.2, 49.6])
    assert not any(panel.folded for panel in down.panels)
    assert (down.hem, down.lowest) == (0.0, 0.0)


def test_a_row_waits_until_the_one_below_touches_it() -> None:
    # Worked by hand: 10 in up, the lowest row stands at 15.2 in, past row 2 (12.6 in),
    # which now lies one pitch above it; row 3 (20 in) has not been reached.
    up = hung(10 / 51.8)
    assert up.rows[0] == pytest.approx(15.2 * INCH)
    assert up.rows[1] == pytest.approx(15.2 * INCH + PITCH)
    assert up.rows[2] == pytest.approx(20.0 * INCH)
    assert [panel.closed for panel in up.panels] == [True] + [False] * 6


def test_half_of_the_slack_hangs_below_the_lower_row() -> None:
    # A panel 7.4 in long with its rows 4 in apart has 3.4 in to spare: 1.7 in hang below.
    panel = Panel(lower=100.0 * INCH, upper=104.0 * INCH, cloth=7.4 * INCH)
    assert panel.fold_edge == pytest.approx(98.3 * INCH)


def test_fully_raised_the_worked_shade_hangs_8_2_inches() -> None:
    # Head 3 in, fold 3.7 in and skirt 1 1/2 in, with rows that take no room in the stack.
    up = hung(1.0, pitch=0.0)
    assert (up.top - up.lowest) / INCH == pytest.approx(8.2)


def test_loops_hang_at_rest_when_there_is_more_cloth_than_drop() -> None:
    # 1.4 of cloth to 1 of drop: each loop hangs a fifth of the spacing below its row.
    down = hung(0.0, fullness=1.4)
    slacks = [panel.slack / INCH for panel in down.panels[:-1]]
    assert slacks == pytest.approx([0.2 * 7.4] * 6)


def test_rods_at_rows_travel_with_their_rows() -> None:
    made = with_rods(plan(), RodPlace.ROWS)
    assert made.layout is not None
    up = hang(made.layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.6)
    assert up.rods == pytest.approx(up.rows)


def test_a_rod_in_mid_fold_ends_at_the_fold_edge() -> None:
    made = with_rods(plan(), RodPlace.MID_FOLD)
    assert made.layout is not None
    up = hang(made.layout, drop_mm=60 * INCH, pitch_mm=0.0, raise_share=1.0)
    assert up.rods == pytest.approx([panel.fold_edge for panel in up.panels[:-1]])


def test_a_rod_in_mid_fold_stays_where_it_is_until_its_panel_folds() -> None:
    made = with_rods(plan(), RodPlace.MID_FOLD)
    assert made.layout is not None
    down = hang(made.layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.0)
    up = hang(made.layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.1)
    assert up.rods[1:] == pytest.approx(down.rods[1:])


def test_a_fold_covers_what_lies_behind_it_but_not_its_own_edge() -> None:
    made = plan()
    assert made.layout is not None
    down = hang(made.layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.0)
    up = hang(made.layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.6)
    assert not any(down.covers(row) for row in down.rows)
    assert up.covers(up.rows[0])
    assert up.covers(up.rows[0] - up.panels[0].slack / 2)
    assert not up.covers(min(panel.fold_edge for panel in up.panels))
    assert not up.covers(up.rows[-1])


@given(share=st.floats(0.0, 1.0), fullness=st.floats(1.0, 1.8), pitch=st.floats(0.0, 12.0))
def test_no_cloth_is_lost_in_the_folds(share: float, fullness: float, pitch: float) -> None:
    for panel in hung(share, fullness=fullness, pitch=pitch).panels:
        both_limbs = (panel.upper - panel.fold_edge) + panel.slack
        assert both_limbs >= panel.cloth - 0.02
        if panel.folded:
            assert both_limbs == pytest.approx(panel.cloth)


@given(share=st.floats(0.0, 1.0), further=st.floats(0.0, 1.0))
def test_rows_only_rise_and_never_pass_each_other(share: float, further: float) -> None:
    lower, higher = sorted((share, further))
    before, after = hung(lower), hung(higher)
    assert all(b <= a for b, a in zip(before.rows, after.rows, strict=True))
    assert all(upper - row >= PITCH - 1e-6 for row, upper in pairwise(after.rows))


def test_a_raise_beyond_the_design_stops_at_the_design() -> None:
    assert hung(1.7) == hung(1.0)
    assert hung(-1.0) == hung(0.0)


def test_the_pitch_of_the_stack_is_that_of_the_weights() -> None:
    assert stacked_pitch(plan()) == pytest.approx(4.0)


def test_a_rod_in_the_skirt_rises_with_the_hem() -> None:
    made = with_rods(plan(), RodPlace.ROWS)
    assert made.layout is not None
    low = replace(made.layout.rows, rod_marks=(length("rod", 2),))
    layout = replace(made.layout, rows=low)
    up = hang(layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=0.5)
    assert up.rods == pytest.approx([up.hem + 2 * INCH])


def test_a_loop_that_just_opens_stays_below_its_lower_row() -> None:
    panel = Panel(lower=100.0, upper=299.0, cloth=200.0)
    path = loops((panel,), lane=10.0, rest=5.0)
    lowest = min(range(len(path)), key=lambda index: path[index].y)
    assert path[lowest].y == pytest.approx(panel.fold_edge)
    assert max(point.y for point in path[lowest:]) <= panel.lower


def test_a_ridge_is_seen_while_it_is_on_the_face_and_no_fold_hangs_before_it() -> None:
    # Rows at 5.2, 12.6 … in; ridges at each row and half a spacing above it.
    made = plan()
    assert made.layout is not None
    rows = made.layout.rows
    middles = [length("tuck", mark.value.in_inches + Fraction("3.7")) for mark in rows.marks]
    ridges = tuple(each for pair in zip(rows.marks, middles, strict=True) for each in pair)
    layout = replace(made.layout, rows=replace(rows, ridges=ridges))
    seen = [
        hang(layout, drop_mm=60 * INCH, pitch_mm=PITCH, raise_share=inches_up / 51.8).ridges
        for inches_up in (0.0, 5.0, 10.0)
    ]
    down = [5.2 + 3.7 * number for number in range(14)]
    assert [height / INCH for height in seen[0]] == pytest.approx(down)
    # 5 in up, the lowest panel hangs 2 1/2 in below its row: the row's ridge is behind, and the
    # middle one stands still on the upper limb.
    assert [height / INCH for height in seen[1]] == pytest.approx(down[1:])
    # 10 in up, the lowest panel is closed; the next has a slack of 1.22 in at most.
    assert [height / INCH for height in seen[2]] == pytest.approx(down[3:])
