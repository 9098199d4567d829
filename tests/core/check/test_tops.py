"""The head of a shade on its board: stapled over it, or held on its edge by tape."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from tests.core.check.orders import found, mended, order, planned, ways
from tests.core.layouts import HABITS, inches

from foldwright.core.check.plan import ShadePlan
from foldwright.core.check.review import Review
from foldwright.core.check.top_checks import draft_top_checks, load_on_tape
from foldwright.core.design.layout import Layout
from foldwright.core.drawing.panel import Table
from foldwright.core.facts.panel_limits import TAPE_HOLDS
from foldwright.core.facts.records import ShopList
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System

TAPED = {"top": "hook and loop"}


def shade(making: dict[str, Any] | None = None, **more: dict[str, Any]) -> ShadePlan:
    design = {"shrinkage": 0.0} | more.pop("design", {})
    return planned(order(making=making or {}, design=design, **more))


def layout_of(plan: ShadePlan) -> Layout:
    assert plan.layout is not None
    return plan.layout


def test_a_taped_head_takes_an_inch_where_a_stapled_one_goes_over_the_board() -> None:
    """Common practice: 1 in turned; stapled, the 64 mm board and 2 in more. The drop stays."""
    stapled, taped = layout_of(shade()), layout_of(shade(TAPED))
    lengths = [layout.cuts[0].length.value for layout in (stapled, taped)]
    assert lengths == [inches("66") + Length.mm(64), inches("65")]
    tops = [layout.top_allowance for layout in (stapled, taped)]
    assert [top.value for top in tops if top] == [inches("2") + Length.mm(64), inches("1")]
    assert [mark.value for mark in stapled.rows.marks] == [mark.value for mark in taped.rows.marks]
    assert stapled.tape is None
    assert taped.tape is not None
    assert (taped.tape.width.value, taped.tape.length.value) == (inches("5/8"), inches("35 3/4"))


def test_a_typed_allowance_goes_before_both() -> None:
    typed = {"top_allowance": "1 1/2"}
    for making in ({}, TAPED):
        top = layout_of(shade(making, design=typed)).top_allowance
        assert top is not None
        assert top.value == inches("1 1/2")


def test_a_valance_goes_over_the_board_whatever_holds_the_shade() -> None:
    stapled, taped = (
        layout_of(shade({"valance": "attached"} | making)).pieces for making in ({}, TAPED)
    )
    assert [piece.length.value for piece in stapled] == [piece.length.value for piece in taped]


@pytest.mark.parametrize(("spare_n", "stopped"), [(0.01, False), (-0.01, True)])
def test_a_tape_carries_so_much_a_metre(spare_n: float, *, stopped: bool) -> None:
    """Own arithmetic: 35 3/4 in of tape at 100 N a metre may carry 90.8 N."""
    plan = shade(TAPED)
    assert plan.weights is not None
    allowed_n = 100 * 35.75 * 0.0254
    assert TAPE_HOLDS.value == 100
    mass = replace(plan.weights.total, value=(allowed_n - spare_n) / 9.80665)
    heavy = replace(plan, weights=replace(plan.weights, total=mass))
    review = Review(plan=heavy, shop=ShopList(), habits=HABITS, markets=())
    load = load_on_tape(review)
    assert load is not None
    assert load.value == pytest.approx(allowed_n - spare_n)
    names = {each.finding.id for each in draft_top_checks(review)}
    assert ("check.tape-overloaded" in names) is stopped


def test_a_hand_at_the_bar_pulls_at_the_tape_and_a_motor_does_not() -> None:
    lift = {
        "kind": "spring",
        "spring": "Alder 26",
        "lock": "two-way",
        "brake": "fitted",
        "motor": "",
    }
    by_motor, by_hand = (
        load_on_tape(Review(plan=plan, shop=ShopList(), habits=HABITS, markets=()))
        for plan in (shade(TAPED), shade(TAPED, lift=lift))
    )
    assert by_motor is not None
    assert by_hand is not None
    assert by_hand.value - by_motor.value == pytest.approx(50)


def test_a_tape_on_the_wall_side_is_asked_about_outside_only() -> None:
    edge = {"board_edge": "window"}
    document = order(making=TAPED, mount={"place": "outside"} | edge)
    offered = ways(planned(document), "check.tape-against-wall")
    assert [way.changes[0].path for way in offered] == ["mount.board_edge", "making.top"]
    for way in offered:
        assert found(mended(document, way), "check.tape-against-wall") is None
    assert found(shade(TAPED, mount=edge), "check.tape-against-wall") is None


def test_the_table_shows_the_staple_line_or_the_tape() -> None:
    lines = []
    for making in ({}, TAPED):
        plan = shade(making)
        assert plan.size is not None
        table = Table(
            plan=plan, size=plan.size, layout=layout_of(plan), scale=10.0, system=System.INCH
        )
        lines.append((table.staple_line, table.tape_line))
    drop = inches("60").in_millimetres
    assert lines[0] == (pytest.approx(drop + 64), None)
    assert lines[1] == (None, pytest.approx(drop - inches("5/8").in_millimetres))


def test_table_and_bench_have_their_steps() -> None:
    stapled, taped = shade(), shade(TAPED)
    for plan, there in ((stapled, False), (taped, True)):
        assert plan.headrail is not None
        assert ("tape at the head" in {step.title for step in plan.headrail.steps}) is there
        fix = next(step for step in layout_of(plan).sewing if step.title == "Fix the top")
        assert ("soft tape" in fix.instruction) is there
        assert ("over the board" in fix.instruction) is not there
