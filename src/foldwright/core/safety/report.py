"""What is said of one shade: every rule with its verdict, the cords behind it, the labels."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.safety.rule import Measure, Rule, Subject
from foldwright.core.safety.rules import RuleVerdict
from foldwright.core.why.figure import Figure

L = Figure[Length]
N = Figure[float]


@dataclass(frozen=True, kw_only=True, slots=True)
class InnerCord:
    """The cord behind the shade, fully down, where it lies freest between two contact points."""

    stretch: L  # from one contact point to the next, taut
    drawn: L | None = None  # more of it that a child's pull draws in from the bays beside
    span: L | None = None  # the two together
    loop: L | None = None  # the way round it, cord and cloth


@dataclass(frozen=True, kw_only=True, slots=True)
class RuleLine:
    """One rule on one shade; `{0}` in the sentence stands for what was found, `{1}` the limit."""

    rule: Rule
    verdict: RuleVerdict
    sentence: str
    found: Figure[Any] | None = None
    limit: Figure[Any] | None = None  # as it falls on this shade

    @property
    def figures(self) -> tuple[Figure[Any], ...]:
        """Give the figures that the sentence speaks of, in order."""
        return tuple(figure for figure in (self.found, self.limit) if figure is not None)

    @property
    def speaks(self) -> bool:
        """Tell whether the rule has to do with the shade, or would if it were still in force."""
        ended = self.rule.standing.superseded_on or self.rule.standing.vacated_on
        return self.verdict is not RuleVerdict.DOES_NOT_APPLY or ended is not None


@dataclass(frozen=True, kw_only=True, slots=True)
class Governing:
    """The strictest rule of all markets sold into, on one subject and measure."""

    subject: Subject
    measure: Measure
    rule: str
    limit: Figure[Any]


@dataclass(frozen=True, kw_only=True, slots=True)
class LabelField:
    """One thing that a label says; empty text is still to be filled in at its path."""

    name: str
    text: str
    path: str


@dataclass(frozen=True, kw_only=True, slots=True)
class LabelText:
    """What the label of one market says, as far as it is known here."""

    market: Market
    languages: tuple[str, ...]
    fields: tuple[LabelField, ...]
    warnings: tuple[str, ...]  # the tool's own words, a draft only
    letter_heights: tuple[L, ...]
    note: str

    @property
    def missing(self) -> tuple[LabelField, ...]:
        """Give the fields that are still empty."""
        return tuple(each for each in self.fields if not each.text)


@dataclass(frozen=True, kw_only=True, slots=True)
class SafetyReport:
    """One shade under the rules of its markets; nothing in it certifies the shade."""

    lines: tuple[RuleLine, ...]
    governing: tuple[Governing, ...]
    inner_cord: InnerCord
    labels: tuple[LabelText, ...]
    greatest_loop_length: L | None = None  # of a chain, headrail to its bottom
