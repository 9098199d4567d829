"""Springs characterised by themselves: what was typed, and what it makes of the spring."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from foldwright.core.prove.card_spring import READINGS, spring_step
from foldwright.core.prove.card_step import Reading
from foldwright.core.prove.spring_bench import (
    BarReading,
    Characterised,
    SpringBench,
    characterise,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.finding import Finding
from foldwright.work.bench import Entry, Kind, Record
from foldwright.work.bench_reading import read_step

SYSTEM = "system"  # a field: the units that the bare numbers were typed in
PARTS = ("turns", "winding", "back")
HALF_READ = Fault(
    where="",
    what="a reading lacks its turns or one of its two distances",
    remedy="Type all three of it, or leave it out.",
)


@dataclass(frozen=True, kw_only=True, slots=True)
class SpringTest:
    """One test of one spring."""

    spring: str
    entry: Entry
    found: Characterised | None
    findings: tuple[Finding, ...] = ()


def read_spring(
    typed: Mapping[str, str], system: System
) -> tuple[SpringBench | None, tuple[Fault, ...]]:
    """Read the form of a spring's test, or tell all that is wrong with it."""
    readings, faults = read_step(spring_step(), typed, system)
    if not faults and any(_is_half(readings, number) for number, _ in READINGS):
        faults = (HALF_READ,)
    if not faults and "weight" not in readings:
        faults = (Fault(where="weight", what="it is missing", remedy="Type it with its unit."),)
    return (None, faults) if faults else (_bench(readings), ())


def spring_tests(record: Record) -> Iterator[SpringTest]:
    """Give the tests of one record that stand and can be read, the newest first."""
    if record.kind is not Kind.SPRING:
        return
    for entry in reversed(record.standing):
        bench, _ = read_spring(entry.typed, _system(entry.typed))
        if bench is not None:
            answer = characterise(bench)
            yield SpringTest(
                spring=record.subject,
                entry=entry,
                found=answer.result,
                findings=answer.findings,
            )


def _system(typed: Mapping[str, str]) -> System:
    return next((one for one in System if one.value == typed.get(SYSTEM)), System.METRIC)


def _is_half(readings: Mapping[str, Reading], number: str) -> bool:
    there = sum(f"{part}_{number}" in readings for part in PARTS)
    return 0 < there < len(PARTS)


def _bench(readings: Mapping[str, Reading]) -> SpringBench:
    return SpringBench(
        weight_kg=_number(readings, "weight"),
        bar_kg=_number(readings, "bar"),
        bar_middle_m=_number(readings, "bar_middle"),
        readings=tuple(
            BarReading(
                turns=_number(readings, f"turns_{number}"),
                winding_m=_number(readings, f"winding_{number}"),
                back_m=_number(readings, f"back_{number}"),
            )
            for number, _ in READINGS
            if f"turns_{number}" in readings
        ),
    )


def _number(readings: Mapping[str, Reading], name: str) -> float:
    """Give a number in SI, or nothing as 0."""
    value = readings.get(name, 0.0)
    if isinstance(value, Length):
        return value.in_metres
    return float(value)
