"""The program knows its own version."""

from __future__ import annotations

import tomllib
from pathlib import Path

from foldwright import __version__


def test_it_is_the_version_of_the_package() -> None:
    file = Path(__file__).parents[2] / "pyproject.toml"
    assert tomllib.loads(file.read_text(encoding="utf-8"))["project"]["version"] == __version__
