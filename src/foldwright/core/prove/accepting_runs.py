"""Judge turns, rise, hand forces, release, level, drift and cycles."""

from __future__ import annotations

from collections.abc import Iterator

from foldwright.core.facts.acceptance import DRIFT, DRIFT_IN_A_DAY, LIFT_TO_LOWER
from foldwright.core.facts.bench import BAR_LEVEL, TEST_CYCLES
from foldwright.core.prove.card_fields import (
    HOLDING_HEIGHTS,
    LEVEL_HEIGHTS,
    SCALE_HEIGHTS,
    hand_force_limit,
)
from foldwright.core.prove.card_step import CardOrder, Judgement, Readings
from foldwright.core.prove.noted import asks, lengths, noted, number, passes, stops
from foldwright.core.why.figure import Figure, Unit


def turns(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the turns wound against the window reckoned before any test."""
    wound, window = number(readings, "turns"), order.balance.window
    if wound is None:
        return
    found = noted("turns wound", wound, Unit.TURN)
    if window is None:
        yield passes("{0} in the spring.", found)
    elif wound > _high(window.most_turns):
        yield stops(
            f"{{0}} is more than {window.limited_above_by.value} allows: at most {{1:range}}. Let"
            " some out, under control.",
            found,
            window.most_turns,
        )
    elif wound < _low(window.least_turns):
        yield asks("{0} hardly lifts it: at least {1:range} was reckoned.", found,
                   window.least_turns)  # fmt: skip
    else:
        yield passes("{0} in the spring; {1:range} lifts it.", found, window.least_turns)


def _low(limit: Figure[float]) -> float:
    return limit.value if limit.low is None else limit.low


def _high(limit: Figure[float]) -> float:
    return limit.value if limit.high is None else limit.high


def hung(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Note that it hangs."""
    if readings.get("hung") == "yes":
        yield passes("It hangs, level.")


def guided_rise(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the guided rise."""
    travel, ended = order.layout.travel, readings.get("ended")
    if ended == "rose":
        yield passes("It rose to the stop, {0} up.", travel)
    elif ended == "free":
        yield asks(
            "Let go free it runs past its balance, so where it came to rest proves nothing. Let it"
            " rise once more, a hand on the bar, slowly.",
        )
    elif ended == "stalled":
        for _, found in lengths(readings, **{"raise": "raise at which it stood still"}):
            yield asks("It stood still {0} up, of {1}.", found, travel)


def timed(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Note the time of a rise; what it means is for the advice."""
    seconds = number(readings, "seconds")
    if seconds is not None:
        yield passes("It rose in {0}.", noted("time of the rise", seconds, Unit.TIME))


def hand_forces(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the scale at each height: how hard down, and whether a hand must lift."""
    limit = hand_force_limit(order)
    for name, words, _ in SCALE_HEIGHTS:
        down, up = number(readings, f"{name}_down"), number(readings, f"{name}_up")
        if down is not None:
            found = noted(f"scale drawn down, {words.lower()}", down, Unit.FORCE)
            told = f"{words}: {{0}} down, at most {{1}}."
            yield (asks if down > limit.value else passes)(told, found, limit)
        if down is not None and up is not None and up < 0:
            yield _lifting(words, down, -up)


def _lifting(words: str, down: float, lift: float) -> Judgement:
    lifting = noted(f"lifted by hand, {words.lower()}", lift, Unit.FORCE)
    lowering = noted(f"scale drawn down, {words.lower()}", max(down, 0.0), Unit.FORCE)
    if lift > LIFT_TO_LOWER.value * max(down, 0.0):
        return asks(
            f"{words}: a hand lifts with {{0}} and lowers with {{1}}; at most {{2}} times as hard.",
            lifting,
            lowering,
            LIFT_TO_LOWER,
        )
    return passes(f"{words}: a hand lifts with {{0}} and lowers with {{1}}.", lifting, lowering)


def release(order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the release from the lowest lock."""
    allowed = order.headrail.release_travel
    if readings.get("released") == "no":
        yield stops("It does not let go when down. Set the lowest lock higher, or the stop.")
        return
    for _, found in lengths(readings, pull="further pull that it took"):
        if found.value > allowed.value:
            yield asks("It let go after {0}; {1} was reckoned.", found, allowed)
            return
    if readings.get("released") == "yes":
        yield passes("It lets go when down.")


def level(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the bar at each height."""
    names = {name: f"bar out of level, {words.lower()}" for name, words, _ in LEVEL_HEIGHTS}
    words = {name: words for name, words, _ in LEVEL_HEIGHTS}
    for field, found in lengths(readings, **names):
        if abs(found.value) > BAR_LEVEL.value:
            yield asks(
                f"{words[field]}: {{0}} out of level; {{1}} is accepted. Look for a wrap that"
                " climbed and a cord too short.",
                found,
                BAR_LEVEL,
            )
        else:
            yield passes(f"{words[field]}: {{0}} out of level, of {{1}}.", found, BAR_LEVEL)


def drift(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge how far it moved while nobody touched it."""
    names = {f"{name}_drift": f"drift, {words.lower()}" for name, words, _ in HOLDING_HEIGHTS}
    for field, found in lengths(readings, **names, day="drift overnight"):
        limit = DRIFT_IN_A_DAY if field == "day" else DRIFT
        place = found.name.removeprefix("drift").strip(", ").capitalize()
        if abs(found.value) > limit.value:
            yield asks(f"{place}: it moved {{0}}; {{1}} is accepted.", found, limit)
        else:
            yield passes(f"{place}: it moved {{0}}, of {{1}}.", found, limit)


def cycles(_order: CardOrder, readings: Readings) -> Iterator[Judgement]:
    """Judge the cycles."""
    made, ran = number(readings, "cycles"), readings.get("ran")
    if ran == "jumped":
        yield stops("A cord climbed or left its ring. Find out which, and why, before it leaves.")
    if made is None:
        return
    run = noted("full cycles", round(made), Unit.COUNT)
    if made < TEST_CYCLES.value:
        yield asks("{0} cycles; {1} are asked for.", run, TEST_CYCLES)
    elif ran == "clean":
        yield passes("{0} cycles without a fault.", run)
    elif ran is None:
        yield asks("{0} cycles. Did they run without a fault?", run)
