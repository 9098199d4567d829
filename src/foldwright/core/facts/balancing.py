"""What the balance of load and lift is judged by, beside the shop's habits."""

from __future__ import annotations

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Status

NARROW_CHANCE = fact(
    "least chance that is worth a trial",
    0.5,
    Unit.SHARE,
    "Turns that satisfy every limit in at least half of all trial shades are worth winding and"
    " trying on the bench; below that, another part is the better wager.",
    Status.HOUSE,
)

LEAST_SURE_TURNS = fact(
    "least turns that hold reliably",
    1.0,
    Unit.TURN,
    "A spring wound less than about one turn is so strong for the shade that a small error in"
    " counting decides whether it lifts.",
    Status.HOUSE,
)

RATING_SHARE = fact(
    "share of a rating that is used",
    0.9,
    Unit.SHARE,
    "Ratings are used up to nine tenths, so that a cloth a little heavier than its sheet"
    " does not overload the part.",
    Status.HOUSE,
)

LOAD_RATIO = fact(
    "greatest ratio of raised to lowered load",
    2.2,
    Unit.RATIO,
    "Above this ratio a spring can balance the shade near one height only: a lock must hold it"
    " everywhere else.",
    Status.HOUSE,
)

SHEET_TURNS = fact(
    "turns wound in, where a sheet does not say",
    10.0,
    Unit.TURN,
    "Sheets that give a load at a drop seldom say how far the spring was wound; between four"
    " and twenty turns at the up-stop cover what springs of this kind are sold for.",
    Status.HOUSE,
    low=4.0,
    high=20.0,
)

SHEET_TUBE = fact(
    "tube outside diameter, where a sheet does not say",
    Length.mm(38),
    Unit.LENGTH,
    "Tubes from 25 to 50 mm are in use, 38 mm the most.",
    Status.PRACTICE,
    low=Length.mm(25),
    high=Length.mm(50),
)

RATE_STEP = fact(
    "a stiffer spring, for comparison",
    0.10,
    Unit.SHARE,
    "A tenth is about what two springs of one batch may differ by.",
    Status.HOUSE,
)

BAR_STEP = fact(
    "a heavier bar, for comparison",
    0.2,
    Unit.MASS,
    "About the difference between one bar and the next heavier.",
    Status.HOUSE,
)

ARM_STEP = fact(
    "a longer arm, for comparison",
    Length.mm(1),
    Unit.LENGTH,
    "A millimetre of arm is two of tube diameter, or a little tape build-up.",
    Status.HOUSE,
)

CLOTH_STEP = fact(
    "a heavier cloth, for comparison",
    0.10,
    Unit.SHARE,
    "A tenth is about what a cloth may differ from its sheet.",
    Status.HOUSE,
)

RAISE_STEP = fact(
    "step of a shorter raise",
    0.05,
    Unit.SHARE,
    "A shorter raise is tried in steps of a twentieth.",
    Status.HOUSE,
)

LEAST_RAISE = fact(
    "least raise worth proposing",
    0.6,
    Unit.SHARE,
    "A shade that rises less than three fifths of its travel is better served by another lift.",
    Status.HOUSE,
)

FIXING_SPACING = fact(
    "distance between fixings of the board",
    Length.inches(30),
    Unit.LENGTH,
    "Boards are fixed near each end and every 24 to 30 inches between.",
    Status.PRACTICE,
)

BOARD_CREEP = fact(
    "creep of a wooden board",
    2.0,
    Unit.RATIO,
    "Under a load that stays, wood sags in the end 1.5 to 2 times as far as at once.",
    Status.MEMORY,
)
