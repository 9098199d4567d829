"""Write docs/child-safety.md, the table of every rule on children, from the rules themselves.

Run it from the root of the project after a rule was added or changed:

    python -m docs.child_safety
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.rounding import System
from foldwright.core.safety.rule import Rule
from foldwright.core.safety.rules import RULES, RuleVerdict
from foldwright.core.why.telling import cite, fill, show_value

PAGE = Path(__file__).parent / "child-safety.md"

HEAD = """\
# Child safety

A cord or a loop can strangle a small child in minutes. **Nothing here certifies a shade, and
nothing here is legal advice.** The tool reckons, asks and warns; the maker reads the current text
of every rule, does the test that it demands on the finished shade, and answers for it. Local law
and licensed practice go before this page. Where children live or visit, cordless is the only safe
choice, and it does not take the cords behind the cloth away.

## What the tool says of a shade

For every rule of the markets that the job is sold into (all of them where none is named):

| verdict | what it means |
|---|---|
{verdicts}

A rule known by hearsay or from memory never passes anything. The day of making, `safety.made_on`,
decides which edition holds; without it the shade is taken as made from now on. For several markets
the strictest governs, and the figure says which: Canada allows a loop of its limit, Australia
refuses one of its own.

## The cord behind the shade

The freest stretch is the longest between two contact points: from row to row, or from the top row
to the tube. A pull of a child in its middle draws more cord in through the rings wherever the
pull, less the friction of the ring it bends round, exceeds what hangs on that column. On most
shades that is so: the loop grows until the rows it has raised weigh enough. So a small row spacing
proves nothing. What helps: a shroud from ring to ring and up to the headrail, fitted in the shop
(a shield sent along does not count in Canada); a pocket sewn into the lining; a holder at every
ring or a close ladder tape, with every stretch within the limit; in Europe a breakaway. The
reckoning counts the share of one column, no slack, and an invented range of friction: it decides
nothing, the pull does.

## The chain loop

Its length is counted from the headrail to its bottom. The tool works out how far it may hang from
the floor to the head where that is measured, and from the shade's height where it is not.

## The label

`plan --json` and the page of the shade list what the label of each market says and what is
missing. The warnings are drafts in the tool's own words: take the wording from the rule itself.

## Every rule

“Law” binds by itself; a “voluntary standard” does not, though a law may lean on it. “Text read”
means the clause that is cited, in full; “another's account read” a government's, a laboratory's or
an association's; “hearsay” a trade page's; “from memory” nobody's. The sources, with their
addresses and dates: [sources.toml](sources.toml). The standards of Europe were published in
February 2014 and hold wherever children up to 42 months may be, homes and public places among
them, and where the destination is not known (en-16434-catalogue).

This page is written from the rules by `python -m docs.child_safety`.
"""

SAID = {
    RuleVerdict.KEEPS: "by what is known of the shade it keeps to the limit",
    RuleVerdict.BREAKS: "it lies beyond the limit already as designed",
    RuleVerdict.MUST_BE_TESTED: "only the rule's own test on the finished shade can show it",
    RuleVerdict.CHECK_TEXT: "the rule is not known well enough here: read it",
    RuleVerdict.DOES_NOT_APPLY: "the shade has no such part, or the rule does not hold that day",
}


COLUMNS = (
    "about",
    "what it asks, in our words",
    "limit",
    "under a pull of",
    "force",
    "known by",
    "stands",
    "the shop itself",
    "source",
    "id",
)


def page() -> str:
    """Give the whole page."""
    verdicts = "\n".join(f"| {verdict.value} | {SAID[verdict]} |" for verdict in RuleVerdict)
    return "\n".join([HEAD.format(verdicts=verdicts), *_markets()])


def _markets() -> Iterator[str]:
    for market in Market:
        yield f"### {market.value}\n"
        yield f"| {' | '.join(COLUMNS)} |"
        yield "|---" * len(COLUMNS) + "|"
        yield from (_line(rule) for rule in RULES if rule.market is market)
        yield ""


def _line(rule: Rule) -> str:
    cells = (
        rule.subject.value,
        fill(rule.says, rule.figures, System.METRIC),
        _limit(rule),
        show_value(rule.pull, System.METRIC) if rule.pull else "",
        rule.force.value,
        rule.confidence.value,
        rule.standing.words,
        rule.shop_must,
        cite(rule.source),
        f"`{rule.id}`",
    )
    return f"| {' | '.join(cells)} |"


def _limit(rule: Rule) -> str:
    """Say on which side of its number a rule is kept, in metric and in inches."""
    if rule.limit is None or rule.comparison is None:
        return ""
    metric, inch = (show_value(rule.limit, system) for system in (System.METRIC, System.INCH))
    both = f"{metric} ({inch})" if metric != inch else metric
    return f"{rule.comparison.value} {both}"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
