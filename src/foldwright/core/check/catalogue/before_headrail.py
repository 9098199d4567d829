"""What is checked before the parts of the headrail are cut."""

from __future__ import annotations

from functools import partial

from foldwright.core.check.catalogue.check import Check
from foldwright.core.facts.balancing import LOAD_RATIO, NARROW_CHANCE, RATING_SHARE
from foldwright.core.facts.bench import LEAST_SAFETY_WRAPS
from foldwright.core.facts.constants import ACCESSIBLE_FORCE
from foldwright.core.facts.cords import LEAST_USEFUL_LOOP
from foldwright.core.facts.house import AT_THE_BENCH, IN_THE_LIFT
from foldwright.core.facts.order_limits import (
    BAR_EDGE,
    FIXING_FROM_END,
    PULL_BESIDE_HANDLE,
    REACH,
    ROD_EDGE,
    SEAM_TO_HARDWARE,
)
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source

_check = partial(Check, stage=Stage.HEADRAIL)

BEFORE_HEADRAIL = (
    _check(
        id="bracket-load",
        looks_at="raised shade and tube against the rating of the brackets",
        severity=Severity.STOP,
        findings=("rig.brackets-overloaded",),
    ),
    _check(
        id="spring-window",
        looks_at="turns that lift the shade against turns that hand, spring and speed allow",
        severity=Severity.STOP,
        findings=("lift.nothing-fits", "lift.narrow", "lift.spring-too-strong"),
        limits=(NARROW_CHANCE,),
    ),
    _check(
        id="load-ratio",
        looks_at="load fully raised over load fully lowered",
        severity=Severity.NOTE,
        findings=("lift.load-ratio",),
        limits=(LOAD_RATIO,),
    ),
    _check(
        id="lock-and-brake",
        looks_at="which lock and which brake is fitted",
        severity=Severity.STOP,
        findings=("lift.lock-none", "lift.lock-unknown", "lift.brake-unknown"),
        limits=(IN_THE_LIFT["arrival_speed_limit_m_s"],),
    ),
    _check(
        id="spring-in-tube",
        looks_at="tube against the length and the thickness of the spring or motor",
        severity=Severity.STOP,
        findings=("rig.tube-too-short", "lift.spring-does-not-go-in", "lift.motor-does-not-fit"),
    ),
    _check(
        id="spring-sheet",
        looks_at="what the sheet of the spring says of its rate and its strength",
        severity=Severity.ASK,
        findings=(
            "lift.spring-contradicts",
            "lift.spring-sheet",
            "lift.spring-strength",
            "lift.wire-strength",
        ),
        source=Source(id="wire-strength-page"),
    ),
    _check(
        id="clutch",
        looks_at="torque and pull on the chain against the clutch and the hand",
        severity=Severity.STOP,
        findings=("lift.clutch-too-weak", "lift.chain-pull"),
        limits=(IN_THE_LIFT["hand_force_limit_n"], RATING_SHARE),
    ),
    _check(
        id="motor",
        looks_at="torque and turns against the motor",
        severity=Severity.STOP,
        findings=("lift.motor-too-weak",),
        limits=(IN_THE_LIFT["motor_margin"],),
    ),
    _check(
        id="hand-force",
        looks_at="pull on the bar",
        severity=Severity.ASK,
        findings=("lift.hand-force", "lift.accessible"),
        limits=(IN_THE_LIFT["hand_force_limit_n"], ACCESSIBLE_FORCE),
    ),
    _check(
        id="safety-wraps",
        looks_at="wraps that stay on the tube at full drop",
        severity=Severity.STOP,
        findings=("rig.safety-wraps",),
        limits=(LEAST_SAFETY_WRAPS,),
    ),
    _check(
        id="room-for-wraps",
        looks_at="wraps side by side against the room beside each column",
        severity=Severity.STOP,
        findings=(
            "rig.columns-too-close",
            "rig.drop-beyond-tube",
            "rig.clips-nearer-than-usual",
            "rig.cloth-and-cords-apart",
        ),
        limits=(AT_THE_BENCH["clip_nearest"], AT_THE_BENCH["clip_farthest"]),
    ),
    _check(
        id="columns-and-brackets",
        looks_at="wraps against brackets and cradles",
        severity=Severity.STOP,
        findings=("rig.wraps-at-bracket", "rig.no-room-for-cradle", "rig.cradle"),
        limits=(AT_THE_BENCH["tube_sag_share"],),
    ),
    _check(
        id="tapes-alike",
        looks_at="turns of the tapes, which thicken the tube as they wind",
        severity=Severity.ASK,
        kept_by="The bench step that ties the tapes begins all of them at one turn of the tube.",
    ),
    _check(
        id="spring-end",
        looks_at="end and hand of the spring against the side the cords leave",
        severity=Severity.STOP,
        findings=("rig.spring-end", "rig.spring-hand"),
    ),
    _check(
        id="release",
        looks_at="room for the further pull that releases the lock",
        severity=Severity.NOTE,
        findings=("rig.sill-in-release",),
        limits=(IN_THE_LIFT["release_turns"],),
    ),
    _check(
        id="up-stop",
        looks_at="raised rings against the headrail",
        severity=Severity.STOP,
        findings=("rig.rings-at-rail",),
        limits=(AT_THE_BENCH["stop_clearance"],),
    ),
    _check(
        id="tube-under-board",
        looks_at="tube against the board above it",
        severity=Severity.STOP,
        findings=("rig.tube-fouls-board",),
    ),
    _check(
        id="bar-at-handle",
        looks_at="bar at rest against the handles of the window",
        severity=Severity.NOTE,
        findings=("check.bar-at-handle",),
        limits=(PULL_BESIDE_HANDLE,),
    ),
    _check(
        id="reach",
        looks_at="height of the raised bar above the floor",
        severity=Severity.ASK,
        findings=("check.bar-out-of-reach",),
        limits=(REACH,),
    ),
    _check(
        id="sags",
        looks_at="sag of the board between its fixings, and of the bar",
        severity=Severity.ASK,
        findings=("lift.sag-board", "lift.sag-bottom-bar"),
        limits=(AT_THE_BENCH["board_sag"], AT_THE_BENCH["bar_sag"]),
    ),
    _check(
        id="fixing-end",
        looks_at="outermost fixing to the end of the board",
        severity=Severity.STOP,
        findings=("check.fixing-near-end",),
        limits=(FIXING_FROM_END,),
    ),
    _check(
        id="seam-at-hardware",
        looks_at="seam against brackets and the pull",
        severity=Severity.NOTE,
        findings=("check.seam-at-hardware",),
        limits=(SEAM_TO_HARDWARE,),
    ),
    _check(
        id="bar-length",
        looks_at="bar against the finished width",
        severity=Severity.NOTE,
        findings=("check.bar-too-long",),
        limits=(BAR_EDGE,),
    ),
    _check(
        id="rod-length",
        looks_at="rods against the finished width",
        severity=Severity.NOTE,
        findings=("check.rod-too-long",),
        limits=(ROD_EDGE,),
    ),
    _check(
        id="outlet",
        looks_at="side of the motor against the outlet",
        severity=Severity.ASK,
        findings=("check.outlet-side",),
    ),
    _check(
        id="chain-loop",
        looks_at="length of the chain loop against the rules of the markets",
        severity=Severity.STOP,
        findings=("safety.chain-too-long", "safety.no-chain-allowed", "safety.chain-length"),
        limits=(LEAST_USEFUL_LOOP,),
        source=Source(id="en-13120-summary"),
    ),
    _check(
        id="children",
        looks_at="a chain where small children can be",
        severity=Severity.STOP,
        findings=("safety.chain-near-children", "safety.children"),
    ),
    _check(
        id="chain-device",
        looks_at="what secures the chain loop",
        severity=Severity.ASK,
        findings=("safety.chain-device",),
    ),
    _check(
        id="cord-drawn-out",
        looks_at="cord that a child's pull draws out behind the shade",
        severity=Severity.ASK,
        findings=("safety.cord-drawn-out",),
        source=Source(id="sor-2019-97", clause="s. 6"),
    ),
    _check(
        id="parts",
        looks_at="that every part of the lift is chosen, and in the list",
        severity=Severity.ASK,
        findings=(
            "lift.kind",
            "lift.tube",
            "lift.cord",
            "lift.cord-and-tape",
            "lift.spring",
            "lift.clutch",
            "lift.motor",
            "rig.choose-bracket",
            "rig.choose-tube",
            "rig.choose-cord",
            "rig.choose-lift",
        ),
    ),
)
