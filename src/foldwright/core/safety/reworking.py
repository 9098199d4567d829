"""Take a shade with another design or lift through the earlier rooms again, to try a remedy."""

from __future__ import annotations

from dataclasses import replace

from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.facts.markets import edge_distance_floor, row_spacing_cap
from foldwright.core.lift.balance import Balance
from foldwright.core.lift.lifting import lift_shade
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.weigh.load import Weights
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.answer import Answer
from foldwright.core.why.finding import Finding, Severity


def rework(order: SafetyOrder) -> Answer[SafetyOrder]:
    """Lay out, weigh, lift and rig a changed shade.

    Takes: an order whose design or lift was changed and whose layout is still the old one.

    Gives: the order with its new layout and weights, None where none can be drawn; the findings
    are the stops that were not there before.

    Source: derived here.
    """
    laid = lay_out_again(order)
    if laid.result is None:
        return Answer(result=None, findings=laid.findings)
    changed = replace(order, layout=laid.result)
    rest = _weighed(changed)
    return Answer(result=rest.result, findings=_new_stops(order, laid.findings + rest.findings))


def lay_out_again(order: SafetyOrder) -> Answer[Layout]:
    """Lay out a shade whose design was changed."""
    return lay_out(
        order.design,
        order.size,
        order.chosen,
        order.habits,
        row_spacing_cap(order.markets),
        edge_distance_floor(order.markets),
        order.making,
    )


def _weighed(order: SafetyOrder) -> Answer[SafetyOrder]:
    weighed = weigh_shade(order.layout, order.size, order.chosen, order.habits)
    if weighed.result is None:
        return Answer(result=order, findings=weighed.findings)
    changed = replace(order, weights=weighed.result)
    return Answer(result=changed, findings=weighed.findings + _lifted(changed))


def _lifted(order: SafetyOrder) -> tuple[Finding, ...]:
    if order.weights is None:
        return ()
    lifted = lift(order, order.weights)
    if lifted.result is None:
        return lifted.findings
    rigged = rig_headrail(
        order.site.mount,
        order.size,
        order.layout,
        lifted.result,
        order.weights,
        order.chosen,
        order.lift,
        order.habits,
        order.shop,
    )
    return lifted.findings + rigged.findings


def lift(order: SafetyOrder, weights: Weights) -> Answer[Balance]:
    """Balance a shade against its lift."""
    return lift_shade(
        order.lift,
        weights,
        order.layout,
        order.size,
        order.chosen,
        order.shop,
        order.habits,
        order.draws,
    )


def _new_stops(order: SafetyOrder, findings: tuple[Finding, ...]) -> tuple[Finding, ...]:
    return tuple(
        finding
        for finding in findings
        if finding.severity is Severity.STOP and finding.id not in order.stops
    )
