"""The load curve of shades worked by hand, fold by fold."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.impossible import ImpossiblePanel
from foldwright.core.weigh.load import Lump, PanelLoad

GRAVITY = 9.80665
POUND = 0.45359237 * GRAVITY
INCH = 0.0254

ROW_N = (0.035 + 4 * 0.0015) * GRAVITY  # a rod and four rings
# 1200 by 1600 mm, face 0.28 and lining 0.16 kg/m2, turns 8 %, bar 0.3 kg, eight rows
LINED = PanelLoad(
    row_spacings_m=(0.2,) * 7,
    stacked_pitch_m=0.005,
    skirt_cloth_m=0.06 * 1.15,
    top_panel_m=0.14,
    cloth_n_m=1.2 * 0.44 * 1.08 * GRAVITY,
    bar_n=0.3 * GRAVITY,
    rows_n=(ROW_N,) * 8,
    travel_m=7 * 0.195 + 0.3 * 0.14,
)


def test_a_lined_shade_worked_by_hand() -> None:
    """Computed apart from this program, from the hairpin rule."""
    curve = LoadCurve.of(LINED)
    at = np.array(curve.pick_ups)
    before = [4.275, 5.796, 7.316, 8.837, 10.357, 11.878, 13.398]
    after = [5.250, 6.771, 8.291, 9.812, 11.332, 12.853, 14.373]
    assert at == pytest.approx(0.195 * np.arange(1, 8))
    assert float(curve.load_lowered()) == pytest.approx(3.7299, abs=1e-4)
    assert curve.load_before(at) == pytest.approx(before, abs=6e-4)
    assert curve.load_after(at) == pytest.approx(after, abs=6e-4)
    assert float(curve.greatest_load()) == pytest.approx(14.4909, abs=1e-4)
    assert float(curve.energy(LINED.travel_m)) == pytest.approx(12.2961, abs=1e-4)


def test_a_shade_in_pounds_and_inches_just_after_each_pick_up() -> None:
    """A limp 60 in shade of 2.485 lb on a 1.684 lb bar, worked by hand to 0.001 lb."""
    shade = PanelLoad(
        row_spacings_m=(7.4 * INCH,) * 6,
        stacked_pitch_m=0.0,
        skirt_cloth_m=5.2 * INCH,
        top_panel_m=10.4 * INCH,
        cloth_n_m=2.485 * POUND / (60 * INCH),
        bar_n=1.6839 * POUND,
        rows_n=(0.0,) * 7,
        travel_m=51.8 * INCH,
    )
    curve = LoadCurve.of(shade)
    raises = [0, *(u for n, u in enumerate(curve.pick_ups) if n in {0, 1, 2, 5})]
    loads = curve.load_after(np.array(raises)) / POUND
    assert loads == pytest.approx([1.899, 2.206, 2.512, 2.819, 3.738], abs=1e-3)
    assert float(curve.greatest_load()) / POUND == pytest.approx(3.891, abs=1e-3)


def test_a_loop_hangs_from_its_row_before_anything_is_raised() -> None:
    looped = replace(LINED, fullness=1.5, backing_n_m=0.8)
    curve = LoadCurve.of(looped)
    flat = float(LoadCurve.of(LINED).load_lowered())
    assert float(curve.load_lowered()) == pytest.approx(flat + LINED.cloth_n_m * 0.5 * 0.2 / 2)
    step = float(curve.load_after(0.195) - curve.load_before(0.195))
    cloth = LINED.cloth_n_m * ((1.5 * 0.2 + 0.005) / 2 + 0.5 * 0.2 / 2)
    assert step == pytest.approx(cloth + 0.8 * 0.205 / 2 + ROW_N)


def test_a_step_without_thickness_is_as_the_short_formula_says() -> None:
    looped = replace(LINED, fullness=1.5, backing_n_m=0.8, stacked_pitch_m=0.0)
    curve = LoadCurve.of(looped)
    step = float(curve.load_after(0.2) - curve.load_before(0.2))
    assert step == pytest.approx(LINED.cloth_n_m * (2 * 1.5 - 1) * 0.2 / 2 + 0.8 * 0.2 / 2 + ROW_N)


@pytest.mark.parametrize(
    ("arc", "arrival"),
    [(0.0, 0.0), (0.03, 0.06), (0.0975, 0.195), (0.1, 0.195), (0.2, 0.195)],
    ids=["at the row", "low in the panel", "at the closing fold", "mid-fold", "at the next row"],
)
def test_a_lump_comes_on_when_the_fold_passes_it(arc: float, arrival: float) -> None:
    lumped = LoadCurve.of(replace(LINED, lumps=(Lump(panel=1, arc_m=arc, weight_n=2.0),)))
    plain = LoadCurve.of(LINED)
    at = 0.195 + arrival
    gained_before = lumped.load_before(at) - plain.load_before(at)
    gained_after = lumped.load_after(at) - plain.load_after(at)
    assert (float(gained_before), float(gained_after)) == pytest.approx((0.0, 2.0), abs=1e-9)


def test_a_lump_in_the_looped_cloth_that_hangs_already_is_there_with_its_row() -> None:
    looped = replace(LINED, fullness=1.5)
    lumped = replace(looped, lumps=(Lump(panel=0, arc_m=0.04, weight_n=2.0),))
    gained = LoadCurve.of(lumped).load_lowered() - LoadCurve.of(looped).load_lowered()
    assert float(gained) == pytest.approx(2.0)


def test_rows_tied_to_the_lowest_hang_from_the_start() -> None:
    """With rows tied, the shade starts where an untied one has been raised to already."""
    tied = LoadCurve.of(replace(LINED, tied_rows=2, travel_m=LINED.travel_m - 0.39))
    untied = LoadCurve.of(LINED)
    raises = np.linspace(0.0, LINED.travel_m - 0.39, 50)
    assert tied.load(raises) == pytest.approx(untied.load(raises + 0.39))
    assert tied.pick_ups == pytest.approx([u - 0.39 for u in untied.pick_ups[2:]])
    assert tied.energy(0.5) == pytest.approx(untied.energy(0.89) - untied.energy(0.39))


def test_rows_of_their_own_spacing_are_picked_up_one_by_one() -> None:
    uneven = replace(
        LINED, row_spacings_m=(0.1, 0.3, 0.2), rows_n=(0.1, 0.2, 0.3, 0.4), travel_m=0.6
    )
    curve = LoadCurve.of(uneven)
    assert curve.pick_ups == pytest.approx((0.095, 0.39, 0.585))
    skirt = LINED.bar_n + LINED.cloth_n_m * LINED.skirt_cloth_m
    after_two = skirt + 0.6 + LINED.cloth_n_m * 0.4
    assert float(curve.load(0.39)) == pytest.approx(after_two)
    assert float(curve.load(0.49)) == pytest.approx(after_two + LINED.cloth_n_m * 0.05)


def test_a_row_within_a_few_millimetres_of_the_stop_is_counted() -> None:
    just_short = LoadCurve.of(replace(LINED, travel_m=1.365 - 0.0049))
    too_short = LoadCurve.of(replace(LINED, travel_m=1.365 - 0.0051))
    step = LINED.cloth_n_m * 0.205 / 2 + ROW_N
    gained = float(just_short.greatest_load()) - float(too_short.greatest_load())
    assert gained == pytest.approx(step, rel=1e-3)
    assert float(too_short.greatest_load()) == pytest.approx(
        float(too_short.load(too_short.panel.travel_m))
    )


def test_many_cloth_scales_and_raises_at_once() -> None:
    curve = LoadCurve.of(LINED)
    scales, raises = np.array([[0.9], [1.0], [1.1]]), np.linspace(0, 1.4, 15)
    loads = curve.load(raises, scales)
    assert loads.shape == (3, 15)
    assert loads[2] - loads[1] == pytest.approx(loads[1] - loads[0])
    assert loads[1] == pytest.approx(curve.load(raises))


def test_stiff_cloth_adds_at_the_start_of_every_fold_and_fades() -> None:
    curve = LoadCurve.of(replace(LINED, bending_length_m=0.02))
    starts = np.array([0.0, *curve.pick_ups]) + 1e-12
    full = 2.2 * LINED.cloth_n_m * 0.02
    assert curve.stiffness_extra(starts) == pytest.approx(np.full(8, full), rel=1e-9)
    assert curve.stiffness_extra(starts + 0.072) == pytest.approx(np.zeros(8), abs=1e-9)
    assert curve.stiffness_extra(starts + 0.15) == pytest.approx(np.zeros(8), abs=1e-12)
    half_way = float(curve.stiffness_extra(0.036))
    assert half_way == pytest.approx(full * (1 - 0.5**1.2))
    assert LoadCurve.of(LINED).stiffness_extra(starts).max() == 0.0


@pytest.mark.parametrize(
    ("wrong", "where"),
    [
        ({"rows_n": (), "row_spacings_m": ()}, "rows_n"),
        ({"rows_n": (0.4,) * 7}, "row_spacings_m"),
        ({"stacked_pitch_m": 0.2}, "row_spacings_m"),
        ({"bar_n": -1.0}, "bar_n"),
        ({"cloth_n_m": float("nan")}, "cloth_n_m"),
        ({"skirt_cloth_m": -0.1}, "skirt_cloth_m"),
        ({"fullness": 0.9}, "fullness"),
        ({"tied_rows": 8}, "tied_rows"),
        ({"tied_rows": -1}, "tied_rows"),
        ({"lumps": (Lump(panel=8, arc_m=0.0, weight_n=1.0),)}, "lumps"),
        ({"lumps": (Lump(panel=0, arc_m=0.3, weight_n=1.0),)}, "lumps"),
        ({"lumps": (Lump(panel=0, arc_m=0.1, weight_n=-1.0),)}, "lumps"),
        ({"travel_m": 0.0}, "travel_m"),
        ({"travel_m": 1.6}, "travel_m"),
        ({"travel_m": float("nan")}, "travel_m"),
        ({"bending_length_m": float("inf")}, "bending_length_m"),
    ],
)
def test_a_panel_that_cannot_hang_is_refused_with_its_field_and_remedy(
    wrong: dict[str, object], where: str
) -> None:
    with pytest.raises(ImpossiblePanel) as refusal:
        LoadCurve.of(replace(LINED, **wrong))
    assert {fault.where for fault in refusal.value.faults} == {where}
    assert all(fault.remedy.endswith(".") for fault in refusal.value.faults)


def test_all_that_is_wrong_is_named_at_once() -> None:
    wrong = replace(LINED, bar_n=-1.0, fullness=0.5, tied_rows=9)
    with pytest.raises(ImpossiblePanel, match=r"fullness.*tied_rows") as refusal:
        LoadCurve.of(wrong)
    assert {f.where for f in refusal.value.faults} == {"bar_n", "fullness", "tied_rows"}


GATHERED = PanelLoad(
    row_spacings_m=(0.36, *(0.16,) * 6),
    stacked_pitch_m=0.003,
    skirt_cloth_m=0.1,
    top_panel_m=0.25,
    cloth_n_m=7.0,
    bar_n=1.5,
    rows_n=(0.04,) * 8,
    travel_m=1.0,
    fullness=1.5,
    backing_n_m=0.2,
    tied_rows=1,
)


@pytest.mark.parametrize("fullness", [1.0, 1.5])
@pytest.mark.parametrize("tied", [0, 1])
def test_the_even_climb_is_touched_after_each_pick_up_and_never_passed(
    fullness: float, tied: int
) -> None:
    spacings = (0.16,) * 7 if tied == 0 else GATHERED.row_spacings_m
    even = replace(GATHERED, top_panel_m=0.16, travel_m=0.95)
    curve = LoadCurve.of(replace(even, fullness=fullness, tied_rows=tied, row_spacings_m=spacings))
    picked = np.array(curve.pick_ups)
    assert curve.load_after(picked) == pytest.approx(curve.even_climb(picked), rel=1e-9)
    raises = np.linspace(0.0, 0.95, 501)
    assert np.all(curve.load_after(raises) <= curve.even_climb(raises) + 1e-9)


def test_ever_more_rows_tend_to_the_even_climb_whose_slope_is_all_the_cloth() -> None:
    """Without rings or pitch each metre of raise lifts a metre of drop, fullness and backing."""
    many = replace(
        GATHERED,
        row_spacings_m=(0.005,) * 200,
        rows_n=(0.0,) * 201,
        stacked_pitch_m=0.0,
        tied_rows=0,
    )
    curve = LoadCurve.of(many)
    raises = np.linspace(0.05, 0.95, 37)
    slope = np.diff(curve.even_climb(raises)) / np.diff(raises)
    assert slope == pytest.approx(np.full(36, 7.0 * 1.5 + 0.2))
    assert curve.load(raises) == pytest.approx(curve.even_climb(raises), rel=0.015)


def test_the_even_climb_follows_an_uncertain_cloth() -> None:
    heavier = LoadCurve.of(replace(GATHERED, cloth_n_m=8.4))
    climbed = LoadCurve.of(GATHERED).even_climb(0.5, 1.2)
    assert float(climbed) == pytest.approx(float(heavier.even_climb(0.5)))


def test_a_single_row_climbs_by_the_cloth_under_it() -> None:
    one = replace(GATHERED, row_spacings_m=(), rows_n=(0.04,), tied_rows=0, travel_m=0.1)
    curve = LoadCurve.of(one)
    risen = float(curve.even_climb(0.1) - curve.even_climb(0.0))
    assert risen == pytest.approx(0.1 * (7.0 * 1.5 + 0.2))
