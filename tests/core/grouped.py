"""Rooms by hand for the tests of groups: windows of unlike height over one floor."""

from __future__ import annotations

from typing import Any

from foldwright.core.check.groups.group import ShadeGroup
from foldwright.core.check.groups.matching import Matching
from foldwright.work.document import Document, read_document
from foldwright.work.groups import match_groups, type_match
from foldwright.work.job import Job, JobPlan
from foldwright.work.planning import plan_job


def window(tag: str, width: str, height: str, head: str, **design: Any) -> dict[str, Any]:
    """Type a true window hung inside, clear of its sill, so high over the floor."""
    opening = {
        **dict.fromkeys(("width_top", "width_middle", "width_bottom"), width),
        **dict.fromkeys(("height_left", "height_centre", "height_right"), height),
        "floor_to_head": head,
        "sill": True,
    }
    return {
        "tag": tag,
        "room": "Front room",
        "opening": opening,
        "mount": {"place": "inside", "height_rule": "clear sill"},
        "design": design,
        "materials": {"face": "Gate stripe, brick"},
    }


def room(*windows: dict[str, Any], system: str = "inch", **group: Any) -> Document:
    """Put windows into one room, and into one group from left to right."""
    tags = [each["tag"] for each in windows]
    return {
        "job": {"name": "Room", "system": system, "markets": ["United States"]},
        "shades": list(windows),
        "groups": [{"name": "Front", "shades": tags, **group}],
    }


BAY = (
    window("Left", "36", "60", "84"),
    window("Middle", "48", "66", "90"),
    window("Right", "36", "54", "80"),
)


def job_of(document: Document) -> Job:
    reading = read_document(document)
    assert reading.job is not None, reading.faults
    return reading.job


def matched(document: Document) -> Matching:
    return match_groups(job_of(document))[0]


def typed(document: Document) -> Document:
    """Type all that the first group takes."""
    return type_match(document, matched(document))


def planned(document: Document) -> JobPlan:
    return plan_job(job_of(document))


def group_of(document: Document) -> ShadeGroup:
    return job_of(document).groups[0]
