"""Plans kept at hand, so that pulling the shade up does not plan it anew at each step."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable
from dataclasses import dataclass
from threading import Lock
from typing import TypeVar

import msgspec

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.web.figures import FigureIndex
from foldwright.work.document import Document
from foldwright.work.job import Job
from foldwright.work.planning import Rooms, plan_one, rooms_of

PLANS_KEPT = 200
Kept = TypeVar("Kept")


@dataclass(frozen=True, kw_only=True, slots=True)
class Planned:
    """A plan with the index of its figures."""

    plan: ShadePlan | None
    figures: FigureIndex


class Shelf:
    """The plans last asked for, each under everything it was made from."""

    def __init__(self) -> None:
        self._plans: OrderedDict[Hashable, Planned] = OrderedDict()
        self._rooms: OrderedDict[Hashable, ShadePlan] = OrderedDict()
        self._lock = Lock()

    def plan(self, document: Document, job: Job, number: int) -> Planned:
        """Give the plan of one shade, counted from 1, of a job read from a document."""
        terms = (job.markets, msgspec.json.encode(document.get("habits")), id(job.shop))
        spec = job.shades[number - 1]
        key = (spec, job.shades, job.rolls, terms)
        planned = self._kept(self._plans, key)
        if planned is None:
            plan = plan_one(job, spec, self._through_rooms(job, terms))
            planned = self._keep(self._plans, key, Planned(plan=plan, figures=FigureIndex(plan)))
        return planned

    def _through_rooms(self, job: Job, terms: Hashable) -> Rooms:
        """Take each shade through the rooms once, though it stands beside many others."""
        rooms = rooms_of(job)

        def through(spec: ShadeSpec) -> ShadePlan:
            key = (spec, terms)
            plan = self._kept(self._rooms, key)
            return self._keep(self._rooms, key, rooms(spec)) if plan is None else plan

        return through

    def _kept(self, plans: OrderedDict[Hashable, Kept], key: Hashable) -> Kept | None:
        with self._lock:
            if key not in plans:
                return None
            plans.move_to_end(key)
            return plans[key]

    def _keep(self, plans: OrderedDict[Hashable, Kept], key: Hashable, plan: Kept) -> Kept:
        with self._lock:
            plans[key] = plan
            while len(plans) > PLANS_KEPT:
                plans.popitem(last=False)
        return plan
