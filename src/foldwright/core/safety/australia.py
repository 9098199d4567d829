"""Australia: two mandatory standards, the later one as a government guide quotes it."""

from __future__ import annotations

from datetime import date
from functools import partial

from foldwright.core.facts.markets import Market
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

SECONDARY = Confidence.SECONDARY
GUIDE = Source(id="au-corded-2014", clause="s. 6(1)(a)")
READ_IT = "Read the current text, and ask whether a later one has replaced it."

_law = partial(
    Rule,
    market=Market.AUSTRALIA,
    force=Force.LAW,
    confidence=SECONDARY,
    standing=Standing(made_from=date(2015, 1, 1)),
    source=GUIDE,
    shop_must=READ_IT,
)

SAFE_HEIGHT = limit(
    "height of cords in Australia",
    Length.mm(1600),
    Unit.LENGTH,
    "Below this height above the floor no loose cord may form a loop; one account says below,"
    " another at or below, and the stricter is kept.",
    SECONDARY,
    GUIDE,
    rounding=Rounding.CUT_OVERSIZE,
)

SMALL_LOOP = limit(
    "loop refused in Australia",
    Length.mm(220),
    Unit.LENGTH,
    "A loop of just this size is refused already.",
    SECONDARY,
    GUIDE,
)

HOLDING_TIME = limit(
    "time for which a guide holds in Australia",
    10.0,
    Unit.TIME,
    "The force is kept on so long.",
    SECONDARY,
    GUIDE,
)

AUSTRALIA = (
    _law(
        id="australia.loop",
        subject=Subject.LOOP,
        says="A loose cord forms no loop of {0} or longer at less than {1} above the floor.",
        shop_must="Read the current text; draw at every cord below that height and measure what"
        " loop it makes.",
        measure=Measure.LOOP,
        comparison=Comparison.UNDER,
        limit=SMALL_LOOP,
        others=(SAFE_HEIGHT,),
    ),
    _law(
        id="australia.chain-loop",
        subject=Subject.CHAIN,
        says="A chain loop hangs {0} or more above the floor, or is held taut by a guide so that"
        " it forms no loop of {1}.",
        measure=Measure.CHAIN_ABOVE_FLOOR,
        comparison=Comparison.AT_LEAST,
        limit=SAFE_HEIGHT,
        others=(SMALL_LOOP,),
    ),
    _law(
        id="australia.cord-guide",
        subject=Subject.CHAIN_TENSIONER,
        says="A guide below the height for cords stays fixed under {0} in any direction for {1}.",
        shop_must="Read the current text; pull at the fixed guide with a force gauge.",
        measure=Measure.STRENGTH,
        comparison=Comparison.AT_LEAST,
        limit=limit(
            "force that a guide holds in Australia",
            70.0,
            Unit.FORCE,
            "The guide stays fixed under this force, whatever its direction.",
            SECONDARY,
            GUIDE,
        ),
        others=(HOLDING_TIME,),
    ),
    _law(
        id="australia.cleat",
        subject=Subject.CLEAT,
        says="A cleat is {0} or more above the floor.",
        measure=Measure.ABOVE_FLOOR,
        comparison=Comparison.AT_LEAST,
        limit=SAFE_HEIGHT,
    ),
    _law(
        id="australia.supply",
        subject=Subject.WHOLE,
        says="A mandatory standard of 2010 holds for goods as they are supplied; its clauses were"
        " not read.",
        standing=Standing(made_from=date(2010, 12, 30)),
        source=Source(id="au-corded-2010"),
    ),
    _law(
        id="australia.review",
        subject=Subject.WHOLE,
        says="A review that may replace the standard of 2010 was consulted on; its outcome was not"
        " found.",
        standing=Standing(),
        source=Source(id="au-review-notice"),
    ),
    _law(
        id="australia.label",
        subject=Subject.LABEL,
        says="A label gives the installer's name and how to reach him.",
        confidence=Confidence.HEARSAY,
        source=Source(id="au-label-manual"),
    ),
    _law(
        id="australia.warning",
        subject=Subject.WARNING,
        says="Warning tags stay on the cord.",
        confidence=Confidence.HEARSAY,
        source=Source(id="au-label-manual"),
    ),
)
