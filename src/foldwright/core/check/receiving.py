"""A roll of cloth in hand, as it was looked over when it came."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import Length


@dataclass(frozen=True, kw_only=True, slots=True)
class ReceivedRoll:
    """One roll as it was measured before anything was cut; None is not measured yet."""

    name: str
    cloth: str  # its name in the shop's list
    lot: str = ""
    length: Length | None = None
    usable_width: Length | None = None  # the least of three
    vertical_repeat: Length | None = None  # over several repeats, divided by their number
    bow_or_skew: Length | None = None  # across the width
    flaws: int | None = None
    steam_shrinkage: float | None = None  # share of the length, from a pressed square
    note: str = ""
