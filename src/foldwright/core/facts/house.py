"""The house's own habits, one by one: what a shop starts with until it writes its own.

A habit without a source says so in its status. Friction and spread are invented
starting ranges: a shop's own bench data should replace them first.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from foldwright.core.facts.habits import Habits
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

Habit = Figure[Any]  # of a length or a number; its field in Habits says which

PRACTICE, HOUSE, PUBLISHED = Status.PRACTICE, Status.HOUSE, Status.PUBLISHED
CORD_SPACING_PAGE = Source(id="cord-spacing-page")
MEASURING_PAGE = Source(id="measuring-page", clause="outside mount")
GATHERED_BLOG = Source(id="gathered-shade-blog", clause="25 January 2008")
LONDON_DIARY = Source(id="london-gallery-diary")
OLDER_SAFETY_WORDING = Source(id="ansi-wcma-2012", clause="4.5.3.2")


def house_habits() -> Habits:
    """Give the habits that a shop starts with.

    Gives: every habit as a figure with its sentence and status.

    Source: common practice; the published ones carry their own source.

    >>> house_habits().safety_wraps.value
    3.0
    """
    return Habits(
        **AT_THE_WINDOW,
        **AT_THE_DRAWING,
        **AT_THE_TABLE,
        **ON_THE_SCALE,
        **IN_THE_LIFT,
        **AT_THE_BENCH,
    )


def _length(name: str, inches: str, because: str, status: Status = PRACTICE) -> Figure[Length]:
    """Make a habit that is a length, given in inches as a fraction."""
    return fact(name, Length.inches(Fraction(inches)), Unit.LENGTH, because, status)


def _published(name: str, inches: str, because: str, source: Source) -> Figure[Length]:
    value = Length.inches(Fraction(inches))
    return fact(name, value, Unit.LENGTH, because, PUBLISHED, source=source)


AT_THE_WINDOW: dict[str, Habit] = {
    "inside_deduction": _published(
        "inside deduction", "1/4",
        "Taken off the narrowest width in all, it keeps the shade from binding in the reveal.",
        Source(id="make-your-own-page"),
    ),
    "wide_inside_deduction": _length(
        "inside deduction, wide", "1/2",
        "Wide reveals are less straight, so more comes off in all.",
    ),
    "wide_from": _length(
        "wide opening", "60",
        "From here on an opening counts as wide and loses the larger deduction.", HOUSE,
    ),
    "sill_clearance": _length(
        "sill clearance", "1/4",
        "A bar that must clear the sill stops this much above its highest point.",
    ),
    "outside_overlap": _published(
        "outside overlap", "2",
        "At least this much over the opening on each side keeps the light back.", MEASURING_PAGE,
    ),
    "outside_above": _length(
        "mounted above", "2",
        "Room for the board itself, and a little wall between it and the frame.",
    ),
    "outside_below_no_sill": _published(
        "carried below", "3/2",
        "Without a sill the shade ends this much below the opening.", MEASURING_PAGE,
    ),
    "board_deduction": _length(
        "board deduction", "1/4",
        "The board is a little shorter than the shade so that it never shows at the ends.",
    ),
}  # fmt: skip

AT_THE_DRAWING: dict[str, Habit] = {
    "head_allowance_floor": fact(
        "least head allowance", Length.mm(65), Unit.LENGTH,
        "With less between the top of the board and the raised lowest ring, shades jam at the top.",
        PRACTICE,
    ),
    "head_allowance_beyond_rail": _length(
        "head allowance beyond the rail", "1",
        "The raised rings stop this much below the headrail.",
    ),
    "skirt": _length(
        "skirt", "3/2",
        "The hem shows this much below the folds when the shade is raised.", HOUSE,
    ),
    "edge_distance": _published(
        "edge distance", "2",
        "The older voluntary safety wording asks at least this much from a side cord to the edge.",
        OLDER_SAFETY_WORDING,
    ),
    "largest_pitch": _published(
        "largest column pitch", "10",
        "Cloth without rods sags between columns farther apart.", CORD_SPACING_PAGE,
    ),
    "largest_pitch_with_rods": _published(
        "largest column pitch with rods", "12",
        "A rod at each row carries the cloth over a wider pitch.", CORD_SPACING_PAGE,
    ),
    "seam_to_column": _length(
        "seam to column", "1/2",
        "A ring sewn nearer to a seam meets its bulk: the needle breaks or the seam puckers.",
    ),
    "stacked_row_pitch": fact(
        "pitch of the stacked rows", Length.inches(Fraction(1, 8)), Unit.LENGTH,
        "Gathered rows lie this far apart: plain cloth closer, interlined cloth farther.", PRACTICE,
        low=Length.inches(Fraction(1, 16)), high=Length.inches(Fraction(3, 16)),
    ),
    "fold_bulk": fact(
        "bulk of a fold", 1.6, Unit.RATIO,
        "A dressed fold is so many times as thick as its layers laid flat.", PRACTICE,
        low=1.3, high=2.0,
    ),
    "cascade_step": _length(
        "step of a cascade", "1",
        "Each fold of a cascade is shorter than the one below by 1 to 1 1/2 in, or less where"
        " the rows must lie closer.",
    ),
    "relaxed_dip": _length(
        "dip of a relaxed hem", "3",
        "Deep enough to be seen as meant, shallow enough to draw the sides in by little.", HOUSE,
    ),
    "widest_swag": _length(
        "widest swag", "48",
        "A wider hem hangs better as two swags.",
    ),
    "london_dip": _length(
        "dip of a London hem", "6",
        "The swag hangs so much lower in the middle than at its pleats.", HOUSE,
    ),
    "london_tail": _published(
        "width of a tail", "6",
        "The cloth beyond the outer pleats is 5 to 7 in wide.", LONDON_DIARY,
    ),
    "london_pleat": _published(
        "cloth of an inverted pleat", "12",
        "About so much is folded in behind each pleat; some take less than half of it.",
        LONDON_DIARY,
    ),
    "london_pouf": _length(
        "pouf of a London shade", "12",
        "10 to 14 in of the length are gathered up for good, so that it swags when lowered too.",
    ),
    "balloon_width_fullness": fact(
        "width fullness of a balloon shade", 2.5, Unit.RATIO,
        "The cloth is cut two and a half times as wide as the window; some take twice.",
        PUBLISHED, source=Source(id="balloon-tutorial"), low=2.0, high=2.5,
    ),
    "balloon_pouf": _length(
        "pouf of a balloon shade", "14",
        "12 to 16 in of the length are gathered up for good.",
    ),
    "gathered_width_fullness": fact(
        "width fullness of a gathered shade", 2.0, Unit.RATIO,
        "Twice the width gathers softly; two and a half richly.", PRACTICE, low=2.0, high=2.5,
    ),
    "austrian_fullness": fact(
        "fullness of an Austrian shade", 3.0, Unit.RATIO,
        "Sheer cloth is drawn up from three times the drop, opaque cloth from twice.",
        PUBLISHED, source=GATHERED_BLOG, low=2.0, high=3.0,
    ),
    "austrian_scallop": _published(
        "cloth of a scallop", "4",
        "Each scallop is cut 3 to 4 in wider than the space between its tapes.", GATHERED_BLOG,
    ),
}  # fmt: skip

AT_THE_TABLE: dict[str, Habit] = {
    "side_turn": _length(
        "side turn", "3/2",
        "Turned over the lining on each side, fused or sewn.",
    ),
    "hem_allowance": _published(
        "hem allowance", "4",
        "A double hem, or a deep turn and a shallow one.",
        Source(id="hobby-shade-blog"),
    ),
    "top_allowance_beyond_board": _length(
        "top allowance beyond the board", "2",
        "The cloth goes over the board, down its back, and leaves some for the staples.",
    ),
    "seam_allowance": _length(
        "seam allowance", "1/2", "In each layer, selvages trimmed off.",
    ),
    "lining_less_than_width": _length(
        "lining narrower by", "1/4",
        "The lining's raw edges lie under the side turns, short of the full width.",
    ),
    "shrinkage": fact(
        "shrinkage", 0.01, Unit.SHARE,
        "Until a steamed square says otherwise, cloth sold as pre-shrunk is taken to lose this"
        " much: a piece cut long is trimmed, one cut short is bought again.", HOUSE,
        low=0.0, high=0.03,
    ),
    "looped_fullness": fact(
        "looped fullness", 1.5, Unit.RATIO,
        "One and a half gives soft loops; double makes deep ones, and longer cord loops.",
        PUBLISHED, source=Source(id="hobbled-tutorial"),
    ),
    "rod_pocket": fact(
        "cloth of a rod's pocket", Length.mm(30), Unit.LENGTH,
        "A pocket in the lining takes 2 to 4 cm; once a rod is chosen, it is measured round it.",
        PRACTICE, low=Length.mm(20), high=Length.mm(40),
    ),
    "pocket_lining_less": fact(
        "pocketed lining narrower by", Length.mm(30), Unit.LENGTH,
        "A lining that carries the rods is hemmed 2 to 4 cm narrower than the shade.",
        PRACTICE, low=Length.mm(20), high=Length.mm(40),
    ),
    "pocket_lining_hem": fact(
        "side hem of a pocketed lining", Length.mm(25), Unit.LENGTH,
        "A lining that carries the rods is hemmed by itself, once at each side.", PRACTICE,
    ),
    "pocket_lining_spare": fact(
        "spare length of a pocketed lining", Length.mm(60), Unit.LENGTH,
        "It is trimmed square once its pockets are sewn.", PRACTICE,
    ),
    "tuck": _published(
        "cloth of a tuck", "1/2",
        "Each stitched tuck takes this much of the length.", Source(id="stitched-tuck-book"),
    ),
    "straightening": _length(
        "straightening", "1",
        "Lost at the start of every length cut off a roll, to square its end.",
    ),
    "cover_overlap": _length(
        "overlap of a board cover", "1", "A board cover laps by this much round the board.",
    ),
    "cover_beyond_board": _length(
        "board cover beyond the board", "3",
        "Both ends are wrapped like a parcel out of this.",
    ),
    "order_increment": _length(
        "step of an order", "9",
        "Cloth is ordered by the quarter yard, unless its sheet says otherwise.",
    ),
    "lot_spare": _length(
        "spare of a lot", "36",
        "A yard more of a cloth whose dye lot cannot be had again, against a wrong cut.",
    ),
    "saw_kerf": fact(
        "kerf of the saw", Length.mm(3), Unit.LENGTH,
        "Each cut turns this much of a tube, bar, rod or board into dust.", HOUSE,
    ),
    "saw_trim": fact(
        "trim of a fresh bar", Length.mm(10), Unit.LENGTH,
        "Cut off the end of each new length, which is seldom square or unmarked.", HOUSE,
    ),
    "least_offcut": fact(
        "shortest offcut kept", Length.mm(300), Unit.LENGTH,
        "A shorter rest of a tube, bar, rod or board does not go back on the rack.", HOUSE,
    ),
    "needle_capacity": fact(
        "needle capacity", Length.mm(6), Unit.LENGTH,
        "Invented: the thickest seam that your machine sews without skipping; measure it and"
        " replace this.", HOUSE,
    ),
}  # fmt: skip

ON_THE_SCALE: dict[str, Habit] = {
    "ring_mass_kg": fact(
        "mass of a ring", 0.00075, Unit.MASS,
        "Rings that are sewn on weigh about this much each.", PRACTICE, low=0.0005, high=0.001,
    ),
    "bar_less_than_width": _length(
        "bar shorter by", "1/2",
        "The bar and its end caps slide in short of the finished width.",
    ),
    "rod_less_than_width": _length(
        "rod shorter by", "1/2",
        "Rods end inside each edge so that they never press through.", HOUSE,
    ),
}  # fmt: skip

IN_THE_LIFT: dict[str, Habit] = {
    "safety_wraps": fact(
        "safety wraps", 3.0, Unit.TURN,
        "At least three wraps stay on the tube fully down: their friction takes the load off the"
        " clip.", PRACTICE,
    ),
    "load_margin": fact(
        "load margin", 0.10, Unit.SHARE,
        "The spring is wound for a load 10 to 15 % above the computed one.", PRACTICE,
    ),
    "release_turns": fact(
        "release pull", 0.25, Unit.TURN,
        "A ratchet lets go after about a quarter turn of further pull.", PRACTICE,
    ),
    "lock_pitch_turns": fact(
        "ratchet pitch", 0.125, Unit.TURN,
        "Invented: eight teeth. Count the teeth of your lock and replace this.", HOUSE,
    ),
    "constant_friction_n_m": fact(
        "constant friction", 0.03, Unit.TORQUE,
        "Invented starting range for bearings and wheels; replace it by the shop's own bench"
        " data.", HOUSE, low=0.01, high=0.10,
    ),
    "load_friction": fact(
        "friction that follows the load", 0.12, Unit.SHARE,
        "Invented starting range for rings and clips; replace it by the shop's own bench data.",
        HOUSE, low=0.02, high=0.35,
    ),
    "spring_hysteresis": fact(
        "spring hysteresis", 0.05, Unit.SHARE,
        "Invented starting range for what coils rub away; replace it by the shop's own bench"
        " data.", HOUSE, low=0.01, high=0.10,
    ),
    "rate_spread": fact(
        "spread of a stated rate", 0.10, Unit.SHARE,
        "A single rate on a sheet is good to 8 to 10 % either way.", PRACTICE,
    ),
    "cloth_mass_spread": fact(
        "spread of a cloth's weight", 0.05, Unit.SHARE,
        "Invented: cloth may be so much lighter or heavier than its sheet, until it is weighed.",
        HOUSE,
    ),
    "hand_force_limit_n": fact(
        "greatest hand force", 50.0, Unit.FORCE,
        "More is not asked of a hand at the bar; about half is comfortable.", HOUSE,
    ),
    "arrival_speed_limit_m_s": fact(
        "greatest speed on arrival", 0.5, Unit.SPEED,
        "A bar that arrives slower than this stops without a bang.", HOUSE,
    ),
    "winding_step_turns": fact(
        "winding step", 0.5, Unit.TURN,
        "The bench winds in whole or half turns.", PRACTICE,
    ),
    "motor_margin": fact(
        "motor margin", 1.3, Unit.RATIO,
        "A motor is rated at least 1.25 to 1.3 times what the shade asks.", PRACTICE,
    ),
}  # fmt: skip

AT_THE_BENCH: dict[str, Habit] = {
    "tie_off": _length("tie-off", "6", "Cord for the knot and its adjustment."),
    "clip_length": fact(
        "clip length", Length.mm(10), Unit.LENGTH,
        "Invented: measure your clip along the tube and replace this.", HOUSE,
    ),
    "clip_nearest": fact(
        "clip nearest to its column", Length.mm(50), Unit.LENGTH,
        "Clips stand beside their column so that the wraps walk towards it.", PRACTICE,
    ),
    "clip_farthest": fact(
        "clip farthest from its column", Length.mm(75), Unit.LENGTH,
        "The longest drops wind the most wraps and need the larger offset.", PRACTICE,
    ),
    "stop_clearance": _length(
        "clearance at the up-stop", "1/2",
        "Left free above the raised rings, or the lift tears them off.",
    ),
    "tube_sag_share": fact(
        "greatest sag of the tube", 1 / 500, Unit.RATIO,
        "A tube that sags less than a 360th to a 500th of its span leaves the hem straight.",
        PRACTICE,
    ),
    "board_sag": fact(
        "greatest sag of the board", Length.mm(3), Unit.LENGTH,
        "A board that sags more shows it at the head of the shade.", PRACTICE,
    ),
    "bar_sag": fact(
        "greatest sag of the bottom bar", Length.mm(3), Unit.LENGTH,
        "A bar that sags more between its cords shows a hem in waves.", HOUSE,
    ),
}  # fmt: skip
