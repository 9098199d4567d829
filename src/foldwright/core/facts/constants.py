"""Constants of nature, of materials and of people, each with its source."""

from __future__ import annotations

from foldwright.core.quantity.measure_reading import GRAVITY_M_S2, OUNCE_KG, POUND_FORCE_N, YARD_M
from foldwright.core.why.figure import Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

GRAVITY = fact(
    "weight of a kilogram",
    GRAVITY_M_S2,
    Unit.FORCE,
    "Standard gravity: a mass of one kilogram weighs 9.80665 N.",
    Status.PUBLISHED,
    source=Source(id="standard-gravity-1901"),
)

OUNCE_PER_SQUARE_YARD = fact(
    "ounce per square yard",
    OUNCE_KG / YARD_M**2,
    Unit.AREAL_MASS,
    "By definition of ounce and yard; about 33.9 g/m².",
    Status.PUBLISHED,
    source=Source(id="yard-and-pound-1959"),
)

ALUMINIUM_STIFFNESS = fact(
    "modulus of aluminium 6063",
    68.9e9,
    Unit.STIFFNESS,
    "68.9 GPa on a data sheet after the Aluminum Association; other pages print 68 to 71 GPa.",
    Status.PUBLISHED,
    source=Source(id="aluminium-6063-data"),
    low=68e9,
    high=71e9,
)

STEEL_STIFFNESS = fact(
    "modulus of steel",
    200e9,
    Unit.STIFFNESS,
    "200 GPa as remembered; other tables print 206 GPa.",
    Status.MEMORY,
    low=200e9,
    high=206e9,
)

ACCESSIBLE_FORCE = fact(
    "greatest hand force for accessible operation",
    5 * POUND_FORCE_N,
    Unit.FORCE,
    "Operable parts work with one hand, without tight grasp or twist, at no more than 5 lbf.",
    Status.PUBLISHED,
    source=Source(id="ada-2010", clause="309.4"),
)
