"""What is checked when the roll is on the table; nothing is replaced once it is cut."""

from __future__ import annotations

from functools import partial

from foldwright.core.check.catalogue.check import Check
from foldwright.core.facts.order_limits import (
    BOW_AND_SKEW,
    FLAW_SPACING,
    NATURAL_SHRINKAGE,
    REPEAT_DIFFERENCE,
    ROLL_MARGIN,
    SHRINKAGE_APART,
    SUPPLIERS_BOW,
)
from foldwright.core.why.finding import Severity, Stage
from foldwright.core.why.source import Source

_check = partial(Check, stage=Stage.TABLE)

ON_THE_TABLE = (
    _check(
        id="right-roll",
        looks_at="cloth of the roll against the face",
        severity=Severity.STOP,
        findings=("check.roll-of-another-cloth",),
    ),
    _check(
        id="repeat",
        looks_at="repeat on the roll against the repeat ordered",
        severity=Severity.STOP,
        findings=("check.repeat-differs",),
        limits=(REPEAT_DIFFERENCE,),
    ),
    _check(
        id="roll-length",
        looks_at="cloth in hand against all cuts from it",
        severity=Severity.STOP,
        findings=("check.roll-short",),
        limits=(ROLL_MARGIN,),
        source=Source(id="repeat-newsletter"),
    ),
    _check(
        id="roll-width",
        looks_at="usable width of the roll against the pieces",
        severity=Severity.STOP,
        findings=("check.roll-too-narrow",),
    ),
    _check(
        id="one-lot",
        looks_at="dye lots of the shades of one room",
        severity=Severity.STOP,
        findings=("check.lots-mixed",),
        source=Source(id="check-before-cutting-page"),
    ),
    _check(
        id="one-nap",
        looks_at="direction of the pile on the shades of one room",
        severity=Severity.STOP,
        findings=("check.naps-mixed",),
    ),
    _check(
        id="bow-and-skew",
        looks_at="how far the cloth runs off square",
        severity=Severity.ASK,
        findings=("check.cloth-off-square",),
        limits=(BOW_AND_SKEW, SUPPLIERS_BOW),
    ),
    _check(
        id="flaws",
        looks_at="flaws on the roll against its length",
        severity=Severity.ASK,
        findings=("check.too-many-flaws",),
        limits=(FLAW_SPACING,),
    ),
    _check(
        id="cuts",
        looks_at="where every piece lies on its cloth: clear of flaws, matched, in one lot",
        severity=Severity.STOP,
        findings=("cloth.order", "cloth.cut-short"),
    ),
    _check(
        id="shrinkage-test",
        looks_at="whether a natural cloth was steamed before it is cut",
        severity=Severity.ASK,
        findings=("check.shrinkage-untested",),
        limits=(NATURAL_SHRINKAGE,),
    ),
    _check(
        id="shrinkage-apart",
        looks_at="shrinkage of the face against that of the lining",
        severity=Severity.ASK,
        findings=("check.shrinks-apart",),
        limits=(SHRINKAGE_APART,),
    ),
)
