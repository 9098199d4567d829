"""Bands and trims: where they lie, how they are cut, where they weigh, and what keeps off them."""

from __future__ import annotations

from typing import Any

import pytest
from tests.core.check.orders import Document, found, mended, order, planned, ways
from tests.core.layouts import inches

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.layout import Layout, Piece
from foldwright.core.drawing.bands import height_on
from foldwright.core.drawing.elevation import elevation
from foldwright.core.drawing.face import face_of
from foldwright.core.drawing.folding import hang
from foldwright.core.drawing.model import Hatch, Layer
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System

STRIPE = "Gate stripe, brick"
GRAVITY = 9.80665


def banded(design: dict[str, Any] | None = None, **making: Any) -> Document:
    return order(
        making=making,
        materials={"band": STRIPE},
        design={"shrinkage": 0.0} | (design or {}),
    )


def layout_of(plan: ShadePlan) -> Layout:
    assert plan.layout is not None
    return plan.layout


def piece(plan: ShadePlan, name: str) -> Piece:
    return next(each for each in layout_of(plan).pieces if each.name == name)


def test_a_band_across_is_cut_with_its_turns_and_a_trim_without() -> None:
    """Own arithmetic: 2 in and half an inch at each edge; 36 in and 1 1/2 in at each end."""
    sewn = piece(planned(banded(band_height="2")), "band")
    applied = piece(planned(banded(band_height="2", band_sewing="applied")), "band")
    assert (sewn.cloth, sewn.width.value, sewn.length.value) == (STRIPE, inches("39"), inches("3"))
    assert (applied.width.value, applied.length.value) == (inches("39"), inches("2"))


def test_side_bands_run_as_long_as_the_face() -> None:
    """Own arithmetic: 1 1/2 in wide with half an inch at each edge."""
    plan = planned(banded(side_band_width="1 1/2", side_band_inset="1/2"))
    side = piece(plan, "side band")
    assert (side.count.value, side.width.value) == (2, inches("2 1/2"))
    assert side.length.value == layout_of(plan).cuts[0].length.value
    bands = layout_of(plan).bands
    assert bands is not None
    edges = [edge.value for edge in bands.side_edges]
    assert edges == [inches(text) for text in ("1/2", "2", "34", "35 1/2")]


def test_a_band_along_the_edge_has_one_edge_inside() -> None:
    bands = layout_of(planned(banded(side_band_width="3"))).bands
    assert bands is not None
    assert [edge.value for edge in bands.side_edges] == [inches("3"), inches("33")]


def test_a_band_at_the_hem_rises_with_the_bar_and_one_between_rows_is_picked_up_there() -> None:
    """Own arithmetic: 39 by 3 in of 230 g/m2 is 17.36 g."""
    bare, hem, higher = (
        planned(banded(**making))
        for making in (
            {},
            {"band_height": "2"},
            {"band_height": "2", "band_above_hem": "7", "band_sewing": "applied"},
        )
    )
    assert bare.weights is not None
    assert hem.weights is not None
    assert higher.weights is not None
    sewn_n = 39 * 3 * 0.0254**2 * 0.230 * GRAVITY
    assert hem.weights.load.bar_n - bare.weights.load.bar_n == pytest.approx(sewn_n)
    assert hem.weights.load.lumps == ()
    assert higher.weights.load.bar_n == bare.weights.load.bar_n
    (lump,) = higher.weights.load.lumps
    first_m = layout_of(higher).rows.marks[0].value.in_metres
    assert lump.panel == 0
    assert lump.arc_m == pytest.approx(0.0254 * 8 - first_m)
    assert lump.weight_n == pytest.approx(39 * 2 * 0.0254**2 * 0.230 * GRAVITY)


def test_side_bands_weigh_evenly_along_the_cloth() -> None:
    bare, sides = (planned(banded(**making)) for making in ({}, {"side_band_width": "3"}))
    assert bare.weights is not None
    assert sides.weights is not None
    more = sides.weights.load.cloth_n_m - bare.weights.load.cloth_n_m
    assert more == pytest.approx(2 * 4 * 0.0254 * 0.230 * GRAVITY, rel=1e-6)
    assert sides.weights.load.bar_n == bare.weights.load.bar_n
    total = sides.weights.total.value - bare.weights.total.value
    assert total == pytest.approx(sum(mass.value for mass in sides.weights.pieces))


def test_columns_move_off_the_edges_of_side_bands_by_themselves() -> None:
    """The usual 2 in would meet the edge; 2 1/2 in is the first eighth that is clear by 1/2 in.

    With the number of columns free, 3 in is taken: it needs one column less.
    """
    free = planned(banded(side_band_width="2"))
    assert layout_of(free).columns.edge_distance.value == inches("3")
    plan = planned(banded({"column_count": 5}, side_band_width="2"))
    assert found(plan, "check.column-on-band") is None
    assert layout_of(plan).columns.edge_distance.value == inches("2 1/2")
    applied = planned(banded(side_band_width="2", band_sewing="applied"))
    assert layout_of(applied).columns.edge_distance.value == inches("2")


@pytest.mark.parametrize(("edge", "stopped"), [("2 1/2", False), ("2 7/16", True)])
def test_a_column_within_half_an_inch_of_an_edge_stops(edge: str, *, stopped: bool) -> None:
    document = banded({"edge_distance": edge}, side_band_width="2")
    plan = planned(document)
    assert (found(plan, "check.column-on-band") is not None) is stopped
    if stopped:
        offered = ways(plan, "check.column-on-band")
        assert offered[0].changes[0].path == "design.edge_distance"
        assert {way.changes[0].path for way in offered[1:]} == {
            "making.side_band_inset",
            "making.band_sewing",
        }
        for way in offered:
            assert found(mended(document, way), "check.column-on-band") is None


@pytest.mark.parametrize(("below", "stopped"), [("0.1", True), ("-0.1", False)])
def test_a_row_at_the_edge_of_a_band_stops_and_one_beside_it_does_not(
    below: str, *, stopped: bool
) -> None:
    first = layout_of(planned(banded())).rows.marks[0].value
    upper = first.in_millimetres + float(below)
    document = banded(band_height="20 mm", band_above_hem=f"{upper - 20:.3f} mm")
    plan = planned(document)
    assert (found(plan, "check.row-on-band") is not None) is stopped
    if stopped:
        offered = ways(plan, "check.row-on-band")
        assert [way.changes[0].path for way in offered] == ["design.skirt", "making.band_sewing"]
        for way in offered:
            assert found(mended(document, way), "check.row-on-band") is None


@pytest.mark.parametrize(
    ("making", "stopped"),
    [
        ({"side_band_width": "18"}, False),
        ({"side_band_width": "18 1/16"}, True),
        ({"band_height": "2", "band_above_hem": "58", "band_sewing": "applied"}, False),
        ({"band_height": "2", "band_above_hem": "58 1/16", "band_sewing": "applied"}, True),
    ],
)
def test_a_band_has_room_on_the_shade(making: dict[str, str], *, stopped: bool) -> None:
    assert (found(planned(banded(**making)), "check.band-off-shade") is not None) is stopped


def test_the_folds_hide_what_they_hang_before() -> None:
    """Lowered, a band is seen whole; raised, as far as the skirt shows it."""
    plan = planned(banded({"skirt": "1"}, band_height="2"))
    layout = layout_of(plan)
    for share, seen in ((0.0, inches("2")), (1.0, inches("1"))):
        drawing = elevation(plan, share, System.INCH)
        trims = (each for each in drawing.elements if each.layer is Layer.TRIM)
        (band,) = (each for each in trims if isinstance(each, Hatch))
        heights = [point.y for point in band.outline]
        tall = max(heights) - min(heights)
        assert tall == pytest.approx(seen.in_millimetres, abs=3.2 * (layout.rows.count.value - 1))
        assert tall <= Length.inches(2).in_millimetres + 0.01


def test_a_band_on_a_folded_panel_is_not_drawn() -> None:
    plan = planned(banded(band_height="1", band_above_hem="8", band_sewing="applied"))
    layout, drop = layout_of(plan), inches("60").in_millimetres
    up = hang(layout, drop_mm=drop, pitch_mm=3.0, raise_share=0.5)
    down = hang(layout, drop_mm=drop, pitch_mm=3.0, raise_share=0.0)
    width = inches("36").in_millimetres
    assert height_on(plan, face_of(layout, up, width=width, scale=10.0), 203.2) is None
    lowered = height_on(plan, face_of(layout, down, width=width, scale=10.0), 203.2)
    assert lowered == pytest.approx(203.2)


def test_flat_bands_are_sewn_before_the_sides_are_turned_and_trims_after_the_rings() -> None:
    sewn, applied = (
        [step.title for step in layout_of(planned(banded(band_height="2", **more))).sewing]
        for more in ({}, {"band_sewing": "applied"})
    )
    assert sewn.index("Sew the band on") < sewn.index("Turn the sides")
    assert applied.index("Apply the trim") > applied.index("Sew the rings")
