"""What the shop can order or has on the shelf: one record for each line of a supplier's sheet.

Masses, torques and stiffnesses are plain SI numbers with the unit in the name;
lengths are exact. A record says only what its sheet says: what the sheet leaves
out is None, and the rooms ask for it or fall back on a marked house default.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import Enum

from foldwright.core.quantity.length import Length


class Coating(Enum):
    """What the back of a cloth is coated with against the light."""

    NONE = "none"
    DIM_OUT = "dim-out"  # one coat: the room is dimmed
    BLACKOUT = "blackout"  # a black coat among two or three: a needle's hole lets light through


@dataclass(frozen=True, kw_only=True, slots=True)
class Cloth:
    """A face cloth, lining or interlining as its supplier describes it."""

    name: str
    areal_mass_kg_m2: float
    areal_mass_spread: float | None = (
        None  # half width of the 90 % range, as a share; None: unknown
    )
    usable_width: Length
    vertical_repeat: Length | None = None
    horizontal_repeat: Length | None = None
    thickness: Length | None = None
    bending_length: Length | None = None
    overhang: Length | None = None  # of a strip whose end touches a plane at 41.5 degrees
    weighed: bool = False  # True: the shop weighed a swatch
    natural: bool | None = None  # True: of natural fibre, which shrinks; None: not said
    directional: bool = False  # True: a pile or a print with an up and a down
    half_drop: bool = False  # True: every other repeat across stands half a repeat lower
    coating: Coating = Coating.NONE
    drop_steps: int | None = None  # repeats across until it stands level again; half drop: 2
    motif_from_edge: Length | None = None  # the first motif's centre from the left, face up
    sold_by: Length | None = None  # ordered in steps of this; None: the house's
    least_order: Length | None = None
    whole_rolls: Length | None = None  # sold by the roll only, of this length
    lot_returns: bool = True  # False: its dye lot cannot be had again
    cost_per_m: float | None = None
    note: str = ""

    @property
    def blackout(self) -> bool:
        """Tell whether a needle's hole in it lets light through."""
        return self.coating is Coating.BLACKOUT


@dataclass(frozen=True, kw_only=True, slots=True)
class Tube:
    """A winding tube."""

    name: str
    outside: Length
    wall: Length
    stiffness_pa: float
    line_mass_kg_m: float
    stock_length: Length | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Cord:
    """A round lift cord, winding in one layer; `diameter` is as wound on the tube."""

    name: str
    diameter: Length
    diameter_low: Length | None = None
    diameter_high: Length | None = None
    breaking_force_n: float | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Tape:
    """A flat lift tape, winding on itself."""

    name: str
    thickness: Length
    width: Length
    breaking_force_n: float | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Spring:
    """A lift spring. A sheet gives one of: rate; greatest torque and turns; load at a drop; wire.

    Rates are per turn (N.m/turn), never per radian.
    """

    name: str
    # one of these groups:
    rate_n_m_turn: float | None = None
    greatest_torque_n_m: float | None = None
    greatest_turns: float | None = None
    load_n: float | None = None  # lifts this load ...
    load_drop: Length | None = None  # ... over this drop ...
    load_tube_outside: Length | None = None  # ... on this tube ...
    load_turns: float | None = None  # ... with these turns wound in at the up-stop
    wire: Length | None = None
    mean_coil: Length | None = None
    active_coils: float | None = None
    # always:
    rate_spread: float | None = None  # half width of the 90 % range, as a share
    body_length: Length | None = None  # the least tube length it needs
    least_tube_inside: Length | None = None
    arbor: Length | None = None
    speed_brake_n_m_s: float | None = (
        None  # drag torque per angular speed, where the unit has a brake
    )
    hand: str | None = None  # "left", "right" or None: works either way
    measured: bool = False  # True: characterised on the shop's own bench
    cost: float | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Clutch:
    """A clutch with a bead chain loop."""

    name: str
    gear_ratio: float
    efficiency: float
    sprocket_radius: Length
    greatest_torque_n_m: float
    deduction: Length | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Motor:
    """A tubular motor."""

    name: str
    torque_n_m: float
    brake_torque_n_m: float
    speed_rpm: float
    limit_turns: float
    least_tube_length: Length | None = None
    least_tube_inside: Length | None = None
    battery: bool = False
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Bracket:
    """A pair of end brackets; the tube is cut to the board length less `tube_deduction`."""

    name: str
    tube_deduction: Length
    width: Length  # along the board, each
    inset: Length  # from the board end to the bracket
    tube_centre_below_board: Length  # from the top of the board
    height: Length  # of the whole headrail under the board top
    depth: Length  # from the wall or glass side to the room side
    greatest_load_n: float | None = None
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Bar:
    """A bottom bar sold by length, with its cross-section."""

    name: str
    line_mass_kg_m: float
    width: Length
    thickness: Length
    stiffness_pa: float
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Rod:
    """A rib or rod across the shade."""

    name: str
    line_mass_kg_m: float
    diameter: Length  # of a flat one: its thickness
    width: Length | None = None  # of a flat one: how high it stands in its pocket
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Board:
    """A mounting board: the section and the wood."""

    name: str
    thickness: Length
    depth: Length
    stiffness_pa: float
    density_kg_m3: float
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Fixing:
    """A screw or an anchor that holds the board; a wood screw is told by shank and thread."""

    name: str
    rated_load_n: float | None = None  # of one, pulled straight out, as its maker rates it
    shank: Length | None = None
    thread: Length | None = None  # that bites in the ground
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class StockBar:
    """A length of tube, bar, rod or board that a supplier sells."""

    name: str
    material: str  # the name of the tube, bar, rod or board
    length: Length
    cost: float | None = None  # None: not known, and its length stands in for it
    quantity: int | None = None  # None: as many as wanted
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class RackPiece:
    """An offcut of a tube, bar, rod or board on the rack."""

    name: str
    material: str
    length: Length
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class SmallWork:
    """Something that the shop makes of a remnant that is large enough."""

    name: str
    width: Length
    length: Length
    note: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class ShopList:
    """All that the shop can choose from, by name."""

    cloths: dict[str, Cloth] = field(default_factory=dict)
    tubes: dict[str, Tube] = field(default_factory=dict)
    cords: dict[str, Cord] = field(default_factory=dict)
    tapes: dict[str, Tape] = field(default_factory=dict)
    springs: dict[str, Spring] = field(default_factory=dict)
    clutches: dict[str, Clutch] = field(default_factory=dict)
    motors: dict[str, Motor] = field(default_factory=dict)
    brackets: dict[str, Bracket] = field(default_factory=dict)
    bars: dict[str, Bar] = field(default_factory=dict)
    rods: dict[str, Rod] = field(default_factory=dict)
    boards: dict[str, Board] = field(default_factory=dict)
    fixings: dict[str, Fixing] = field(default_factory=dict)
    stock_lengths: dict[str, StockBar] = field(default_factory=dict)
    offcuts: dict[str, RackPiece] = field(default_factory=dict)
    small_works: dict[str, SmallWork] = field(default_factory=dict)


@dataclass(frozen=True, kw_only=True, slots=True)
class Materials:
    """What the shade is made of, by names in the shop list; empty is not chosen yet."""

    face: str = ""
    lining: str = ""
    interlining: str = ""
    band: str = ""  # the face, where none is named
    valance: str = ""  # the face, where none is named
    bar: str = ""
    rod: str = ""
    board: str = ""
    bracket: str = ""
    tube: str = ""
    cord: str = ""
    tape: str = ""
    fixing: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Chosen:
    """The records behind a shade's materials; None is not chosen, or not in the list."""

    face: Cloth | None = None
    lining: Cloth | None = None
    interlining: Cloth | None = None
    band: Cloth | None = None
    valance: Cloth | None = None
    bar: Bar | None = None
    rod: Rod | None = None
    board: Board | None = None
    bracket: Bracket | None = None
    tube: Tube | None = None
    cord: Cord | None = None
    tape: Tape | None = None
    fixing: Fixing | None = None


def choose(materials: Materials, shop: ShopList) -> Chosen:
    """Look the materials of a shade up in the shop's list.

    Takes: the names as chosen; the shop's list.

    Gives: the records behind the names; a name that is empty or not in the list gives None.

    Source: derived here.

    >>> choose(Materials(face="linen"), ShopList()).face is None
    True
    """
    return Chosen(
        face=shop.cloths.get(materials.face),
        lining=shop.cloths.get(materials.lining),
        interlining=shop.cloths.get(materials.interlining),
        band=shop.cloths.get(materials.band),
        valance=shop.cloths.get(materials.valance),
        bar=shop.bars.get(materials.bar),
        rod=shop.rods.get(materials.rod),
        board=shop.boards.get(materials.board),
        bracket=shop.brackets.get(materials.bracket),
        tube=shop.tubes.get(materials.tube),
        cord=shop.cords.get(materials.cord),
        tape=shop.tapes.get(materials.tape),
        fixing=shop.fixings.get(materials.fixing),
    )
