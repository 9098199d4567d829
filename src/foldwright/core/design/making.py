"""What is sewn on, or hung before the shade, as it was ordered."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.quantity.length import Length


class HoleCover(Enum):
    """What becomes of the needle's holes in a blackout cloth."""

    COVER = "cover strip under the rings"
    SECOND_LAYER = "second layer under the rings"
    PAINTED = "painted over"
    SIDE_TURNS = "rings in the side turns only"
    NOT_STITCHED = "rings not stitched through it"
    ACCEPTED = "accepted by the client"


class TopFixing(Enum):
    """What holds the head of the shade on its board."""

    STAPLES = "stapled"  # the cloth goes over the board
    HOOK_AND_LOOP = "hook and loop"  # its soft side on the turned head, its hooks on the board


class Valance(Enum):
    """What hides the headrail from the room."""

    NONE = "none"
    ATTACHED = "attached"  # stapled to the shade's own board, over its head
    SEPARATE = "separate"  # on a board of its own, clear of the raised shade


class BandSewing(Enum):
    """How a band is put on the face."""

    FLAT = "sewn flat"  # a strip with its edges turned in, before the sides are turned
    APPLIED = "applied"  # a ready trim, by hand or glued, after the rings


@dataclass(frozen=True, kw_only=True, slots=True)
class Making:
    """What is sewn on or hung before the shade."""

    band_height: Length | None = None  # trim across the face
    band_above_hem: Length | None = None  # its lower edge over the bottom edge; none: 0
    side_band_width: Length | None = None  # one down each side
    side_band_inset: Length | None = None  # its outer edge to the side edge; none: 0
    band_sewing: BandSewing = BandSewing.FLAT
    valance: Valance = Valance.NONE
    valance_depth: Length | None = None
    return_flaps: bool = False  # cut apart, where the returns would else be one with the face
    top: TopFixing = TopFixing.STAPLES
    holes: HoleCover | None = None
    interlining_in_hem: bool = False


PLAIN = Making()
