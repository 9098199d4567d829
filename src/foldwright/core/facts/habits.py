"""The shop's own habits: each a figure with its status, each replaceable in the shop's file."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class Habits:
    """Allowances and margins that a workroom applies without being asked.

    `house_habits()` gives the defaults; a shop's file replaces any of them.
    """

    # measure
    inside_deduction: L  # whole deduction from the narrowest width
    wide_inside_deduction: L
    wide_from: L
    sill_clearance: L  # taken off the shortest height when the shade must clear the sill
    outside_overlap: L  # each side
    outside_above: L
    outside_below_no_sill: L
    board_deduction: L  # finished width less this is the board
    # design
    head_allowance_floor: L
    head_allowance_beyond_rail: L
    skirt: L
    edge_distance: L
    largest_pitch: L
    largest_pitch_with_rods: L
    seam_to_column: L
    stacked_row_pitch: L
    fold_bulk: N
    cascade_step: L
    relaxed_dip: L
    widest_swag: L
    london_dip: L
    london_tail: L
    london_pleat: L
    london_pouf: L
    balloon_width_fullness: N
    balloon_pouf: L
    gathered_width_fullness: N
    austrian_fullness: N
    austrian_scallop: L
    # cut sizes
    side_turn: L
    hem_allowance: L
    top_allowance_beyond_board: L
    seam_allowance: L
    lining_less_than_width: L
    shrinkage: N
    looped_fullness: N
    rod_pocket: L
    pocket_lining_less: L
    pocket_lining_hem: L
    pocket_lining_spare: L
    tuck: L
    straightening: L  # lost where a cut length is squared
    cover_overlap: L  # of a board cover, round the board
    cover_beyond_board: L  # of a board cover, to wrap both ends
    order_increment: L  # cloth is ordered in steps of this
    lot_spare: L  # more of a cloth whose lot cannot be had again
    saw_kerf: L  # each cut turns so much of a bar into dust
    saw_trim: L  # cut off a fresh bar to square its end
    least_offcut: L  # a shorter rest is not kept
    needle_capacity: L  # greatest thickness that the shop's machine sews
    # weigh
    ring_mass_kg: N
    bar_less_than_width: L
    rod_less_than_width: L
    # lift
    safety_wraps: N
    load_margin: N
    release_turns: N
    lock_pitch_turns: N
    constant_friction_n_m: N
    load_friction: N
    spring_hysteresis: N
    rate_spread: N
    cloth_mass_spread: N
    hand_force_limit_n: N
    arrival_speed_limit_m_s: N
    winding_step_turns: N
    motor_margin: N
    # rig
    tie_off: L
    clip_length: L
    clip_nearest: L
    clip_farthest: L
    stop_clearance: L
    tube_sag_share: N
    board_sag: L
    bar_sag: L
