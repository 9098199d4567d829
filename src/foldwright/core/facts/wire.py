"""Spring wire: its modulus, its strength by four sets that disagree, and what may be used of it.

Sources disagree about the modulus too: spring-calculator-page works with 207 GPa,
music-wire-data-page prints 190 GPa, and both are kept as the ends of one range.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import pi

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measure_reading import INCH_M, POUND_FORCE_N
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

PASCALS_PER_MPA = 1e6  # definition
PASCALS_PER_KPSI = 1e3 * POUND_FORCE_N / INCH_M**2

ELASTIC_TURN_FACTOR = fact(
    "turn factor of elastic wire",
    64 / (2 * pi),
    Unit.RATIO,
    "Bending of the wire alone, 64/(2 pi): nothing rubs.",
    Status.PUBLISHED,
    source=Source(id="spring-exercise", clause="64 D N form, per radian"),
)

PRACTICAL_TURN_FACTOR = fact(
    "turn factor of a real spring",
    10.8,
    Unit.RATIO,
    "Coils rub on each other and on the arbor: 10.8 in place of 10.19 makes the rate 5.7 % softer.",
    Status.PUBLISHED,
    source=Source(id="spring-rate-page", clause="worked example"),
)

MUSIC_WIRE_STIFFNESS = fact(
    "modulus of music wire",
    207e9,
    Unit.STIFFNESS,
    "207 GPa in a published worked example; 190 GPa on a data page of the wire.",
    Status.PUBLISHED,
    source=Source(id="spring-calculator-page", clause="worked example"),
    low=190e9,
    high=207e9,
)

ALLOWABLE_SHARE = fact(
    "share of the wire's strength that may be used",
    0.525,
    Unit.SHARE,
    "A lift spring is wound tens of thousands of times: half of the wire's strength, a little more"
    " at most.",
    Status.PRACTICE,
    low=0.50,
    high=0.55,
)

ARBOR_CLEARANCE = fact(
    "clearance of the wound coil on its arbor",
    0.10,
    Unit.SHARE,
    "A coil shrinks as it is wound; it must stay about a tenth wider inside than the arbor.",
    Status.PRACTICE,
)


@dataclass(frozen=True, kw_only=True, slots=True)
class WireStrength:
    """One table of wire strength: `strength = at_unit_pa * (unit / wire) ** exponent`."""

    name: str
    at_unit_pa: float
    unit: Length
    exponent: float
    status: Status
    source: Source


OLDER_METRIC = WireStrength(
    name="older set, metric",
    at_unit_pa=2060 * PASCALS_PER_MPA,
    unit=Length.mm(1),
    exponent=0.163,
    status=Status.PUBLISHED,
    source=Source(id="wire-strength-exercise"),
)
OLDER_INCH = WireStrength(
    name="older set, inch",
    at_unit_pa=186 * PASCALS_PER_KPSI,
    unit=Length.inches(1),
    exponent=0.163,
    status=Status.PUBLISHED,
    source=Source(id="wire-strength-page"),
)
NEWER_METRIC = WireStrength(
    name="newer set, metric",
    at_unit_pa=2211 * PASCALS_PER_MPA,
    unit=Length.mm(1),
    exponent=0.145,
    status=Status.MEMORY,
    source=Source(id="mechanical-design-textbook"),
)
NEWER_INCH = WireStrength(
    name="newer set, inch",
    at_unit_pa=201 * PASCALS_PER_KPSI,
    unit=Length.inches(1),
    exponent=0.145,
    status=Status.MEMORY,
    source=Source(id="mechanical-design-textbook"),
)

# The lowest first: it is also the one with a source, and the one used unless told otherwise.
WIRE_STRENGTHS = (OLDER_METRIC, OLDER_INCH, NEWER_METRIC, NEWER_INCH)
