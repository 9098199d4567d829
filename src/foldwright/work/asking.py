"""Find a shade by its tag and a figure by its name or place."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foldwright.core.check.plan import ShadePlan, ShadeSpec
from foldwright.core.why.fault import Fault
from foldwright.core.why.figure import Figure
from foldwright.core.why.walking import walk_places
from foldwright.work.files import CannotUse
from foldwright.work.job import Job
from foldwright.work.wording import short, suggestion

ROOMS = ("size", "layout", "weights", "balance", "headrail", "safety")


@dataclass(frozen=True, kw_only=True, slots=True)
class Asked:
    """A figure and the place it stands in, such as `size.width`."""

    place: str
    figure: Figure[Any]


def find_shade(job: Job, tag: str) -> ShadeSpec:
    """Give the shade with a tag.

    Raises: CannotUse where there is none, with the nearest tag.
    """
    for spec in job.shades:
        if spec.tag.lower() == tag.strip().lower():
            return spec
    tags = [spec.tag for spec in job.shades]
    remedy = suggestion(tag, tags, f"Known here: {', '.join(tags)}.")
    what = f"no shade has the tag “{short(tag)}”"
    raise CannotUse((Fault(where="SHADE", what=what, remedy=remedy),))


def figures_of(plan: ShadePlan) -> list[Asked]:
    """Give every figure of a plan, in the order of the work."""
    return [
        Asked(place=f"{room}.{place}", figure=figure)
        for room in ROOMS
        for place, figure in walk_places(getattr(plan, room))
    ]


def find_figures(figures: list[Asked], wanted: str) -> list[Asked]:
    """Give the figures with a name or at a place, each once, wherever else it is quoted.

    Raises: CannotUse where there is none, with the nearest name.
    """
    word = wanted.strip().lower()
    found = [each for each in figures if word in {each.place.lower(), each.figure.name.lower()}]
    if found:
        once = {id(each.figure): each for each in reversed(found)}
        return list(reversed(once.values()))
    known = [name for each in figures for name in (each.figure.name, each.place)]
    remedy = suggestion(wanted, known, "Leave the name out: then all that can be asked are listed.")
    what = f"no figure is “{short(wanted)}”"
    raise CannotUse((Fault(where="FIGURE", what=what, remedy=remedy),))
