"""What is checked at the bench, and before and at the installation."""

from __future__ import annotations

from functools import partial

from foldwright.core.check.catalogue.check import Check
from foldwright.core.facts.bench import EQUAL_CORDS
from foldwright.core.facts.house import IN_THE_LIFT
from foldwright.core.facts.order_limits import PARCEL_BEYOND, RATED_SHARE, WITHDRAWAL
from foldwright.core.facts.proving import MOST_TURNS_COUNTED
from foldwright.core.facts.shop_learning import BATCH_ALARM
from foldwright.core.facts.window_limits import HEAD_FALL_SHARE
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source

_bench = partial(Check, stage=Stage.BENCH)
_install = partial(Check, stage=Stage.INSTALL)

AT_THE_BENCH = (
    _bench(
        id="cords-alike",
        looks_at="length of the cords against each other",
        severity=Severity.ASK,
        findings=("check.cords-unequal",),
        limits=(EQUAL_CORDS,),
    ),
    _bench(
        id="turns-wound",
        looks_at="turns wound in against the least that lift and the most that are safe",
        severity=Severity.STOP,
        findings=("lift.turns-outside", "lift.turns-unsure"),
    ),
    _bench(
        id="wound-spring",
        looks_at="energy of the wound spring",
        severity=Severity.NOTE,
        findings=("lift.wound-spring",),
    ),
    _bench(
        id="arrival",
        looks_at="speed with which a released shade reaches its stop, and what the lock hides",
        severity=Severity.NOTE,
        findings=("lift.brake-none", "lift.brake-drag", "lift.lock-two-way"),
        limits=(IN_THE_LIFT["arrival_speed_limit_m_s"],),
    ),
    _bench(
        id="bench-notes",
        looks_at="what is noted at the bench: that it can be, and that no two notes contradict",
        severity=Severity.ASK,
        findings=(
            "prove.no-number",
            "prove.nothing",
            "prove.above-the-stop",
            "prove.below-the-bottom",
            "prove.no-turns",
            "prove.turns-miscounted",
            "prove.overwound",
            "prove.friction-backwards",
            "prove.far-off",
            "prove.contradiction",
            "prove.spring-unread",
            "prove.spring-from-nothing",
            "prove.spring-backwards",
        ),
        limits=(MOST_TURNS_COUNTED,),
    ),
    _bench(
        id="batches",
        looks_at="springs of one batch against those of their kind before them",
        severity=Severity.ASK,
        findings=("prove.batch-differs",),
        limits=(BATCH_ALARM,),
    ),
    _bench(
        id="bench-proof",
        looks_at="whether a note at the bench proves anything of spring and load",
        severity=Severity.NOTE,
        findings=("prove.free-stall", "prove.two-way-lock-holds", "prove.time-without-brake"),
    ),
    _bench(
        id="label",
        looks_at="what the label must say",
        severity=Severity.ASK,
        findings=("safety.label",),
        source=Source(id="16-cfr-1120", clause="summary"),
    ),
    _bench(
        id="tests-for-children",
        looks_at="tests that the rules for children ask of the finished shade",
        severity=Severity.NOTE,
        findings=("safety.test",),
    ),
)

AT_THE_INSTALLATION = (
    _install(
        id="fixings",
        looks_at="load on the busiest fixing against a quarter of its rating, or its thread",
        severity=Severity.STOP,
        findings=(
            "check.fixings-overloaded",
            "check.fixing-unrated",
            "check.fixings-unchosen",
        ),
        limits=(RATED_SHARE, WITHDRAWAL),
    ),
    _install(
        id="chain-secured",
        looks_at="a chain loop without tensioner or breakaway",
        severity=Severity.STOP,
        findings=("safety.chain-loose", "lift.chain-loop"),
        source=Source(id="en-13120-summary"),
    ),
    _install(
        id="mains",
        looks_at="mains wiring of a motor",
        severity=Severity.NOTE,
        findings=("lift.motor-mains",),
    ),
    _install(
        id="level-head",
        looks_at="fall of the head across the width",
        severity=Severity.NOTE,
        findings=("measure.head-falls",),
        limits=(HEAD_FALL_SHARE,),
    ),
    _install(
        id="parcel",
        looks_at="box against the shade in it",
        severity=Severity.NOTE,
        findings=("check.parcel-short",),
        limits=(PARCEL_BEYOND,),
    ),
)
