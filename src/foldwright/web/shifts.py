"""Which figures an edit moved, in the words of a page: the old value and the new."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.rounding import System
from foldwright.core.why.telling import show_value
from foldwright.web.tables import row_name, series
from foldwright.web.view import ShadeView, Shift, verdict_of
from foldwright.web.wording import Wording
from foldwright.work.changing import Moved, compare_plans

NONE = "none"
COMPARISONS = ("balance.ranking", "balance.window.sensitivities")


def with_shifts(view: ShadeView, before: ShadePlan | None, title: str) -> ShadeView:
    """Add to a view what moved since another plan of the same shade."""
    if before is None or view.plan is None:
        return view
    moved = shifts_between(before, view.plan, view.wording, view.system)
    return replace(view, moved=moved, moved_title=title)


def shifts_between(
    old: ShadePlan, new: ShadePlan, wording: Wording, system: System
) -> tuple[Shift, ...]:
    """Tell what moved between two plans of a shade; a row of marks counts as one."""
    moved = [
        one for one in compare_plans(old, new, system) if not one.place.startswith(COMPARISONS)
    ]
    marks = (
        _shift(list(alike), wording, system)
        for _, alike in groupby(moved, key=lambda one: series(one.place, one.name))
    )
    return (*_verdict(old, new), *marks)


def _verdict(old: ShadePlan, new: ShadePlan) -> Iterator[Shift]:
    before, after = verdict_of(old), verdict_of(new)
    if before != after:
        yield Shift(name="lift", old=before, new=after)


def _shift(alike: Sequence[Moved], wording: Wording, system: System) -> Shift:
    first = alike[0]
    return Shift(
        name=row_name([one.name for one in alike]),
        old=show_value(first.old, system) if first.old else NONE,
        new=wording.link(first.new) if first.new else NONE,
    )
