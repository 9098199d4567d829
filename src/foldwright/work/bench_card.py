"""The bench card of a planned shade."""

from __future__ import annotations

from collections.abc import Sequence

from foldwright.core.check.plan import ShadePlan
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market
from foldwright.core.prove.card import bench_card
from foldwright.core.prove.card_step import CardOrder, CardStep
from foldwright.core.quantity.length import Length
from foldwright.core.safety.rule import Measure
from foldwright.core.why.figure import Figure
from foldwright.work.bench import Kind

VISIT = ("stall", "scale", "wind", "release", "level", "hold", "cycles", "loops", "label")


def card_order(
    plan: ShadePlan | None, habits: Habits, markets: Sequence[Market]
) -> CardOrder | None:
    """Gather what a bench card is written from; None while a room cannot answer yet."""
    if plan is None or plan.size is None or plan.layout is None or plan.weights is None:
        return None
    if plan.balance is None or plan.headrail is None:
        return None
    return CardOrder(
        size=plan.size,
        layout=plan.layout,
        weights=plan.weights,
        balance=plan.balance,
        headrail=plan.headrail,
        lift=plan.spec.lift,
        habits=habits,
        markets=tuple(markets),
        blackout=_is_blackout(plan),
        loop_limit=_loop_limit(plan),
    )


def card_steps(order: CardOrder, kind: Kind = Kind.BENCH) -> tuple[CardStep, ...]:
    """Give the steps of the card; a visit begins with what the shade does as it hangs."""
    steps = bench_card(order)
    if kind is not Kind.VISIT:
        return steps
    known = {step.id: step for step in steps}
    return tuple(known[one] for one in VISIT if one in known)


def _is_blackout(plan: ShadePlan) -> bool:
    layers = (plan.chosen.face, plan.chosen.lining, plan.chosen.interlining)
    return any(cloth.blackout for cloth in layers if cloth)


def _loop_limit(plan: ShadePlan) -> Figure[Length] | None:
    """Give the strictest rule on the way round a loop."""
    rules = plan.safety.governing if plan.safety else ()
    return next((rule.limit for rule in rules if rule.measure is Measure.LOOP), None)
