"""A roll of cloth in hand, as it was looked over when it came."""

from __future__ import annotations

from dataclasses import dataclass

from foldwright.core.quantity.length import Length


@dataclass(frozen=True, kw_only=True, slots=True)
class FoundFlaw:
    """A flaw as the box to keep clear of: from the outer end, and from the left edge, face up."""

    along: Length
    across: Length
    length: Length
    width: Length


@dataclass(frozen=True, kw_only=True, slots=True)
class ReceivedRoll:
    """One roll as it was measured before anything was cut; None is not measured yet."""

    name: str
    cloth: str  # its name in the shop's list
    lot: str = ""
    length: Length | None = None
    usable_width: Length | None = None  # the least of three
    vertical_repeat: Length | None = None  # over several repeats, divided by their number
    horizontal_repeat: Length | None = None
    repeat_begins: Length | None = None  # a motif's centre, from the outer end
    head_loss: Length | None = None  # cut off to square the outer end
    bow_or_skew: Length | None = None  # across the width
    flaws: int | None = None
    flaws_at: tuple[FoundFlaw, ...] = ()
    steam_shrinkage: float | None = None  # share of the length, from a pressed square
    note: str = ""
