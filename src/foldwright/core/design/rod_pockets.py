"""Pockets for the rods: sewn on, in the lining, or folded from all layers."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import replace
from math import pi

from foldwright.core.design.choices import PLAIN_FOLDS, RodPlace, RodPocket
from foldwright.core.design.layout import Layout, PocketPlan, RowPlan, Sewn, SewnLine
from foldwright.core.design.order import Order, draft
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.panel_limits import FLAT_ROD_EASE, ROUND_ROD_EASE
from foldwright.core.facts.records import Rod
from foldwright.core.quantity.length import ZERO, Length
from foldwright.core.quantity.rounding import Rounding
from foldwright.core.why.figure import Figure, Unit
from foldwright.core.why.finding import Severity
from foldwright.core.why.making import chosen, derived, supplied
from foldwright.core.why.trying import Draft, by_change, by_hand

L = Figure[Length]

FOLDED = frozenset({RodPocket.TO_THE_BACK, RodPocket.TO_THE_ROOM})


def in_the_lining(order: Order) -> bool:
    """Tell whether the rods lie in pockets of the lining.

    Takes: the order.

    Gives: True where they are asked for there, in a style that allows it.

    Source: common practice.
    """
    return _taken(order) and order.design.rod_pocket is RodPocket.LINING


def in_the_face(order: Order) -> bool:
    """Tell whether the rods lie in pockets that are folded from all layers.

    Takes: the order.

    Gives: True where they are asked for there, in a style that allows it.

    Source: common practice.
    """
    return _taken(order) and order.design.rod_pocket in FOLDED


def pocket_allowance(order: Order) -> L:
    """Tell how much cloth the pocket of one rod takes.

    Takes: the order.

    Gives: as typed; else once round the rod, and its ease; the house's while no rod is chosen.

    Source: common practice.

    >>> from foldwright.core.facts.records import Rod
    >>> flat = Rod(name="batten", line_mass_kg_m=0.1, diameter=Length.mm(3),
    ...     width=Length.inches("0.5"))
    >>> float(_round_it(flat).value.in_inches)
    1.25
    """
    typed, rod = order.design.pocket_allowance, order.chosen.rod
    if typed is not None:
        return chosen("cloth of a rod's pocket", typed, Unit.LENGTH)
    return order.habits.rod_pocket if rod is None else _round_it(rod)


def pocketed_rows(order: Order, rows: RowPlan) -> RowPlan:
    """Move the marks on the flat cloth up by the pockets below them.

    Takes: the order; the rows as they hang.

    Gives: the same rows, with marks on the cloth for rows and rods where pockets are folded
    from the face.

    Source: derived here.
    """
    if not in_the_face(order):
        return rows
    each = pocket_allowance(order)
    return replace(
        rows,
        cloth_marks=tuple(_moved(mark, rows, each) for mark in rows.marks),
        rod_cloth_marks=tuple(_moved(mark, rows, each) for mark in rows.rod_marks),
    )


def with_pockets(order: Order, body: L, rows: RowPlan) -> L:
    """Add to the cloth of a layer what its pockets take.

    Takes: the order; the cloth from hem to top line; the rows.

    Gives: the cloth with its pockets.

    Source: common practice.
    """
    each, count = pocket_allowance(order), _count(rows)
    return derived(
        "cloth with its rod pockets",
        body.value + each.value * count.value,
        Unit.LENGTH,
        "{0} from hem to top line, and {1} pockets of {2}.",
        body,
        count,
        each,
    )


def plan_pockets(order: Order, rows: RowPlan) -> PocketPlan | None:
    """Plan the pockets of the rods.

    Takes: the order; its rows, already moved by the pockets.

    Gives: how they are made, how much each takes, and the middle of each on the flat cloth
    it is folded from; None without rods, or where they are sewn on.

    Source: common practice; derived here for the marks.
    """
    if not in_the_face(order) and not in_the_lining(order):
        return None
    each = pocket_allowance(order)
    marks = rows.rod_cloth_marks or tuple(_moved(rod, rows, each) for rod in rows.rod_marks)
    return PocketPlan(
        place=order.design.rod_pocket,
        count=_count(rows),
        allowance=each,
        marks=tuple(_named(number, mark) for number, mark in enumerate(marks, start=1)),
    )


def pocket_lines(plan: PocketPlan | None) -> tuple[SewnLine, ...]:
    """Mark the middle of each pocket that is folded from the face.

    Takes: the plan of the pockets.

    Gives: lines across the cloth; none for pockets in the lining.

    Source: common practice.
    """
    if plan is None or plan.place not in FOLDED:
        return ()
    return tuple(SewnLine(kind=Sewn.POCKET, at=mark) for mark in plan.marks)


def rod_length(width: L, layout: Layout, habits: Habits) -> L:
    """Tell how long a rod is cut.

    Takes: the finished width; the layout; the shop's habits.

    Gives: short of the width, or of the lining where that is narrower and carries the rods.

    Source: common practice.

    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.rig.example import LAYOUT, SIZE
    >>> rod_length(SIZE.width, LAYOUT, house_habits()).value.in_millimetres
    1187.3
    """
    less, pockets = habits.rod_less_than_width, layout.pockets
    narrower = habits.pocket_lining_less
    if pockets is None or pockets.place is not RodPocket.LINING:
        value, because = width.value - less.value, "The finished width {0} less {1}."
        inputs: tuple[L, ...] = ()
    else:
        value = width.value - narrower.value - less.value
        because = "The lining, {2} narrower than the finished width {0}, less {1}."
        inputs = (narrower,)
    return derived(
        "length of a rod",
        value,
        Unit.LENGTH,
        because,
        width,
        less,
        *inputs,
        rounding=Rounding.MUST_FIT,
    )


def draft_pocket_checks(order: Order) -> Iterator[Draft[Order]]:
    """Draft what is wrong with pockets that are asked for.

    Takes: the order.

    Gives: drafts of questions.

    Source: common practice.
    """
    place = order.design.rod_pocket
    if order.design.rods is RodPlace.NONE or place is RodPocket.SEWN_ON:
        return
    sewn_on = by_change(
        order, order.system, "Sew the pockets on.", design__rod_pocket=RodPocket.SEWN_ON
    )
    if order.design.style not in PLAIN_FOLDS:
        yield draft(
            Severity.ASK,
            "rod-pockets",
            "Loops, tucks and gathers leave no place for rod pockets but sewn on; they are asked"
            f" for {place.value}.",
            ways=(sewn_on,),
        )
    elif place is RodPocket.LINING and order.chosen.lining is None:
        yield draft(
            Severity.ASK,
            "pockets-without-lining",
            "The rods are to lie in pockets of the lining, and no lining is chosen.",
            ways=(sewn_on, by_hand("Choose a lining.")),
        )


def _taken(order: Order) -> bool:
    return order.design.rods is not RodPlace.NONE and order.design.style in PLAIN_FOLDS


def _count(rows: RowPlan) -> Figure[int]:
    because = "One for each rod."
    return derived("rod pockets", len(rows.rod_marks), Unit.COUNT, because, rows.count)


def _round_it(rod: Rod) -> L:
    """Go once round a rod; a flat one is nearly twice its width."""
    if rod.width is None:
        across = supplied("diameter of the rod", rod.diameter, Unit.LENGTH, rod.name)
        value, ease = Length.metres(across.value.in_metres * pi), ROUND_ROD_EASE
        because = "Once round a rod {0} thick, and {1}."
    else:
        across = supplied("width of the flat rod", rod.width, Unit.LENGTH, rod.name)
        value, ease = across.value * 2, FLAT_ROD_EASE
        because = "Both faces of a flat rod {0} wide, and {1}."
    return derived(
        "cloth of a rod's pocket",
        value + ease.value,
        Unit.LENGTH,
        because,
        across,
        ease,
        rounding=Rounding.CUT_OVERSIZE,
    )


def _moved(mark: L, rows: RowPlan, each: L) -> L:
    """Add the pockets below a mark, and half of the one at it."""
    rods = sorted(rod.value for rod in rows.rod_marks)
    below = bisect_left(rods, mark.value)
    at_it = bisect_right(rods, mark.value) - below
    half = each.value / 2 if at_it else ZERO
    return derived(
        f"{mark.name} on the flat cloth",
        mark.value + each.value * below + half,
        Unit.LENGTH,
        f"It hangs at {{0}}; {below} pockets below it take {{1}} each"
        + (", and half of one more." if at_it else "."),
        mark,
        each,
    )


def _named(number: int, mark: L) -> L:
    because = "The middle of the pocket, on the flat cloth it is folded from: {0}."
    return derived(f"rod pocket {number}", mark.value, Unit.LENGTH, because, mark)
