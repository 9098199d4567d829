"""Look once more over a whole shade, beside its neighbours and the rolls in hand."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from foldwright.core.check.company_checks import draft_company_checks
from foldwright.core.check.cord_checks import draft_cord_checks
from foldwright.core.check.cutting_checks import draft_cutting_checks
from foldwright.core.check.edge_checks import draft_edge_checks
from foldwright.core.check.fixing_checks import draft_fixing_checks
from foldwright.core.check.line_up_checks import draft_line_up_checks
from foldwright.core.check.lining_checks import draft_lining_checks
from foldwright.core.check.motif_checks import draft_motif_checks
from foldwright.core.check.parcel_checks import draft_parcel_checks
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.reach_checks import draft_reach_checks
from foldwright.core.check.review import Review
from foldwright.core.check.roll_checks import draft_roll_checks
from foldwright.core.check.sewing_checks import draft_sewing_checks
from foldwright.core.check.window_checks import draft_window_checks
from foldwright.core.why.finding import Finding, Severity
from foldwright.core.why.trying import Draft, settle

Rooms = Callable[[ShadeSpec], ShadePlan]

NOT_FOR_THE_ROOMS = ("cutting", "fixing", "delivery", "beside", "overrides")
CHECKS = (
    draft_window_checks,
    draft_reach_checks,
    draft_fixing_checks,
    draft_sewing_checks,
    draft_lining_checks,
    draft_edge_checks,
    draft_cutting_checks,
    draft_motif_checks,
    draft_roll_checks,
    draft_company_checks,
    draft_line_up_checks,
    draft_cord_checks,
    draft_parcel_checks,
)


def look_over(review: Review, rooms: Rooms) -> tuple[Finding, ...]:
    """Find what no room by itself can see; every remedy is tried through all the rooms."""
    return settle(_drafts(review), _judge_like(review, rooms))


def _drafts(review: Review) -> Iterator[Draft[ShadeSpec]]:
    for check in CHECKS:
        yield from check(review)


def _judge_like(review: Review, rooms: Rooms) -> Callable[[ShadeSpec], list[Finding]]:
    """Make what finds fault with a changed shade: new stops of the rooms, and these checks."""
    stopped = {each.id for each in review.plan.findings if each.severity is Severity.STOP}

    def judge(spec: ShadeSpec) -> list[Finding]:
        plan = _planned_again(review.plan, spec, rooms)
        drafts = _drafts(replace(review, plan=plan))
        stops = (each for each in plan.findings if each.severity is Severity.STOP)
        return [
            *(draft.finding for draft in drafts),
            *(stop for stop in stops if stop.id not in stopped),
        ]

    return judge


def _planned_again(plan: ShadePlan, spec: ShadeSpec, rooms: Rooms) -> ShadePlan:
    """Leave the rooms alone where nothing that they look at has changed."""
    own = {name: getattr(spec, name) for name in NOT_FOR_THE_ROOMS}
    if replace(plan.spec, **own) == spec:
        return replace(plan, spec=spec)
    return rooms(spec)
