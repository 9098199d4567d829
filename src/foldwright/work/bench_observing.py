"""What the record of a session says to the core: each reading as an observation, with its entry."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from foldwright.core.facts.acceptance import DRIFT
from foldwright.core.lift.choices import Lock
from foldwright.core.prove.card_fields import HOLDING_HEIGHTS, LEVEL_HEIGHTS, SCALE_HEIGHTS
from foldwright.core.prove.card_step import CardOrder, CardStep, Readings
from foldwright.core.prove.kinds import is_evidence
from foldwright.core.prove.noting import BarLevel, Cycled, FreeStall, ReleasePull, TurnsWound
from foldwright.core.prove.observing import (
    FullRise,
    GuidedStall,
    Holding,
    Observation,
    RiseTime,
    ScaleForce,
    ScalePair,
    Way,
    Weighed,
)
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.work.bench import Entry, Record
from foldwright.work.bench_reading import read_step


@dataclass(frozen=True, kw_only=True, slots=True)
class Observed:
    """One observation, and the entry that it was noted in."""

    observation: Observation
    entry: Entry


def observed(
    record: Record, steps: Sequence[CardStep], order: CardOrder, system: System
) -> tuple[Observed, ...]:
    """Read every entry that stands, in the order they came; evidence noted twice counts once."""
    known = {step.id: step for step in steps if step.id in OBSERVERS}
    found: list[Observed] = []
    for entry in record.standing:
        if entry.step in known:
            readings, _ = read_step(known[entry.step], entry.typed, system)
            for observation in OBSERVERS[entry.step](order, readings):
                if not (is_evidence(observation) and _holds(found, observation)):
                    found.append(Observed(observation=observation, entry=entry))
    return tuple(found)


def _holds(found: Sequence[Observed], observation: Observation) -> bool:
    return any(one.observation == observation for one in found)


def _number(readings: Readings, name: str) -> float | None:
    value = readings.get(name)
    return float(value) if isinstance(value, int | float) else None


def _metres(readings: Readings, name: str) -> float | None:
    value = readings.get(name)
    return value.in_metres if isinstance(value, Length) else None


def _turns(order: CardOrder, readings: Readings) -> float | None:
    """Give the turns that the entry was noted at; those planned where none were typed."""
    typed, planned = _number(readings, "turns"), order.headrail.pretension_turns
    return planned.value if typed is None and planned else typed


def _weighed(_order: CardOrder, readings: Readings) -> Iterator[Observation]:
    mass = _number(readings, "mass")
    if mass is not None:
        yield Weighed(mass_kg=mass)


def _wound(_order: CardOrder, readings: Readings) -> Iterator[Observation]:
    turns = _number(readings, "turns")
    if turns is not None:
        yield TurnsWound(turns=turns)


def _rose(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    turns, raise_m = _turns(order, readings), _metres(readings, "raise")
    if turns is None:
        return
    if readings.get("ended") == "rose":
        yield FullRise(turns=turns, rose=True)
    elif readings.get("ended") == "stalled" and raise_m is not None:
        yield GuidedStall(turns=turns, raise_m=raise_m)
    elif readings.get("ended") == "free" and raise_m is not None:
        yield FreeStall(turns=turns, raise_m=raise_m)


def _timed(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    turns, seconds = _turns(order, readings), _number(readings, "seconds")
    if turns is not None and seconds is not None:
        yield RiseTime(turns=turns, seconds=seconds)


def _scaled(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    turns = _turns(order, readings)
    for name, _, share in SCALE_HEIGHTS:
        raise_m = _height(order, readings, name, share)
        down, up = _number(readings, f"{name}_down"), _number(readings, f"{name}_up")
        if turns is None or (down is None and up is None):
            continue
        if down is not None and up is not None:
            yield ScalePair(turns=turns, raise_m=raise_m, down_n=down, up_n=up)
        elif down is not None:
            yield ScaleForce(turns=turns, raise_m=raise_m, force_n=down, way=Way.DOWN)
        elif up is not None:
            yield ScaleForce(turns=turns, raise_m=raise_m, force_n=up, way=Way.UP)


def _height(order: CardOrder, readings: Readings, name: str, share: float) -> float:
    typed = _metres(readings, f"{name}_raise")
    return order.layout.travel.value.in_metres * share if typed is None else typed


def _released(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    if "released" in readings:
        yield ReleasePull(
            raise_m=order.headrail.lowest_lock_position.value.in_metres,
            pull_m=_metres(readings, "pull") or 0.0,
            released=readings["released"] == "yes",
        )


def _level(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    sign = -1 if readings.get("higher") == "left" else 1
    for name, _, share in LEVEL_HEIGHTS:
        off = _metres(readings, name)
        if off is not None:
            raise_m = order.layout.travel.value.in_metres * share
            yield BarLevel(raise_m=raise_m, right_above_left_m=sign * off)


def _held(order: CardOrder, readings: Readings) -> Iterator[Observation]:
    """Give whether it held at each height; an unknown lock may be all that holds it."""
    turns = _turns(order, readings)
    if turns is None or order.lift.lock is Lock.UNKNOWN:
        return
    for name, _, share in HOLDING_HEIGHTS:
        drift = _metres(readings, f"{name}_drift")
        if drift is not None:
            held = abs(drift) <= DRIFT.value.in_metres
            raise_m = _height(order, readings, name, share)
            yield Holding(turns=turns, raise_m=raise_m, held=held)


def _cycled(_order: CardOrder, readings: Readings) -> Iterator[Observation]:
    made = _number(readings, "cycles")
    if made is not None:
        yield Cycled(cycles=round(made), cords_jumped=int(readings.get("ran") == "jumped"))


OBSERVERS: Mapping[str, Callable[[CardOrder, Readings], Iterator[Observation]]] = {
    "weigh": _weighed,
    "wind": _wound,
    "stall": _rose,
    "rise-time": _timed,
    "scale": _scaled,
    "release": _released,
    "level": _level,
    "hold": _held,
    "cycles": _cycled,
}
