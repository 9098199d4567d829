"""Pieces dealt out to lots and to rolls of unequal width."""

from __future__ import annotations

from dataclasses import replace

from tests.core.cloth.orders import mm, piece, roll

from foldwright.core.cloth.checking.plan import faults_of
from foldwright.core.cloth.dividing import divisions
from foldwright.core.cloth.order import ClothOrder, Pattern
from foldwright.core.cloth.planning import plan_cloth
from foldwright.core.quantity.length import ZERO


def test_many_rooms_are_dealt_out_to_two_lots_that_hold_them_only_together() -> None:
    """Twenty rooms, one piece to a cut length, and each lot holds barely more than half."""
    rooms = tuple(piece(str(n), 1200, 1500 + 13 * n, room=f"R{n}") for n in range(20))
    rolls = tuple(roll(lot, 20_650, lot=lot) for lot in "AB")
    order = ClothOrder(pieces=rooms, rolls=rolls, spare=mm(10))
    plan = plan_cloth(order, time_given_s=1.0, clock=lambda: 0.0).result
    assert plan is not None
    assert faults_of(plan, order) == ()
    assert {use.lot for use in plan.rolls} == {"A", "B"}


def test_no_way_to_deal_out_is_tried_twice() -> None:
    pieces = tuple(piece(str(n), 400, 900, room=f"R{n}") for n in range(4))
    rolls = (roll("a", 9000, lot="A"), roll("b", 9000, lot="B"))
    order = ClothOrder(pieces=pieces, rolls=rolls)
    ways = [
        tuple(frozenset(name for kind in cloth.kinds for name in kind.names) for cloth in division)
        for division in divisions(order, {}, turned=False)
    ]
    assert len(ways) == 2**4
    lots = [
        tuple((cloth.bolts[0].lot, some) for cloth, some in zip(division, way, strict=True))
        for division, way in zip(divisions(order, {}, turned=False), ways, strict=True)
    ]
    assert len({frozenset(each) for each in lots}) == 2**4


def test_a_roll_too_narrow_for_a_centred_piece_is_left_to_the_others() -> None:
    """Its motif leaves the piece a place on the wider roll only, though it is narrow enough."""
    centred = piece("1", 900, 1500, phase_across=mm(400))
    small = piece("2", 300, 700, phase_across=ZERO)
    rolls = (roll("narrow", 5000, width=1250), roll("wide", 5000, width=1350))
    order = ClothOrder(
        pieces=(centred, small), rolls=rolls, pattern=Pattern(horizontal_repeat=mm(700))
    )
    plan = plan_cloth(order, time_given_s=1.0, clock=lambda: 0.0).result
    assert plan is not None
    assert {place.piece: place.roll for place in plan.placements}["1"] == "wide"
    alone = replace(order, rolls=rolls[:1])
    assert list(divisions(alone, {}, turned=False)) == []


def test_a_plain_band_is_planned_beside_a_centred_face() -> None:
    """It may start anywhere in the repeat, so that nothing need start where it ends."""
    face = piece("face", 131, 1303, phase_across=mm(-824), phase_along=mm(235))
    order = ClothOrder(
        pieces=(face, piece("band", 134, 1141)),
        rolls=(roll("a", 20_000, width=1150, origin_along=mm(1947)),),
        pattern=Pattern(vertical_repeat=mm(641), horizontal_repeat=mm(170), origin_across=mm(55)),
    )
    plan = plan_cloth(order, time_given_s=1.0, clock=lambda: 0.0).result
    assert plan is not None
    assert faults_of(plan, order) == ()
