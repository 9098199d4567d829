"""Laws of every style, one by one: its cloth adds up, its load is its weight, its rise is plain.

The table names each style and its chief variants once; a style that is not in it fails here.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import numpy as np
import pytest
from tests.core.weigh.shade import HABITS, PARTS
from tests.laws.heights import potential_energy

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.design.choices import (
    ONLY_FOR,
    Choices,
    RodPlace,
    RodPocket,
    StyleName,
)
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.folding import hang, stacked_pitch
from foldwright.core.drawing.section import side_section
from foldwright.core.drawing.table import table_layout
from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.opening import AskedSize, Mount, Opening
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.weigh.curve import LoadCurve
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.figure import Figure

STYLES = {
    "flat": Choices(),
    "flat with rods in the lining": Choices(rods=RodPlace.ROWS, rod_pocket=RodPocket.LINING),
    "flat with rods at mid-fold": Choices(rods=RodPlace.MID_FOLD),
    "flat with slats to the room": Choices(rods=RodPlace.SLATS, rod_pocket=RodPocket.TO_THE_ROOM),
    "looped": Choices(style=StyleName.LOOPED),
    "cascade": Choices(style=StyleName.CASCADE),
    "tucked": Choices(style=StyleName.TUCKED),
    "relaxed": Choices(style=StyleName.RELAXED),
    "relaxed, cut wider": Choices(style=StyleName.RELAXED, widened_hem=True),
    "london": Choices(style=StyleName.LONDON),
    "london without a pouf": Choices(style=StyleName.LONDON, tied_rows=0),
    "balloon": Choices(style=StyleName.BALLOON),
    "balloon, two rows tied": Choices(style=StyleName.BALLOON, tied_rows=2),
    "gathered": Choices(style=StyleName.GATHERED),
    "gathered with a pouf": Choices(style=StyleName.GATHERED, tied_rows=1),
    "austrian": Choices(style=StyleName.AUSTRIAN),
}
SIZES_MM = {"square": ("1000", "1000"), "tall": ("760", "2140"), "wide": ("1830", "1270")}
NANOMETRE = Length(1)
SHARES = (0.0, 0.5, 1.0)
FINE = np.linspace(0.0, 1.0, 101)

each_style = pytest.mark.parametrize("style", STYLES)
each_size = pytest.mark.parametrize("size", SIZES_MM)


@cache
def planned(style: str, size: str, system: System = System.METRIC) -> ShadePlan:
    """Lay a shade out and weigh it; inches are typed to a thousandth."""
    width, drop = (_typed(side, system) for side in SIZES_MM[size])
    asked = AskedSize(width=width, drop=drop, given_by="the client")
    finished = finished_size(Opening(), Mount(), asked, HABITS).result
    assert finished is not None
    rules = row_spacing_cap(()), edge_distance_floor(())
    layout = lay_out(STYLES[style], finished, PARTS, HABITS, *rules).result
    assert layout is not None
    weights = weigh_shade(layout, finished, PARTS, HABITS).result
    assert weights is not None
    spec = ShadeSpec(tag="A", asked=asked, design=STYLES[style])
    return ShadePlan(spec=spec, size=finished, layout=layout, weights=weights, chosen=PARTS)


def _typed(millimetres: str, system: System) -> Length:
    exact = Length.mm(millimetres)
    if system is System.METRIC:
        return exact
    return Length.inches(round(float(exact.in_inches), 3))


def laid(style: str, size: str) -> tuple[Layout, FinishedSize]:
    made = planned(style, size)
    assert made.layout is not None
    assert made.size is not None
    return made.layout, made.size


def curve_of(style: str, size: str) -> LoadCurve:
    made = planned(style, size)
    assert made.weights is not None
    return LoadCurve.of(made.weights.load)


def test_every_style_of_the_house_is_held_to_these_laws() -> None:
    assert {choices.style for choices in STYLES.values()} == set(StyleName)


@each_size
@each_style
def test_rows_and_top_panel_add_up_to_the_drop(style: str, size: str) -> None:
    layout, finished = laid(style, size)
    rows = layout.rows
    marks = [mark.value for mark in rows.marks]
    assert len(marks) == rows.count.value
    assert marks[-1] + rows.top_panel.value == finished.drop.value
    assert all(upper > lower for lower, upper in pairwise(marks))
    assert rows.top_panel.value >= rows.head_allowance.value - NANOMETRE


@each_size
@each_style
def test_marks_on_the_flat_cloth_keep_their_order_and_stay_on_it(style: str, size: str) -> None:
    layout, finished = laid(style, size)
    body = layout.cuts[0].body
    assert body is not None
    rows = layout.rows.cloth_marks or layout.rows.marks
    flat = [mark.value for mark in rows]
    assert len(flat) == layout.rows.count.value
    assert all(upper > lower for lower, upper in pairwise(flat))
    assert flat[-1] <= body.value
    takes_more = body.value > finished.drop.value
    assert takes_more == bool(layout.rows.cloth_marks) or style.startswith("flat with slats")


@each_size
@each_style
def test_columns_mirror_on_the_shade_and_on_the_flat_cloth(style: str, size: str) -> None:
    layout, finished = laid(style, size)
    across = layout.widths.cloth_width or finished.width
    for marks, width in (
        (layout.columns.marks, finished.width),
        (layout.columns.cloth_marks, across),
    ):
        for left, right in zip(marks, reversed(marks), strict=True):
            assert abs(left.value + right.value - width.value) <= NANOMETRE


@each_size
@each_style
def test_every_layer_is_cut_at_least_as_large_as_it_hangs(style: str, size: str) -> None:
    layout, finished = laid(style, size)
    face = layout.cuts[0]
    across = layout.widths.cloth_width or finished.width
    assert face.width.value > across.value
    for cut in layout.cuts:
        assert cut.body is not None
        assert cut.length.value > cut.body.value


@each_size
@each_style
def test_the_work_of_raising_is_the_energy_of_all_that_rises(style: str, size: str) -> None:
    curve = curve_of(style, size)
    load = curve.panel
    at_rest = potential_energy(load, 0.0)
    for share in FINE[1::9]:
        raise_m = float(share) * load.travel_m
        gained = potential_energy(load, raise_m) - at_rest
        assert float(curve.energy(raise_m)) == pytest.approx(gained, rel=1e-6)


@each_size
@each_style
def test_the_load_never_falls_and_never_passes_the_weight(style: str, size: str) -> None:
    made, curve = planned(style, size), curve_of(style, size)
    loads = curve.load_after(FINE * curve.panel.travel_m)
    assert np.all(np.diff(loads) >= -1e-9)
    assert loads[0] > 0
    assert made.weights is not None
    assert float(curve.greatest_load()) <= made.weights.total.value * 9.80665 + 1e-9


@each_size
@each_style
def test_nothing_sinks_while_the_shade_is_raised(style: str, size: str) -> None:
    made = planned(style, size)
    layout, finished = laid(style, size)
    drop = finished.drop.value.in_millimetres
    hangs = [
        hang(layout, drop_mm=drop, pitch_mm=stacked_pitch(made), raise_share=float(share))
        for share in FINE
    ]
    assert hangs[0].lowest == pytest.approx(0.0, abs=1e-3)
    # A fold is told as half its cloth; drawn, it spans the stacked pitch as well.
    told_longer = layout.stack.raised_size.value.in_millimetres - drop + hangs[-1].lowest
    assert -1e-3 <= told_longer <= stacked_pitch(made) / 2 + 1e-3
    for lower, upper in pairwise(hangs):
        assert upper.lowest >= lower.lowest - 1e-6
        assert all(up >= down for down, up in zip(lower.rows, upper.rows, strict=True))


@each_size
@each_style
def test_inches_and_millimetres_agree(style: str, size: str) -> None:
    """Sizes typed to a thousandth of an inch move no figure by more than 0.05 mm."""
    ours, theirs = (planned(style, size, system) for system in System)
    for one, other in zip(_lengths(ours), _lengths(theirs), strict=True):
        assert abs(one.value - other.value) <= Length.mm("0.05"), one.name


def _lengths(made: ShadePlan) -> list[Figure[Length]]:
    layout = made.layout
    assert layout is not None
    rows, columns = layout.rows, layout.columns
    return [
        *rows.marks,
        *columns.marks,
        rows.fold_depth,
        layout.travel,
        layout.stack.raised_size,
    ]


@each_size
@each_style
@pytest.mark.parametrize("system", System)
def test_each_is_drawn_at_any_raise_and_on_the_table(style: str, size: str, system: System) -> None:
    made = planned(style, size)
    drawings = [view(made, share, system) for view in (elevation, side_section) for share in SHARES]
    for drawing in (*drawings, table_layout(made, system)):
        assert len(drawing.elements) > 10
        assert drawing.description.endswith(".")


@each_style
def test_each_tells_how_it_is_sewn_with_every_figure_in_its_place(style: str) -> None:
    layout, _ = laid(style, "square")
    titles = [step.title for step in layout.sewing]
    assert titles[0] == "Press and square"
    assert titles[-1] == "Dress the folds"
    assert len(set(titles)) == len(titles)
    for step in layout.sewing:
        assert all(f"{{{number}}}" in step.instruction for number in range(len(step.figures)))


@each_size
@pytest.mark.parametrize(
    "style", [name for name, choices in STYLES.items() if choices.style in ONLY_FOR["dip"]]
)
def test_a_hem_whose_middle_lags_pulls_no_more_than_the_bound(style: str, size: str) -> None:
    """The shade is cut into upright strips, each raised as far as its place on the hem.

    Between its columns the hem lags by a parabola that deepens until it has its whole dip. The
    pull on the cords is what the work of all strips grows by, and it stays under the load that
    is told; once the dip is whole, the work lags by what is still to be lifted, and no more.
    """
    layout, _ = laid(style, size)
    assert layout.swag is not None
    curve, dip = curve_of(style, size), layout.swag.dip.value.in_metres
    strips = 1 - np.linspace(-1.0, 1.0, 201) ** 2
    raises = np.linspace(0.0, curve.panel.travel_m, 1501)
    rest = dip if layout.rows.tied_rows.value else 0.0
    lags = np.minimum(dip, raises + rest) - rest
    lifted = raises[:, None] - lags[:, None] * strips[None, :]
    work = curve.energy(np.maximum(lifted, 0.0)).mean(axis=1)
    pull = np.diff(work) / np.diff(raises)
    assert np.all(pull <= curve.load_after(raises[1:]) + 1e-6)
    assert np.all(work <= curve.energy(raises) + 1e-9)
    owed = curve.load_after(raises[-1]) * (lags[-1])
    assert curve.energy(raises[-1]) - work[-1] <= owed + 1e-9
