"""Where a cradle carries a tube that would sag too much from end to end."""

from __future__ import annotations

import math

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Bracket
from foldwright.core.lift.balance import Balance
from foldwright.core.quantity.length import Length
from foldwright.core.rig.clips import Stretch
from foldwright.core.rig.tube import TubePlace
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Finding, Remedy, Severity, Stage
from foldwright.core.why.making import derived, supplied

L = Figure[Length]


def spans_needed(balance: Balance, place: TubePlace, habits: Habits) -> int:
    """Give the number of spans that keep the tube within the shop's limit of sag.

    Takes: the balance with the tube's sag over one span; the tube; the shop's habits.

    Gives: 1 without a cradle, 2 with one, and so on.

    Holds for: load spread along the tube; the share of its span by which a tube sags goes
    with the cube of the span, so n spans sag n times n times n less.

    Source: derived here.

    >>> from foldwright.core.rig.example import BALANCE, ORDER, PARTS
    >>> spans_needed(BALANCE, PARTS.place, ORDER.habits)
    1
    """
    if balance.tube_sag is None:
        return 1
    allowed = _allowed_sag(place, habits)
    spans = math.ceil(math.cbrt(balance.tube_sag.value.in_metres / allowed.value.in_metres))
    return max(1, spans)


def _allowed_sag(place: TubePlace, habits: Habits) -> L:
    return derived(
        "allowed sag of the tube",
        Length.metres(place.cut.value.in_metres * habits.tube_sag_share.value),
        Unit.LENGTH,
        "The tube of {0}, times {1}.",
        place.cut,
        habits.tube_sag_share,
    )


def place_cradles(
    balance: Balance,
    place: TubePlace,
    taken: tuple[Stretch, ...],
    bracket: Bracket,
    habits: Habits,
) -> tuple[L, ...]:
    """Put cradles as near as the wraps let them to the points that share the tube equally.

    Takes: the balance with the tube's sag; the tube; the pieces of it that wraps and clips
    take; the bracket, whose width a cradle is reckoned to have; the habits.

    Gives: cradle centres from the board's left end, seen from the back; one fewer wherever
    a cradle finds no free piece of tube.

    Source: derived here.

    >>> from dataclasses import replace
    >>> from foldwright.core.rig.example import BALANCE, BRACKET, ORDER, PARTS
    >>> limp = replace(BALANCE, tube_sag=PARTS.offset)
    >>> marks = place_cradles(limp, PARTS.place, PARTS.taken, BRACKET, ORDER.habits)
    >>> [round(mark.value.in_millimetres) for mark in marks]
    [307, 597, 887]
    """
    spans = spans_needed(balance, place, habits)
    free = _free(place, taken)
    spots = [
        _nearest_spot(place.cut.value * number / spans, free, bracket.width)
        for number in range(1, spans)
    ]
    found = sorted({spot for spot in spots if spot is not None})
    return tuple(_mark(number, spot, place, bracket) for number, spot in enumerate(found, start=1))


def cradle_findings(
    balance: Balance, place: TubePlace, marks: tuple[L, ...], habits: Habits
) -> tuple[Finding, ...]:
    """Say that the tube needs cradles, and stop where one finds no room.

    Takes: the balance; the tube; the cradles placed; the habits.

    Gives: a finding where the tube sags too much, or nothing.

    Source: derived here.

    >>> from foldwright.core.rig.example import BALANCE, ORDER, PARTS
    >>> cradle_findings(BALANCE, PARTS.place, (), ORDER.habits)
    ()
    """
    spans = spans_needed(balance, place, habits)
    if spans == 1 or balance.tube_sag is None:
        return ()
    allowed = _allowed_sag(place, habits)
    short = len(marks) < spans - 1
    return (
        _no_room(balance.tube_sag, allowed) if short else _needed(balance.tube_sag, allowed, marks),
    )


def _free(place: TubePlace, taken: tuple[Stretch, ...]) -> tuple[Stretch, ...]:
    """Give what the wraps and clips leave free between the brackets."""
    free: list[Stretch] = []
    at = place.free_from.value
    for stretch in sorted(taken, key=lambda one: one.start.nanometres):
        if stretch.start > at:
            free.append(Stretch(start=at, end=stretch.start))
        at = max(at, stretch.end)
    if place.free_to.value > at:
        free.append(Stretch(start=at, end=place.free_to.value))
    return tuple(free)


def _nearest_spot(wanted: Length, free: tuple[Stretch, ...], width: Length) -> Length | None:
    half = width / 2
    spots = [
        min(max(wanted, piece.start + half), piece.end - half)
        for piece in free
        if piece.end - piece.start >= width
    ]
    return min(spots, key=lambda spot: abs(spot - wanted), default=None)


def _mark(number: int, spot: Length, place: TubePlace, bracket: Bracket) -> L:
    width = supplied("cradle width", bracket.width, Unit.LENGTH, bracket.name)
    return derived(
        f"cradle mark {number}",
        spot + place.start.value,
        Unit.LENGTH,
        "As near to an equal share of the tube of {0} as a cradle {1} wide finds room beside"
        " clips and wraps; the tube starts {2} from the board's end.",
        place.cut,
        width,
        place.start,
    )


STIFFER = Remedy(sentence="Take a larger or thicker tube, which needs no cradle.")


def _no_room(sag: L, allowed: L) -> Finding:
    return Finding(
        id="rig.no-room-for-cradle",
        severity=Severity.STOP,
        stage=Stage.HEADRAIL,
        sentence="The tube sags {0}, more than {1}, and clips and wraps leave no free piece of it"
        " for a cradle.",
        figures=(sag, allowed),
        remedies=(STIFFER,),
    )


def _needed(sag: L, allowed: L, marks: tuple[L, ...]) -> Finding:
    return Finding(
        id="rig.cradle",
        severity=Severity.NOTE,
        stage=Stage.HEADRAIL,
        sentence="The tube sags {0} from end to end, more than {1}: it needs a cradle, the first"
        " at {2} from the board's left end, seen from the back.",
        figures=(sag, allowed, *marks),
        remedies=(STIFFER,),
    )
