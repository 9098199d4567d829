"""`foldwright boards`: several shades on one board, every mark from one end."""

from __future__ import annotations

import argparse
from collections.abc import Iterator

from foldwright import __version__
from foldwright.cli.codes import BAD_INPUT, GOOD
from foldwright.cli.telling import say, say_json, tell_faults
from foldwright.core.check.boards.boarding import Boarding
from foldwright.core.check.boards.placing import OnBoard
from foldwright.core.quantity.rounding import System
from foldwright.core.why.fault import Fault
from foldwright.core.why.finding import Severity
from foldwright.core.why.telling import fill, show, show_value
from foldwright.work.answers import BoardsAnswer
from foldwright.work.boards import hang_boards
from foldwright.work.jobfile import load_job

NO_BOARDS = Fault(
    where="boards",
    what="the job names no shared board",
    remedy="Add a table [[boards]] with a name, a gap and the tags of its shades.",
)


def run(options: argparse.Namespace) -> int:
    """Hang the boards of the job that was asked for."""
    reading = load_job(options.job, options.shop)
    if reading.job is None or not reading.job.boards:
        tell_faults(reading.faults or (NO_BOARDS,), as_json=options.json)
        return BAD_INPUT
    job = reading.job
    boards = hang_boards(job)
    if options.json:
        answer = BoardsAnswer(program_version=__version__, job=job.head, boards=boards)
        say_json(answer, job.system)
        return GOOD
    for boarding in boards:
        for line in _lines(boarding, job.system):
            say(line)
    return GOOD


def _lines(boarding: Boarding, system: System) -> Iterator[str]:
    length = boarding.length
    cut = f"board {show_value(length, system)}" if length else "not known yet"
    yield f"{boarding.board.name}: {cut}, {boarding.board.lift.value}"
    yield from (f"  {sentence}" for sentence in boarding.missing)
    for tag, way in boarding.widths:
        yield f"  {tag}: {fill(way.sentence, way.figures, system)}"
        yield f"    - {', '.join(f'{change.path} = {change.text}' for change in way.changes)}"
    if boarding.shades:
        yield "  Marks from the board's left end, seen from the back:"
    for shade in boarding.shades:
        yield from _shade_lines(shade, system)
    yield from _lift_lines(boarding, system)
    for limit in boarding.limits:
        yield f"  {fill(limit.sentence, limit.figures, system)}"


def _shade_lines(shade: OnBoard, system: System) -> Iterator[str]:
    columns = ", ".join(show_value(mark, system) for mark in shade.columns)
    yield f"  {shade.tag}, {show_value(shade.width, system)} wide: cords at {columns}"
    if shade.brackets:
        brackets = " and ".join(show_value(mark, system) for mark in shade.brackets)
        yield f"    brackets at {brackets}"


def _lift_lines(boarding: Boarding, system: System) -> Iterator[str]:
    balance, rail = boarding.balance, boarding.headrail
    if balance is None:
        return
    turns = balance.window.recommended_turns if balance.window else None
    wind = f"; wind {show(turns, system)} at the up-stop" if turns else ""
    yield f"  The one tube: {balance.verdict.value}{wind}"
    if rail is not None:
        yield f"    cut to {show_value(rail.tube_cut, system)}, {len(rail.lines)} cords"
    for finding in boarding.findings:
        if finding.severity is not Severity.NOTE:
            sentence = fill(finding.sentence, finding.figures, system)
            yield f"    {finding.severity.value.upper()} {sentence}"
