"""Read a spring from a load at a drop: what the sheet binds together without giving it."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import product
from math import pi
from typing import TYPE_CHECKING, Any

import numpy as np

from foldwright.core.facts.balancing import SHEET_TUBE, SHEET_TURNS
from foldwright.core.lift.sheet_parts import SpringReading, with_spread
from foldwright.core.lift.span import TAIL, Span, quantiles
from foldwright.core.lift.spring import Pair, SpringCase
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied

if TYPE_CHECKING:
    from foldwright.core.facts.habits import Habits
    from foldwright.core.facts.records import Spring

_LEVELS = 9  # pairs are kept for so many tubes and so many turns, spread over their ranges


@dataclass(frozen=True, kw_only=True, slots=True)
class LoadAtDrop:
    """A spring that lifts a load over a drop, on a tube and with turns that may be unknown."""

    name: str
    load_n: float
    drop: Length
    tube_outside: Length | None
    turns: float | None
    greatest_turns: float | None = None

    @property
    def determined(self) -> bool:
        """Tell whether the sheet leaves nothing open."""
        return self.tube_outside is not None and self.turns is not None

    @property
    def tube(self) -> Figure[Length]:
        """Give the tube that the sheet means, or the tubes that it may mean."""
        if self.tube_outside is None:
            return SHEET_TUBE
        return supplied("tube on the sheet", self.tube_outside, Unit.LENGTH, self.name)

    @property
    def wound(self) -> Figure[float]:
        """Give the turns at the up-stop that the sheet means, or may mean."""
        if self.turns is None:
            return SHEET_TURNS
        return supplied("turns on the sheet", self.turns, Unit.TURN, self.name)

    @property
    def stated_turns(self) -> Figure[float] | None:
        """Give how far the sheet lets the spring be wound, where it says so."""
        if self.greatest_turns is None:
            return None
        return supplied("greatest turns", self.greatest_turns, Unit.TURN, self.name)

    @property
    def parts(self) -> tuple[Figure[Any], ...]:
        """Give load, drop, tube and turns as figures."""
        load = supplied("load it lifts", self.load_n, Unit.FORCE, self.name)
        drop = supplied("drop it lifts over", self.drop, Unit.LENGTH, self.name)
        return load, drop, self.tube, self.wound


def read_load(sheet: LoadAtDrop, spring: Spring, habits: Habits) -> SpringReading:
    """Read a spring from a load at a drop.

    Takes: what the sheet says; the record, for its spread; the habits, for the friction.

    Gives: a rate with its spread where the sheet gives tube and turns; otherwise all pairs of
    rate and strength that just satisfy it, and a finding that asks.

    Holds for: a load meant at the top.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.records import Spring
    >>> sheet = LoadAtDrop(
    ...     name="S", load_n=15.0, drop=Length.mm(1500), tube_outside=Length.mm(38), turns=12.0
    ... )
    >>> round(read_load(sheet, Spring(name="S"), house_habits()).rate.value, 4)
    0.028
    """
    pairs = load_pairs(sheet, habits)
    rate = _of_pairs("rate of this spring", Unit.RATE, [rate for rate, _ in pairs], sheet)
    turns = sheet.stated_turns or _of_pairs(
        "greatest turns", Unit.TURN, [top / rate for rate, top in pairs], sheet
    )
    if not sheet.determined:
        return SpringReading(
            case=SpringCase(pairs=pairs),
            rate=rate,
            greatest_turns=turns,
            findings=(_leaves_open(sheet),),
        )
    rate = with_spread(rate, spring, habits)
    case = SpringCase(rate_n_m_turn=Span.of_figure(rate), greatest_turns=turns.value)
    return SpringReading(case=case, rate=rate, greatest_turns=turns)


def load_pairs(sheet: LoadAtDrop, habits: Habits) -> tuple[Pair, ...]:
    """Give all pairs of rate and greatest torque that just satisfy a load at a drop.

    Takes: what the sheet says; the shop's habits, for the friction.

    Gives: pairs of rate in N.m/turn and greatest torque in N.m; a single pair where the sheet
    gives both tube and turns. Unless the sheet says how far the spring may be wound, it
    promises no more turns than those of its drop.

    Holds for: a load meant at the top, on a tube without build-up.

    Source: derived here: the torque at the top, and the turns of the drop wound on top of it.

    >>> from foldwright.core.facts.house import house_habits
    >>> sheet = LoadAtDrop(
    ...     name="S", load_n=15.0, drop=Length.mm(1500), tube_outside=Length.mm(38), turns=None
    ... )
    >>> pairs = load_pairs(sheet, house_habits())
    >>> len(pairs), all(torque / rate > 12 for rate, torque in pairs)
    (9, True)
    """
    friction = (1 + habits.load_friction.value) / (1 - habits.spring_hysteresis.value)
    radii = _levels(Span.of_figure(sheet.tube).times(1 / 2))
    tried = [
        _Wound(torque_n_m=sheet.load_n * radius * friction, turns=turns, travel=drop)
        for radius, turns in product(radii, _levels(Span.of_figure(sheet.wound)))
        for drop in (sheet.drop.in_metres / (2 * pi * radius),)
    ]
    limit = sheet.greatest_turns
    possible = [one for one in tried if limit is None or one.turns + one.travel <= limit]
    return tuple(one.pair(limit) for one in possible or tried)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Wound:
    """A spring that lifts the sheet's load with so many turns, over so many turns of travel."""

    torque_n_m: float
    turns: float
    travel: float

    def pair(self, greatest_turns: float | None) -> Pair:
        """Give rate and greatest torque."""
        rate = self.torque_n_m / self.turns
        return rate, rate * (greatest_turns or self.turns + self.travel)


def _levels(span: Span) -> tuple[float, ...]:
    """Give values spread evenly over a range, or the one that is known."""
    if span.low == span.high:
        return (span.likely,)
    middles = (np.arange(_LEVELS) + 0.5) / _LEVELS
    return tuple(map(float, span.at(middles)))


def _of_pairs(name: str, unit: Unit, values: list[float], sheet: LoadAtDrop) -> Figure[float]:
    low, middle, high = quantiles(np.asarray(values), (TAIL, 0.5, 1 - TAIL))
    return derived(
        name,
        middle,
        unit,
        "What lifts {0} over {1} on a tube of {2} with {3} wound in.",
        *sheet.parts,
        low=None if sheet.determined else low,
        high=None if sheet.determined else high,
    )


def _leaves_open(sheet: LoadAtDrop) -> Finding:
    return Finding(
        id="lift.spring-sheet",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=f"The sheet of “{sheet.name}” gives {{0}} over {{1}}: on which tube, and with how"
        " many turns wound in? Until then its rate is a wide range.",
        figures=sheet.parts[:2],
        remedies=(
            Remedy(sentence="Ask the supplier for tube and turns, or for the rate."),
            Remedy(sentence="Measure the rate on the bench: two loads, and the turns between."),
        ),
    )
