"""What every reading of a spring's sheet shares: numbers as stated, and their spread."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.why.figure import Figure, T, Unit
from foldwright.core.why.finding import Finding
from foldwright.core.why.making import derived, supplied
from foldwright.core.why.source import Status

if TYPE_CHECKING:
    from foldwright.core.facts.habits import Habits
    from foldwright.core.facts.records import Spring


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringReading:
    """What a sheet says of a spring, and what it leaves open."""

    case: SpringCase
    rate: Figure[float]
    greatest_turns: Figure[float] | None
    findings: tuple[Finding, ...] = ()


def stated(name: str, value: T, unit: Unit, spring: Spring) -> Figure[T]:
    """Give a number of the sheet, or of the shop's own bench where the spring was measured."""
    if not spring.measured:
        return supplied(name, value, unit, spring.name)
    because = f"The {name} as measured on the shop's own bench for “{spring.name}”."
    return Figure(name=name, value=value, unit=unit, because=because, status=Status.MEASURED)


def with_spread(rate: Figure[float], spring: Spring, habits: Habits) -> Figure[float]:
    """Give the rate with its range: the sheet's, else the house's."""
    spread = habits.rate_spread
    if spring.rate_spread is not None:
        spread = stated("spread of the rate", spring.rate_spread, Unit.SHARE, spring)
    span = Span.within(rate.value, spread.value)
    return derived(
        "rate of this spring",
        span.likely,
        Unit.RATE,
        "The rate {0}; single springs differ from it by up to {1}.",
        rate,
        spread,
        low=span.low,
        high=span.high,
    )


def turns_of_torque(torque: Figure[float], rate: Figure[float]) -> Figure[float]:
    """Give the turns at which a spring reaches its greatest torque."""
    strong, soft = Span.of_figure(torque), Span.of_figure(rate)
    return derived(
        "greatest turns",
        torque.value / rate.value,
        Unit.TURN,
        "The greatest torque {0} over the rate {1}.",
        torque,
        rate,
        low=strong.low / soft.high,
        high=strong.high / soft.low,
    )
