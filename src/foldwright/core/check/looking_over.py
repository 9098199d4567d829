"""Look once more over a whole shade, beside its neighbours and the rolls in hand."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache

from foldwright.core.check.band_checks import draft_band_checks
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
from foldwright.core.check.top_checks import draft_top_checks
from foldwright.core.check.valance_checks import draft_valance_checks
from foldwright.core.check.whole_trials import try_on_the_whole
from foldwright.core.check.window_checks import draft_window_checks
from foldwright.core.why.finding import Finding, Severity
from foldwright.core.why.trying import Draft, settle

Rooms = Callable[[ShadeSpec], ShadePlan]
Judge = Callable[[ShadeSpec], list[Finding]]

NOT_FOR_THE_ROOMS = ("cutting", "fixing", "delivery", "beside", "overrides")
CHECKS = (
    draft_window_checks,
    draft_reach_checks,
    draft_fixing_checks,
    draft_sewing_checks,
    draft_band_checks,
    draft_lining_checks,
    draft_edge_checks,
    draft_valance_checks,
    draft_top_checks,
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
    judge = cache(_judge_like(review, rooms))
    return (*try_on_the_whole(review.plan, judge), *_own(review, judge))


def _own(review: Review, judge: Judge) -> tuple[Finding, ...]:
    """Find what is seen only from here; what stops the shade already says nothing against a way."""
    stopped = {each.id for each in review.plan.findings if each.severity is Severity.STOP}

    def new(spec: ShadeSpec) -> list[Finding]:
        return [each for each in judge(spec) if each.id not in stopped]

    return settle(_drafts(review), new)


def _drafts(review: Review) -> Iterator[Draft[ShadeSpec]]:
    for check in CHECKS:
        yield from check(review)


def _judge_like(review: Review, rooms: Rooms) -> Judge:
    """Make what finds fault with a changed shade: the rooms, and these checks."""

    def judge(spec: ShadeSpec) -> list[Finding]:
        plan = _planned_again(review.plan, spec, rooms)
        drafts = _drafts(replace(review, plan=plan))
        return [*plan.findings, *(draft.finding for draft in drafts)]

    return judge


def _planned_again(plan: ShadePlan, spec: ShadeSpec, rooms: Rooms) -> ShadePlan:
    """Leave the rooms alone where nothing that they look at has changed."""
    own = {name: getattr(spec, name) for name in NOT_FOR_THE_ROOMS}
    if replace(plan.spec, **own) == spec:
        return replace(plan, spec=spec)
    return rooms(spec)
