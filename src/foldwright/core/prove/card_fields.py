"""The fields of the bench card's steps, and the heights at which it tests."""

from __future__ import annotations

from foldwright.core.lift.choices import LiftKind
from foldwright.core.prove.card_step import Ask, CardOrder, Reads
from foldwright.core.quantity.length import Length
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.making import chosen, derived

L = Figure[Length]
Heights = tuple[tuple[str, str, float], ...]

HOLDING_HEIGHTS: Heights = (
    ("low", "Low", 0.25),
    ("middle", "Half way", 0.5),
    ("high", "High", 0.75),
)
SCALE_HEIGHTS: Heights = (("low", "Low", 0.25), ("high", "High", 0.75))
LEVEL_HEIGHTS: Heights = (
    ("quarter", "A quarter up", 0.25),
    ("half", "Half up", 0.5),
    ("most", "Three quarters up", 0.75),
    ("up", "Fully up", 1.0),
)
YES_NO = (("yes", "Yes"), ("no", "No"))


def is_sprung(order: CardOrder) -> bool:
    """Tell whether a spring lifts the shade.

    Takes: the shade as planned.

    Gives: no for a clutch or a motor, which nobody winds.

    Source: derived here.

    >>> from foldwright.core.prove.card_example import order
    >>> is_sprung(order())
    True
    """
    return order.balance.kind is LiftKind.SPRING


def share_of_travel(order: CardOrder, share: float, words: str) -> L:
    """Give a height to test at."""
    travel = order.layout.travel
    because = f"{words}: this share of the travel {{0}}."
    value = Length.metres(round(travel.value.in_metres * share, 3))
    return derived(f"height to test at, {words.lower()}", value, Unit.LENGTH, because, travel)


def hand_force_limit(order: CardOrder) -> Figure[float]:
    """Give the greatest force asked of a hand at this shade."""
    asked = order.lift.hand_force_limit_n
    if asked is None:
        return order.habits.hand_force_limit_n
    return chosen("greatest hand force", asked, Unit.FORCE)


def lengths(*fields: tuple[str, str]) -> tuple[Ask, ...]:
    """Give fields for lengths."""
    return tuple(Ask(name=name, label=label, reads=Reads.LENGTH) for name, label in fields)


def choice(name: str, label: str, *options: tuple[str, str], optional: bool = False) -> Ask:
    """Give a field for one of a few answers."""
    return Ask(name=name, label=label, reads=Reads.CHOICE, options=options, optional=optional)


def turns_field(order: CardOrder, *, now: bool = True) -> Ask:
    """Give the field for the turns that are in the spring."""
    return Ask(
        name="turns",
        label="Turns in the spring, counted at the up-stop",
        reads=Reads.TURNS,
        usual=order.headrail.pretension_turns,
        now=now,
    )
