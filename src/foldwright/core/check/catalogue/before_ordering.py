"""What is checked before any cloth is ordered."""

from __future__ import annotations

from functools import partial

from foldwright.core.check.catalogue.check import Check
from foldwright.core.facts.house import AT_THE_DRAWING, AT_THE_TABLE
from foldwright.core.facts.markets import EDGE_DISTANCE, ROW_SPACING, Market
from foldwright.core.facts.order_limits import LINED_UP, LINING_EDGE, VALANCE_BEYOND
from foldwright.core.facts.panel_limits import (
    DEEPEST_DIP,
    DEEPEST_FOLD,
    LEAST_PITCH,
    LOOP_LIMIT,
    MOST_DRAW_IN,
    POCKET_EASE,
    SHALLOWEST_FOLD,
    TAPE_HOLDS,
    TAPE_WIDTH,
    WIDEST_LONDON_SWAG,
)
from foldwright.core.facts.stiffness import FOLD_SAG
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source

_check = partial(Check, stage=Stage.ORDER)

BEFORE_ORDERING = (
    _check(
        id="stack-on-glass",
        looks_at="glass that the raised stack covers, against what the client allows",
        severity=Severity.STOP,
        findings=("design.stack-over-allowed", "design.stack-on-glass"),
    ),
    _check(
        id="head-allowance",
        looks_at="head allowance against the headrail",
        severity=Severity.STOP,
        findings=("design.head-too-short",),
        limits=(
            AT_THE_DRAWING["head_allowance_beyond_rail"],
            AT_THE_DRAWING["head_allowance_floor"],
        ),
    ),
    _check(
        id="row-spacing",
        looks_at="cord between two ring rows",
        severity=Severity.STOP,
        findings=(
            "design.rows-too-far-apart",
            "safety.cord-too-long",
            "design.rows-over-asked",
            "design.asked-over-cap",
        ),
        limits=tuple(ROW_SPACING[market] for market in Market),
    ),
    _check(
        id="loop",
        looks_at="row spacing and the cloth of its loop together",
        severity=Severity.STOP,
        findings=("design.loop-too-long",),
        limits=(LOOP_LIMIT,),
    ),
    _check(
        id="edge-distance",
        looks_at="outer column to the side edge",
        severity=Severity.STOP,
        findings=("design.edge-too-near",),
        limits=(EDGE_DISTANCE[Market.UNITED_STATES],),
    ),
    _check(
        id="column-pitch",
        looks_at="column to column, too far for the cloth between",
        severity=Severity.STOP,
        findings=("design.columns-too-far-apart",),
        limits=(AT_THE_DRAWING["largest_pitch"], AT_THE_DRAWING["largest_pitch_with_rods"]),
    ),
    _check(
        id="folds-sag",
        looks_at="raised folds between two columns, where no rod carries them",
        severity=Severity.ASK,
        findings=("design.stiffness-unknown", "design.folds-sag"),
        limits=(FOLD_SAG,),
        source=Source(id="bending-length-page"),
    ),
    _check(
        id="columns-crowded",
        looks_at="column to column, closer than is of use",
        severity=Severity.NOTE,
        findings=("design.columns-crowded",),
        limits=(LEAST_PITCH,),
    ),
    _check(
        id="fold-depth",
        looks_at="depth of a fold against taste",
        severity=Severity.NOTE,
        findings=("design.fold-depth",),
        limits=(SHALLOWEST_FOLD, DEEPEST_FOLD),
    ),
    _check(
        id="dip",
        looks_at="dip of the hem against its chord, and how far the sides draw in",
        severity=Severity.STOP,
        findings=("design.dip-too-deep", "design.sides-draw-in", "design.tapered-gap"),
        limits=(DEEPEST_DIP, MOST_DRAW_IN),
    ),
    _check(
        id="pleats",
        looks_at="cloth between two pleats against the hem of their swag",
        severity=Severity.STOP,
        findings=("design.pleats-too-small",),
        limits=(WIDEST_LONDON_SWAG,),
    ),
    _check(
        id="pouf",
        looks_at="rows tied for good and their pouf, against what is left to raise",
        severity=Severity.STOP,
        findings=("design.all-rows-tied", "design.pouf-too-long"),
    ),
    _check(
        id="skirt",
        looks_at="skirt against the trim that it is to show",
        severity=Severity.NOTE,
        findings=("check.band-hidden",),
        kept_by="A skirt below nothing cannot be typed, so the hem never hides under the folds.",
    ),
    _check(
        id="seam-on-column",
        looks_at="seam to the nearest column",
        severity=Severity.STOP,
        findings=("design.seam-on-column",),
        limits=(AT_THE_DRAWING["seam_to_column"],),
    ),
    _check(
        id="middle-piece",
        looks_at="middle piece asked for, against the width of its cloth",
        severity=Severity.ASK,
        findings=("design.middle-too-wide",),
    ),
    _check(
        id="centre-seam",
        looks_at="seam in the middle of the face",
        severity=Severity.NOTE,
        kept_by="Widths are joined with a full one in the middle and equal ones at the sides.",
    ),
    _check(
        id="row-in-trim",
        looks_at="ring rows and columns against the bar's pocket and bands",
        severity=Severity.STOP,
        findings=(
            "design.row-in-pocket",
            "check.row-on-band",
            "check.column-on-band",
            "check.band-off-shade",
        ),
        limits=(POCKET_EASE, AT_THE_DRAWING["seam_to_column"]),
    ),
    _check(
        id="motif",
        looks_at="motif against the bottom edge and the lowest fold",
        severity=Severity.ASK,
        findings=("check.motif-cut", "check.motif-on-fold"),
        source=Source(id="curtain-book", clause="p. 119"),
    ),
    _check(
        id="motifs-alike",
        looks_at="start of the pattern on the shades of one room",
        severity=Severity.STOP,
        findings=("check.motifs-differ", "check.motif-ends-mixed"),
    ),
    _check(
        id="half-drop",
        looks_at="seams in a pattern that drops by half a repeat",
        severity=Severity.ASK,
        findings=("check.half-drop",),
        source=Source(id="curtain-book", clause="p. 119"),
    ),
    _check(
        id="turned-pattern",
        looks_at="pile or print of a face cut across the roll",
        severity=Severity.STOP,
        findings=("check.turned-pattern",),
    ),
    _check(
        id="turned-length",
        looks_at="length of a face cut across the roll against the roll's width",
        severity=Severity.STOP,
        findings=("check.turned-too-long",),
    ),
    _check(
        id="lining-edge",
        looks_at="lining against the side edge",
        severity=Severity.NOTE,
        findings=("check.lining-shows",),
        limits=(LINING_EDGE,),
    ),
    _check(
        id="blackout-holes",
        looks_at="rings stitched through a blackout cloth",
        severity=Severity.STOP,
        findings=("check.rings-beyond-turns", "check.blackout-holes"),
        source=Source(id="reverse-mount-diary"),
    ),
    _check(
        id="thick-turns",
        looks_at="layers at the hem against the machine",
        severity=Severity.NOTE,
        findings=("check.too-thick-to-sew",),
        limits=(AT_THE_TABLE["needle_capacity"],),
    ),
    _check(
        id="interlining-in-hem",
        looks_at="interlining in the hem turn",
        severity=Severity.NOTE,
        findings=("check.interlining-in-hem",),
    ),
    _check(
        id="head-tape",
        looks_at="hook-and-loop tape at the head against load, board and wall",
        severity=Severity.STOP,
        findings=(
            "check.tape-overloaded",
            "check.tape-wider-than-board",
            "check.tape-against-wall",
        ),
        limits=(TAPE_HOLDS, TAPE_WIDTH),
    ),
    _check(
        id="valance",
        looks_at="what hides the headrail: valance, returns and flaps",
        severity=Severity.ASK,
        findings=(
            "check.valance-kind",
            "check.valance-stands-out",
            "check.flaps-without-returns",
            "check.valance-short",
            "check.valance-without-returns",
        ),
        limits=(VALANCE_BEYOND,),
    ),
    _check(
        id="lines-of-neighbours",
        looks_at="hems and ring rows of shades side by side",
        severity=Severity.ASK,
        findings=("check.hems-differ", "check.rows-differ"),
        limits=(LINED_UP,),
    ),
    _check(
        id="lowest-lock",
        looks_at="how much the lowest lock leaves open above the sill",
        severity=Severity.NOTE,
        findings=("rig.gap-when-locked", "rig.shorter-when-locked"),
    ),
    _check(
        id="can-be-drawn",
        looks_at="that rows, columns and widths leave a shade at all",
        severity=Severity.STOP,
        findings=(
            "design.drop-too-short",
            "design.rows-too-few",
            "design.rows-too-many",
            "design.columns-too-few",
            "design.too-narrow",
            "design.cloth-too-narrow",
            "design.shrinkage",
            "design.fullness-under-one",
            "design.width-fullness-under-one",
            "design.scallops-too-deep",
            "weigh.impossible",
        ),
    ),
    _check(
        id="materials",
        looks_at="that cloth, bar and rods are chosen, and belong to the style",
        severity=Severity.ASK,
        findings=(
            "design.face-missing",
            "design.rod-missing",
            "design.rods-in-loops",
            "design.loop-below-hem",
            "design.fullness-on-flat",
            "design.bar-in-a-swag",
            "design.rods-in-a-swag",
            "design.lock-without-repeat",
            "design.pattern-unlocked",
            "design.rod-pockets",
            "design.pockets-without-lining",
            "weigh.face",
            "weigh.bar",
            "weigh.rod",
            "check.interlining-bare",
        ),
    ),
    _check(
        id="cloth-weight",
        looks_at="how well weight, stiffness and hanging load are known",
        severity=Severity.ASK,
        findings=("weigh.swatch", "weigh.stiffness", "weigh.stiff", "weigh.bound"),
    ),
    _check(
        id="overrides",
        looks_at="overrides that no longer meet a stop",
        severity=Severity.NOTE,
        findings=("check.override-idle",),
    ),
)
