"""The up-stop: where the lowest row and the bottom edge then are, and clear of what."""

from __future__ import annotations

import math

from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.records import Bracket
from foldwright.core.lift.choices import LiftChoices
from foldwright.core.measure.finished import FinishedSize
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.weigh.load import Weights
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Remedy, Severity, Stage
from foldwright.core.why.making import chosen, derived, fact, supplied
from foldwright.core.why.source import Status

L = Figure[Length]
N = Figure[float]


def raise_to_stop(layout: Layout, choices: LiftChoices) -> L:
    """Give how far the lowest ring row is raised, from fully down to the up-stop.

    Takes: the layout with its design travel; the lift with its raise limit, if any.

    Gives: the travel, or the chosen share of it.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT
    >>> half = LiftChoices(raise_limit_share=0.5)
    >>> raise_to_stop(LAYOUT, half).value.in_millimetres
    703.5
    """
    if choices.raise_limit_share is None:
        return layout.travel
    share = chosen("share of the raise", choices.raise_limit_share, Unit.SHARE)
    return derived(
        "raise to the up-stop",
        Length.metres(layout.travel.value.in_metres * share.value),
        Unit.LENGTH,
        "{1} of the {0} that the rows allow.",
        layout.travel,
        share,
    )


def up_stop(size: FinishedSize, layout: Layout, travel: L) -> L:
    """Give where the lowest ring row stands under the top of the board, at the up-stop.

    Takes: the finished size; the rows; the raise to the stop.

    Gives: the mark at which the stop is set.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> up_stop(SIZE, LAYOUT, LAYOUT.travel).value.in_millimetres
    133.0
    """
    return derived(
        "up-stop",
        size.drop.value - layout.rows.first_row.value - travel.value,
        Unit.LENGTH,
        "The lowest row starts {1} above a drop of {0} and is raised {2}.",
        size.drop,
        layout.rows.first_row,
        travel,
    )


def hem_at_stop(stop: L, layout: Layout) -> L:
    """Give where the bottom edge then is, under the top of the board.

    Takes: the up-stop; the rows.

    Gives: the lowest edge of the raised shade.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS
    >>> hem_at_stop(PARTS.up_stop, LAYOUT).value.in_millimetres
    193.0
    """
    return derived(
        "bottom edge at the up-stop",
        stop.value + layout.rows.first_row.value,
        Unit.LENGTH,
        "The lowest row stops {0} below the top, and the cloth hangs {1} below it.",
        stop,
        layout.rows.first_row,
    )


def top_ring_at_stop(stop: L, layout: Layout, stacked_pitch: L) -> L:
    """Give where the highest ring stands under the top of the board, at the up-stop.

    Takes: the up-stop; the rows; row to row in the stack.

    Gives: the top row on the stack, or where it was sewn if the raise ends before it.

    Source: derived here.

    >>> from foldwright.core.rig.example import LAYOUT, PARTS, WEIGHTS
    >>> top_ring_at_stop(PARTS.up_stop, LAYOUT, stacked_pitch(WEIGHTS)).value.in_millimetres
    98.0
    """
    stacked = stop.value - stacked_pitch.value * (layout.rows.count.value - 1)
    return derived(
        "top ring at the up-stop",
        min(stacked, layout.rows.top_panel.value),
        Unit.LENGTH,
        "The lowest of {1} rows stops at {0}, the others lie on it {2} apart; none rises above"
        " the {3} at which the top row was sewn before it is reached.",
        stop,
        layout.rows.count,
        stacked_pitch,
        layout.rows.top_panel,
    )


def stacked_pitch(weights: Weights) -> L:
    """Give row to row in the raised stack, as the load was reckoned.

    Takes: the weights with the panel's load.

    Gives: the pitch.

    Source: house default.

    >>> from foldwright.core.rig.example import WEIGHTS
    >>> stacked_pitch(WEIGHTS).value.in_millimetres
    5.0
    """
    return fact(
        "row to row in the stack",
        Length.metres(weights.load.stacked_pitch_m),
        Unit.LENGTH,
        "Raised, rings and rods lie on each other.",
        Status.HOUSE,
    )


def rings_at_the_rail(
    top_ring: L, travel: L, bracket: Bracket, choices: LiftChoices, habits: Habits
) -> tuple[Finding, ...]:
    """Stop when the up-stop lets a ring reach the headrail: the spring tears it off.

    Takes: the top ring at the stop; the raise; the bracket with the headrail's height; the
    lift; the habits with the clearance.

    Gives: a finding with the raise that keeps clear, or nothing.

    Source: common practice.

    >>> from foldwright.core.rig.example import BRACKET, LIFT, ORDER, PARTS
    >>> rings_at_the_rail(PARTS.top_ring, PARTS.travel, BRACKET, LIFT, ORDER.habits)
    ()
    """
    height = supplied("headrail height", bracket.height, Unit.LENGTH, bracket.name)
    clear = derived(
        "clear of the headrail",
        top_ring.value - height.value,
        Unit.LENGTH,
        "The top ring stops {0} below the top, the headrail ends at {1}.",
        top_ring,
        height,
    )
    short = habits.stop_clearance.value - clear.value
    if short <= ZERO:
        return ()
    return (
        Finding(
            id="rig.rings-at-rail",
            severity=Severity.STOP,
            stage=Stage.HEADRAIL,
            sentence="At the up-stop the top ring comes {0} below the headrail; {1} must be left,"
            " or the lift tears the rings off.",
            figures=(clear, habits.stop_clearance),
            remedies=_stop_lower(short, travel, choices),
        ),
    )


def _stop_lower(short: Length, travel: L, choices: LiftChoices) -> tuple[Remedy, ...]:
    whole = travel.value.in_metres / (choices.raise_limit_share or 1)
    share = math.floor((travel.value - short).in_metres / whole * 1000) / 1000
    figure = derived(
        "share of the raise that keeps clear",
        share,
        Unit.SHARE,
        "The raise of {0} less what is missing, rounded down.",
        travel,
    )
    deeper = Remedy(sentence="Make the head allowance larger by what is missing.")
    if share <= 0:
        return (deeper,)
    change = Change(path="lift.raise_limit_share", text=f"{share:g}")
    stop = Remedy(sentence="Raise to {0} of the travel only.", figures=(figure,), changes=(change,))
    return (stop, deeper)


def handle_position(size: FinishedSize) -> L:
    """Give where the pull handle goes on the bar.

    Takes: the finished size.

    Gives: the middle of the bar, from the left edge seen from the back.

    Holds for: cloth, bar and rods that are the same left and right, whose weight then
    centres there too.

    Source: common practice.

    >>> from foldwright.core.rig.example import SIZE
    >>> handle_position(SIZE).value.in_millimetres
    600.0
    """
    return derived(
        "pull handle",
        size.width.value / 2,
        Unit.LENGTH,
        "The middle of the finished width of {0}, which is also where the weight centres, so that"
        " a pull keeps the bar level.",
        size.width,
    )
