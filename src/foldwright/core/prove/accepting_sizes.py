"""Judge weight, sizes, clearance, loops, light and label."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.acceptance import (
    ACROSS,
    DIAGONALS_OFF,
    DIAGONALS_OVER,
    DROP_OFF,
    LIGHT_DISTANCE,
    NARROWER,
    ROWS_PARALLEL,
    UP_STOP_CLEAR,
    loop_pull,
)
from foldwright.core.prove.card_step import CardOrder, Judgement, Readings
from foldwright.core.prove.noted import asks, lengths, noted, number, passes, stops
from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import derived

L = Figure[Length]


def weight(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the weight against what the sheets and cuts make of it."""
    mass, expected = number(readings, "mass"), order.weights.total
    if mass is None:
        return
    found = noted("mass of the finished panel", mass, Unit.MASS)
    low = expected.value if expected.low is None else expected.low
    high = expected.value if expected.high is None else expected.high
    if low <= mass <= high:
        yield passes("{0}, expected {1:range}.", found, expected)
    else:
        yield asks(
            "{0}, but {1:range} was expected. Weigh it again, with bar, rods and rings and nothing"
            " else; if it stays so, the turns below are reckoned from this weight.",
            found,
            expected,
        )


def widths(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge each width: no wider, and hardly narrower."""
    wanted = order.size.width
    named = lengths(
        readings,
        top="width at the top",
        middle="width at the middle",
        bottom="width at the bottom",
    )
    for _, found in named:
        off = found.value - wanted.value
        if off > Length(0):
            over = _difference("wider than the finished width", off, found, wanted)
            yield stops(f"{{0}} {_place(found)}: {{2}} wider than {{1}}.", found, wanted, over)
        elif -off > NARROWER.value:
            less = _difference("narrower than the finished width", -off, found, wanted)
            yield asks(
                f"{{0}} {_place(found)}: {{2}} less than {{1}}; {{3}} is accepted.",
                found,
                wanted,
                less,
                NARROWER,
                ROWS_PARALLEL,
            )
        else:
            yield passes(f"{{0}} {_place(found)}, of {{1}}.", found, wanted)


def drops(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge each drop, and the two sides against each other."""
    wanted = order.size.drop
    found = dict(
        lengths(
            readings,
            left="drop at the left",
            centre="drop at the centre",
            right="drop at the right",
        )
    )
    for each in found.values():
        off = _difference("off the finished drop", abs(each.value - wanted.value), each, wanted)
        if off.value > DROP_OFF.value:
            yield asks(
                f"{{0}} {_place(each)}: {{2}} off {{1}}; {{3}} is accepted.",
                each,
                wanted,
                off,
                DROP_OFF,
            )
        else:
            yield passes(f"{{0}} {_place(each)}, of {{1}}.", each, wanted)
    if "left" in found and "right" in found:
        yield _across(found["left"], found["right"])


def _across(left: L, right: L) -> Judgement:
    across = _difference("left against right", abs(left.value - right.value), left, right)
    if across.value > ACROSS.value:
        return asks("Left and right differ by {0}; {1} is accepted.", across, ACROSS)
    return passes("Left and right differ by {0}, of {1}.", across, ACROSS)


def diagonals(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the two diagonals against each other."""
    found = [
        one for _, one in lengths(readings, falling="falling diagonal", rising="rising diagonal")
    ]
    if len(found) < 2:  # noqa: PLR2004 - there are two
        return
    off = _difference("difference between the diagonals", abs(found[0].value - found[1].value),
                      *found)  # fmt: skip
    longest = max(found, key=lambda one: one.value)
    allowed = derived(
        "difference accepted between the diagonals",
        Length(round(DIAGONALS_OFF.value.nanometres * (longest.value / DIAGONALS_OVER.value))),
        Unit.LENGTH,
        "{0} for every {1} of {2}.",
        DIAGONALS_OFF,
        DIAGONALS_OVER,
        longest,
    )
    if off.value > allowed.value:
        yield asks("The diagonals differ by {0}; {1} is accepted.", off, allowed)
    else:
        yield passes("The diagonals differ by {0}, of {1}.", off, allowed)


def rows(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge whether the rows are parallel."""
    for _, found in lengths(readings, off="greatest difference from row to row"):
        if abs(found.value) > ROWS_PARALLEL.value:
            yield asks("A row is {0} out of parallel; {1} is accepted.", found, ROWS_PARALLEL)
        else:
            yield passes("The rows are parallel within {0}, of {1}.", found, ROWS_PARALLEL)


def clearance(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the room left at the up-stop."""
    for _, found in lengths(readings, clear="clear above the highest ring"):
        if found.value < UP_STOP_CLEAR.value:
            yield stops(
                "{0} clear at the up-stop; at least {1}. Set the stop lower.",
                found,
                UP_STOP_CLEAR,
            )
        else:
            yield passes("{0} clear at the up-stop, at least {1}.", found, UP_STOP_CLEAR)


def loops(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge each loop that a pull opens."""
    columns = range(1, order.layout.columns.count.value + 1)
    names = {f"column_{number}": f"way round the loop at column {number}" for number in columns}
    for field, found in lengths(readings, **names, side="way round the loop at the side"):
        yield _loop(order, "the operating side" if field == "side" else _column(field), found)


def _column(field: str) -> str:
    return field.replace("_", " ")


def _loop(order: CardOrder, place: str, found: L) -> Judgement:
    limit, pull = order.loop_limit, loop_pull(order.markets)
    if limit is None:
        return asks(
            f"{{0}} round the loop at {place} under {{1}}. No limit is known for this market: read"
            " its rule.",
            found,
            pull,
        )
    if found.value > limit.value:
        return stops(
            f"{{0}} round the loop at {place} under {{1}}; at most {{2}}. Take the slack out, or"
            " set the rows closer.",
            found,
            pull,
            limit,
        )
    return passes(
        f"{{0}} round the loop at {place} under {{1}}, at most {{2}}.", found, pull, limit
    )


def light(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the light test."""
    if readings.get("holes") == "none":
        yield passes("No hole seen from {0}.", LIGHT_DISTANCE)
    elif readings.get("holes") == "some":
        yield asks("Holes are seen from {0}. Seal them from the back, and look again.",
                   LIGHT_DISTANCE)  # fmt: skip


def label(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the label."""
    if readings.get("present") == "yes":
        yield passes("The label is there.")
    elif readings.get("present") == "no":
        yield stops("The label is not complete. Without it the shade is not handed over.")


def _difference(name: str, value: Length, *of: L) -> L:
    return derived(name, value, Unit.LENGTH, "Between {0} and {1}.", *of, rounding=Rounding.MARK)


def _place(found: L) -> str:
    """Give the place in a figure's name: "width at the top" is "at the top"."""
    return found.name[found.name.index("at the") :]
