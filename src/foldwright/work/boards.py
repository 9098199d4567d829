"""Hang the shades of a job's shared boards."""

from __future__ import annotations

from functools import cache

from foldwright.core.check.boards.board import SharedBoard
from foldwright.core.check.boards.boarding import Boarding, board_shades
from foldwright.work.changing import change_shade
from foldwright.work.document import Document
from foldwright.work.job import Job
from foldwright.work.planning import Rooms, given_of, rooms_of


def hang_boards(job: Job, rooms: Rooms | None = None) -> tuple[Boarding, ...]:
    """Hang the shades of every shared board, in the order of the job's file.

    Takes: the job; what takes a shade through the rooms, where plans are kept.
    """
    through = rooms or cache(rooms_of(job))
    return tuple(_hang(job, board, through) for board in job.boards)


def type_widths(document: Document, boarding: Boarding) -> Document:
    """Give the document with the widths that a board shares out; the given one stays."""
    tags = [str(shade.get("tag", "")) for shade in document["shades"]]
    for tag, way in boarding.widths:
        document = change_shade(document, tags.index(tag), way.changes)
    return document


def _hang(job: Job, board: SharedBoard, rooms: Rooms) -> Boarding:
    by_tag = {spec.tag: spec for spec in job.shades}
    plans = tuple(rooms(by_tag[tag]) for tag in board.shades)
    return board_shades(board, plans, given_of(job), job.system)
