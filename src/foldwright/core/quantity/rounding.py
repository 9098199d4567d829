"""Which way a printed length is rounded, and in which units a person reads."""

from __future__ import annotations

from enum import Enum


class Rounding(Enum):
    """Which way a printed length goes: the reason is what the length is for."""

    MUST_FIT = "down"
    CUT_OVERSIZE = "up"
    MARK = "nearest"


class System(Enum):
    """The units a job is written in; a bare number means inches or millimetres."""

    INCH = "inch"
    METRIC = "metric"
