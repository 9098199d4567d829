"""Match the shades of a job's groups, and type what matching takes."""

from __future__ import annotations

from copy import deepcopy
from functools import cache
from pathlib import Path

from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.groups.matching import Matching, match_group
from foldwright.core.check.review import Review
from foldwright.core.drawing.model import Drawing
from foldwright.core.drawing.room import room_elevation
from foldwright.core.quantity.rounding import System
from foldwright.work.changing import change_shade
from foldwright.work.document import Document
from foldwright.work.files import write_whole
from foldwright.work.group_faults import FEWEST
from foldwright.work.job import Job
from foldwright.work.planning import Rooms, rooms_of
from foldwright.write.svg import svg

NAMING = ("groups", "boards")  # the tables that name shades by their tags
AS_THEY_HANG, MATCHED = "as they hang", "matched"


def match_groups(job: Job, rooms: Rooms | None = None) -> tuple[Matching, ...]:
    """Match every group of a job, in the order of its file.

    Takes: the job; what takes a shade through the rooms, where plans are kept.
    """
    through = rooms or cache(rooms_of(job))
    return tuple(_match(job, group, through) for group in job.groups)


def type_match(document: Document, matching: Matching) -> Document:
    """Give the document with all that a matched group takes; the one given stays as it is."""
    tags = [str(shade.get("tag", "")) for shade in document["shades"]]
    for shade in matching.shades:
        document = change_shade(document, tags.index(shade.now.tag), shade.way.changes)
    return document


def renamed(document: Document, old: str, new: str) -> Document:
    """Give the document with a shade's tag changed in the groups and boards that name it.

    >>> renamed({"groups": [{"name": "A", "shades": ["x", "y"]}]}, "x", "z")
    {'groups': [{'name': 'A', 'shades': ['z', 'y']}]}
    """
    if old == new:
        return document
    tables = {name: document[name] for name in NAMING if isinstance(document.get(name), list)}
    changed = {name: [_renamed(each, old, new) for each in table] for name, table in tables.items()}
    return {**document, **changed}


def _renamed(group: object, old: str, new: str) -> object:
    if not isinstance(group, dict) or not isinstance(group.get("shades"), list):
        return group
    return {**group, "shades": [new if tag == old else tag for tag in group["shades"]]}


def without_tag(document: Document, tag: str) -> Document:
    """Give the document with a shade out of group and board, which fall apart with fewer than two.

    >>> without_tag({"groups": [{"name": "A", "shades": ["x", "y"]}]}, "x")
    {'groups': []}
    """
    changed = deepcopy(document)
    for name in NAMING:
        table = changed.get(name)
        if isinstance(table, list):
            changed[name] = [left for each in table if (left := _without(each, tag))]
    return changed


def _without(group: object, tag: str) -> object:
    """Leave a tag out of a group; nothing is left of a group of one."""
    if not isinstance(group, dict) or tag not in group.get("shades", ()):
        return group
    others = [each for each in group["shades"] if each != tag]
    return {**group, "shades": others} if len(others) >= FEWEST else None


def rooms_of_group(matching: Matching, system: System) -> dict[str, Drawing]:
    """Draw a group as it hangs and, where it does not match yet, as it would: by their words."""
    if not matching.shades:
        return {}
    now = room_elevation(tuple(shade.now for shade in matching.shades), AS_THEY_HANG, system)
    if matching.stands:
        return {AS_THEY_HANG: now}
    then = room_elevation(tuple(shade.then for shade in matching.shades), MATCHED, system)
    return {AS_THEY_HANG: now, MATCHED: then}


def write_rooms(groups: tuple[Matching, ...], folder: Path, system: System) -> tuple[Path, ...]:
    """Write the drawings of every group into a folder, as SVG.

    Raises: CannotUse where the folder or a file cannot be written.
    """
    written = []
    for number, matching in enumerate(groups, start=1):
        for words, drawing in rooms_of_group(matching, system).items():
            path = folder / f"group-{number}-{words.replace(' ', '-')}.svg"
            write_whole(path, svg(drawing).encode())
            written.append(path)
    return tuple(written)


def _match(job: Job, group: ShadeGroup, rooms: Rooms) -> Matching:
    by_tag = {spec.tag: spec for spec in job.shades}
    reviews = tuple(
        Review(plan=rooms(by_tag[tag]), shop=job.shop, habits=job.habits, markets=job.markets)
        for tag in group.shades
    )
    return match_group(group, reviews, job.system)
