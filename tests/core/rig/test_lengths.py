"""Cut lengths, walks and wraps."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.core.rig.building import TAPE, cord, headrail, layout, number, size, tube

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding


@given(
    st.integers(400, 4000),
    st.sampled_from(["0.9", "1.4", "2.0"]),
    st.integers(20, 60),
    st.integers(3, 6),
)
def test_a_cord_is_never_cut_shorter_than_drop_and_wraps(
    drop: int, thick: str, outside: int, wraps: int
) -> None:
    rail = headrail(
        made=layout(drop=drop),
        finished=size(drop=drop),
        line=cord(thick),
        wound_on=tube(outside),
        habits={"safety_wraps": number("safety wraps", float(wraps))},
    )
    to_ring = drop - 60 - 27
    wound = wraps * math.pi * (outside + float(thick))
    for line in rail.lines:
        assert line.cut_length.value.in_millimetres >= to_ring + wound
        assert line.cut_length.rounding is Rounding.CUT_OVERSIZE


def test_all_cords_are_cut_alike() -> None:
    assert len({line.cut_length.value for line in headrail().lines}) == 1


def test_a_tape_winds_its_safety_wraps_on_itself() -> None:
    safety = math.pi * (38 * 3 + 0.4 * 9)  # pi (d n + t n^2)
    expected = (1600 - 60 - 27) + safety + 152.4
    cut = headrail(line=TAPE).lines[0].cut_length.value
    assert cut.in_millimetres == pytest.approx(expected, abs=1e-3)


def test_travel_wraps_are_the_turns_of_the_balance_and_safety_wraps_are_not_among_them() -> None:
    rail = headrail()
    assert rail.travel_wraps.value == pytest.approx(11.3663, abs=5e-5)
    assert rail.walk.value.in_millimetres == pytest.approx(15.913, abs=5e-4)
    assert rail.safety_wraps.value == 3
    first = rail.lines[0]
    band = abs(first.band_end.value - first.band_start.value)
    assert band.in_millimetres == pytest.approx(20.113, abs=5e-4)
    assert band > rail.walk.value
    assert band > Length.mm(20)
