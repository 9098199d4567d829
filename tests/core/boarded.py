"""Boards by hand for the tests: demo shades that hang side by side on one board."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from foldwright.core.check.boards.boarding import Boarding
from foldwright.work.boards import hang_boards
from foldwright.work.document import Document, read_document
from foldwright.work.jobfile import DEMO_JOB, load_job

GARDEN = next(shade for shade in load_job(DEMO_JOB).document["shades"] if shade["tag"] == "Garden")


def shade(tag: str, width: str = "30", drop: str = "54", **more: Any) -> dict[str, Any]:
    """Give a shade with every part chosen, of a size that was asked for."""
    typed = {name: deepcopy(GARDEN[name]) for name in ("design", "materials", "lift", "safety")}
    return {
        "tag": tag,
        "mount": {"place": "inside", "height_rule": "clear sill"},
        "asked": {"width": width, "drop": drop, "given_by": "the client"},
        **typed,
        **more,
    }


def board(*shades: dict[str, Any], gap: str = "1/2", **more: Any) -> Document:
    """Put shades on one board, from left to right as seen from the room."""
    return {
        "job": {"name": "Board", "system": "inch", "markets": ["United States"]},
        "shades": list(shades),
        "boards": [
            {"name": "Pair", "shades": [each["tag"] for each in shades], "gap": gap, **more}
        ],
    }


def hung(document: Document) -> Boarding:
    reading = read_document(document)
    assert reading.job is not None, reading.faults
    return hang_boards(reading.job)[0]
