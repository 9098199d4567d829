"""Limits of the last look over an order: cloth in hand, fixings, reach, neighbours, parcels."""

from __future__ import annotations

from fractions import Fraction

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measure_reading import POUND_FORCE_N
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

_INCH_M = Length.inches(1).in_metres


def _limit(
    name: str,
    inches: str,
    because: str,
    status: Status = Status.PRACTICE,
    source: Source | None = None,
) -> Figure[Length]:
    value = Length.inches(Fraction(inches))
    return fact(name, value, Unit.LENGTH, because, status, source=source)


# At the window

DARK_OVERLAP = fact(
    "overlap against the light",
    Length.mm(65),
    Unit.LENGTH,
    "A shade that is to keep a room dark overlaps the opening by this much at each side.",
    Status.PRACTICE,
)

REACH = _limit(
    "highest reach",
    "78",
    "What is higher above the floor is reached from a stool, or with a wand.",
)

PULL_BESIDE_HANDLE = _limit(
    "pull handle beside a handle of the window",
    "2",
    "A hand that pulls the bar wants this much above and below it free.",
)

# At the fixings

RATED_SHARE = fact(
    "share of a rated load that is used",
    0.25,
    Unit.SHARE,
    "An anchor is loaded with a quarter of what its maker rates it for, at most.",
    Status.PRACTICE,
)

FIXING_FROM_END = _limit(
    "fixing to the end of the board",
    "1",
    "Nearer to its end the board splits.",
)

WITHDRAWAL = fact(
    "wood screw pulled out of wood",
    2850 * POUND_FORCE_N / _INCH_M**2,
    Unit.STIFFNESS,
    "This, times the square of the wood's specific gravity, times the shank, is what a metre"
    " of thread may carry: 2850 lb for each inch of shank and inch of thread.",
    Status.PUBLISHED,
    source=Source(id="wood-screw-page"),
)

FRAME_GRAVITY = fact(
    "specific gravity of the frame",
    0.35,
    Unit.RATIO,
    "Taken for soft pine, about the lightest wood that frames are made of.",
    Status.HOUSE,
)

INNER_FIXING_SHARE = fact(
    "load on the busiest fixing, in bays",
    1.25,
    Unit.RATIO,
    "Along an even load a beam over three supports leaves one and a quarter bays on the"
    " middle one, and over more of them less on each.",
    Status.MEMORY,
    source=Source(id="structural-handbook"),
)

# Before cloth is ordered, and on the table

REPEAT_DIFFERENCE = _limit(
    "repeat off the sheet",
    "1/8",
    "A repeat that differs by more drifts by a seam's width within a few repeats.",
)

BOW_AND_SKEW = _limit(
    "bow and skew",
    "1/2",
    "Across a shade a pattern that runs off by more is seen to climb. Suppliers allow more.",
)

SUPPLIERS_BOW = _limit(
    "bow and bias that suppliers allow",
    "2",
    "A cloth house takes nothing back for a bow or a bias of 1 1/2 to 2 in.",
    Status.PUBLISHED,
    Source(id="cloth-care-page"),
)

FLAW_SPACING = _limit(
    "length for one flaw",
    "180",
    "One flaw in five yards is usual, and can mostly be cut round.",
)

ROLL_MARGIN = _limit(
    "spare at the end of a roll",
    "2",
    "With less to spare one crooked end leaves the last piece short.",
    Status.HOUSE,
)

LEAST_REMNANT = fact(
    "narrowest remnant worth a line",
    Length.mm(100),
    Unit.LENGTH,
    "A strip narrower than this is waste, and no list names it.",
    Status.HOUSE,
)

SHRINKAGE_APART = fact(
    "face and lining shrink apart",
    0.01,
    Unit.SHARE,
    "Beyond this the layer that shrinks less hangs in a bag, or the other puckers.",
    Status.HOUSE,
)

NATURAL_SHRINKAGE = fact(
    "shrinkage of curtain cloth",
    0.03,
    Unit.SHARE,
    "The specification for curtain cloth lets it lose up to this much in cleaning.",
    Status.PUBLISHED,
    source=Source(id="astm-d3691-09", clause="Table 1"),
)

# At the needle

LINING_EDGE = _limit(
    "lining inside the edge",
    "1/4",
    "A lining that ends nearer to the edge shows past it.",
)

BAR_EDGE = _limit(
    "bar shorter than the shade",
    "1/2",
    "A longer bar scrapes the reveal.",
    Status.PUBLISHED,
    Source(id="gathered-shade-blog"),
)

ROD_EDGE = _limit(
    "rod shorter than the shade",
    "1/2",
    "A longer rod pokes out of its pocket.",
)

SEAM_TO_HARDWARE = _limit(
    "seam to hardware",
    "1",
    "A seam nearer to a bracket, the pull handle or the end of a rod bulges there.",
    Status.HOUSE,
)

VALANCE_BEYOND = _limit(
    "valance below the headrail",
    "1",
    "A valance that ends higher lets the headrail be seen.",
)

DOUBLE_HEM_LAYERS = fact(
    "layers of a double hem",
    3,
    Unit.COUNT,
    "The face itself, and the hem turned up twice.",
    Status.PRACTICE,
)

# Side by side, and on the way

LINED_UP = _limit(
    "lines of neighbours apart",
    "1/16",
    "Hems and rows side by side that are farther apart are seen at once.",
)

BETWEEN_SHADES = _limit(
    "gap between two shades",
    "1/4",
    "Shades of one board that hang nearer together rub and catch.",
    Status.HOUSE,
)

PARCEL_BEYOND = _limit(
    "parcel longer than the shade",
    "4",
    "In a shorter box the tube's ends are knocked, and the tube is bent.",
)
