"""Europe and the United Kingdom: EN 13120 and its two companions, known by others' accounts.

They were published on 28 February 2014 and hold wherever children up to 42 months may be, homes
and public places among them, and where the destination is not known (en-16434-catalogue).
"""

from __future__ import annotations

from datetime import date
from functools import partial

from foldwright.core.facts.markets import ROW_SPACING, Market
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.safety.rule import (
    Comparison,
    Confidence,
    Force,
    Measure,
    Rule,
    Standing,
    Subject,
    limit,
)
from foldwright.core.why.figure import Unit
from foldwright.core.why.source import Source

SECONDARY, HEARSAY, MEMORY = Confidence.SECONDARY, Confidence.HEARSAY, Confidence.MEMORY
LABORATORY = Source(id="en-13120-summary")
LOOP_PAGES = Source(id="en-loop-pages")
INNER_CORD_PAGE = Source(id="uk-inner-cord-page")
RECALLED = Source(id="en-13120-recalled")

READ_THE_STANDARD = "Read the standard itself, which was not read here, and do its tests."

_standard = partial(
    Rule,
    market=Market.EUROPE_AND_UK,
    force=Force.STANDARD,
    confidence=SECONDARY,
    standing=Standing(made_from=date(2014, 2, 28)),
    source=LABORATORY,
    shop_must=READ_THE_STANDARD,
)

HANGING_LOAD = limit(
    "load that a breakaway lets go of in Europe",
    6.0,
    Unit.MASS,
    "With this mass hung on it, no loop may be left that a head goes into.",
    SECONDARY,
    LABORATORY,
)

TENSIONER_HEIGHT = limit(
    "least height of a loop with a fixed tensioner in Europe",
    Length.mm(1500),
    Unit.LENGTH,
    "Two trade pages put the bottom of the loop at least so far above the floor.",
    HEARSAY,
    LOOP_PAGES,
    rounding=Rounding.CUT_OVERSIZE,
)

TALL_SHADE = limit(
    "tall shade in the rule for loops in Europe",
    Length.mm(2500),
    Unit.LENGTH,
    "Two trade pages measure loops of taller shades against the shade's height.",
    HEARSAY,
    LOOP_PAGES,
)

EUROPE_AND_UK = (
    _standard(
        id="europe.breakaway-height",
        subject=Subject.CHAIN_BREAKAWAY,
        says="Where the height is known, a loop with a breakaway ends {0} or more above the floor.",
        measure=Measure.CHAIN_ABOVE_FLOOR,
        comparison=Comparison.AT_LEAST,
        limit=limit(
            "least height of a loop with a breakaway in Europe",
            Length.mm(600),
            Unit.LENGTH,
            "A laboratory's account puts the bottom of the loop at least so far above the floor.",
            SECONDARY,
            LABORATORY,
            rounding=Rounding.CUT_OVERSIZE,
        ),
    ),
    _standard(
        id="europe.breakaway-share",
        subject=Subject.CHAIN_BREAKAWAY,
        says="Where the height is not known, a loop with a breakaway is at most {0} of the shade's"
        " height.",
        measure=Measure.CHAIN_SHARE,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "share of the shade's height for a loop with a breakaway",
            2 / 3,
            Unit.SHARE,
            "A laboratory's account: two thirds, where the height of the window is not known.",
            SECONDARY,
            LABORATORY,
        ),
    ),
    _standard(
        id="europe.breakaway-load",
        subject=Subject.CHAIN_BREAKAWAY,
        says="With {0} hung on it, no hazardous loop is left.",
        shop_must="Hang the mass on the loop, in every position; read how soon it must let go.",
        measure=Measure.RELEASE,
        comparison=Comparison.AT_MOST,
        limit=HANGING_LOAD,
    ),
    _standard(
        id="europe.breakaway-time",
        subject=Subject.CHAIN_BREAKAWAY,
        says="The breakaway lets go within {0}.",
        confidence=MEMORY,
        source=RECALLED,
        measure=Measure.TIME,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "time in which a breakaway lets go",
            5.0,
            Unit.TIME,
            "Recalled of the standard, not read.",
            MEMORY,
            RECALLED,
        ),
    ),
    _standard(
        id="europe.tensioner-height",
        subject=Subject.CHAIN_TENSIONER,
        says="Where the height is known, a loop in a fixed tensioner ends {0} or more above the"
        " floor.",
        confidence=HEARSAY,
        source=LOOP_PAGES,
        measure=Measure.CHAIN_ABOVE_FLOOR,
        comparison=Comparison.AT_LEAST,
        limit=TENSIONER_HEIGHT,
    ),
    _standard(
        id="europe.tensioner-length",
        subject=Subject.CHAIN_TENSIONER,
        says="Where the height is not known, a loop in a fixed tensioner is at most {0} long on"
        " a shade of {1} or less.",
        confidence=HEARSAY,
        source=LOOP_PAGES,
        measure=Measure.CHAIN_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "loop with a fixed tensioner where the height is not known",
            Length.mm(1000),
            Unit.LENGTH,
            "Two trade pages allow so much on a shade that is not tall.",
            HEARSAY,
            LOOP_PAGES,
        ),
        others=(TALL_SHADE,),
    ),
    _standard(
        id="europe.tensioner-tall",
        subject=Subject.CHAIN_TENSIONER,
        says="Where the height is not known, a loop in a fixed tensioner on a shade of more than"
        " {1} ends {0} or more above its bottom edge.",
        confidence=HEARSAY,
        source=LOOP_PAGES,
        measure=Measure.CHAIN_SHORTER_BY,
        comparison=Comparison.AT_LEAST,
        limit=TENSIONER_HEIGHT,
        others=(TALL_SHADE,),
    ),
    _standard(
        id="europe.tensioner-fixed",
        subject=Subject.CHAIN_TENSIONER,
        says="The safety device is fitted at the factory, in the position it works in, with a"
        " warning on it.",
    ),
    _standard(
        id="europe.retractable",
        subject=Subject.RETRACTABLE,
        says="A pull cord with a collector keeps to the heights of a fixed tensioner: {0} above the"
        " floor.",
        confidence=HEARSAY,
        source=LOOP_PAGES,
        measure=Measure.ABOVE_FLOOR,
        comparison=Comparison.AT_LEAST,
        limit=TENSIONER_HEIGHT,
    ),
    _standard(
        id="europe.inner-cord",
        subject=Subject.INNER_CORD,
        says="Where an inner cord is held at points more than {0} apart, it has a breakaway that"
        " lets go under {1}.",
        confidence=HEARSAY,
        source=INNER_CORD_PAGE,
        measure=Measure.SPAN,
        comparison=Comparison.AT_MOST,
        limit=ROW_SPACING[Market.EUROPE_AND_UK],
        others=(HANGING_LOAD,),
    ),
    _standard(
        id="europe.loop",
        subject=Subject.LOOP,
        says="A loop is hazardous if a head probe passes right into it; the probe's size is not"
        " known here.",
        confidence=HEARSAY,
        source=LOOP_PAGES,
    ),
    _standard(
        id="europe.label",
        subject=Subject.LABEL,
        says="The maker's name and a warning about children stand on the blind.",
        shop_must="Read the standard for the wording, the pictures and their size.",
    ),
    _standard(
        id="europe.warning",
        subject=Subject.WARNING,
        says="Warnings have a wording and a size of their own, which were not read.",
        confidence=MEMORY,
        source=RECALLED,
    ),
)
