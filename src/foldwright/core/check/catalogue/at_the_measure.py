"""What is checked while the tape is still at the window."""

from __future__ import annotations

from functools import partial

from foldwright.core.check.catalogue.check import Check
from foldwright.core.facts.house import AT_THE_WINDOW
from foldwright.core.facts.order_limits import DARK_OVERLAP
from foldwright.core.facts.window_limits import (
    BOARD_ABOVE_FRAME,
    DIAGONAL_DISAGREEMENT,
    HANDLE_CLEARANCE,
    HEADROOM_ABOVE_BOARD,
    HEIGHT_SPREAD_SEEN,
    LEAST_OVERLAP,
    LEAST_REVEAL_DEPTH,
    NARROWEST_USUAL,
    TALLEST_SHARE,
    WALL_BESIDE_OVERLAP,
    WIDEST_USUAL,
)
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source

_check = partial(Check, stage=Stage.MEASURE)

AT_THE_MEASURE = (
    _check(
        id="inside-width",
        looks_at="finished width of an inside shade against every measured width",
        severity=Severity.STOP,
        findings=("measure.width-binds", "measure.width-tight"),
        limits=(AT_THE_WINDOW["inside_deduction"], AT_THE_WINDOW["wide_inside_deduction"]),
    ),
    _check(
        id="lean",
        looks_at="lean of the reveal, by its diagonals, against the gap at each side",
        severity=Severity.STOP,
        findings=("measure.racking-binds",),
    ),
    _check(
        id="squareness",
        looks_at="both diagonals, and whether they belong to the widths and heights",
        severity=Severity.ASK,
        findings=("measure.diagonals-disagree", "measure.diagonals-missing"),
        limits=(DIAGONAL_DISAGREEMENT,),
    ),
    _check(
        id="heights-spread",
        looks_at="difference of the measured heights",
        severity=Severity.NOTE,
        findings=("measure.heights-spread",),
        limits=(HEIGHT_SPREAD_SEEN,),
    ),
    _check(
        id="exchanged",
        looks_at="width and height against the shape noted by eye",
        severity=Severity.STOP,
        findings=("measure.exchanged",),
    ),
    _check(
        id="signed",
        looks_at="who measured or gave the size, and whether they signed",
        severity=Severity.ASK,
        findings=("measure.measures-unsigned", "measure.size-unsigned"),
    ),
    _check(
        id="reveal-depth",
        looks_at="depth of the reveal against headrail and raised stack",
        severity=Severity.STOP,
        findings=(
            "measure.reveal-shallow",
            "design.headrail-stands-out",
            "design.stack-stands-out",
        ),
        limits=(LEAST_REVEAL_DEPTH,),
    ),
    _check(
        id="handle",
        looks_at="room behind the cloth against handles and cranks",
        severity=Severity.STOP,
        findings=("measure.handle-hits",),
        limits=(HANDLE_CLEARANCE,),
    ),
    _check(
        id="inward-sash",
        looks_at="raised stack against a sash that opens or tilts inwards",
        severity=Severity.STOP,
        findings=("check.stack-in-sash",),
    ),
    _check(
        id="headroom",
        looks_at="wall above the casing against board and brackets",
        severity=Severity.STOP,
        findings=("measure.headroom", "measure.board-near-frame"),
        limits=(HEADROOM_ABOVE_BOARD, BOARD_ABOVE_FRAME),
    ),
    _check(
        id="side-wall",
        looks_at="free wall at each side against the overlap",
        severity=Severity.STOP,
        findings=("measure.wall-left", "measure.wall-right"),
        limits=(WALL_BESIDE_OVERLAP,),
    ),
    _check(
        id="overlap",
        looks_at="overlap at each side against the light",
        severity=Severity.NOTE,
        findings=(
            "measure.overlap-left",
            "measure.overlap-right",
            "check.dark-overlap-left",
            "check.dark-overlap-right",
        ),
        limits=(LEAST_OVERLAP, DARK_OVERLAP),
    ),
    _check(
        id="ground",
        looks_at="what the fixings go into",
        severity=Severity.STOP,
        findings=("check.no-screw", "measure.substrate"),
    ),
    _check(
        id="way-in",
        looks_at="width of the shade against the narrowest place on its way",
        severity=Severity.STOP,
        findings=("check.does-not-pass",),
    ),
    _check(
        id="usual-shape",
        looks_at="width and drop against what is usual",
        severity=Severity.NOTE,
        findings=(
            "measure.unusually-wide",
            "measure.unusually-narrow",
            "measure.unusually-tall",
        ),
        limits=(WIDEST_USUAL, NARROWEST_USUAL, TALLEST_SHARE),
    ),
    _check(
        id="something-left",
        looks_at="that deductions and clearances leave a width and a drop",
        severity=Severity.STOP,
        findings=("measure.no-width", "measure.no-drop"),
    ),
    _check(
        id="measured",
        looks_at="that enough is measured to know the finished size",
        severity=Severity.ASK,
        findings=(
            "measure.width-missing",
            "measure.drop-missing",
            "measure.widths-few",
            "measure.heights-few",
            "measure.sill",
        ),
    ),
    _check(
        id="mount",
        looks_at="inside or outside, and what belongs to which",
        severity=Severity.ASK,
        findings=(
            "measure.place",
            "measure.deduction-clash",
            "measure.overlap-left-clash",
            "measure.overlap-right-clash",
            "measure.above-clash",
            "measure.below-clash",
            "measure.returns-clash",
            "measure.width-twice",
        ),
    ),
    _check(
        id="height-rule",
        looks_at="which of unequal heights governs",
        severity=Severity.ASK,
        findings=("measure.height-rule",),
        source=Source(id="measuring-page", clause="inside mount, height"),
    ),
    _check(
        id="neighbour-measured",
        looks_at="height above the floor of windows that are to line up",
        severity=Severity.ASK,
        findings=("check.beside-unmeasured",),
    ),
)
