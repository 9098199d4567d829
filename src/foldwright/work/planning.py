"""Plan a whole job, or one shade of it beside the others."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from itertools import takewhile

from foldwright.core.check.choices import Cutting
from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.check.planning import Given, look_over_shade, plan_rooms
from foldwright.core.check.review import Company
from foldwright.work.draws import house_draws
from foldwright.work.job import Job, JobPlan
from foldwright.work.measured import as_measured, shade_as_measured

Rooms = Callable[[ShadeSpec], ShadePlan]


def plan_job(job: Job) -> JobPlan:
    """Plan every shade of a job, in the order of its file."""
    rooms = cache(rooms_of(job))
    return JobPlan(job=job, shades=tuple(plan_one(job, spec, rooms) for spec in job.shades))


def plan_one(job: Job, spec: ShadeSpec, rooms: Rooms | None = None) -> ShadePlan:
    """Plan one shade with the job's shop list, habits and markets, beside its other shades.

    Takes: the job; the shade; what takes a shade through the rooms, where plans are kept.
    """
    through = rooms or cache(rooms_of(job))
    given = given_of(as_measured(job))
    return look_over_shade(through(spec), given, _company(job, spec, through))


def rooms_of(job: Job) -> Rooms:
    """Give what takes a shade of this job through the rooms, as its cloth was measured."""
    measured = as_measured(job)
    given = given_of(measured)
    return lambda spec: plan_rooms(shade_as_measured(spec, measured), given)


def given_of(job: Job) -> Given:
    """Give what every room is given besides the shade."""
    return Given(listed=job.shop, habits=job.habits, markets=job.markets, draws=house_draws())


def _company(job: Job, spec: ShadeSpec, rooms: Rooms) -> Company:
    group = _group_of(job, spec)
    wanted = spec.beside or _before(spec, group)
    beside = next((each for each in job.shades if each.tag == wanted), None)
    return Company(
        rolls=job.rolls,
        sheet=job.shop.cloths.get(spec.materials.face),
        earlier=tuple(rooms(each) for each in _kin(job, spec)),
        beside=rooms(beside) if beside else None,
        group=None if spec.beside else group,
    )


def _group_of(job: Job, spec: ShadeSpec) -> ShadeGroup | None:
    return next((group for group in job.groups if spec.tag in group.shades), None)


def _before(spec: ShadeSpec, group: ShadeGroup | None) -> str:
    """Give the first shade of a group, which all the others line up with."""
    return group.shades[0] if group and group.shades[0] != spec.tag else ""


def _kin(job: Job, spec: ShadeSpec) -> Iterator[ShadeSpec]:
    """Give the shades before this one that it must agree with, or shares its cloth with."""
    face = spec.materials.face
    in_hand = any(roll.cloth == face for roll in job.rolls)
    for other in takewhile(lambda each: each.tag != spec.tag, job.shades):
        alike = other.room.strip() == spec.room.strip() and spec.cutting != Cutting()
        if face and other.materials.face == face and (in_hand or alike):
            yield other
