"""A second look at a plan: it reads positions only and shares no code with the planner."""

from __future__ import annotations

from foldwright.core.cloth.checking.cloth import cloth
from foldwright.core.cloth.checking.cuts import cuts
from foldwright.core.cloth.checking.pattern import pattern
from foldwright.core.cloth.checking.second_look import Look
from foldwright.core.cloth.order import ClothOrder, ClothPlan
from foldwright.core.why.fault import Fault

PLAN_AGAIN = "Do not cut from this plan; plan the job again."


def faults_of(plan: ClothPlan, order: ClothOrder) -> tuple[Fault, ...]:
    """Say everything that is wrong with a plan.

    Takes: a plan and the order that it answers.

    Gives: one fault for each thing that is wrong; none for a plan that can be cut as printed.

    Source: derived here.

    >>> from foldwright.core.quantity.length import ZERO
    >>> empty = ClothPlan(levels=(), placements=(), rolls=(), remnants=(), bought=ZERO,
    ...                   bound=ZERO, proven=True)
    >>> faults_of(empty, ClothOrder(pieces=()))
    ()
    """
    look = Look(plan, order)
    said = (*cuts(look), *cloth(look), *pattern(look))
    return tuple(Fault(where=where, what=what, remedy=PLAN_AGAIN) for where, what in said)
