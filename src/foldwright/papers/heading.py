"""The part that all sheets share: sizes, tag, mount, open stops, and the foot."""

from __future__ import annotations

from math import ceil
from typing import Any

from foldwright.core.check.plan import ShadePlan
from foldwright.core.drawing.words import in_full
from foldwright.core.quantity.rounding import System
from foldwright.core.why.finding import Finding
from foldwright.core.why.telling import fill
from foldwright.papers.header import SIZES, Header, Paper
from foldwright.papers.runs import Run, runs

FOOT_LINE = 100  # characters that surely fit in a line of the foot


def shared(
    plan: ShadePlan, header: Header, paper: Paper, system: System, title: str
) -> dict[str, Any]:
    """Gather what every sheet prints at its head and foot.

    Takes: the plan, with a finished size; the header; the paper; the reader's system; the
    sheet's title.

    Gives: data for the templates.

    Raises: ValueError when the shade has no finished size: there is nothing to head a sheet with.

    Source: common practice (what a workroom looks for first).
    """
    if plan.size is None:
        message = f"shade {plan.spec.tag} has no finished size yet: measure it before printing"
        raise ValueError(message)
    return {
        "paper": paper.value,
        "margin": SIZES[paper].margin,
        "title": title,
        "width": in_full(plan.size.width, system),
        "drop": in_full(plan.size.drop, system),
        "tag": plan.spec.tag,
        "room": plan.spec.room,
        "job": header.job,
        "mount": mount_words(plan),
        "face": plan.spec.materials.face,
        "stops": [_stop(finding, system) for finding in open_stops(plan)],
        "foot": _foot(header),
        **_overridden(plan, system),
    }


def open_stops(plan: ShadePlan) -> list[Finding]:
    """List the findings that forbid going on.

    Takes: the plan.

    Gives: its stops that nobody answers for, in order.

    Source: derived here.
    """
    return [finding for finding in plan.findings if finding.forbids]


def mount_words(plan: ShadePlan) -> str:
    """Say how the shade is mounted, in facts.

    Takes: the plan.

    Gives: one line.

    Source: derived here.

    >>> from foldwright.core.check.plan import ShadeSpec
    >>> mount_words(ShadePlan(spec=ShadeSpec(tag="1")))
    'Mount not given; cloth from the room edge of the board, cords from the room side of the tube'
    """
    mount = plan.spec.mount
    place = f"{mount.place.value.capitalize()} mount" if mount.place else "Mount not given"
    return (
        f"{place}; cloth from the {mount.board_edge.value} edge of the board, "
        f"cords from the {mount.cord_side.value} side of the tube"
    )


def _overridden(plan: ShadePlan, system: System) -> dict[str, Any]:
    """Print each stop that is set aside, with who answers for it and why, and count its lines."""
    said = [
        f"{fill(finding.sentence, finding.figures, system)}"
        f" {finding.override.name} answers for it: {finding.override.reason}"
        for finding in plan.findings
        if finding.override is not None
    ]
    lines = sum(ceil(len(words) / FOOT_LINE) for words in said)
    return {"overridden": said, "overridden_lines": lines}


def _stop(finding: Finding, system: System) -> dict[str, Any]:
    """Print an open stop with the moment it must be settled by, and its first remedy."""
    remedy: list[Run] = []
    if finding.remedies:
        remedy = runs(finding.remedies[0].sentence, finding.remedies[0].figures, system)
    return {
        "stage": finding.stage.value,
        "sentence": runs(finding.sentence, finding.figures, system),
        "remedy": remedy,
    }


def _foot(header: Header) -> str:
    """Say which print this is."""
    printed = f"{header.printed_at:%Y-%m-%d %H:%M}"
    replaces = f", replaces version {header.replaces}" if header.replaces else ""
    return f"Version {header.version}{replaces}. Printed {printed}."
