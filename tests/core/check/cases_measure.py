"""What must be typed at the window for each finding of the measure to fire."""

from __future__ import annotations

from tests.core.check.sound import Order

THREE_HEIGHTS = ("opening.height_left", "opening.height_centre", "opening.height_right")
THREE_WIDTHS = ("opening.width_top", "opening.width_middle", "opening.width_bottom")
NO_DIAGONALS = {"opening.diagonal_falling": None, "opening.diagonal_rising": None}

MEASURE = {
    "measure.board-near-frame": Order(
        of="outside", typed={"opening.casing_height": None, "mount.above": "1/2"}
    ),
    "measure.diagonals-disagree": Order(
        of="spring", typed={"opening.diagonal_falling": "67", "opening.diagonal_rising": "67"}
    ),
    "measure.diagonals-missing": Order(of="spring", typed=NO_DIAGONALS),
    "measure.drop-missing": Order(of="spring", typed=dict.fromkeys(THREE_HEIGHTS)),
    "measure.exchanged": Order(of="spring", typed={"opening.taller_than_wide": False}),
    "measure.handle-hits": Order(of="spring", typed={"opening.obstruction_projection": "5"}),
    "measure.head-falls": Order(of="spring", typed={"opening.head_fall": "2"}),
    "measure.headroom": Order(of="outside", typed={"opening.wall_above": "1/2"}),
    "measure.height-rule": Order(of="spring", typed={"mount.height_rule": None}),
    "measure.heights-few": Order(of="spring", typed={"opening.height_left": None}),
    "measure.heights-spread": Order(of="spring", typed={"opening.height_left": "54 3/8"}),
    "measure.measures-unsigned": Order(of="spring", typed={"opening.measured_by": "the builder"}),
    "measure.no-drop": Order(
        of="spring", typed=dict.fromkeys(THREE_HEIGHTS, "4"), habits={"sill_clearance": "5"}
    ),
    "measure.no-width": Order(of="spring", typed={"mount.deduction": "37"}),
    "measure.overlap-left": Order(of="outside", typed={"mount.overlap_left": "1"}),
    "measure.overlap-right": Order(of="outside", typed={"mount.overlap_right": "1"}),
    "measure.place": Order(of="spring", typed={"mount.place": None}),
    "measure.racking-binds": Order(
        of="spring", typed={"opening.diagonal_falling": "65.2", "opening.diagonal_rising": "64.6"}
    ),
    "measure.reveal-shallow": Order(of="spring", typed={"opening.depth_head": "1/2"}),
    "measure.sill": Order(of="outside", typed={"opening.sill": None}),
    "measure.size-unsigned": Order(of="spring", typed={"asked.width": "35 3/4"}),
    "measure.substrate": Order(of="spring", typed={"opening.substrate": "drywall"}),
    "measure.unusually-narrow": Order(
        of="looped", typed={"asked.width": "11", "design.largest_pitch": "8"}
    ),
    "measure.unusually-tall": Order(of="looped", typed={"asked.drop": "150"}),
    "measure.unusually-wide": Order(of="looped", typed={"asked.width": "100"}),
    "measure.wall-left": Order(of="outside", typed={"opening.wall_left": "1"}),
    "measure.wall-right": Order(of="outside", typed={"opening.wall_right": "1"}),
    "measure.width-binds": Order(
        of="spring", typed={"asked.width": "36", "asked.given_by": "the client"}
    ),
    "measure.width-missing": Order(of="spring", typed=dict.fromkeys(THREE_WIDTHS)),
    "measure.width-tight": Order(of="spring", typed={"mount.deduction": "1/8"}),
    "measure.width-twice": Order(
        of="spring",
        typed={"asked.width": "35 3/4", "asked.given_by": "the client", "mount.deduction": "1/4"},
    ),
    "measure.widths-few": Order(of="spring", typed={"opening.width_top": None}),
}
