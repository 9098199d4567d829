"""Read what was typed at the bench: each field on its own, all that is wrong told at once."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from foldwright.core.prove.card_step import Ask, CardStep, Reading, Reads
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.measures import read_force, read_mass, read_number
from foldwright.core.quantity.reading import read_length
from foldwright.core.quantity.rounding import System
from foldwright.core.quantity.unreadable import Unreadable
from foldwright.core.why.fault import Fault

BARE = re.compile(r"[-+]?[\d., ]+(?:/\d+)?")
MIXED = re.compile(r"(?:(\d+) )?(\d+)/(\d+)")
POUNDS_AND_OUNCES = re.compile(r"(.+?lbs?)\s+(.+?oz)", re.IGNORECASE)
MINUS_SIGNS = str.maketrans({"−": "-", "–": "-"})  # noqa: RUF001 - a minus and a dash
UNITS = {
    Reads.FORCE: {System.INCH: "lbf", System.METRIC: "N"},
    Reads.MASS: {System.INCH: "lb", System.METRIC: "kg"},
}
NOTHING = Fault(
    where="", what="nothing was typed", remedy="Type at least one reading, or go on to the next."
)
STOOD = "it is not said how far up it stood"


def read_step(
    step: CardStep, typed: Mapping[str, str], system: System
) -> tuple[dict[str, Reading], tuple[Fault, ...]]:
    """Read the fields of a step.

    Takes: the step; its fields as typed; the units that a bare number is in.
    Gives: the readings, lengths exact and the rest in SI, and every fault, each at its field.
    """
    readings: dict[str, Reading] = {}
    faults: list[Fault] = []
    for ask in step.asks:
        text = " ".join(typed.get(ask.name, "").split())
        if not text:
            continue
        try:
            readings[ask.name] = read_entry(ask, text, system)
        except Unreadable as trouble:
            faults.append(Fault(where=ask.name, what=trouble.what, remedy=trouble.remedy))
    faults.extend(_incomplete(step, readings) if not faults else ())
    return readings, tuple(faults)


def read_entry(ask: Ask, text: str, system: System) -> Reading:
    """Read one field.

    Raises: Unreadable.

    >>> read_entry(Ask(name="t", label="", reads=Reads.TURNS), "9 1/2", System.INCH)
    9.5
    """
    negative = ask.signed and text.translate(MINUS_SIGNS).startswith("-")
    if negative:
        return _negative(READERS[ask.reads](ask, text[1:].strip(), system))
    return READERS[ask.reads](ask, text, system)


def unit_words(ask: Ask, system: System) -> str:
    """Say which unit a bare number is in, or nothing where it needs none."""
    if ask.reads is Reads.LENGTH:
        return "inches" if system is System.INCH else "millimetres"
    return UNITS.get(ask.reads, {}).get(system, "")


def _negative(reading: Reading) -> Reading:
    assert not isinstance(reading, str)  # noqa: S101 - only measures have a sign
    return -reading


def _length(_ask: Ask, text: str, system: System) -> Length:
    return read_length(text, system)


def _turns(_ask: Ask, text: str, _system: System) -> float:
    tidy = re.sub(r"\s*turns?$", "", text.lower())
    mixed = MIXED.fullmatch(tidy)
    if mixed and int(mixed[3]):
        return float(int(mixed[1] or 0) + Fraction(int(mixed[2]), int(mixed[3])))
    return read_number(tidy)


def _number(_ask: Ask, text: str, _system: System) -> float:
    return read_number(text)


def _force(_ask: Ask, text: str, system: System) -> float:
    return read_force(_with_unit(text, Reads.FORCE, system))


def _mass(_ask: Ask, text: str, system: System) -> float:
    parts = POUNDS_AND_OUNCES.fullmatch(text)
    if parts:
        return read_mass(parts[1]) + read_mass(parts[2])
    return read_mass(_with_unit(text, Reads.MASS, system))


def _with_unit(text: str, reads: Reads, system: System) -> str:
    return f"{text} {UNITS[reads][system]}" if BARE.fullmatch(text) else text


def _choice(ask: Ask, text: str, _system: System) -> str:
    if text not in {word for word, _ in ask.options}:
        shown = ", ".join(label for _, label in ask.options)
        raise Unreadable(what=f"“{text[:40]}” is not among the answers", remedy=f"Take {shown}.")
    return text


READERS: dict[Reads, Callable[[Ask, str, System], Reading]] = {
    Reads.LENGTH: _length,
    Reads.FORCE: _force,
    Reads.MASS: _mass,
    Reads.TURNS: _turns,
    Reads.NUMBER: _number,
    Reads.CHOICE: _choice,
    Reads.TEXT: lambda _ask, text, _system: text,
}


def _incomplete(step: CardStep, readings: Mapping[str, Reading]) -> Iterator[Fault]:
    """Find an entry that says nothing, or a standstill without its place."""
    only_usual = all(ask.usual for ask in step.asks if ask.name in readings)
    asks_more = not all(ask.usual or ask.optional for ask in step.asks)
    if not readings or (only_usual and asks_more):
        yield NOTHING
    if step.id == "stall" and readings.get("ended") in {"stalled", "free"}:
        if "raise" not in readings:
            yield Fault(where="raise", what=STOOD, remedy="Measure the bottom edge, and type it.")
    elif step.id == "stall" and "ended" not in readings and "raise" in readings:
        yield Fault(where="ended", what="it is not said how it ended", remedy="Take one of these.")
