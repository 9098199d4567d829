"""Canada: the Corded Window Coverings Regulations, SOR/2019-97, as read; told in our words."""

from __future__ import annotations

from dataclasses import replace
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

READ = Confidence.READ
PULL_AT_IT = "Read the current text and pull the finished shade as it demands, in every position."

_law = partial(
    Rule,
    market=Market.CANADA,
    force=Force.LAW,
    confidence=READ,
    standing=Standing(made_from=date(2021, 5, 1)),
)


def _section(number: str) -> Source:
    sections = "s." if number.isdecimal() else "ss."
    return Source(id="sor-2019-97", clause=f"{sections} {number}")


CHILD_PULL = limit(
    "pull of a child in Canada",
    35.0,
    Unit.FORCE,
    "Cords are measured while they are pulled, in any direction, with a force that rises to this.",
    READ,
    _section("5 to 8"),
)

SHORT_CORD = limit(
    "cord allowed in Canada",
    Length.mm(220),
    Unit.LENGTH,
    "Shorter cord cannot go round the neck of a one-year-old.",
    READ,
    _section("5"),
)

SMALL_LOOP = limit(
    "way round a loop allowed in Canada",
    Length.mm(440),
    Unit.LENGTH,
    "A smaller loop does not go over a child's head.",
    READ,
    _section("7"),
)

CANADA = (
    _law(
        id="canada.free-cord",
        subject=Subject.OPERATING_CORD,
        says="A cord within reach that has one free end is at most {0} long under the pull.",
        shop_must=PULL_AT_IT,
        source=_section("5"),
        measure=Measure.CORD_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=SHORT_CORD,
        pull=CHILD_PULL,
    ),
    _law(
        id="canada.inner-cord",
        subject=Subject.INNER_CORD,
        says="A cord within reach that has no free end is at most {0} long between two contact"
        " points that follow each other, under the pull: slack counts, tape and chain are cord.",
        shop_must=PULL_AT_IT,
        source=_section("6"),
        measure=Measure.SPAN,
        comparison=Comparison.AT_MOST,
        limit=replace(ROW_SPACING[Market.CANADA], rounding=Rounding.MUST_FIT),
        pull=CHILD_PULL,
    ),
    _law(
        id="canada.loop",
        subject=Subject.LOOP,
        says="A loop that is there, or that a pull can make or widen, is at most {0} round.",
        shop_must="Read the current text; pull at every column, and try to draw cord in from the"
        " bays beside.",
        source=_section("7"),
        measure=Measure.LOOP,
        comparison=Comparison.AT_MOST,
        limit=SMALL_LOOP,
        pull=CHILD_PULL,
    ),
    _law(
        id="canada.chain-loop",
        subject=Subject.CHAIN,
        says="A bead chain is cord too: its loop is at most {0} round under the pull, which no"
        " chain of useful length keeps to.",
        shop_must=PULL_AT_IT,
        source=_section("1 and 7"),
        measure=Measure.LOOP,
        comparison=Comparison.AT_MOST,
        limit=SMALL_LOOP,
        pull=CHILD_PULL,
    ),
    _law(
        id="canada.joined-cords",
        subject=Subject.JOINED_CORDS,
        says="Two cords with free ends, joined, are at most {0} long together and make no loop"
        " of more than {1}.",
        shop_must=PULL_AT_IT,
        source=_section("8"),
        measure=Measure.CORD_LENGTH,
        comparison=Comparison.AT_MOST,
        limit=SHORT_CORD,
        pull=CHILD_PULL,
        others=(SMALL_LOOP,),
    ),
    _law(
        id="canada.out-of-reach",
        subject=Subject.SHROUD,
        says="A cord that nobody can reach stays so for the useful life, in every position.",
        shop_must="Read the current text; try to reach the cord in every position, and work the"
        " shade until it is worn in.",
        source=_section("4"),
    ),
    _law(
        id="canada.shield-sent-along",
        subject=Subject.SHROUD,
        says="A shield that is sent along to be put on later does not count: the shade complies"
        " as it is received.",
        shop_must="Fit shrouds in the shop.",
        confidence=Confidence.SECONDARY,
        source=Source(id="health-canada-retrofit"),
    ),
    _law(
        id="canada.small-parts",
        subject=Subject.SMALL_PARTS,
        says="A part that a child can get at, and that fits the cylinder of schedule 1, withstands"
        " {0} in any direction.",
        shop_must="Read the current text; pull at caps, rings, pulls and connectors.",
        source=_section("2"),
        measure=Measure.STRENGTH,
        comparison=Comparison.AT_LEAST,
        limit=limit(
            "force on small parts in Canada",
            90.0,
            Unit.FORCE,
            "Parts that come off under less can be swallowed or breathed in.",
            READ,
            _section("2"),
        ),
    ),
    _law(
        id="canada.lead",
        subject=Subject.LEAD,
        says="Outer parts hold at most {0} milligrams of lead in a kilogram.",
        shop_must="Ask each supplier for a statement on lead; chains and cast parts first.",
        source=_section("3"),
        measure=Measure.CONTENT,
        comparison=Comparison.AT_MOST,
        limit=limit(
            "lead allowed in Canada, milligrams in a kilogram",
            90.0,
            Unit.RATIO,
            "Children put outer parts into their mouths.",
            READ,
            _section("3"),
        ),
    ),
    _law(
        id="canada.signal-word",
        subject=Subject.WARNING,
        says="The words WARNING and MISE EN GARDE stand in bold sans-serif capitals, {0} high or"
        " more, in good contrast, for good.",
        shop_must="Read the current text; measure a printed label.",
        source=_section("10 to 12"),
        measure=Measure.LETTERS,
        comparison=Comparison.AT_LEAST,
        limit=limit(
            "height of the signal word in Canada",
            Length.mm(5),
            Unit.LENGTH,
            "Letters of the word WARNING, and of its French, are at least this high.",
            READ,
            _section("11 and 12"),
            rounding=Rounding.MARK,
        ),
    ),
    _law(
        id="canada.label",
        subject=Subject.LABEL,
        says="On the shade and its packing, in English and French, {0} high or more: model, date"
        " as year then month or week, maker's name and town, and the importer's.",
        shop_must="Read the current text; fix the label for good.",
        source=_section("10 to 13"),
        measure=Measure.LETTERS,
        comparison=Comparison.AT_LEAST,
        limit=limit(
            "height of label text in Canada",
            Length.mm("2.5"),
            Unit.LENGTH,
            "All letters of the label but the signal word are at least this high.",
            READ,
            _section("12"),
            rounding=Rounding.MARK,
        ),
    ),
    _law(
        id="canada.no-reference",
        subject=Subject.LABEL,
        says="Neither shade, papers nor advertisements refer to the Act or the Regulations.",
        shop_must="Keep both out of labels, quotes and advertisements.",
        source=_section("9"),
    ),
    _law(
        id="canada.warning",
        subject=Subject.WARNING,
        says="A strangulation warning stands on the shade, its packing, its instructions and every"
        " advertisement.",
        shop_must="Take the wording from the regulation itself, in both languages.",
        source=_section("15"),
    ),
    _law(
        id="canada.instructions",
        subject=Subject.INSTRUCTIONS,
        says="With every shade go a list of its parts where it is not put together, how to install"
        " it and how to work it.",
        shop_must="Hand the sheets over with the shade, in both languages.",
        source=_section("14"),
    ),
)
