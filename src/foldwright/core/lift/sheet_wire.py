"""Read a spring from its measured wire: the rate is a range, the strength rests on a table."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.facts.wire import (
    ALLOWABLE_SHARE,
    MUSIC_WIRE_STIFFNESS,
    OLDER_METRIC,
    WIRE_STRENGTHS,
    WireStrength,
)
from foldwright.core.lift.sheet_parts import SpringReading, turns_of_torque
from foldwright.core.lift.span import Span
from foldwright.core.lift.spring import SpringCase
from foldwright.core.lift.wire import WireSpring, tensile_strength
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied


@dataclass(frozen=True, kw_only=True, slots=True)
class MeasuredWire:
    """A spring as measured with callipers: wire, mean coil, active coils, arbor if known."""

    name: str
    wire: Length
    mean_coil: Length
    active_coils: float
    arbor: Length | None

    @property
    def spring(self) -> WireSpring:
        """Give the spring in SI."""
        return WireSpring(
            wire_m=self.wire.in_metres,
            mean_coil_m=self.mean_coil.in_metres,
            body_coils=self.active_coils,
        )

    @property
    def parts(self) -> tuple[Figure[Any], Figure[Any], Figure[Any]]:
        """Give wire, mean coil and coils as figures."""
        return (
            supplied("wire", self.wire, Unit.LENGTH, self.name),
            supplied("mean coil", self.mean_coil, Unit.LENGTH, self.name),
            supplied("active coils", self.active_coils, Unit.COUNT, self.name),
        )


def read_wire(measured: MeasuredWire) -> SpringReading:
    """Read a spring from its measured wire.

    Takes: wire, mean coil, active coils, and the arbor where it is known.

    Gives: the spring; both constants of the rate lie inside its range; its strength is by the
    lowest of four tables, and a finding says what the highest would give.

    Holds for: music wire; other wire is softer or weaker.

    Source: spring-rate-page; wire-strength-exercise.

    >>> wire = MeasuredWire(
    ...     name="W", wire=Length.mm("2.1"), mean_coil=Length.mm("22.5"), active_coils=480.0,
    ...     arbor=None,
    ... )
    >>> round(read_wire(wire).rate.value, 4), round(read_wire(wire).greatest_turns.value, 1)
    (0.0345, 23.5)
    """
    rate, torque = _rate(measured), _torque(measured)
    by_strength = turns_of_torque(torque, rate)
    on_arbor = _on_arbor(measured)
    return SpringReading(
        case=SpringCase(
            rate_n_m_turn=Span.of_figure(rate),
            greatest_torque_n_m=Span.of_figure(torque),
            greatest_turns=on_arbor.value if on_arbor else None,
        ),
        rate=rate,
        greatest_turns=_lesser(by_strength, on_arbor) if on_arbor else by_strength,
        findings=(_strength_sets(measured, torque),),
    )


def _rate(measured: MeasuredWire) -> Figure[float]:
    stiffness = Span.of_figure(MUSIC_WIRE_STIFFNESS)
    found = measured.spring.rate_range(stiffness.likely, stiffness.low, stiffness.high)
    return derived(
        "rate of this spring",
        found.rate,
        Unit.RATE,
        "Wire {0}, mean coil {1}, {2} coils, modulus {3}; the upper end of the range leaves out"
        " the rubbing of the coils.",
        *measured.parts,
        MUSIC_WIRE_STIFFNESS,
        low=found.low,
        high=found.high,
    )


def _torque(measured: MeasuredWire) -> Figure[float]:
    wire_m = measured.wire.in_metres
    share = Span.of_figure(ALLOWABLE_SHARE)
    span = share.times(measured.spring.greatest_torque(tensile_strength(wire_m)))
    return derived(
        "greatest torque",
        span.likely,
        Unit.TORQUE,
        f"Wire {{0}} at a mean coil of {{1}}, used up to {{2}} of its strength by the"
        f" {OLDER_METRIC.name}, the lowest of four that disagree.",
        *measured.parts[:2],
        ALLOWABLE_SHARE,
        low=span.low,
        high=span.high,
        source=OLDER_METRIC.source,
    )


def _on_arbor(measured: MeasuredWire) -> Figure[float] | None:
    if measured.arbor is None:
        return None
    arbor = supplied("arbor", measured.arbor, Unit.LENGTH, measured.name)
    turns = measured.spring.turns_on_arbor(arbor.value.in_metres)
    because = "At these turns the coil has closed to its clearance on the arbor {0}."
    return derived("turns on the arbor", turns, Unit.TURN, because, arbor)


def _lesser(by_strength: Figure[float], on_arbor: Figure[float]) -> Figure[float]:
    span = Span.of_figure(by_strength)
    return derived(
        "greatest turns",
        min(span.likely, on_arbor.value),
        Unit.TURN,
        "The lesser of {0} by the wire's strength and {1} on the arbor.",
        by_strength,
        on_arbor,
        low=min(span.low, on_arbor.value),
        high=min(span.high, on_arbor.value),
    )


def _strength_sets(measured: MeasuredWire, used: Figure[float]) -> Finding:
    """Note how far the tables of wire strength disagree for this wire."""
    torques = {table.name: _torque_by(measured, table) for table in WIRE_STRENGTHS}
    highest = max(torques.values(), key=lambda torque: torque.value)
    return Finding(
        id="lift.wire-strength",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="Four tables of wire strength disagree: this spring takes {0} by the lowest, which"
        " is used, and {1} by the highest.",
        figures=(used, highest),
        remedies=(Remedy(sentence="Ask the supplier for the greatest torque."),),
        source=OLDER_METRIC.source,
    )


def _torque_by(measured: MeasuredWire, table: WireStrength) -> Figure[float]:
    strength = tensile_strength(measured.wire.in_metres, table)
    return derived(
        "greatest torque by another table",
        measured.spring.greatest_torque(ALLOWABLE_SHARE.value * strength),
        Unit.TORQUE,
        f"Wire {{0}} at a mean coil of {{1}}, used up to {{2}} of its strength by the"
        f" {table.name}.",
        *measured.parts[:2],
        ALLOWABLE_SHARE,
        source=table.source,
    )
