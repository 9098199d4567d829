"""`foldwright groups`: how the shades of each group match, and their room drawn."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.check.groups.matching import Matched, Matching
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.telling import fill, show_value
from foldwright.work.answers import GroupsAnswer
from foldwright.work.files import CannotUse
from foldwright.work.groups import match_groups, write_rooms
from foldwright.work.job import Job
from foldwright.work.jobfile import load_job

NO_GROUPS = Fault(
    where="groups",
    what="the job names no group",
    remedy="Add a table [[groups]] with a name and the tags of its shades.",
)


def run(options: argparse.Namespace) -> int:
    """Match the groups of the job that was asked for."""
    reading = load_job(options.job, options.shop)
    if reading.job is None or not reading.job.groups:
        tell_faults(reading.faults or (NO_GROUPS,), as_json=options.json)
        return BAD_INPUT
    try:
        return _match(reading.job, options)
    except CannotUse as trouble:
        tell_faults(trouble.faults, as_json=options.json)
        return BAD_INPUT


def _match(job: Job, options: argparse.Namespace) -> int:
    groups = match_groups(job)
    drawings = write_rooms(groups, options.out, job.system) if options.out else ()
    if options.json:
        say_json(_answer(job, groups, drawings), job.system)
        return GOOD
    for matching in groups:
        for line in _lines(matching, job.system):
            say(line)
    if drawings:
        say(f"{len(drawings)} drawings are in {options.out}.")
    return GOOD


def _answer(job: Job, groups: tuple[Matching, ...], drawings: tuple[Path, ...]) -> GroupsAnswer:
    names = tuple(str(path) for path in drawings)
    return GroupsAnswer(program_version=__version__, job=job.head, groups=groups, drawings=names)


def _lines(matching: Matching, system: System) -> Iterator[str]:
    yield f"{matching.group.name}: {_verdict(matching, system)}"
    yield from (f"  {sentence}" for sentence in matching.missing)
    for shade in matching.shades:
        yield from _shade_lines(shade, system)


def _verdict(matching: Matching, system: System) -> str:
    if matching.spacing is None or matching.apart is None:
        return "cannot be matched yet"
    words = "they match as they hang" if matching.stands else "they match so"
    apart = show_value(matching.apart, system)
    return f"{words}, rows {show_value(matching.spacing, system)} apart and level within {apart}"


def _shade_lines(shade: Matched, system: System) -> Iterator[str]:
    yield f"  {shade.now.tag}: {fill(shade.way.sentence, shade.way.figures, system)}"
    if shade.way.changes:
        typed = (f"{change.path} = {change.text}" for change in shade.way.changes)
        yield f"    - {', '.join(typed)}"
