"""What is measured at the window, and how the shade is to be mounted there."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from foldwright.core.quantity.length import Length


class MountPlace(Enum):
    """Where the shade hangs."""

    INSIDE = "inside"
    OUTSIDE = "outside"


class HeightRule(Enum):
    """Which of unequal heights governs an inside mount: asked, never assumed."""

    COVER_SILL = "cover sill"
    CLEAR_SILL = "clear sill"


class Side(Enum):
    """Left or right, always with a word beside it saying from where it is seen."""

    LEFT = "left"
    RIGHT = "right"


class Face(Enum):
    """The two faces of a shade."""

    ROOM = "room"
    WINDOW = "window"


class Substrate(Enum):
    """What the fixings go into."""

    WOOD = "wood"
    STEEL_STUD = "steel stud"
    DRYWALL = "drywall"
    TILE = "tile"
    MASONRY = "masonry"
    VINYL = "vinyl"
    FOAM = "soft foam"


@dataclass(frozen=True, kw_only=True, slots=True)
class Opening:
    """One window as measured; None is not yet measured.

    Widths top to bottom and heights left to right as seen from the room;
    `diagonal_falling` runs from the top left to the bottom right corner.
    """

    width_top: Length | None = None
    width_middle: Length | None = None
    width_bottom: Length | None = None
    height_left: Length | None = None
    height_centre: Length | None = None
    height_right: Length | None = None
    diagonal_falling: Length | None = None
    diagonal_rising: Length | None = None
    depth_head: Length | None = None  # glass or handle face to the front of the casing
    depth_sill: Length | None = None
    glass_below_head: Length | None = None  # head of the opening down to the first visible glass
    obstruction_projection: Length | None = None
    obstruction_above_sill: Length | None = None
    obstruction: str = ""
    casing_width: Length | None = None  # outside to outside
    casing_height: Length | None = None  # outside to sill or apron
    casing_projection: Length | None = None
    wall_left: Length | None = None
    wall_right: Length | None = None
    wall_above: Length | None = None  # above the casing
    floor_to_head: Length | None = None
    head_fall: Length | None = None
    sill: bool | None = None  # False: the window has no sill
    substrate: Substrate | None = None
    taller_than_wide: bool | None = None  # noted by eye, against a swap of the two
    inward_sash_below_head: Length | None = None  # top of a sash that opens or tilts inwards
    outlet_side: Side | None = None  # seen from the room
    measured_by: str = ""  # where it was not the shop
    measures_signed: bool = False


@dataclass(frozen=True, kw_only=True, slots=True)
class Mount:
    """How the shade is mounted, in facts rather than names.

    The trade's names for front and back mounting differ by country, so two facts are
    asked instead: the edge of the board that the cloth leaves, and the side of the tube
    that the cords leave.
    """

    place: MountPlace | None = None
    height_rule: HeightRule | None = None
    deduction: Length | None = None
    overlap_left: Length | None = None
    overlap_right: Length | None = None
    above: Length | None = None
    below: Length | None = None
    board_edge: Face = Face.ROOM  # the edge of the board that the cloth leaves
    cord_side: Face = Face.ROOM  # the side of the tube that the cords leave
    returns: bool = False
    control_side: Side | None = None  # clutch or motor side, seen from the room


@dataclass(frozen=True, kw_only=True, slots=True)
class AskedSize:
    """A finished size given instead of a measurement, and who gave it."""

    width: Length | None = None
    drop: Length | None = None
    given_by: str = ""
