"""Plan one shade: the rooms in the order of the work, each given what the last one made."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from foldwright.core.check.looking_over import look_over
from foldwright.core.check.overriding import set_aside
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.review import Company, Review
from foldwright.core.check.whole_trials import only_what_is_chosen
from foldwright.core.design.laying_out import lay_out
from foldwright.core.design.layout import Layout
from foldwright.core.facts.habits import Habits
from foldwright.core.facts.markets import Market, edge_distance_floor, row_spacing_cap
from foldwright.core.facts.records import ShopList, choose
from foldwright.core.lift.lifting import lift_shade
from foldwright.core.measure.finishing import finished_size
from foldwright.core.measure.site import Site
from foldwright.core.pieces.own_shrinkage import lining_as_tested
from foldwright.core.rig.rigging import rig_headrail
from foldwright.core.safety.order import SafetyOrder
from foldwright.core.safety.safe_for import safe_for
from foldwright.core.weigh.weighing import weigh_shade
from foldwright.core.why.figure import Unit
from foldwright.core.why.finding import Finding, Severity, Stage
from foldwright.core.why.making import chosen

ALONE = Company()

_STAGES = tuple(Stage)
_SEVERITIES = tuple(Severity)
_ASKED_EARLIER = {
    "weigh.face": "design.face-missing",
    "weigh.rod": "design.rod-missing",
    "rig.choose-lift": "lift.kind",
}


@dataclass(frozen=True, kw_only=True, slots=True, eq=False)
class Given:
    """What every room is given besides the shade: the shop's list and habits, and the markets.

    `draws` are numbers between 0 and 1 of shape (trials, 16 or more), for what is uncertain.
    """

    listed: ShopList
    habits: Habits
    markets: tuple[Market, ...]
    draws: NDArray[np.float64]


def plan_shade(
    spec: ShadeSpec,
    shop: ShopList,
    habits: Habits,
    markets: tuple[Market, ...],
    draws: NDArray[np.float64],
) -> ShadePlan:
    """Plan one shade from the measured window to the wound headrail.

    Takes: the shade as asked for; the shop's list and habits; the markets whose rules hold;
    draws, numbers between 0 and 1 of shape (trials, 16 or more), for what is uncertain.

    Gives: all that can be known yet. A room that lacks facts gives no result, the rooms
    after it are not entered, and the findings say what is missing.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> plan = plan_shade(
    ...     ShadeSpec(tag="A"), ShopList(), house_habits(), tuple(Market), np.full((4, 16), 0.5))
    >>> plan.size is None and len(plan.findings) > 0
    True
    """
    given = Given(listed=shop, habits=habits, markets=markets, draws=draws)
    return look_over_shade(plan_rooms(spec, given), given)


def plan_rooms(spec: ShadeSpec, given: Given) -> ShadePlan:
    """Take one shade through the rooms, before the last look over it.

    Takes: the shade as asked for; what every room is given.

    Gives: all that the rooms know of it by itself.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> given = Given(
    ...     listed=ShopList(), habits=house_habits(), markets=(), draws=np.full((4, 16), 0.5))
    >>> plan_rooms(ShadeSpec(tag="A"), given).size is None
    True
    """
    plan = ShadePlan(spec=spec, chosen=choose(spec.materials, given.listed))
    for room in (_measure, _design, _weigh, _lift, _rig, _safe):
        plan = room(plan, given)
    return plan


def look_over_shade(plan: ShadePlan, given: Given, company: Company = ALONE) -> ShadePlan:
    """Look once more over a shade that came through the rooms, and put its findings in order.

    Takes: the plan of the rooms; what every room is given; the other shades and the rolls of
    its job, nothing for a shade by itself.

    Gives: the plan with every finding, the stops that somebody answers for set aside.

    Source: derived here.

    >>> from foldwright.core.facts.house import house_habits
    >>> given = Given(
    ...     listed=ShopList(), habits=house_habits(), markets=(), draws=np.full((4, 16), 0.5))
    >>> plan = look_over_shade(plan_rooms(ShadeSpec(tag="A"), given), given)
    >>> plan.findings[0].id
    'measure.place'
    """
    review = Review(
        plan=plan,
        shop=given.listed,
        habits=given.habits,
        markets=given.markets,
        company=company,
    )
    findings = set_aside(_asked_once(look_over(review, _trial(given))), plan.spec.overrides)
    return replace(plan, findings=in_order(findings))


def _trial(given: Given) -> Callable[[ShadeSpec], ShadePlan]:
    """Take a changed shade through the rooms, without looking for a lift that nobody chose."""

    def rooms(spec: ShadeSpec) -> ShadePlan:
        listed = only_what_is_chosen(given.listed, spec)
        return plan_rooms(spec, replace(given, listed=listed))

    return rooms


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Put findings in the order in which they must be settled, the strongest first.

    Takes: findings as the rooms gave them.

    Gives: the same, by stage of the job and then by severity.

    Source: derived here.

    >>> late = Finding(id="b", severity=Severity.STOP, stage=Stage.BENCH, sentence="")
    >>> soon = Finding(id="a", severity=Severity.NOTE, stage=Stage.MEASURE, sentence="")
    >>> [finding.id for finding in in_order([late, soon])]
    ['a', 'b']
    """
    return tuple(sorted(findings, key=_when_and_how_strong))


def _asked_once(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Leave out what an earlier room has asked already."""
    kept = tuple(findings)
    asked = {finding.id for finding in kept}
    return tuple(each for each in kept if _ASKED_EARLIER.get(each.id) not in asked)


def _when_and_how_strong(finding: Finding) -> tuple[int, int]:
    return _STAGES.index(finding.stage), _SEVERITIES.index(finding.severity)


def _measure(plan: ShadePlan, given: Given) -> ShadePlan:
    spec = plan.spec
    answer = finished_size(spec.opening, spec.mount, spec.asked, given.habits, plan.chosen.board)
    return replace(plan, size=answer.result, findings=(*plan.findings, *answer.findings))


def _design(plan: ShadePlan, given: Given) -> ShadePlan:
    if plan.size is None:
        return plan
    answer = lay_out(
        plan.spec.design,
        plan.size,
        plan.chosen,
        given.habits,
        row_spacing_cap(given.markets),
        edge_distance_floor(given.markets),
        plan.spec.making,
    )
    layout = _lined(answer.result, plan.spec, given.habits)
    return replace(plan, layout=layout, findings=(*plan.findings, *answer.findings))


def _lined(layout: Layout | None, spec: ShadeSpec, habits: Habits) -> Layout | None:
    """Cut the lining by its own steam test, where there was one."""
    own, typed = spec.cutting.lining_shrinkage, spec.design.shrinkage
    if layout is None or own is None:
        return layout
    face = habits.shrinkage if typed is None else chosen("shrinkage", typed, Unit.SHARE)
    return lining_as_tested(layout, face, chosen("shrinkage of the lining", own, Unit.SHARE))


def _weigh(plan: ShadePlan, given: Given) -> ShadePlan:
    if plan.size is None or plan.layout is None:
        return plan
    answer = weigh_shade(plan.layout, plan.size, plan.chosen, given.habits)
    return replace(plan, weights=answer.result, findings=(*plan.findings, *answer.findings))


def _lift(plan: ShadePlan, given: Given) -> ShadePlan:
    if plan.size is None or plan.layout is None or plan.weights is None:
        return plan
    answer = lift_shade(
        plan.spec.lift,
        plan.weights,
        plan.layout,
        plan.size,
        plan.chosen,
        given.listed,
        given.habits,
        given.draws,
    )
    return replace(plan, balance=answer.result, findings=(*plan.findings, *answer.findings))


def _rig(plan: ShadePlan, given: Given) -> ShadePlan:
    if plan.size is None or plan.layout is None or plan.weights is None or plan.balance is None:
        return plan
    answer = rig_headrail(
        plan.spec.mount,
        plan.size,
        plan.layout,
        plan.balance,
        plan.weights,
        plan.chosen,
        plan.spec.lift,
        given.habits,
        given.listed,
    )
    return replace(plan, headrail=answer.result, findings=(*plan.findings, *answer.findings))


def _safe(plan: ShadePlan, given: Given) -> ShadePlan:
    if plan.size is None or plan.layout is None:
        return plan
    spec = plan.spec
    order = SafetyOrder(
        tag=spec.tag,
        site=Site(opening=spec.opening, mount=spec.mount, asked=spec.asked, habits=given.habits),
        safety=spec.safety,
        lift=spec.lift,
        design=spec.design,
        making=spec.making,
        size=plan.size,
        layout=plan.layout,
        weights=plan.weights,
        chosen=plan.chosen,
        shop=given.listed,
        habits=given.habits,
        markets=given.markets,
        draws=given.draws,
        stops=frozenset(each.id for each in plan.findings if each.severity is Severity.STOP),
    )
    answer = safe_for(order)
    return replace(plan, safety=answer.result, findings=(*plan.findings, *answer.findings))
