"""Linings of every kind: how they are cut, joined and sewn, and the holes in a blackout."""

from __future__ import annotations

import pytest
from tests.core.check.orders import found, mended, order, planned, ways
from tests.core.layouts import HABITS, cloth, inches, laid_out, sized

from foldwright.core.check.plan import ShadePlan
from foldwright.core.design.choices import Choices
from foldwright.core.design.layout import LayerCut, Layout, SewingStep
from foldwright.core.design.making import HoleCover
from foldwright.core.facts.records import Chosen, Coating
from foldwright.core.quantity.length import Length

SATEEN, DIM = "Sateen lining, ivory", "Dim-out lining, one coat"
BLACK, BRUSHED = "Blackout lining, three coats", "Brushed interlining"


def layout_of(plan: ShadePlan) -> Layout:
    assert plan.layout is not None
    return plan.layout


def cut_of(layout: Layout, layer: str) -> LayerCut:
    return next(cut for cut in layout.cuts if cut.layer == layer)


def step(layout: Layout, title: str) -> SewingStep | None:
    return next((each for each in layout.sewing if each.title == title), None)


def blacked_out(holes: str, **tables: dict[str, object]) -> ShadePlan:
    return planned(order(materials={"lining": BLACK}, making={"holes": holes}, **tables))


@pytest.mark.parametrize(
    ("lining", "interlining", "word"),
    [
        ("", "", "unlined"),
        (SATEEN, "", "lined"),
        (DIM, "", "dim-out"),
        (BLACK, "", "blackout"),
        (SATEEN, BRUSHED, "lined, interlined"),
        (BLACK, BRUSHED, "blackout, interlined"),
    ],
)
def test_a_shade_is_named_after_its_layers(lining: str, interlining: str, word: str) -> None:
    plan = planned(order(materials={"lining": lining, "interlining": interlining}))
    assert layout_of(plan).lined is not None
    assert layout_of(plan).lined.value == word
    layers = ["face"] + ["lining"] * bool(lining) + ["interlining"] * bool(interlining)
    assert [cut.layer for cut in layout_of(plan).cuts] == layers


def test_a_lining_just_as_wide_as_its_cloth_has_no_join_and_one_wider_has_two() -> None:
    """Own arithmetic: 54 in of lining is cut for 54 1/4 in; 54 5/16 takes two seams of 1 in."""
    lining = Chosen(face=cloth("120"), lining=cloth("54"))
    one = cut_of(laid_out(Choices(), sized("54 1/4", "60"), lining), "lining")
    two = cut_of(laid_out(Choices(), sized("54 5/16", "60"), lining), "lining")
    assert (one.widths and one.widths.value, one.width.value, one.lap) == (1, inches("54"), None)
    assert (two.widths and two.widths.value, two.width.value) == (2, inches("56 1/16"))


def test_a_coated_lining_is_lapped_and_glued_never_sewn() -> None:
    """Own arithmetic: two laps of 1/2 in on 54 1/16 in."""
    coated = Chosen(face=cloth("120"), lining=cloth("54", coating=Coating.BLACKOUT))
    layout = laid_out(Choices(), sized("54 5/16", "60"), coated)
    cut = cut_of(layout, "lining")
    assert (cut.width.value, cut.lap and cut.lap.value) == (inches("55 1/16"), inches("1/2"))
    joined = step(layout, "Join the lining")
    assert joined is not None
    assert "glue it" in joined.instruction
    plain = laid_out(Choices(), sized("54 5/16", "60"), Chosen(face=cloth("120"), lining=cloth()))
    sewn = step(plain, "Join the lining")
    assert sewn is not None
    assert sewn.instruction.startswith("Sew the lining")


def test_a_blackout_asks_about_its_holes_and_each_answer_silences_it() -> None:
    document = order(materials={"lining": BLACK})
    plan = planned(document)
    offered = ways(plan, "check.blackout-holes")
    assert [way.changes[0].text for way in offered] == [
        cover.value for cover in HoleCover if cover is not HoleCover.SIDE_TURNS
    ]
    for way in offered:
        assert found(mended(document, way), "check.blackout-holes") is None
    assert found(planned(order(materials={"lining": DIM})), "check.blackout-holes") is None


def test_a_blackout_between_face_and_lining_asks_as_well() -> None:
    document = order(materials={"interlining": BLACK})
    assert found(planned(document), "check.blackout-holes") is not None


def test_cover_strips_are_cut_for_every_row_and_weigh_on_every_row() -> None:
    """Own arithmetic: 1 in by 35 3/4 in at 290 g/m2 is 6.688 g at each row."""
    plan, without = blacked_out("cover strip under the rings"), blacked_out("painted over")
    layout = layout_of(plan)
    (strip,) = layout.pieces
    assert (strip.name, strip.cloth, strip.count.value) == ("cover strip", BLACK, 7)
    assert (strip.width.value, strip.length.value) == (inches("35 3/4"), inches("1"))
    assert step(layout, "Glue the cover strips") is not None
    assert layout_of(without).pieces == ()
    assert plan.weights is not None
    assert without.weights is not None
    more = [
        a - b for a, b in zip(plan.weights.load.rows_n, without.weights.load.rows_n, strict=True)
    ]
    strip_n = 0.0254 * 35.75 * 0.0254 * 0.290 * 9.80665
    assert more == pytest.approx([strip_n] * 7, rel=1e-9)
    total = plan.weights.total.value - without.weights.total.value
    assert total == pytest.approx(7 * strip_n / 9.80665, rel=1e-9)


def test_a_second_layer_is_cut_and_weighed_as_the_lining_is() -> None:
    plan, without = blacked_out("second layer under the rings"), blacked_out("painted over")
    lining, second = (cut_of(layout_of(plan), name) for name in ("lining", "second layer"))
    assert (second.width.value, second.length.value) == (lining.width.value, lining.length.value)
    assert plan.weights is not None
    assert without.weights is not None
    assert len(plan.weights.layers) == len(without.weights.layers) + 1
    assert plan.weights.layers[1].value == plan.weights.layers[2].value
    assert plan.weights.load.cloth_n_m > without.weights.load.cloth_n_m


@pytest.mark.parametrize(
    ("holes", "title"),
    [
        ("painted over", "Paint the holes"),
        ("second layer under the rings", "Lay the second layer in"),
    ],
)
def test_each_answer_has_its_step_and_a_test_for_light(holes: str, title: str) -> None:
    layout = layout_of(blacked_out(holes))
    assert step(layout, title) is not None
    assert step(layout, "Test for light") is not None


def test_holes_that_are_accepted_need_no_test_and_a_plain_lining_neither() -> None:
    accepted = layout_of(blacked_out("accepted by the client"))
    assert step(accepted, "Test for light") is None
    assert step(layout_of(planned(order())), "Test for light") is None


def test_rings_in_the_side_turns_alone_stop_where_columns_stand_beyond_them() -> None:
    """Columns at 2 in need turns of more; a narrow shade with rods needs no others."""
    document = order(
        asked={"width": "16", "drop": "60", "given_by": "the client"},
        materials={"lining": BLACK, "rod": "Glass-fibre rod 4"},
        making={"holes": "rings in the side turns only"},
    )
    plan = planned(document)
    turned = ways(plan, "check.rings-beyond-turns")[0]
    assert {change.path: change.text for change in turned.changes} == {
        "making.holes": "rings in the side turns only",
        "design.side_turn": "2 1/2 in",
        "design.column_count": "2",
        "design.rods": "at rows",
    }
    after = mended(document, turned)
    assert found(after, "check.rings-beyond-turns") is None
    assert layout_of(after).columns.count.value == 2
    document["shades"][0].pop("making")
    assert ways(planned(document), "check.blackout-holes")[-1].changes == turned.changes


@pytest.mark.parametrize(("turn", "stopped"), [("2", True), ("2 1/16", False)])
def test_a_turn_must_reach_beyond_its_column(turn: str, *, stopped: bool) -> None:
    plan = blacked_out(
        "rings in the side turns only",
        asked={"width": "16", "drop": "60", "given_by": "the client"},
        design={"side_turn": turn, "column_count": 2, "edge_distance": "2", "rods": "at rows"},
    )
    assert (found(plan, "check.rings-beyond-turns") is not None) is stopped


def test_a_wide_shade_cannot_hang_from_its_sides_and_is_offered_cover_instead() -> None:
    plan = blacked_out("rings in the side turns only")
    offered = [way.changes[0].text for way in ways(plan, "check.rings-beyond-turns")]
    assert offered == ["second layer under the rings", "cover strip under the rings"]


def test_an_interlining_is_not_left_bare() -> None:
    document = order(materials={"lining": "", "interlining": BRUSHED})
    (way,) = ways(planned(document), "check.interlining-bare")
    assert found(mended(document, way), "check.interlining-bare") is None
    lined = planned(order(materials={"interlining": BRUSHED}))
    assert found(lined, "check.interlining-bare") is None


def test_layers_weigh_within_the_trade_s_ranges() -> None:
    """Linings 70 to 135, interlinings 120 to 300, blackout 205 to 340 g/m2: common practice."""
    shop = planned(order(materials={"lining": BLACK, "interlining": BRUSHED})).chosen
    assert shop.lining is not None
    assert shop.interlining is not None
    assert 0.205 <= shop.lining.areal_mass_kg_m2 <= 0.340
    assert 0.120 <= shop.interlining.areal_mass_kg_m2 <= 0.300
    assert HABITS.lining_less_than_width.value == Length.inches(0.25)
