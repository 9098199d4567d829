"""Hang the shades of a board: its length, every mark on it, and what lifts them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foldwright.core.check.boards.board import BoardLift, SharedBoard
from foldwright.core.check.boards.placing import (
    Hanging,
    OnBoard,
    board_for,
    columns_together,
    place_shades,
    width_over_all,
)
from foldwright.core.check.boards.together import add_weights, apart_in_rows, rise_together
from foldwright.core.check.plan import ShadePlan
from foldwright.core.check.planning import Given
from foldwright.core.facts.order_limits import BETWEEN_SHADES, LINED_UP
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.lifting import lift_shade
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding, System
from foldwright.core.rig.headrail import Headrail
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Change, Finding, Remedy
from foldwright.core.why.making import chosen, derived
from foldwright.core.why.trying import as_typed, on_mark

L = Figure[Length]


@dataclass(frozen=True, kw_only=True, slots=True)
class Boarding:
    """A shared board, marked; what cannot be said yet is missing, what limits it is told."""

    board: SharedBoard
    length: L | None = None
    shades: tuple[OnBoard, ...] = ()  # from left to right as seen from the back
    balance: Balance | None = None  # of the one tube
    headrail: Headrail | None = None  # of the one tube
    findings: tuple[Finding, ...] = ()  # of the one tube
    limits: tuple[Remedy, ...] = ()
    missing: tuple[str, ...] = ()
    widths: tuple[tuple[str, Remedy], ...] = ()  # by tag, what to type where none is


def board_shades(
    board: SharedBoard, plans: tuple[ShadePlan, ...], given: Given, system: System
) -> Boarding:
    """Hang shades on one board.

    Takes: the board; the plans of its shades, from left to right as seen from the room; what
    every room is given; the system whose marks a shared width lies on.

    Gives: the board's length, each shade and each cord as a mark from one end, and with one
    tube its balance and its headrail, the loads of all shades added.

    Holds for: shades in one line; one tube lifts shades whose rows are alike.

    Source: common practice for the board; derived here for the one tube.

    >>> import numpy as np
    >>> from foldwright.core.check.plan import ShadeSpec
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.facts.records import ShopList
    >>> given = Given(
    ...     listed=ShopList(), habits=house_habits(), markets=(), draws=np.full((4, 16), 0.5))
    >>> pair = SharedBoard(name="Pair", shades=("A", "B"), gap=Length.mm(12))
    >>> plans = tuple(ShadePlan(spec=ShadeSpec(tag=tag)) for tag in pair.shades)
    >>> board_shades(pair, plans, given, System.METRIC).missing[0]
    '“A” cannot be laid out yet: its own page says why.'
    """
    widths = tuple(_shared_widths(board, plans, system))
    missing = tuple(_missing(plans))
    if missing or len(plans) <= 1:
        return Boarding(board=board, missing=missing, widths=widths)
    shades = tuple(_hangings(plans))
    less = given.habits.board_deduction
    over_all = width_over_all(shades, board.gap)
    placed = place_shades(shades, board.gap, less, own_tubes=board.lift is BoardLift.EACH)
    hung = Boarding(
        board=board,
        length=board_for(over_all, less),
        shades=placed,
        limits=tuple(_limits(board, shades)),
        widths=widths,
    )
    if board.lift is BoardLift.EACH or not rise_together(shades):
        return hung
    return _on_one_tube(hung, shades, over_all, given)


def _missing(plans: tuple[ShadePlan, ...]) -> Iterator[str]:
    for plan in plans:
        if plan.size is None or plan.layout is None:
            yield f"“{plan.spec.tag}” cannot be laid out yet: its own page says why."


def _hangings(plans: tuple[ShadePlan, ...]) -> Iterator[Hanging]:
    for plan in plans:
        if plan.size is not None and plan.layout is not None:
            yield Hanging(plan=plan, size=plan.size, layout=plan.layout)


def _shared_widths(
    board: SharedBoard, plans: tuple[ShadePlan, ...], system: System
) -> Iterator[tuple[str, Remedy]]:
    """Share what is left of the width over all among the shades that have none typed."""
    if board.across is None:
        return
    typed = [plan.spec.asked.width for plan in plans if plan.spec.asked.width is not None]
    open_ = [plan for plan in plans if plan.spec.asked.width is None]
    left = board.across - sum(typed, ZERO) - board.gap * (len(plans) - 1)
    if not open_ or left <= ZERO:
        return
    each = on_mark(left / len(open_), system, Rounding.MUST_FIT)
    width = derived(
        "width of each",
        each,
        Unit.LENGTH,
        "{0} less the gaps and what is typed, shared, and rounded down to a mark.",
        chosen("width over all", board.across, Unit.LENGTH),
        rounding=Rounding.MUST_FIT,
    )
    for plan in open_:
        giver = plan.spec.asked.given_by.strip() or "the board"
        yield (
            plan.spec.tag,
            Remedy(
                sentence="Make it {0} wide.",
                figures=(width,),
                changes=(
                    Change(path="asked.width", text=as_typed(each, system)),
                    Change(path="asked.given_by", text=giver),
                ),
            ),
        )


def _limits(board: SharedBoard, shades: tuple[Hanging, ...]) -> Iterator[Remedy]:
    gap = chosen("gap between two shades", board.gap, Unit.LENGTH)
    if board.gap < BETWEEN_SHADES.value:
        yield Remedy(
            sentence="The shades hang {0} apart; nearer than {1} their edges rub and catch.",
            figures=(gap, BETWEEN_SHADES),
        )
    if board.lift is BoardLift.ONE:
        yield from _one_tube_limits(shades)


def _one_tube_limits(shades: tuple[Hanging, ...]) -> Iterator[Remedy]:
    """Say what one tube cannot do."""
    apart = apart_in_rows(shades)
    if apart is None:
        yield Remedy(
            sentence="One tube raises all shades by the same length, and these have unlike rows."
            " Give them the same drop and rows, or a tube each."
        )
    elif apart > LINED_UP.value:
        figure = derived("rows apart", apart, Unit.LENGTH, "The greatest of rows and raises.")
        yield Remedy(
            sentence="One tube raises all shades by the same length, and their rows lie up to {0}"
            " apart: match them as a group, or give each a tube.",
            figures=(figure,),
        )
    else:
        yield Remedy(
            sentence="They rise and stop together: none can be lowered alone, and the lift chosen"
            " for “{0}” lifts them all.".replace("{0}", _plain(shades[0].tag))
        )


def _plain(tag: str) -> str:
    """Take out what a sentence would take for a place to fill."""
    return tag.replace("{", "(").replace("}", ")")


def _on_one_tube(
    hung: Boarding, shades: tuple[Hanging, ...], over_all: L, given: Given
) -> Boarding:
    """Balance and rig all shades as one, by the lift and the parts of the first."""
    first, weights = shades[0], [shade.plan.weights for shade in shades]
    known = tuple(each for each in weights if each is not None)
    if len(known) < len(shades) or hung.length is None:
        return hung
    together = add_weights(known)
    size = replace(first.size, width=over_all, board_length=hung.length)
    columns = columns_together(hung.shades, given.habits.board_deduction)
    layout = replace(first.layout, columns=columns)
    spec, chosen_parts = first.plan.spec, first.plan.chosen
    lifted = lift_shade(
        spec.lift,
        together,
        layout,
        size,
        chosen_parts,
        given.listed,
        given.habits,
        given.draws,
    )
    if lifted.result is None:
        return replace(hung, findings=lifted.findings)
    rigged = rig_headrail(
        spec.mount,
        size,
        layout,
        lifted.result,
        together,
        chosen_parts,
        spec.lift,
        given.habits,
        given.listed,
    )
    return replace(
        hung,
        balance=lifted.result,
        headrail=rigged.result,
        findings=(*lifted.findings, *rigged.findings),
    )
