"""Read a spring's sheet: a rate; greatest torque and turns; measured wire; a load at a drop.

A single number on a sheet is the middle of a range. Where a sheet binds rate and strength
together without giving either, all pairs that satisfy it are kept.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from foldwright.core.lift.sheet_load import LoadAtDrop, read_load
from foldwright.core.lift.sheet_parts import (
    SpringReading,
    stated,
    turns_of_torque,
    with_spread,
)
from foldwright.core.lift.sheet_wire import MeasuredWire, read_wire
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived

if TYPE_CHECKING:
    from collections.abc import Iterator

    from foldwright.core.facts.habits import Habits
    from foldwright.core.facts.records import Spring


def read_spring(spring: Spring, habits: Habits) -> SpringReading | None:
    """Read a spring's sheet as the balance needs it.

    Takes: a record of the shop list; the shop's habits, for what a sheet leaves open.

    Gives: the spring with its ranges, or None where the sheet gives neither rate, nor torque
    with turns, nor wire, nor load at a drop.

    Holds for: springs whose torque is proportional to their turns; rates per turn.

    Source: wire springs: spring-rate-page, wire-strength-exercise; a load at a drop: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.records import Spring
    >>> sheet = Spring(name="S", greatest_torque_n_m=0.9, greatest_turns=30.0, rate_spread=0.05)
    >>> read_spring(sheet, house_habits()).case.rate_n_m_turn.likely.__round__(6)
    0.03
    """
    torque, turns = _torque(spring), _turns(spring)
    if spring.rate_n_m_turn is not None:
        rate = stated("rate of the spring", spring.rate_n_m_turn, Unit.RATE, spring)
        return _by_rate(with_spread(rate, spring, habits), torque, turns, spring)
    if torque and turns:
        rate = with_spread(_rate_of(torque, turns), spring, habits)
        return _by_rate(rate, None, turns, spring)
    if wire := _wire(spring):
        return read_wire(wire)
    if load := _load(spring):
        return read_load(load, spring, habits)
    return None


def _torque(spring: Spring) -> Figure[float] | None:
    if spring.greatest_torque_n_m is None:
        return None
    return stated("greatest torque", spring.greatest_torque_n_m, Unit.TORQUE, spring)


def _turns(spring: Spring) -> Figure[float] | None:
    if spring.greatest_turns is None:
        return None
    return stated("greatest turns", spring.greatest_turns, Unit.TURN, spring)


def _wire(spring: Spring) -> MeasuredWire | None:
    if spring.wire is None or spring.mean_coil is None or spring.active_coils is None:
        return None
    return MeasuredWire(
        name=spring.name,
        wire=spring.wire,
        mean_coil=spring.mean_coil,
        active_coils=spring.active_coils,
        arbor=spring.arbor,
    )


def _load(spring: Spring) -> LoadAtDrop | None:
    if spring.load_n is None or spring.load_drop is None:
        return None
    return LoadAtDrop(
        name=spring.name,
        load_n=spring.load_n,
        drop=spring.load_drop,
        tube_outside=spring.load_tube_outside,
        turns=spring.load_turns,
        greatest_turns=spring.greatest_turns,
    )


def _rate_of(torque: Figure[float], turns: Figure[float]) -> Figure[float]:
    because = "The greatest torque {0} over the greatest turns {1}."
    rate = torque.value / turns.value
    return derived("rate of the spring", rate, Unit.RATE, because, torque, turns)


def _by_rate(
    rate: Figure[float],
    torque: Figure[float] | None,
    turns: Figure[float] | None,
    spring: Spring,
) -> SpringReading:
    return SpringReading(
        case=SpringCase(
            rate_n_m_turn=Span.of_figure(rate),
            greatest_torque_n_m=torque.value if torque else None,
            greatest_turns=turns.value if turns else None,
        ),
        rate=rate,
        greatest_turns=turns or (turns_of_torque(torque, rate) if torque else None),
        findings=tuple(_doubts(rate, torque, turns, spring)),
    )


def _doubts(
    rate: Figure[float],
    torque: Figure[float] | None,
    turns: Figure[float] | None,
    spring: Spring,
) -> Iterator[Finding]:
    if torque is None and turns is None:
        yield _strength_unknown(spring)
    if torque and turns and not _agree(rate, torque.value / turns.value):
        yield _contradicts(rate, torque, turns)


def _agree(rate: Figure[float], other: float) -> bool:
    span = Span.of_figure(rate)
    return span.low <= other <= span.high


def _contradicts(rate: Figure[float], torque: Figure[float], turns: Figure[float]) -> Finding:
    return Finding(
        id="lift.spring-contradicts",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence="The sheet of the spring contradicts itself: {0} at {1} is not the rate {2}."
        " The lesser strength is used.",
        figures=(torque, turns, rate),
        remedies=(Remedy(sentence="Ask the supplier whether the rate is per turn."),),
    )


def _strength_unknown(spring: Spring) -> Finding:
    return Finding(
        id="lift.spring-strength",
        severity=Severity.ASK,
        stage=Stage.HEADRAIL,
        sentence=f"How far may “{spring.name}” be wound at most? Its sheet does not say, so"
        " nothing here keeps it from being overwound.",
        remedies=(
            Remedy(sentence="Ask the supplier for the greatest turns or the greatest torque."),
        ),
    )
