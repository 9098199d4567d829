"""The case of a shade as it comes to the bench."""

from __future__ import annotations

from foldwright.core.lift.givens import LiftCase
from foldwright.core.lift.judging import judge
from foldwright.core.lift.order import LiftOrder


def bench_case(order: LiftOrder) -> LiftCase | None:
    """Give the case of a shade with its spring, as it was planned.

    Takes: all that is known of the shade's lift.

    Gives: the case in plain numbers; None where no spring is chosen, or its sheet says too
    little: then there is nothing to prove at the bench.

    Source: derived here.

    >>> from dataclasses import replace
    >>> import numpy as np
    >>> from foldwright.core.facts.house import house_habits
    >>> from foldwright.core.rig import example as e
    >>> order = LiftOrder(
    ...     choices=e.LIFT, weights=e.WEIGHTS, layout=e.LAYOUT, size=e.SIZE, chosen=e.CHOSEN,
    ...     shop=e.SHOP, habits=house_habits(), draws=np.full((2, 16), 0.5))
    >>> bench_case(order).spring is not None
    True
    >>> bench_case(replace(order, choices=replace(e.LIFT, spring="")))
    """
    spring = order.shop.springs.get(order.choices.spring)
    judged = judge(order, spring) if spring else None
    return judged.case if judged else None
