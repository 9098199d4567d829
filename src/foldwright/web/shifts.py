"""Which figures an edit moved, in the words of a page: the old value and the new.

A figure that was not known before did not move; such are only counted.
"""

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
    told = [
        one
        for one in compare_plans(before, view.plan, view.system)
        if not one.place.startswith(COMPARISONS)
    ]
    known_before = [one for one in told if one.old]
    moved = (
        *_verdict(before, view.plan),
        *_shifts(known_before, view.wording, view.system),
    )
    newly_known = len(told) - len(known_before)
    return replace(view, moved=moved, newly_known=newly_known, moved_title=title)


def _shifts(moved: Sequence[Moved], wording: Wording, system: System) -> Iterator[Shift]:
    """Tell what moved; a row of marks counts as one."""
    for _, alike in groupby(moved, key=lambda one: series(one.place, one.name)):
        yield _shift(list(alike), wording, system)


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
