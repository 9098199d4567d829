"""The made-up shade: every gram is somewhere, and what is missing is asked for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.weigh.shade import (
    BAR,
    FACE,
    HABITS,
    INTERLINING,
    LINING,
    PARTS,
    ROD,
    made,
    weighed,
)

from foldwright.core.design.choices import Choices, RodPlace, RodPocket, StyleName
from foldwright.core.design.layout import LayerCut
from foldwright.core.facts.constants import GRAVITY
from foldwright.core.facts.records import Chosen, Coating
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import read_areal_mass
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.layers import areal_mass, cloth_lie, layer_mass
from foldwright.core.weigh.load import PanelLoad, Weights
from foldwright.core.weigh.made_up import MadeUp
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import measured

DESIGNS = {
    "flat": Choices(),
    "flat with rods at rows": Choices(rods=RodPlace.ROWS),
    "flat with rods at mid-fold": Choices(rods=RodPlace.MID_FOLD),
    "looped": Choices(style=StyleName.LOOPED, fullness=1.5),
    "cascade": Choices(style=StyleName.CASCADE, step=Length.mm(6)),
    "tucked": Choices(style=StyleName.TUCKED),
    "relaxed": Choices(style=StyleName.RELAXED),
    "london": Choices(style=StyleName.LONDON),
    "london, two rows tied": Choices(style=StyleName.LONDON, tied_rows=2, pouf=Length.mm(350)),
    "london without a pouf": Choices(style=StyleName.LONDON, tied_rows=0),
    "balloon": Choices(style=StyleName.BALLOON),
    "gathered": Choices(style=StyleName.GATHERED),
    "gathered, two rows tied": Choices(style=StyleName.GATHERED, tied_rows=2),
    "austrian": Choices(style=StyleName.AUSTRIAN),
    "flat, rods in the lining": Choices(rods=RodPlace.ROWS, rod_pocket=RodPocket.LINING),
    "flat with slats": Choices(rods=RodPlace.SLATS, rod_pocket=RodPocket.TO_THE_ROOM),
    "cascade with slats": Choices(
        style=StyleName.CASCADE, rods=RodPlace.SLATS, rod_pocket=RodPocket.TO_THE_BACK
    ),
}
INTERLINED = replace(PARTS, interlining=INTERLINING)


def result(choices: Choices, parts: Chosen = PARTS) -> Weights:
    weights = weighed(choices, parts).result
    assert weights is not None
    return weights


def hanging_n(load: PanelLoad) -> float:
    """Sum everything in a panel, whether the cords carry it yet or not."""
    cloth_m = load.skirt_cloth_m + load.fullness * (sum(load.row_spacings_m) + load.top_panel_m)
    lumps = sum(lump.weight_n for lump in load.lumps)
    return load.cloth_n_m * cloth_m + load.bar_n + sum(load.rows_n) + lumps


@pytest.mark.parametrize("parts", [PARTS, INTERLINED], ids=["lined", "interlined"])
@pytest.mark.parametrize("choices", DESIGNS.values(), ids=DESIGNS.keys())
def test_what_hangs_is_the_scale_weight_less_what_lies_on_the_board(
    choices: Choices, parts: Chosen
) -> None:
    weights = result(choices, parts)
    layout, size = made(choices, parts)
    shade = MadeUp(layout=layout, size=size, chosen=parts, habits=HABITS)
    on_the_board = cloth_lie(shade, weights.layers).on_the_board_kg
    assert on_the_board > 0
    assert hanging_n(weights.load) == pytest.approx(
        GRAVITY.value * (weights.total.value - on_the_board), rel=1e-9
    )


def test_cloth_on_the_board_is_the_top_allowance_of_face_and_lining_alone() -> None:
    layout, size = made(Choices(shrinkage=0.0), INTERLINED)
    shade = MadeUp(layout=layout, size=size, chosen=INTERLINED, habits=HABITS)
    masses = result(Choices(shrinkage=0.0), INTERLINED).layers
    face, lining, _ = layout.cuts
    assert layout.top_allowance is not None
    widths_kg_m = (
        face.width.value.in_metres * FACE.areal_mass_kg_m2
        + lining.width.value.in_metres * LINING.areal_mass_kg_m2
    )
    expected = layout.top_allowance.value.in_metres * widths_kg_m
    assert cloth_lie(shade, masses).on_the_board_kg == pytest.approx(expected, rel=1e-7)


def test_layers_weigh_what_their_cuts_weigh() -> None:
    layout, _ = made(Choices())
    weights = result(Choices())
    areas = [c.width.value.in_metres * c.length.value.in_metres for c in layout.cuts]
    assert [layer.value for layer in weights.layers] == pytest.approx(
        [0.28 * areas[0], 0.16 * areas[1]]
    )


@pytest.mark.parametrize(("ounces", "pounds"), [("14 oz/yd2", 42), ("4 oz/yd2", 12)])
def test_a_roll_of_cloth_in_ounces_and_yards(ounces: str, pounds: float) -> None:
    """Worked by hand: 32 yd of 54 in are 48 square yards."""
    roll = LayerCut(
        layer="face",
        cloth="face",
        width=measured("width", Length.inches(54)),
        length=measured("length", Length.inches(32 * 36)),
    )
    cloth = replace(FACE, areal_mass_kg_m2=read_areal_mass(ounces))
    mass = layer_mass(roll, areal_mass("face", cloth, HABITS))
    assert mass.value / 0.45359237 == pytest.approx(pounds, rel=1e-9)


def test_a_weighed_swatch_is_surer_than_a_sheet() -> None:
    face, lining = result(Choices()).layers
    assert face.low == pytest.approx(0.98 * face.value)
    assert lining.high == pytest.approx(1.05 * lining.value)
    third = result(Choices(), INTERLINED).layers[2]
    assert third.low == pytest.approx(0.9 * third.value)


def test_the_whole_is_surer_than_the_sum_of_its_worst_parts() -> None:
    weights = result(Choices())
    parts = [*weights.layers, weights.bar, weights.rods, weights.rings]
    worst = sum(part.high or part.value for part in parts)
    assert weights.total.value == pytest.approx(sum(part.value for part in parts))
    assert weights.total.high is not None
    assert weights.total.value < weights.total.high < worst


def test_bar_and_rods_are_cut_shorter_than_the_shade() -> None:
    weights = result(DESIGNS["flat with rods at rows"])
    layout, size = made(DESIGNS["flat with rods at rows"])
    width = size.width.value.in_metres
    assert weights.bar.value == pytest.approx(BAR.line_mass_kg_m * (width - 0.0127))
    rods = len(layout.rows.rod_marks) * ROD.line_mass_kg_m * (width - 0.0127)
    assert weights.rods.value == pytest.approx(rods)
    assert len(set(weights.load.rows_n)) == 1
    rings = layout.columns.count.value * 0.00075
    one_row = GRAVITY.value * (rings + ROD.line_mass_kg_m * (width - 0.0127))
    assert weights.load.rows_n[0] == pytest.approx(one_row)


def test_rods_at_mid_fold_lie_half_a_spacing_up_their_panels() -> None:
    load = result(DESIGNS["flat with rods at mid-fold"]).load
    assert [lump.panel for lump in load.lumps] == list(range(len(load.rows_n)))
    spacing = load.row_spacings_m[0]
    assert [lump.arc_m for lump in load.lumps] == pytest.approx(
        [spacing / 2] * len(load.lumps), abs=1e-8
    )


@pytest.mark.parametrize("style", [StyleName.FLAT, StyleName.LOOPED, StyleName.GATHERED])
def test_below_the_lowest_row_hangs_the_skirt_with_its_hem_and_no_loop(style: StyleName) -> None:
    choices = Choices(style=style, shrinkage=0.0)
    unlined = replace(PARTS, lining=None)
    layout, _ = made(choices, unlined)
    assert layout.hem_allowance is not None
    below = layout.rows.first_row.value + layout.hem_allowance.value
    load = result(choices, unlined).load
    assert load.skirt_cloth_m == pytest.approx(below.in_metres, rel=1e-6)


def test_slats_lie_at_rows_and_half_a_spacing_up_their_panels() -> None:
    slats, rows, between = (
        result(replace(DESIGNS["flat with slats"], rods=place)).load
        for place in (RodPlace.SLATS, RodPlace.ROWS, RodPlace.MID_FOLD)
    )
    assert slats.rows_n == pytest.approx(rows.rows_n)
    weights = [[lump.weight_n for lump in load.lumps] for load in (slats, between)]
    assert weights[0] == pytest.approx(weights[1])
    assert [lump.panel for lump in slats.lumps] == [lump.panel for lump in between.lumps]


def test_rods_inside_loops_lie_as_far_along_the_cloth_as_the_loops_are_full() -> None:
    """Asked about when it is designed, but weighed as it is asked for."""
    load = result(Choices(style=StyleName.LOOPED, fullness=1.5, rods=RodPlace.MID_FOLD)).load
    assert load.lumps[0].arc_m == pytest.approx(1.5 * load.row_spacings_m[0] / 2, abs=1e-8)


def test_shrunk_cloth_is_heavier_for_each_finished_metre() -> None:
    tight = result(Choices(shrinkage=0.03)).load.cloth_n_m
    plain = result(Choices(shrinkage=0.0)).load.cloth_n_m
    assert tight == pytest.approx(plain / 0.97, rel=1e-6)


def test_nothing_is_weighed_while_face_or_bar_or_asked_rods_are_missing() -> None:
    bare = replace(PARTS, face=None, bar=None, rod=None)
    answer = weighed(Choices(rods=RodPlace.ROWS), bare)
    assert answer.result is None
    assert [finding.id for finding in answer.findings] == ["weigh.face", "weigh.bar", "weigh.rod"]
    assert {finding.severity for finding in answer.findings} == {Severity.ASK}


def test_a_missing_bar_is_asked_for_with_the_sag_it_would_leave() -> None:
    """Half a per cent of ease over a span sags by its root of 3/8 ease: a flat parabola."""
    answer = weighed(Choices(), replace(PARTS, bar=None))
    sag, pitch = (figure.value for figure in answer.findings[0].figures)
    assert sag / pitch == pytest.approx((3 / 8 * 0.005) ** 0.5, rel=2e-3)


def test_rods_thicker_than_the_row_spacing_stop_the_shade() -> None:
    thick = replace(PARTS, rod=replace(ROD, diameter=Length.mm(250)))
    layout, size = made(Choices(rods=RodPlace.ROWS))
    pitch = layout.rows.stacked_pitch
    assert pitch is not None
    rows = replace(layout.rows, stacked_pitch=replace(pitch, value=Length.mm(250)))
    answer = weigh_shade(replace(layout, rows=rows), size, thick, HABITS)
    assert answer.result is None
    assert [finding.severity for finding in answer.findings] == [Severity.STOP]


def test_cloth_whose_weight_nobody_vouches_for_is_noted() -> None:
    assert [finding.id for finding in weighed(Choices()).findings] == ["weigh.swatch"]
    sure = replace(PARTS, lining=replace(LINING, weighed=True))
    assert weighed(Choices(), sure).findings == ()


def test_stiff_cloth_is_noted_with_what_it_adds() -> None:
    """Two layers slide: 0.2 kg/m2 of 60 mm in 0.48 kg/m2 in all make the shade 45 mm stiff."""
    answer = weighed(Choices(), replace(INTERLINED, lining=None))
    assert answer.result is not None
    bending_m = answer.result.load.bending_length_m
    assert bending_m == pytest.approx(0.06 * (0.2 / 0.48) ** (1 / 3))
    stiff = next(f for f in answer.findings if f.id == "weigh.stiff")
    bending, bound, extra, share = stiff.figures
    assert bending.value.in_metres == pytest.approx(bending_m)
    assert extra.value == pytest.approx(2.2 * answer.result.load.cloth_n_m * bending_m)
    assert (extra.low, extra.high) == pytest.approx(
        (extra.value * 1.7 / 2.2, extra.value * 2.7 / 2.2)
    )
    greatest = float(LoadCurve.of(answer.result.load).greatest_load())
    assert share.value == pytest.approx(extra.value / greatest)
    spacing = made(Choices())[0].rows.spacing.value
    assert bound.value.in_metres == pytest.approx(spacing.in_metres / 8)
    (apart,) = stiff.remedies[0].figures
    assert apart.value.in_metres == pytest.approx(8 * bending_m)


@pytest.mark.parametrize(("times", "said"), [(0.999, False), (1.001, True)])
def test_cloth_counts_as_stiff_from_an_eighth_of_the_spacing_on(
    times: float, *, said: bool
) -> None:
    spacing_m = made(Choices())[0].rows.spacing.value.in_metres
    face = replace(FACE, bending_length=Length.metres(times * spacing_m / 8))
    found = weighed(Choices(), replace(PARTS, face=face, lining=None)).findings
    assert ("weigh.stiff" in {each.id for each in found}) is said


@pytest.mark.parametrize(
    ("coating", "asked"),
    [(Coating.NONE, False), (Coating.DIM_OUT, True), (Coating.BLACKOUT, True)],
)
def test_the_stiffness_of_a_coated_lining_is_asked_for(coating: Coating, *, asked: bool) -> None:
    coated = replace(PARTS, lining=replace(LINING, coating=coating))
    found = weighed(Choices(), coated).findings
    assert ("weigh.stiffness" in {each.id for each in found}) is asked
    tested = replace(LINING, coating=coating, overhang=Length.mm(60))
    found = weighed(Choices(), replace(PARTS, lining=tested)).findings
    assert "weigh.stiffness" not in {each.id for each in found}


def test_a_hem_that_dips_hangs_without_a_bar_and_its_load_is_marked_as_a_bound() -> None:
    bare = replace(PARTS, bar=None)
    assert weighed(Choices(), bare).result is None
    found = weighed(Choices(style=StyleName.RELAXED), bare)
    assert found.result is not None
    assert found.result.bar.value == 0
    assert found.result.bound is not None
    assert found.result.bound.value == "upper bound"
    assert "weigh.bound" in {each.id for each in found.findings}
    assert result(Choices()).bound is None


def test_the_bound_of_a_relaxed_shade_is_the_load_of_a_flat_one() -> None:
    """The same rows, cloth and bar; only the rings of two columns instead of six."""
    design = Choices(row_count=8, column_count=2, largest_pitch=Length.mm(1300))
    flat, relaxed = (
        result(replace(design, style=style)).load for style in (StyleName.FLAT, StyleName.RELAXED)
    )
    assert relaxed == flat
