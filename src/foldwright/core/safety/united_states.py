"""United States: two parts of the federal code, one of them vacated, and a voluntary standard."""

from __future__ import annotations

from datetime import date
from functools import partial

from foldwright.core.facts.markets import ROW_SPACING, Market
from foldwright.core.quantity.length import Length
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

BEGINNING_2018, BEGINNING_2022 = date(2018, 12, 15), date(2024, 6, 1)
EDITION_2018 = Standing(
    made_from=BEGINNING_2018, superseded_on=BEGINNING_2022, superseded_by="the edition of 2022"
)
EDITION_2022 = Standing(made_from=BEGINNING_2022)
LISTED_HAZARDS = Standing(made_from=date(2022, 12, 28))
VACATED = Standing(vacated_on=date(2023, 9, 12))

BUY_THE_STANDARD = (
    "Read the edition that holds for the day of making, and do its tests: its pull, probe and loop"
    " are not known here."
)

_listed = partial(
    Rule,
    market=Market.UNITED_STATES,
    force=Force.LAW,
    confidence=Confidence.READ,
    standing=LISTED_HAZARDS,
    source=Source(id="16-cfr-1120", clause="summary"),
)
_standard = partial(
    Rule,
    market=Market.UNITED_STATES,
    force=Force.STANDARD,
    confidence=Confidence.SECONDARY,
    standing=EDITION_2022,
    source=Source(id="ansi-wcma-2022"),
    shop_must=BUY_THE_STANDARD,
)


UNITED_STATES = (
    _listed(
        id="united-states.inner-cord",
        subject=Subject.INNER_CORD,
        says="A hazardous inner cord is a listed hazard on stock and on custom shades alike; how"
        " it is measured was not read.",
        shop_must=BUY_THE_STANDARD,
    ),
    _listed(
        id="united-states.stock-cords",
        subject=Subject.OPERATING_CORD,
        says="A hazardous operating cord is a listed hazard on stock shades; a shade made to order"
        " is none.",
        shop_must="Read the current text where a shade is made before it is ordered.",
    ),
    _listed(
        id="united-states.label",
        subject=Subject.LABEL,
        says="A shade without its maker's label is a listed hazard, stock or custom.",
        shop_must="Read the current text for what the label says; fix it for good.",
    ),
    _standard(
        id="united-states.custom-cords",
        subject=Subject.OPERATING_CORD,
        says="An operating cord of a custom shade is at most {0} long, or out of reach.",
        shop_must="Nothing by this rule: it is not in force, although copies still print it.",
        force=Force.LAW,
        confidence=Confidence.READ,
        standing=VACATED,
        source=Source(id="16-cfr-1260", clause="1260.1"),
        measure=Measure.CORD_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "cord in the vacated rule of the United States",
            Length.inches(8),
            Unit.LENGTH,
            "A court vacated the rule on 12 September 2023, before it took effect.",
            Confidence.READ,
            Source(id="16-cfr-1260"),
        ),
    ),
    _standard(
        id="united-states.cord-share-2018",
        subject=Subject.OPERATING_CORD,
        says="The cord of a custom shade is by default at most {0} of the shade's height.",
        confidence=Confidence.HEARSAY,
        standing=EDITION_2018,
        source=Source(id="us-cord-length-page"),
        measure=Measure.CORD_SHARE,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "cord share in the edition of 2018",
            0.4,
            Unit.SHARE,
            "One trade page says so of the edition of 2018, unless the client asks otherwise.",
            Confidence.HEARSAY,
            Source(id="us-cord-length-page"),
        ),
    ),
    _standard(
        id="united-states.free-cord-2022",
        subject=Subject.OPERATING_CORD,
        says="No cord to work a custom shade hangs free, and no several cords end in one knob.",
    ),
    _standard(
        id="united-states.short-cord",
        subject=Subject.OPERATING_CORD,
        says="A cord that is left is at most {0} long in any position of use.",
        measure=Measure.CORD_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "short cord in the United States",
            Length.inches(8),
            Unit.LENGTH,
            "A shorter cord is not counted as a hazard.",
            Confidence.SECONDARY,
            Source(id="ansi-wcma-2022"),
        ),
    ),
    _standard(
        id="united-states.chain-loop-2022",
        subject=Subject.CHAIN_TENSIONER,
        says="A continuous loop has a tension device and passes tests of its own.",
    ),
    _standard(
        id="united-states.tension-device",
        subject=Subject.CHAIN_TENSIONER,
        says="The device is fixed at the factory, the shade does not work unless it is installed,"
        " and screws for wood go with it.",
        confidence=Confidence.HEARSAY,
        source=Source(id="us-tension-page"),
    ),
    _standard(
        id="united-states.retractable",
        subject=Subject.RETRACTABLE,
        says="A retractable cord shows at most {0} at rest and {1} when pulled.",
        confidence=Confidence.MEMORY,
        source=Source(id="ansi-wcma-recalled"),
        measure=Measure.CORD_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "retractable cord at rest, United States",
            Length.inches(12),
            Unit.LENGTH,
            "Recalled of the edition of 2022, with little certainty.",
            Confidence.MEMORY,
            Source(id="ansi-wcma-recalled"),
        ),
        others=(
            limit(
                "retractable cord when pulled, United States",
                Length.inches(36),
                Unit.LENGTH,
                "Recalled of the edition of 2022, with little certainty.",
                Confidence.MEMORY,
                Source(id="ansi-wcma-recalled"),
            ),
        ),
    ),
    _standard(
        id="united-states.ring-spacing-2012",
        subject=Subject.INNER_CORD,
        says="The rings of an inner cord within reach are at most {0} apart; this older wording is"
        " superseded, and the tool keeps it as a cap of its own.",
        standing=Standing(superseded_on=BEGINNING_2018, superseded_by="the edition of 2018"),
        source=Source(id="ansi-wcma-2012", clause="4.5.3"),
        measure=Measure.SPAN,
        comparison=Comparison.AT_MOST,
        limit=ROW_SPACING[Market.UNITED_STATES],
    ),
    _standard(
        id="united-states.warning",
        subject=Subject.WARNING,
        says="Warning labels and tags have a wording of their own in sections 5 and 6.",
        confidence=Confidence.MEMORY,
        source=Source(id="ansi-wcma-recalled"),
    ),
)
