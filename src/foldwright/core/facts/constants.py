"""Constants of nature and of people, each with its source."""

from __future__ import annotations

from foldwright.core.quantity.measure_reading import GRAVITY_M_S2, POUND_FORCE_N
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

ACCESSIBLE_FORCE = fact(
    "greatest hand force for accessible operation",
    5 * POUND_FORCE_N,
    Unit.FORCE,
    "Operable parts work with one hand, without tight grasp or twist, at no more than 5 lbf.",
    Status.PUBLISHED,
    source=Source(id="ada-2010", clause="309.4"),
)
