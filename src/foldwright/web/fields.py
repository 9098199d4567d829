"""The fields of the shade form, in the order of the work: measure to safety.

Each field is one key of the job file; its label is what the trade calls it. A field left
empty is answered by a house rule where there is one: `answered_by` is the path of that
figure in the shade's plan, so that the form can show what was taken instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from enum import Enum

from foldwright.core.check.choices import FixingPlace, Nap
from foldwright.core.design.choices import RodPlace, RodPocket, StyleName
from foldwright.core.design.making import BandSewing, HoleCover, TopFixing, Valance
from foldwright.core.lift.choices import Brake, LiftKind, Lock
from foldwright.core.measure.opening import Face, HeightRule, MountPlace, Side, Substrate
from foldwright.core.pieces.matching import PatternAcross, PatternAlong
from foldwright.core.safety.choices import ChainDevice, Children, CordGuard


class Kind(Enum):
    """How a field is filled in."""

    LENGTH = "length"
    NUMBER = "number"
    TEXT = "text"
    CHOICE = "choice"
    RECORD = "record"  # a name in the shop's list
    TICK = "tick"


@dataclass(frozen=True, kw_only=True, slots=True)
class Option:
    """One choice: the word in the job file, and what it says on the screen."""

    word: str
    label: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """One field of the form."""

    path: str
    label: str
    kind: Kind = Kind.LENGTH
    hint: str = ""
    options: tuple[Option, ...] = ()
    default: str = ""  # the word that holds while the job file says nothing
    shop_list: str = ""
    answered_by: str = ""
    placeholder: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Group:
    """Fields that are filled in together; `more` holds those that few shades need."""

    id: str
    title: str
    fields: tuple[Field, ...]
    more: tuple[Field, ...] = field(default=())

    def every(self) -> tuple[Field, ...]:
        """Give all fields of the group."""
        return self.fields + self.more


def _text(path: str, label: str, hint: str = "") -> Field:
    return Field(path=path, label=label, kind=Kind.TEXT, hint=hint)


def _number(path: str, label: str, hint: str = "", answered_by: str = "") -> Field:
    return Field(path=path, label=label, kind=Kind.NUMBER, hint=hint, answered_by=answered_by)


def _record(path: str, label: str, shop_list: str) -> Field:
    return Field(path=path, label=label, kind=Kind.RECORD, shop_list=shop_list)


def _choice(
    path: str, label: str, options: dict[str, str], hint: str = "", default: str = ""
) -> Field:
    listed = tuple(Option(word=word, label=text) for word, text in options.items())
    return Field(
        path=path, label=label, kind=Kind.CHOICE, options=listed, hint=hint, default=default
    )


UNSAID = {"": "not said yet"}
UNMEASURED = {"": "not measured yet"}

SHADE = Group(
    id="shade",
    title="Shade",
    fields=(
        _text("tag", "Tag", "What is written on the sheet that travels with the shade."),
        _text("room", "Room"),
        _text("note", "Note"),
    ),
    more=(_text("beside", "Lines up with", "The tag of the shade that hangs beside it."),),
)

MEASURE = Group(
    id="measure",
    title="Measure",
    fields=(
        Field(path="opening.width_top", label="Width at the top"),
        Field(path="opening.width_middle", label="Width at the middle"),
        Field(path="opening.width_bottom", label="Width at the bottom"),
        Field(path="opening.height_left", label="Height at the left", hint="Seen from the room."),
        Field(path="opening.height_centre", label="Height at the centre"),
        Field(path="opening.height_right", label="Height at the right", hint="Seen from the room."),
        Field(
            path="opening.depth_head",
            label="Depth at the head",
            hint="Glass or handle to the front of the casing.",
        ),
        Field(path="opening.depth_sill", label="Depth at the sill"),
        Field(
            path="asked.width",
            label="Finished width, if given",
            hint="Instead of a measurement.",
        ),
        Field(
            path="asked.drop",
            label="Finished drop, if given",
            hint="Instead of a measurement.",
        ),
        _text("asked.given_by", "Who gave the size"),
    ),
    more=(
        Field(
            path="opening.diagonal_falling",
            label="Diagonal, top left to bottom right",
            hint="Seen from the room.",
        ),
        Field(
            path="opening.diagonal_rising",
            label="Diagonal, bottom left to top right",
            hint="Seen from the room.",
        ),
        Field(path="opening.glass_below_head", label="Head down to the first visible glass"),
        _text("opening.obstruction", "What stands in the way", "Handle, crank, alarm contact."),
        Field(path="opening.obstruction_projection", label="How far it stands out"),
        Field(path="opening.obstruction_above_sill", label="Its height above the sill"),
        Field(path="opening.casing_width", label="Casing, outside to outside"),
        Field(path="opening.casing_height", label="Casing, top to the sill or apron"),
        Field(path="opening.casing_projection", label="Casing stands out from the wall by"),
        Field(path="opening.wall_left", label="Free wall at the left", hint="Seen from the room."),
        Field(
            path="opening.wall_right", label="Free wall at the right", hint="Seen from the room."
        ),
        Field(path="opening.wall_above", label="Free wall above the casing"),
        Field(path="opening.floor_to_head", label="Floor to head"),
        Field(path="opening.head_fall", label="Fall of the head across the width"),
        _choice(
            "opening.sill",
            "Sill",
            UNSAID | {"yes": "there is a sill", "no": "there is no sill"},
        ),
        _choice(
            "opening.substrate",
            "The fixings go into",
            UNSAID | {substrate.value: substrate.value for substrate in Substrate},
        ),
        _choice(
            "opening.taller_than_wide",
            "The window is, by eye,",
            UNSAID | {"yes": "taller than wide", "no": "wider than tall"},
            "Keeps width and height from being exchanged.",
        ),
        Field(
            path="opening.inward_sash_below_head",
            label="Head down to a sash that opens inwards",
        ),
        _choice(
            "opening.outlet_side",
            "Outlet at the",
            UNSAID | {Side.LEFT.value: "left", Side.RIGHT.value: "right"},
            "Seen from the room; for a motor on the mains.",
        ),
        _text("opening.measured_by", "Who measured, if not you"),
        Field(
            path="opening.measures_signed",
            label="They have signed for the measures",
            kind=Kind.TICK,
        ),
    ),
)

MOUNT = Group(
    id="mount",
    title="Mount",
    fields=(
        _choice(
            "mount.place",
            "The shade hangs",
            UNSAID
            | {
                MountPlace.INSIDE.value: "inside the opening",
                MountPlace.OUTSIDE.value: "outside, on the wall or casing",
            },
        ),
        _choice(
            "mount.height_rule",
            "Unequal heights",
            UNSAID
            | {
                HeightRule.COVER_SILL.value: "cover the sill: the longest governs",
                HeightRule.CLEAR_SILL.value: "clear the sill: the shortest governs",
            },
        ),
        _choice(
            "mount.board_edge",
            "The cloth leaves the board at",
            {
                Face.ROOM.value: "the room edge",
                Face.WINDOW.value: "the window edge",
            },
            default=Face.ROOM.value,
        ),
        _choice(
            "mount.cord_side",
            "The cords leave the tube on",
            {
                Face.ROOM.value: "the room side",
                Face.WINDOW.value: "the window side",
            },
            default=Face.ROOM.value,
        ),
        _choice(
            "mount.control_side",
            "Clutch or motor at the",
            UNSAID | {Side.LEFT.value: "left", Side.RIGHT.value: "right"},
            "Seen from the room. The side of a spring follows from the cords.",
        ),
    ),
    more=(
        Field(
            path="mount.deduction",
            label="Deduction from the width",
            hint="The whole of it, inside mount.",
        ),
        Field(path="mount.overlap_left", label="Overlap at the left", hint="Seen from the room."),
        Field(path="mount.overlap_right", label="Overlap at the right", hint="Seen from the room."),
        Field(path="mount.above", label="Above the opening"),
        Field(path="mount.below", label="Below the opening"),
        Field(path="mount.returns", label="Returns to the wall", kind=Kind.TICK),
    ),
)

DESIGN = Group(
    id="design",
    title="Design",
    fields=(
        _choice(
            "design.style",
            "Style",
            {
                StyleName.FLAT.value: "flat",
                StyleName.LOOPED.value: "looped, folds stay when lowered",
                StyleName.CASCADE.value: "cascade, each fold shorter than the one below",
                StyleName.TUCKED.value: "tucked, a stitched ridge at every fold",
                StyleName.RELAXED.value: "relaxed, the hem dips between two columns",
                StyleName.LONDON.value: "London, pleats, a swag and tails",
                StyleName.BALLOON.value: "balloon, gathered across, a pouf at the hem",
                StyleName.GATHERED.value: "gathered, fuller across and along",
                StyleName.AUSTRIAN.value: "Austrian, shirred in scallops on tapes",
            },
            default=StyleName.FLAT.value,
        ),
        _choice(
            "design.rods",
            "Rods",
            {
                RodPlace.NONE.value: "none",
                RodPlace.ROWS.value: "at the ring rows",
                RodPlace.MID_FOLD.value: "at mid-fold, between the rows",
                RodPlace.SLATS.value: "slats, at the rows and at mid-fold",
            },
            default=RodPlace.NONE.value,
        ),
        _number("design.row_count", "Ring rows", answered_by="layout.rows.count"),
        Field(
            path="design.skirt",
            label="Skirt",
            hint="The hem shows this much below the raised folds.",
            answered_by="layout.rows.skirt",
        ),
        Field(
            path="design.head_allowance",
            label="Head allowance",
            hint="Top of the board to the lowest row, fully raised.",
            answered_by="layout.rows.head_allowance",
        ),
        _number("design.column_count", "Cord columns", answered_by="layout.columns.count"),
        _number(
            "design.fullness",
            "Fullness",
            "Looped, gathered, Austrian: cloth for one of drop.",
            answered_by="layout.rows.fullness",
        ),
        _number(
            "design.alike_after",
            "Folds until the print is alike",
            "Flat, relaxed, looped: 1 for every fold, 3 for every third.",
        ),
        _number(
            "design.width_fullness",
            "Fullness across",
            "Balloon and gathered: cloth for one of finished width.",
        ),
    ),
    more=(
        _choice(
            "design.rod_pocket",
            "Rods are held in pockets",
            {each.value: each.value for each in RodPocket},
            default=RodPocket.SEWN_ON.value,
        ),
        Field(
            path="design.pocket_allowance",
            label="Cloth of a rod's pocket",
            answered_by="layout.pockets.allowance",
        ),
        Field(
            path="design.step",
            label="Step of a cascade",
            hint="Each fold is so much shorter than the one below.",
        ),
        Field(path="design.tuck", label="Cloth of a tuck", hint="Sewn into each stitched ridge."),
        Field(
            path="design.dip",
            label="Dip of the hem",
            hint="Relaxed and London: so much lower between its columns.",
        ),
        Field(
            path="design.widened_hem",
            label="Hem cut wider, sides plumb",
            kind=Kind.TICK,
            hint="Relaxed only.",
        ),
        Field(
            path="design.scallop",
            label="Cloth of a scallop",
            hint="Austrian only: each is cut so much wider than its space.",
        ),
        Field(
            path="design.pleat_allowance",
            label="Cloth of an inverted pleat",
            hint="London only; the tails are the side edge to the first column.",
        ),
        _number(
            "design.tied_rows",
            "Rows tied for good",
            "To the lowest, with a pouf between them; 0 for none.",
            answered_by="layout.rows.tied_rows",
        ),
        Field(path="design.pouf", label="Pouf", hint="Cloth gathered up for good at the hem."),
        Field(path="design.largest_row_spacing", label="Row spacing, at most"),
        Field(
            path="design.edge_distance",
            label="Side edge to the first column",
            answered_by="layout.columns.edge_distance",
        ),
        Field(path="design.largest_pitch", label="Column pitch, at most"),
        Field(
            path="design.middle_piece",
            label="Middle piece, seam to seam",
            hint="Joined cloth: narrower than its width, it moves the seams.",
            answered_by="layout.widths.centre_visible",
        ),
        Field(path="design.side_turn", label="Side turn, each"),
        Field(path="design.hem_allowance", label="Hem allowance"),
        Field(path="design.top_allowance", label="Top allowance"),
        _number(
            "design.shrinkage",
            "Shrinkage",
            "As a share from your steam test: 0.01 is one per cent.",
        ),
        Field(path="design.stack_allowed_on_glass", label="Stack may cover this much glass"),
    ),
)

MATERIALS = Group(
    id="materials",
    title="Materials",
    fields=(
        _record("materials.face", "Face cloth", "cloths"),
        _record("materials.lining", "Lining", "cloths"),
        _record("materials.interlining", "Interlining", "cloths"),
        _record("materials.band", "Band or trim, if not the face", "cloths"),
        _record("materials.valance", "Valance, if not the face", "cloths"),
        _record("materials.bar", "Bottom bar", "bars"),
        _record("materials.rod", "Rod", "rods"),
        _record("materials.board", "Board", "boards"),
        _record("materials.bracket", "Brackets", "brackets"),
        _record("materials.tube", "Tube", "tubes"),
        _record("materials.cord", "Lift cord", "cords"),
        _record("materials.tape", "Lift tape, instead of cord", "tapes"),
        _record("materials.fixing", "Fixings of the board", "fixings"),
    ),
)

LIFT = Group(
    id="lift",
    title="Lift",
    fields=(
        _choice(
            "lift.kind",
            "What turns the tube",
            UNSAID | {kind.value: kind.value for kind in LiftKind},
        ),
        _record("lift.spring", "Spring", "springs"),
        _choice(
            "lift.lock",
            "Lock",
            {
                Lock.ONE_WAY.value: "one-way: blocks rising only",
                Lock.TWO_WAY.value: "two-way: blocks rising and sinking",
                Lock.NONE.value: "none",
                Lock.UNKNOWN.value: "don't know",
            },
            default=Lock.UNKNOWN.value,
        ),
        _choice(
            "lift.brake",
            "Speed brake",
            {
                Brake.FITTED.value: "fitted",
                Brake.NONE.value: "none",
                Brake.UNKNOWN.value: "don't know",
            },
            default=Brake.UNKNOWN.value,
        ),
        _number("lift.turns", "Turns at the up-stop", "Already wound in, or wished for."),
        _record("lift.clutch", "Clutch", "clutches"),
        _record("lift.motor", "Motor", "motors"),
    ),
    more=(
        _number("lift.springs_side_by_side", "Springs side by side"),
        _number("lift.hand_force_limit_n", "Greatest hand force", "In newtons."),
        _number(
            "lift.raise_limit_share",
            "Raise less than fully",
            "As a share of the travel: 0.85 stops at 85 per cent.",
        ),
        Field(path="lift.wand", label="A pull wand hangs from the bar", kind=Kind.TICK),
        Field(
            path="lift.cords_apart",
            label="Longest cord less the shortest",
            hint="As measured at the bench.",
        ),
    ),
)

CUTTING = Group(
    id="cutting",
    title="Cutting and sewing",
    fields=(
        _text("cutting.roll", "Cut from roll", "Its name among the rolls of the job file."),
        _choice(
            "cutting.nap",
            "The pile or the print runs",
            UNSAID | {nap.value: nap.value for nap in Nap},
            "On the hanging shade.",
        ),
        Field(path="cutting.motif_height", label="Height of the motif"),
        Field(
            path="cutting.motif_above_hem",
            label="Motif over the bottom edge",
            hint="From the edge to the centre of the motif.",
        ),
        _choice(
            "making.holes",
            "Holes in the blackout are",
            UNSAID
            | {
                HoleCover.COVER.value: "under a cover strip at each row",
                HoleCover.SECOND_LAYER.value: "under a second layer",
                HoleCover.PAINTED.value: "painted over",
                HoleCover.SIDE_TURNS.value: "none: rings in the side turns only",
                HoleCover.NOT_STITCHED.value: "none: the rings are not stitched through it",
                HoleCover.ACCEPTED.value: "accepted by the client",
            },
        ),
        Field(path="making.band_height", label="Band across the face, its height"),
        Field(path="making.band_above_hem", label="Band over the bottom edge"),
        Field(path="making.side_band_width", label="Bands down the sides, their width"),
        Field(path="making.side_band_inset", label="Side bands in from the edge"),
        _choice(
            "making.band_sewing",
            "Bands are",
            {
                BandSewing.FLAT.value: "sewn flat, before the sides are turned",
                BandSewing.APPLIED.value: "applied as a trim, after the rings",
            },
            default=BandSewing.FLAT.value,
        ),
        _choice(
            "making.top",
            "The head is held by",
            {
                TopFixing.STAPLES.value: "staples, over the board",
                TopFixing.HOOK_AND_LOOP.value: "hook-and-loop tape, on the edge of the board",
            },
            default=TopFixing.STAPLES.value,
        ),
        _choice(
            "making.valance",
            "Valance",
            {
                Valance.NONE.value: "none",
                Valance.ATTACHED.value: "attached, on the shade's board",
                Valance.SEPARATE.value: "separate, on a board of its own",
            },
            default=Valance.NONE.value,
        ),
        Field(
            path="making.valance_depth",
            label="Depth of the valance",
            answered_by="layout.valance.depth",
        ),
        Field(
            path="making.return_flaps",
            label="Returns are flaps, cut apart from the face",
            kind=Kind.TICK,
        ),
    ),
    more=(
        Field(path="cutting.turned", label="Cut across the roll", kind=Kind.TICK),
        Field(
            path="cutting.half_drop_planned",
            label="The half drop is ordered and cut",
            kind=Kind.TICK,
        ),
        _choice(
            "cutting.pattern_across",
            "Of a pattern, across",
            {each.value: each.value for each in PatternAcross},
            default=PatternAcross.MOTIF.value,
        ),
        _choice(
            "cutting.pattern_along",
            "Motifs of a room at one height",
            {each.value: each.value for each in PatternAlong},
            default=PatternAlong.HEM.value,
        ),
        Field(
            path="cutting.sides_apart",
            label="Both sides never from one cut length",
            kind=Kind.TICK,
        ),
        _number(
            "cutting.lining_shrinkage",
            "Shrinkage of the lining",
            "As a share from your steam test.",
        ),
        Field(
            path="making.interlining_in_hem",
            label="Interlining goes into the hem turn",
            kind=Kind.TICK,
        ),
    ),
)

FIXING = Group(
    id="fixing",
    title="Fixing and delivery",
    fields=(
        _choice(
            "fixing.place",
            "Where the ground takes no screw, fix",
            UNSAID | {place.value: place.value for place in FixingPlace},
        ),
        _number("fixing.count", "Fixings of the board, in number"),
        Field(path="fixing.from_end", label="Outermost fixing to the board's end"),
        Field(path="delivery.box_length", label="Length of the box"),
        Field(path="delivery.longest_passage", label="Longest thing that passes on the way"),
    ),
)

SAFETY = Group(
    id="safety",
    title="Safety of children",
    fields=(
        _choice(
            "safety.children",
            "Small children where it hangs",
            {
                Children.YES.value: "yes, living there or visiting",
                Children.NO.value: "no, never",
                Children.UNKNOWN.value: "don't know",
            },
            "Homes, hotels, schools and public places count as yes.",
            default=Children.UNKNOWN.value,
        ),
        _choice(
            "safety.cord_guard",
            "The cords behind it are",
            {
                CordGuard.NONE.value: "open",
                CordGuard.SHROUD.value: "sheathed in a shroud",
                CordGuard.OUT_OF_REACH.value: "sewn into a pocket, out of reach",
                CordGuard.HELD.value: "held at every ring, yet free to run when raised",
                CordGuard.BREAKAWAY.value: "fitted with a breakaway",
            },
            default=CordGuard.NONE.value,
        ),
        _choice(
            "safety.chain_device",
            "The chain loop has",
            UNSAID
            | {
                ChainDevice.TENSIONER.value: "a fixed tensioner",
                ChainDevice.BREAKAWAY.value: "a breakaway",
                ChainDevice.NONE.value: "neither",
            },
            "Clutch only.",
        ),
        Field(
            path="safety.chain_loop_length",
            label="Chain loop, headrail to its bottom",
            hint="Clutch only.",
        ),
    ),
    more=(
        _text("safety.made_on", "Day of making", "Year, month, day: 2026-05-04."),
        _text("safety.maker_name", "Label: maker's name"),
        _text("safety.maker_town", "Label: maker's town"),
        _text("safety.model_number", "Label: model number", "The tag, if left empty."),
        _text("safety.importer", "Label: importer", "Name and town, if it is imported."),
        _text("safety.installer_name", "Label: installer's name"),
        _text("safety.installer_contact", "Label: how to reach the installer"),
    ),
)

GROUPS = (SHADE, MEASURE, MOUNT, DESIGN, MATERIALS, LIFT, CUTTING, FIXING, SAFETY)


def every_field() -> Iterator[Field]:
    """Give every field of the form, in the order of the work."""
    for group in GROUPS:
        yield from group.every()
