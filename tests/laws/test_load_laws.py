"""Laws that every load curve and every winding keeps."""

from __future__ import annotations

import itertools
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.laws.heights import potential_energy
from tests.laws.shades import between, panels

from foldwright.core.lift.winding import CordWinding, TapeWinding
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.folds import lump_raises
from foldwright.core.weigh.load import PanelLoad

ENERGY_SHARE = 8e-7
ROUNDING_N = 1e-9


@given(panels(), between(0.0, 1.0))
def test_the_work_of_raising_is_the_energy_gained_by_every_piece(
    shade: PanelLoad, share: float
) -> None:
    raise_m = share * shade.travel_m
    gained = potential_energy(shade, raise_m) - potential_energy(shade, 0.0)
    work = float(LoadCurve.of(shade).energy(raise_m))
    scale = abs(potential_energy(shade, 0.0)) + abs(gained)
    assert work == pytest.approx(gained, rel=ENERGY_SHARE, abs=1e-12 + 1e-14 * scale)


@given(panels(), between(0.0, 1.0))
def test_the_area_under_the_drawn_load_is_the_work(shade: PanelLoad, share: float) -> None:
    raise_m = share * shade.travel_m
    curve = LoadCurve.of(shade)
    steps = [u for u in (*curve.pick_ups, *lump_raises(shade)) if 0 < u < raise_m]
    corners = sorted({0.0, raise_m, *steps})
    area = sum(
        (float(curve.load_after(low)) + float(curve.load_before(high))) / 2 * (high - low)
        for low, high in itertools.pairwise(corners)
    )
    assert float(curve.energy(raise_m)) == pytest.approx(area, rel=1e-9, abs=1e-12)


@given(panels())
def test_the_load_never_falls_as_the_shade_rises(shade: PanelLoad) -> None:
    curve = LoadCurve.of(shade)
    raises = np.sort(np.concatenate((np.linspace(0, shade.travel_m, 400), curve.pick_ups)))
    after, before = curve.load_after(raises), curve.load_before(raises)
    assert np.all(np.diff(after) >= -ROUNDING_N)
    assert np.all(before <= after + ROUNDING_N)
    assert curve.greatest_load() >= after[raises <= shade.travel_m].max() - ROUNDING_N


def flat_load(shade: PanelLoad, raise_m: float) -> float:
    """Give the load of a flat shade with even rows, straight from the picture of one fold."""
    spacing, pitch = shade.row_spacings_m[0], shade.stacked_pitch_m
    open_panel = min(int(raise_m / (spacing - pitch)), len(shade.rows_n) - 1)
    into = raise_m - open_panel * (spacing - pitch)
    cloth = shade.skirt_cloth_m + open_panel * spacing + into / 2
    return shade.bar_n + sum(shade.rows_n[: open_panel + 1]) + shade.cloth_n_m * cloth


@given(panels(), between(0.05, 0.3), st.integers(1, 8), between(0.0, 1.0))
def test_looped_without_loops_or_backing_is_flat(
    shade: PanelLoad, spacing: float, folds: int, share: float
) -> None:
    even = replace(
        shade,
        row_spacings_m=(spacing,) * folds,
        rows_n=(shade.rows_n[0],) * (folds + 1),
        lumps=(),
        tied_rows=0,
        travel_m=0.01,
    )
    raise_m = share * (folds * (spacing - even.stacked_pitch_m) + even.top_panel_m)
    for fullness in (1.0, 1.0 + 1e-12):
        loopless = LoadCurve.of(replace(even, fullness=fullness, backing_n_m=0.0))
        near = np.abs(np.array(loopless.pick_ups) - raise_m).min()
        if near > 1e-9:
            load = float(loopless.load(raise_m))
            assert load == pytest.approx(flat_load(even, raise_m), rel=1e-9, abs=1e-9)


@given(panels(), between(0.01, 5.0))
def test_a_heavier_bar_raises_the_load_by_its_own_weight_everywhere(
    shade: PanelLoad, more_n: float
) -> None:
    heavier = LoadCurve.of(replace(shade, bar_n=shade.bar_n + more_n))
    raises = np.linspace(0, shade.travel_m, 101)
    gained = heavier.load(raises) - LoadCurve.of(shade).load(raises)
    assert gained == pytest.approx(np.full(101, more_n), rel=1e-9)


@given(panels(), between(0.5, 1.5), between(0.0, 1.0))
def test_an_uncertain_cloth_is_a_plain_factor(shade: PanelLoad, scale: float, at: float) -> None:
    heavier = replace(shade, cloth_n_m=scale * shade.cloth_n_m)
    raise_m = at * shade.travel_m
    expected = float(LoadCurve.of(heavier).load(raise_m))
    assert float(LoadCurve.of(shade).load(raise_m, scale)) == pytest.approx(expected, rel=1e-9)


@given(panels(), st.floats(0.001, 0.05))
def test_uneven_rows_carry_as_much_in_the_end_as_even_ones(shade: PanelLoad, pitch: float) -> None:
    """Once every row is picked up, only the sum of the spacings counts."""
    rows = len(shade.rows_n)
    if rows == 1:
        return
    uneven = replace(shade, stacked_pitch_m=min(pitch, 0.04), lumps=(), tied_rows=0)
    mean = sum(uneven.row_spacings_m) / (rows - 1)
    even = replace(uneven, row_spacings_m=(mean,) * (rows - 1))
    top = LoadCurve.of(replace(uneven, travel_m=0.01)).pick_ups[-1] + 1e-6
    assert LoadCurve.of(replace(even, travel_m=0.01)).pick_ups[-1] == pytest.approx(top - 1e-6)
    assert float(LoadCurve.of(replace(uneven, travel_m=0.01)).load(top)) == pytest.approx(
        float(LoadCurve.of(replace(even, travel_m=0.01)).load(top)), rel=1e-9
    )


@given(between(0.01, 0.05), between(0.0, 5.0), between(0.1, 4.0), between(0.0, 1.0))
def test_tape_of_no_thickness_is_the_plain_tube(
    radius: float, wraps: float, travel: float, share: float
) -> None:
    tape = TapeWinding(
        tube_radius_m=radius, tape_thickness_m=0.0, tape_width_m=0.016, safety_wraps=wraps
    )
    thread = CordWinding(tube_radius_m=radius, cord_diameter_m=0.0, safety_wraps=wraps)
    at = share * travel
    assert float(tape.arm(at)) == pytest.approx(float(thread.arm(at)))
    assert float(tape.turns(at)) == pytest.approx(float(thread.turns(at)))
    assert float(tape.turns_to_go(at, travel)) == pytest.approx(
        float(thread.turns_to_go(at, travel)), abs=1e-12
    )


@given(between(0.01, 0.05), between(1e-5, 2e-3), between(0.0, 5.0), between(0.1, 4.0))
def test_the_turns_of_tape_add_up_and_its_arm_grows(
    radius: float, thickness: float, wraps: float, travel: float
) -> None:
    tape = TapeWinding(
        tube_radius_m=radius, tape_thickness_m=thickness, tape_width_m=0.016, safety_wraps=wraps
    )
    raises = np.linspace(0.0, travel, 51)
    whole = float(tape.turns(travel))
    assert tape.turns(raises) + tape.turns_to_go(raises, travel) == pytest.approx(
        np.full(51, whole)
    )
    assert np.all(np.diff(tape.arm(raises)) > 0)
    wound = float(tape.length(wraps + whole) - tape.length(wraps))
    assert wound == pytest.approx(travel)


@given(between(0.01, 0.05), between(1e-4, 5e-3), between(0.0, 5.0), between(0.1, 4.0))
def test_cord_and_tube_turn_by_the_same_work(
    radius: float, diameter: float, wraps: float, travel: float
) -> None:
    """A turn of the tube lifts by the circumference of the arm, whatever winds on it."""
    cord = CordWinding(tube_radius_m=radius, cord_diameter_m=diameter, safety_wraps=wraps)
    tape = TapeWinding(
        tube_radius_m=radius, tape_thickness_m=diameter, tape_width_m=0.016, safety_wraps=wraps
    )
    for winding in (cord, tape):
        low, high = travel / 2, travel / 2 + 1e-6
        turned = float(winding.turns(high) - winding.turns(low))
        arm = float(winding.arm(travel / 2))
        assert turned * 2 * np.pi * arm == pytest.approx(1e-6, rel=1e-5)
