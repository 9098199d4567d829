"""Plans kept at hand, so that pulling the shade up does not plan it anew at each step."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Hashable
from dataclasses import dataclass
from threading import Lock

import msgspec

from foldwright.core.check.plan import ShadePlan
from foldwright.web.figures import FigureIndex
from foldwright.work.document import Document
from foldwright.work.job import Job
from foldwright.work.planning import plan_one

PLANS_KEPT = 200


@dataclass(frozen=True, kw_only=True, slots=True)
class Planned:
    """A plan with the index of its figures."""

    plan: ShadePlan | None
    figures: FigureIndex


class Shelf:
    """The plans last asked for, each under everything it was made from."""

    def __init__(self) -> None:
        self._plans: OrderedDict[Hashable, Planned] = OrderedDict()
        self._lock = Lock()

    def plan(self, document: Document, job: Job, number: int) -> Planned:
        """Give the plan of one shade, counted from 1, of a job read from a document."""
        spec = job.shades[number - 1]
        key = (spec, job.markets, msgspec.json.encode(document.get("habits")), id(job.shop))
        with self._lock:
            if key in self._plans:
                self._plans.move_to_end(key)
                return self._plans[key]
        plan = plan_one(job, spec)
        return self._keep(key, Planned(plan=plan, figures=FigureIndex(plan)))

    def _keep(self, key: Hashable, planned: Planned) -> Planned:
        with self._lock:
            self._plans[key] = planned
            while len(self._plans) > PLANS_KEPT:
                self._plans.popitem(last=False)
        return planned
