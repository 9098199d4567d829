"""Pockets for rods: in the lining, folded from all layers, or sewn on."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.core.layouts import HABITS, ROD, answer, cloth, finding, ids, inches, laid_out, sized

from foldwright.core.design.choices import Choices, RodPlace, RodPocket, StyleName
from foldwright.core.design.layout import Layout, Sewn
from foldwright.core.design.rod_pockets import rod_length
from foldwright.core.facts.records import Chosen, Rod
from foldwright.core.quantity.length import Length

SIZE = sized("40", "60")
LINED = Chosen(face=cloth("118"), lining=cloth("118"), rod=ROD)
RODDED = Choices(
    rods=RodPlace.ROWS, row_count=7, head_allowance=inches("3"), shrinkage=0.0, skirt=inches("1")
)
IN_LINING = replace(RODDED, rod_pocket=RodPocket.LINING, pocket_allowance=inches("3/2"))
FOLDED = replace(IN_LINING, rod_pocket=RodPocket.TO_THE_ROOM)


def cuts(layout: Layout) -> dict[str, tuple[Length, Length]]:
    return {cut.layer: (cut.width.value, cut.length.value) for cut in layout.cuts}


def test_pockets_sewn_on_take_nothing_from_the_cloth() -> None:
    plain = cuts(laid_out(replace(RODDED, rods=RodPlace.NONE), SIZE, LINED))
    layout = laid_out(RODDED, SIZE, LINED)
    assert cuts(layout) == plain
    assert layout.pockets is None


def test_a_lining_is_longer_by_its_pockets_and_narrower_than_the_shade() -> None:
    """Seven pockets of 1 1/2 in and 6 cm to trim; 3 cm narrower, with hems of 2 1/2 cm."""
    plain, layout = (laid_out(each, SIZE, LINED) for each in (RODDED, IN_LINING))
    assert cuts(layout)["face"] == cuts(plain)["face"]
    width, length = cuts(layout)["lining"]
    assert width == inches("40") - Length.mm(30) + Length.mm(25) * 2
    assert length - cuts(plain)["lining"][1] == inches("3/2") * 7 + Length.mm(60)
    assert layout.rows.cloth_marks == ()
    assert layout.sewn == ()


def test_rods_end_inside_a_lining_that_is_narrower_than_the_shade() -> None:
    """40 in less 1/2 in; in the lining less its 3 cm too, so that they go into its pockets."""
    plain, carried = (
        rod_length(SIZE.width, laid_out(each, SIZE, LINED), HABITS).value
        for each in (RODDED, IN_LINING)
    )
    assert plain == inches("39 1/2")
    assert carried == inches("39 1/2") - Length.mm(30)


def test_each_pocket_of_the_lining_lies_above_those_below_it() -> None:
    layout = laid_out(IN_LINING, SIZE, LINED)
    assert layout.pockets is not None
    for number, (rod, mark) in enumerate(
        zip(layout.rows.rod_marks, layout.pockets.marks, strict=True)
    ):
        assert mark.value == rod.value + inches("3/2") * number + inches("3/4")


def test_pockets_folded_from_the_face_move_every_mark_above_them() -> None:
    layout = laid_out(FOLDED, SIZE, LINED)
    body = layout.cuts[0].body
    assert body is not None
    assert body.value == inches("60") + inches("3/2") * 7
    for number, (row, flat) in enumerate(
        zip(layout.rows.marks, layout.rows.cloth_marks, strict=True)
    ):
        assert flat.value == row.value + inches("3/2") * number + inches("3/4")
    assert {(line.kind, line.upright) for line in layout.sewn} == {(Sewn.POCKET, False)}
    assert [line.at.value for line in layout.sewn] == [
        mark.value for mark in layout.rows.cloth_marks
    ]


def test_slats_lie_at_every_row_and_where_every_fold_turns() -> None:
    rows = laid_out(replace(FOLDED, rods=RodPlace.SLATS), SIZE, LINED).rows
    assert len(rows.rod_marks) == 14
    assert [mark.value for mark in rows.rod_marks[::2]] == [mark.value for mark in rows.marks]
    for rod, row in zip(rows.rod_marks[1::2], rows.marks, strict=True):
        assert abs(rod.value - row.value - rows.spacing.value / 2) <= Length(1)
    assert rows.cloth_marks[1].value - rows.marks[1].value == inches("3/2") * 2 + inches("3/4")


@pytest.mark.parametrize(
    ("rod", "least", "greatest"),
    [
        (ROD, Length.mm(20), Length.mm(40)),
        (
            Rod(name="rod 8", line_mass_kg_m=0.1, diameter=Length.mm(8)),
            Length.mm(20),
            Length.mm(40),
        ),
        (
            Rod(name="rib", line_mass_kg_m=0.1, diameter=Length.mm(3), width=inches("1/2")),
            inches("1"),
            inches("1 1/4"),
        ),
    ],
)
def test_a_pocket_goes_once_round_its_rod(rod: Rod, least: Length, greatest: Length) -> None:
    """2 to 4 cm for a round rod; 1 to 1 1/4 in for a flat one 1/2 in wide (common practice)."""
    design = replace(IN_LINING, pocket_allowance=None)
    pockets = laid_out(design, SIZE, replace(LINED, rod=rod)).pockets
    assert pockets is not None
    assert least <= pockets.allowance.value <= greatest
    unknown = laid_out(design, SIZE, replace(LINED, rod=None)).pockets
    assert unknown is not None
    assert unknown.allowance.value == HABITS.rod_pocket.value


def test_pockets_of_a_lining_that_is_not_there_are_asked_about() -> None:
    found = answer(IN_LINING, SIZE, replace(LINED, lining=None)).findings
    ways = finding(found, "design.pockets-without-lining").remedies
    assert [change.text for way in ways for change in way.changes] == ["sewn on at the back"]
    assert "design.pockets-without-lining" not in ids(answer(IN_LINING, SIZE, LINED).findings)


def test_a_style_without_plain_folds_has_its_pockets_sewn_on() -> None:
    tucked = replace(FOLDED, style=StyleName.TUCKED)
    found = answer(tucked, SIZE, LINED)
    assert "design.rod-pockets" in ids(found.findings)
    assert found.result is not None
    assert found.result.pockets is None
    assert "design.rod-pockets" not in ids(answer(FOLDED, SIZE, LINED).findings)


def test_the_lining_is_made_up_before_it_is_laid_on() -> None:
    steps = {step.title: step for step in laid_out(IN_LINING, SIZE, LINED).sewing}
    titles = list(steps)
    assert titles.index("Sew the pockets of the lining") < titles.index("Lay the lining on")
    assert titles.index("Lay the lining on") < titles.index("Sew the rings")
    assert "nothing is seen on the face" in steps["Sew the rings"].instruction
    assert "Lay the lining in" not in steps


@pytest.mark.parametrize(
    ("place", "side"), [(RodPocket.TO_THE_ROOM, "room"), (RodPocket.TO_THE_BACK, "back")]
)
def test_folded_pockets_are_sewn_before_the_rows_are_marked(place: RodPocket, side: str) -> None:
    layout = laid_out(replace(FOLDED, rod_pocket=place), SIZE, LINED)
    steps = {step.title: step for step in layout.sewing}
    titles = list(steps)
    assert titles.index("Sew the rod pockets") < titles.index("Mark rows and columns")
    assert f"to the {side}" in steps["Sew the rod pockets"].instruction
    assert steps["Mark rows and columns"].figures[1].value == layout.rows.marks[0].value
