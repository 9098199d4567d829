"""Limits and manners of the sewn panel: folds, loops, columns, seams, the stack."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status


def _limit(
    name: str, value: Length, because: str, status: Status = Status.PRACTICE
) -> Figure[Length]:
    return fact(name, value, Unit.LENGTH, because, status)


LOOP_LIMIT = fact(
    "longest loop of cord and cloth",
    Length.inches("16.9"),
    Unit.LENGTH,
    "Row spacing and cloth of one fold together make a loop a child's head must not pass;"
    " workrooms keep it to this length. Local rules decide.",
    Status.PUBLISHED,
    source=Source(id="hobbled-pattern-diary", clause="June 2017"),
)

HOBBLED_BOOK = Source(id="hobbled-shade-book", clause="excerpt")

LOOPED_HEAD = fact(
    "drop kept out of the count of loops",
    Length.inches(3),
    Unit.LENGTH,
    "The rule counts the loops on the drop less this.",
    Status.PUBLISHED,
    source=HOBBLED_BOOK,
)

LOOPED_SPACING = fact(
    "drop for one loop",
    Length.inches(6),
    Unit.LENGTH,
    "The rule gives each loop about this much of the drop.",
    Status.PUBLISHED,
    source=HOBBLED_BOOK,
)

TUCK_BOOK = Source(id="stitched-tuck-book", clause="excerpt")

TUCKED_HEAD = fact(
    "drop kept out of the count of tucks",
    Length.inches(3),
    Unit.LENGTH,
    "The rule counts the tucks on the drop less this.",
    Status.PUBLISHED,
    source=TUCK_BOOK,
)

TUCK_SPACING = fact(
    "drop for one tuck",
    Length.inches(3),
    Unit.LENGTH,
    "The rule gives each tuck about this much of the drop.",
    Status.PUBLISHED,
    source=TUCK_BOOK,
)

SHALLOWEST_FOLD = _limit(
    "shallowest usual fold", Length.inches("2.5"), "Shallower folds are fiddly to dress."
)

DEEPEST_FOLD = _limit(
    "deepest usual fold", Length.inches(5), "Deeper folds hang floppy without rods."
)

CASCADE_GRID = _limit(
    "grid of a cascade's step",
    Length.inches(Fraction(1, 8)),
    "Steps are offered in parts of this.",
    Status.HOUSE,
)

MOST_DRAW_IN = _limit(
    "most that a side may draw in",
    Length.inches(1),
    "Sides that draw in farther let the light past in a gap that nobody overlooks.",
    Status.HOUSE,
)

WIDEST_LONDON_SWAG = fact(
    "widest swag between two pleats",
    Length.inches(45),
    Unit.LENGTH,
    "About as wide as one swag is made; a wider shade takes a third pleat.",
    Status.PUBLISHED,
    source=Source(id="london-gallery-diary"),
)

WIDEST_POUF = _limit(
    "widest pouf",
    Length.inches(14),
    "Poufs hang well from 9 to 14 in wide.",
)

WIDEST_SCALLOP = fact(
    "widest scallop",
    Length.inches(12),
    Unit.LENGTH,
    "A wider scallop hangs as a bag.",
    Status.PUBLISHED,
    source=Source(id="gathered-shade-blog", clause="25 January 2008"),
)

DEEPEST_DIP = fact(
    "deepest dip",
    0.4,
    Unit.SHARE,
    "A hem that dips deeper than this share of the space between its columns hangs as a bag.",
    Status.HOUSE,
)

LEAST_PITCH = _limit(
    "least column pitch",
    Length.inches(5),
    "Columns closer than this cost rings, cords and room on the tube for nothing.",
)

EDGE_STEP = _limit(
    "step of the edge distance",
    Length.inches(Fraction(1, 8)),
    "Columns are moved off the seams in steps of this.",
    Status.HOUSE,
)

FARTHEST_EDGE = _limit(
    "farthest edge column",
    Length.inches(4),
    "Beyond this from its last column the edge of the shade droops.",
    Status.HOUSE,
)

LEAST_SIDE_PIECE = _limit(
    "narrowest side piece",
    Length.inches(2),
    "A strip narrower than this beside a seam looks like a mistake; the centre is cut"
    " narrower instead.",
    Status.HOUSE,
)

VALANCE_SHARE = fact(
    "depth of a valance in drops",
    1 / 6,
    Unit.SHARE,
    "A valance is usually a sixth to a fifth of the drop deep.",
    Status.PRACTICE,
    low=1 / 6,
    high=1 / 5,
)

VALANCE_CLEAR = _limit(
    "clearance of a separate valance",
    Length.inches(Fraction(1, 2)),
    "Before the raised stack and beside the shade, so that nothing rubs.",
    Status.HOUSE,
)

BAND_TURN = _limit(
    "turn of a band",
    Length.inches(Fraction(1, 2)),
    "Pressed in along both edges of a band that is sewn flat.",
)

TOP_TURN = _limit(
    "turn at the head",
    Length.inches(1),
    "Turned to the back where the head is held by hook-and-loop tape instead of staples.",
)

TAPE_WIDTH = _limit(
    "width of the hook-and-loop tape",
    Length.inches(Fraction(5, 8)),
    "Narrow enough for the edge of a board 3/4 in thick.",
    Status.HOUSE,
)

TAPE_HOLDS = fact(
    "load on a metre of hook-and-loop tape",
    100.0,
    Unit.FORCE,
    "Invented: about a tenth of what such tape holds when it is pulled along its face. It peels at"
    " far less: hang a weight on yours and replace this.",
    Status.HOUSE,
)

LAP = _limit(
    "lap of a glued join",
    Length.inches(Fraction(1, 2)),
    "Widths of a coated lining overlap by this much and are glued: a needle would leave a line of"
    " holes. Interlining is lapped as well, and caught flat.",
    Status.HOUSE,
)

COVER_STRIP = _limit(
    "length of a cover strip",
    Length.inches(1),
    "Wide enough to lie under a row of rings with their stitches.",
    Status.HOUSE,
)

LIGHT_TEST = _limit(
    "distance of the light test",
    Length.metres(3),
    "Invented: from here no hole of a blackout is to be seen with a lamp behind it.",
    Status.HOUSE,
)

POCKET_EASE = _limit(
    "ease of the bar pocket",
    Length.inches(Fraction(1, 4)),
    "The bar slides into a pocket this much higher than itself.",
)


ROUND_ROD_EASE = _limit(
    "ease of a round rod's pocket",
    Length.mm(10),
    "Pockets of round rods take 2 to 4 cm of cloth in all.",
)

FLAT_ROD_EASE = _limit(
    "ease of a flat rod's pocket",
    Length.inches(Fraction(1, 4)),
    "A flat rod 1/2 in wide takes a pocket of 1 to 1 1/4 in of cloth.",
)

THICKNESS_WHEN_UNKNOWN = _limit(
    "thickness of an unmeasured layer",
    Length.mm("0.5"),
    "Taken until the cloth's own thickness is measured under the hem's pressure.",
    Status.HOUSE,
)

RING_THICKNESS = _limit(
    "depth of a ring", Length.mm(4), "A ring stands this far off the cloth.", Status.HOUSE
)

BILLOWING_LOOPS = fact(
    "depth of stacked loops",
    Length.inches(4),
    Unit.LENGTH,
    "Stacked loops stand 3 to 5 in into the room, however thin their cloth.",
    Status.PRACTICE,
    low=Length.inches(3),
    high=Length.inches(5),
)

BILLOWING_POUFS = fact(
    "depth of stacked poufs",
    Length.inches("5.5"),
    Unit.LENGTH,
    "Stacked swags and poufs stand 4 to 7 in into the room, however thin their cloth.",
    Status.PRACTICE,
    low=Length.inches(4),
    high=Length.inches(7),
)

NOSE_IN_BENDING_LENGTHS = fact(
    "depth of a fold's nose",
    2.0,
    Unit.RATIO,
    "A free fold is about two bending lengths deep at its nose; an order of magnitude only.",
    Status.MEMORY,
    low=1.5,
    high=2.0,
)
