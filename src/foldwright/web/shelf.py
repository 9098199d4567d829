"""Plans kept at hand, so that pulling the shade up does not plan it anew at each step."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Hashable
from dataclasses import dataclass
from threading import Lock
from typing import Generic, TypeVar

import msgspec

from foldwright.core.check.boards.boarding import Boarding
from foldwright.core.check.groups.matching import Matching
from foldwright.core.check.layouts.offers import Offers
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.web.figures import FigureIndex
from foldwright.work.boards import hang_boards
from foldwright.work.document import Document
from foldwright.work.groups import match_groups
from foldwright.work.job import Job
from foldwright.work.layouts import offer_layouts
from foldwright.work.planning import Rooms, plan_one, rooms_of

PLANS_KEPT = 200
ANSWERS_KEPT = 500
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
        self._offers: Once[Offers | None] = Once()
        self._groups: Once[tuple[Matching, ...]] = Once()
        self._boards: Once[tuple[Boarding, ...]] = Once()
        self._rooms: OrderedDict[Hashable, ShadePlan] = OrderedDict()
        self._lock = Lock()

    def plan(self, document: Document, job: Job, number: int) -> Planned:
        """Give the plan of one shade, counted from 1, of a job read from a document."""
        terms, spec = _terms(document, job), job.shades[number - 1]
        key = (spec, job.shades, job.rolls, job.groups, terms)
        planned = self._kept(self._plans, key)
        if planned is None:
            plan = plan_one(job, spec, self._through_rooms(job, terms))
            planned = self._keep(self._plans, key, Planned(plan=plan, figures=FigureIndex(plan)))
        return planned

    def offers(self, document: Document, job: Job, number: int) -> Offers | None:
        """Give the layouts offered for one shade; they do not depend on the other shades."""
        key = (job.shades[number - 1], _terms(document, job))
        return self._offers.get(key, job.shop, lambda: self._searched(document, job, number))

    def groups(self, document: Document, job: Job) -> tuple[Matching, ...]:
        """Give how the shades of each group match."""
        terms = _terms(document, job)
        key = (job.groups, job.shades, terms)
        rooms = self._through_rooms(job, terms)
        return self._groups.get(key, job.shop, lambda: match_groups(job, rooms))

    def boards(self, document: Document, job: Job) -> tuple[Boarding, ...]:
        """Give how the shades of each shared board hang."""
        terms = _terms(document, job)
        key = (job.boards, job.shades, terms)
        rooms = self._through_rooms(job, terms)
        return self._boards.get(key, job.shop, lambda: hang_boards(job, rooms))

    def _searched(self, document: Document, job: Job, number: int) -> Offers | None:
        plan = self.plan(document, job, number).plan
        return offer_layouts(job, plan) if plan else None

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


class Once(Generic[Kept]):
    """The last answers worked out, each under what it was worked out from."""

    def __init__(self) -> None:
        self._answers: OrderedDict[Hashable, tuple[object, Kept]] = OrderedDict()
        self._lock = Lock()

    def get(self, key: Hashable, alive: object | None, work_out: Callable[[], Kept]) -> Kept:
        """Give an answer, worked out where it is not at hand; `alive` is kept as long as it."""
        with self._lock:
            found = self._answers.get(key)
        if found is not None:
            return found[1]
        answer = work_out()
        with self._lock:
            self._answers[key] = (alive, answer)
            while len(self._answers) > ANSWERS_KEPT:
                self._answers.popitem(last=False)
        return answer


def _terms(document: Document, job: Job) -> Hashable:
    """Give what a shade is planned by, besides what is typed of it."""
    return (job.markets, job.rolls, msgspec.json.encode(document.get("habits")), id(job.shop))
