"""Valances, returns and flaps: their sizes, what they weigh and on what, and what is asked."""

from __future__ import annotations

from typing import Any

import pytest
from tests.core.check.orders import Document, found, mended, order, planned, ways
from tests.core.layouts import HABITS, inches

from foldwright.core.check.fixing_load import fixing_count, load_on_one
from foldwright.core.check.plan import ShadePlan
from foldwright.core.check.review import Review
from foldwright.core.design.layout import Layout, Piece
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.length import Length

OUTSIDE = {"place": "outside", "returns": True}


def hung(*, mount: dict[str, Any] | None = None, **making: Any) -> Document:
    design = {"shrinkage": 0.0}
    return order(making=making, mount=mount or {"place": "inside"}, design=design)


def layout_of(plan: ShadePlan) -> Layout:
    assert plan.layout is not None
    return plan.layout


def piece(plan: ShadePlan, name: str) -> Piece:
    return next(each for each in layout_of(plan).pieces if each.name == name)


def test_a_valance_is_a_sixth_of_the_drop_and_hides_the_headrail() -> None:
    """Common practice: a sixth to a fifth of the drop: 10 in of 60; the pine board is 64 mm deep.

    Own arithmetic: 36 in and two side turns are 39 in; over the board 64 mm and 2 in, down 10 in,
    and 1 1/2 in turned up at its hem.
    """
    plan = planned(hung(valance="attached"))
    valance = layout_of(plan).valance
    assert valance is not None
    assert valance.depth.value == inches("10")
    assert valance.width.value == inches("36")
    assert valance.return_depth is None
    front = piece(plan, "valance")
    assert front.width.value == inches("39")
    assert front.length.value == Length.mm(64) + inches("13 1/2")
    lining = piece(plan, "valance lining")
    assert lining.width.value == inches("35 3/4")
    assert lining.length.value == Length.mm(64) + inches("12")


def test_a_short_shade_has_a_valance_no_shallower_than_its_headrail_and_an_inch() -> None:
    """The standard bracket is 58 mm high: with an inch, 3.28 in, and so 3 5/16 in on the tape."""
    asked = {"width": "36", "drop": "18", "given_by": "the client"}
    plan = planned(order(asked=asked, making={"valance": "attached"}))
    valance = layout_of(plan).valance
    assert valance is not None
    bracket = plan.chosen.bracket
    assert bracket is not None
    assert valance.depth.value >= bracket.height + inches("1")
    assert valance.depth.value - bracket.height - inches("1") < inches("1/16")


def test_a_valance_too_shallow_is_made_as_deep_as_it_must_be() -> None:
    bracket = planned(order()).chosen.bracket
    assert bracket is not None
    least = bracket.height + inches("1")
    short = hung(valance="attached", valance_depth=f"{least.in_millimetres - 0.1:.2f} mm")
    deep = hung(valance="attached", valance_depth=f"{least.in_millimetres + 0.1:.2f} mm")
    assert found(planned(deep), "check.valance-short") is None
    (way,) = ways(planned(short), "check.valance-short")
    assert found(mended(short, way), "check.valance-short") is None


def test_outside_a_valance_goes_round_the_ends_of_its_board() -> None:
    """Own arithmetic: 36 in, twice the 64 mm board, and two turns of 1 1/2 in."""
    plan = planned(hung(mount=OUTSIDE, valance="attached"))
    assert piece(plan, "valance").width.value == inches("39") + Length.mm(128)
    (way,) = ways(
        planned(hung(mount={"place": "outside"}, valance="attached")),
        "check.valance-without-returns",
    )
    assert [change.path for change in way.changes] == ["mount.returns", "making.return_flaps"]


def test_flaps_are_cut_apart_and_the_face_is_no_wider_for_them() -> None:
    """Own arithmetic: a flap is the board's 64 mm and two turns wide, and as long as the stack."""
    wrapped, flapped = (planned(hung(mount=OUTSIDE, return_flaps=flaps)) for flaps in (False, True))
    widths = [layout_of(plan).cuts[0].width.value for plan in (wrapped, flapped)]
    assert widths == [inches("39") + Length.mm(128), inches("39")]
    flap = piece(flapped, "return flap")
    assert (flap.count.value, flap.width.value) == (2, Length.mm(64) + inches("3"))
    length = layout_of(flapped).flap_length
    assert length is not None
    raised = layout_of(flapped).stack.raised_size.value
    assert Length.mm(0) <= length.value - raised < inches("1/16")
    assert layout_of(wrapped).flap_length is None


@pytest.mark.parametrize(
    ("mount", "fields"),
    [
        ({"place": "inside"}, [["making.return_flaps"]]),
        ({"place": "outside"}, [["mount.returns"], ["making.return_flaps"]]),
    ],
)
def test_flaps_without_returns_are_asked_about(
    mount: dict[str, Any], fields: list[list[str]]
) -> None:
    document = hung(mount=mount, return_flaps=True)
    offered = ways(planned(document), "check.flaps-without-returns")
    assert [[change.path for change in way.changes] for way in offered] == fields
    for way in offered:
        assert found(mended(document, way), "check.flaps-without-returns") is None


def test_a_depth_alone_is_asked_about_and_each_answer_silences_it() -> None:
    document = hung(valance_depth="8")
    plan = planned(document)
    assert layout_of(plan).valance is None
    offered = ways(plan, "check.valance-kind")
    assert [way.changes[0].text for way in offered] == ["attached", "separate", ""]
    for way in offered:
        assert found(mended(document, way), "check.valance-kind") is None


def test_a_separate_valance_stands_clear_of_the_raised_stack_on_its_own_board() -> None:
    plan = planned(hung(mount={"place": "outside"}, valance="separate"))
    valance = layout_of(plan).valance
    assert valance is not None
    assert valance.board_depth is not None
    assert valance.return_depth is not None
    assert valance.board_length is not None
    stack, board = layout_of(plan).stack.depth.value, plan.chosen.board
    assert board is not None
    clear = valance.board_depth.value - stack - board.depth
    assert inches("1/2") <= clear < inches("9/16")
    assert valance.width.value == inches("37")
    assert valance.board_length.value == inches("36 3/4")
    assert valance.return_depth.value == valance.board_depth.value


def test_in_a_reveal_a_separate_valance_may_not_stand_out() -> None:
    opening = {
        "width_top": "36",
        "width_middle": "36",
        "width_bottom": "36",
        "height_left": "60",
        "height_centre": "60",
        "height_right": "60",
        "sill": True,
    }
    shallow, deep = (
        order(
            asked={"width": "", "drop": "", "given_by": ""},
            opening=opening | {"depth_head": depth, "depth_sill": depth},
            mount={"place": "inside", "height_rule": "clear sill"},
            making={"valance": "separate"},
        )
        for depth in ("4", "8")
    )
    (way,) = ways(planned(shallow), "check.valance-stands-out")
    assert found(mended(shallow, way), "check.valance-stands-out") is None
    plan = planned(deep)
    assert found(plan, "check.valance-stands-out") is None
    valance = layout_of(plan).valance
    assert valance is not None
    assert valance.return_depth is None


def test_a_valance_does_not_ride_on_the_cords_but_hangs_on_the_fixings() -> None:
    """Own arithmetic: the attached valance adds its weight to the fixings; a separate one none."""
    bare, attached, separate = (
        planned(order(making=making))
        for making in ({}, {"valance": "attached"}, {"valance": "separate"})
    )
    assert bare.weights is not None
    assert attached.weights is not None
    assert separate.weights is not None
    assert attached.weights.load == bare.weights.load == separate.weights.load
    assert attached.weights.total.value == bare.weights.total.value
    assert len(attached.weights.beside) == len(separate.weights.apart) == 2
    assert separate.weights.beside == ()
    more = sum(mass.value for mass in attached.weights.beside) * 9.80665
    loads = [_fixing_load(plan) for plan in (bare, attached, separate)]
    assert fixing_count(_review(bare)).value == 3
    assert loads[1] - loads[0] == pytest.approx(more * 1.25 / 2)
    assert loads[2] == loads[0]


def _review(plan: ShadePlan) -> Review:
    return Review(plan=plan, shop=ShopList(), habits=HABITS, markets=())


def _fixing_load(plan: ShadePlan) -> float:
    load = load_on_one(_review(plan))
    assert load is not None
    return load.value


def test_a_valance_of_a_print_with_an_up_takes_widths_and_one_without_is_turned() -> None:
    """Own arithmetic: 60 in and turns want 64 in in all with two seams; 54 in print takes two."""
    asked = {"width": "60", "drop": "60", "given_by": "the client"}
    making = {"valance": "attached"}
    print_, plain = (
        planned(
            order(asked=asked, making=making, materials={"valance": name, "face": "Long barn, oat"})
        )
        for name in ("Meadow print, indigo", "Gate stripe, brick")
    )
    assert piece(print_, "valance").count.value == 2
    assert piece(print_, "valance").width.value == inches("32 1/2")
    assert piece(print_, "valance").cloth == "Meadow print, indigo"
    assert piece(plain, "valance").count.value == 1
    assert piece(plain, "valance").width.value == inches("63")


def test_each_step_is_there_once_it_is_wanted() -> None:
    steps = {step.title for step in layout_of(planned(order())).sewing}
    wanted = {"Make the valance", "Hang the valance", "Make the return flaps"}
    assert not steps & wanted
    plan = planned(hung(mount=OUTSIDE, valance="attached", return_flaps=True))
    assert wanted <= {step.title for step in layout_of(plan).sewing}
