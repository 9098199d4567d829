"""The rack after a job, written as a file of the shop's list."""

from __future__ import annotations

from pathlib import Path

import tomli_w

from foldwright.core.facts.records import RackPiece
from foldwright.core.quantity.rounding import System
from foldwright.work.files import write_whole


def save_rack(pieces: tuple[RackPiece, ...], path: Path) -> None:
    """Write the offcuts as a file of the shop's list, whole or not at all.

    Raises: CannotUse where it cannot be written.
    """
    write_whole(path, rack_text(pieces).encode())


def rack_text(pieces: tuple[RackPiece, ...]) -> str:
    r"""Give the offcuts as TOML.

    >>> rack_text(())
    'system = "metric"\noffcuts = []\n'
    """
    listed = [
        {"name": piece.name, "material": piece.material, "length": _text(piece)}
        | ({"note": piece.note} if piece.note else {})
        for piece in pieces
    ]
    return tomli_w.dumps({"system": System.METRIC.value, "offcuts": listed})


def _text(piece: RackPiece) -> str:
    return f"{piece.length.in_millimetres:g} mm"
