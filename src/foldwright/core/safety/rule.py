"""One rule of child safety as data: what it limits, how well it is known, when it holds."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from enum import Enum
from typing import Any

from foldwright.core.facts.markets import Market
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, T, Unit
from foldwright.core.why.making import fact
from foldwright.core.why.source import Source, Status

Found = Length | float


class Force(Enum):
    """Whether a rule binds by itself."""

    LAW = "law"
    STANDARD = "voluntary standard"


class Confidence(Enum):
    """How a rule is known here, best first: a verdict is never better than this."""

    READ = "text read"
    SECONDARY = "another's account read"
    HEARSAY = "hearsay"
    MEMORY = "from memory"

    @property
    def can_pass(self) -> bool:
        """Tell whether a shade can be said to keep a rule known this well."""
        return self in {Confidence.READ, Confidence.SECONDARY}


class Subject(Enum):
    """What a rule is about."""

    WHOLE = "the shade as a whole"
    OPERATING_CORD = "operating cord"
    JOINED_CORDS = "cords joined end to end"
    RETRACTABLE = "retractable cord"
    INNER_CORD = "inner cord between contact points"
    LOOP = "loop that a cord can form"
    CHAIN = "chain loop"
    CHAIN_TENSIONER = "chain loop with a fixed tensioner"
    CHAIN_BREAKAWAY = "chain loop with a breakaway"
    CLEAT = "cleat"
    SHROUD = "cord kept out of reach"
    SMALL_PARTS = "small parts"
    LEAD = "lead"
    LABEL = "label"
    WARNING = "warning text"
    INSTRUCTIONS = "instructions"


class Measure(Enum):
    """What of the shade is held against a rule's limit."""

    CORD_LENGTH = "length of the cord"
    CORD_SHARE = "length of the cord, as a share of the shade's height"
    SPAN = "cord from one contact point to the next"
    LOOP = "way round the loop"
    CHAIN_ABOVE_FLOOR = "bottom of the chain loop above the floor"
    CHAIN_SHARE = "length of the chain loop, as a share of the shade's height"
    CHAIN_LENGTH = "length of the chain loop"
    CHAIN_SHORTER_BY = "height of the shade less the length of the chain loop"
    ABOVE_FLOOR = "height above the floor"
    STRENGTH = "force that it withstands"
    CONTENT = "milligrams in a kilogram"
    LETTERS = "height of the letters"
    RELEASE = "load under which it parts"
    TIME = "time in which it parts"


class Comparison(Enum):
    """On which side of its limit a rule is kept; markets differ at the limit itself."""

    AT_MOST = "at most"
    UNDER = "less than"
    AT_LEAST = "at least"

    def holds(self, found: Found, limit: Found) -> bool:
        """Tell whether what was found keeps to the limit.

        >>> Comparison.AT_MOST.holds(440, 440), Comparison.UNDER.holds(220, 220)
        (True, False)
        """
        order = _order(found, limit)
        return {"at most": order <= 0, "less than": order < 0, "at least": order >= 0}[self.value]


def _order(found: Found, limit: Found) -> int:
    """Give -1, 0 or 1 for less, equal or more; lengths are compared exactly."""
    if isinstance(found, Length) and isinstance(limit, Length):
        return (found > limit) - (found < limit)
    if isinstance(found, Length) or isinstance(limit, Length):
        message = "a length is compared with a length"
        raise TypeError(message)
    return (found > limit) - (found < limit)


@dataclass(frozen=True, kw_only=True, slots=True)
class Standing:
    """From when and until when a rule holds, by the day on which the shade is made."""

    made_from: date | None = None
    superseded_on: date | None = None
    superseded_by: str = ""
    vacated_on: date | None = None

    def holds_on(self, made_on: date | None) -> bool:
        """Tell whether the rule holds for a shade made on a day; None is a day still to come.

        >>> edition = Standing(made_from=date(2018, 12, 15), superseded_on=date(2024, 6, 1))
        >>> edition.holds_on(date(2024, 5, 31)), edition.holds_on(date(2024, 6, 1))
        (True, False)
        """
        if self.vacated_on is not None:
            return False
        if made_on is None:
            return self.superseded_on is None
        begun = self.made_from is None or self.made_from <= made_on
        return begun and (self.superseded_on is None or made_on < self.superseded_on)

    @property
    def words(self) -> str:
        """Say when the rule holds.

        >>> Standing(vacated_on=date(2023, 9, 12)).words
        'vacated 2023-09-12, not in force'
        """
        if self.vacated_on is not None:
            return f"vacated {self.vacated_on}, not in force"
        begun = f"holds from {self.made_from}" if self.made_from else "date not known here"
        if self.superseded_on is None:
            return begun
        return f"{begun}, superseded on {self.superseded_on} by {self.superseded_by}"


@dataclass(frozen=True, kw_only=True, slots=True)
class Rule:
    """One rule of one market; `{0}` in `says` stands for the limit, `{1}` … for `others`."""

    id: str
    market: Market
    subject: Subject
    says: str
    shop_must: str
    force: Force
    confidence: Confidence
    standing: Standing
    source: Source
    measure: Measure | None = None
    comparison: Comparison | None = None
    limit: Figure[Any] | None = None
    pull: Figure[float] | None = None  # the limit holds under this pull
    others: tuple[Figure[Any], ...] = ()

    @property
    def figures(self) -> tuple[Figure[Any], ...]:
        """Give the figures that the sentence speaks of, in order."""
        return (*((self.limit,) if self.limit else ()), *self.others)

    def allows(self, found: Found) -> bool:
        """Tell whether a figure keeps to the limit.

        Raises: ValueError where the rule has no number that is known here.
        """
        if self.limit is None or self.comparison is None:
            message = f"{self.id} has no limit that is known here: read its text"
            raise ValueError(message)
        return self.comparison.holds(found, self.limit.value)


STATUS = {
    Confidence.READ: Status.PUBLISHED,
    Confidence.SECONDARY: Status.PUBLISHED,
    Confidence.HEARSAY: Status.PRACTICE,
    Confidence.MEMORY: Status.MEMORY,
}


def limit(  # noqa: PLR0913, PLR0917 - all that a fact carries
    name: str,
    value: T,
    unit: Unit,
    because: str,
    confidence: Confidence,
    source: Source,
    *,
    rounding: Rounding = Rounding.MUST_FIT,
) -> Figure[T]:
    """Make a rule's figure, known as well as the rule is, printed on the safe side of itself."""
    figure = fact(name, value, unit, because, STATUS[confidence], source=source)
    return replace(figure, rounding=rounding)
