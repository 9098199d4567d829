"""Run a command as the shell would, and gather what it says."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

SCHEMAS = Path(__file__).parents[2] / "docs" / "schema"


@dataclass(frozen=True, kw_only=True, slots=True)
class Said:
    """What a command said on both channels, and its code."""

    code: int
    out: str
    err: str

    @property
    def answers(self) -> list[Any]:
        """Give the answers, one for each line."""
        return [json.loads(line) for line in self.out.splitlines()]


def ask(*words: str | Path, given: str = "") -> Said:
    """Run `foldwright` with these words."""
    done = subprocess.run(  # noqa: S603 - our own program
        [sys.executable, "-m", "foldwright.cli.main", *map(str, words)],
        input=given.encode(),
        capture_output=True,
        check=False,
        timeout=120,
        env={**os.environ, "PYTHONIOENCODING": "utf-8"},
    )
    return Said(code=done.returncode, out=done.stdout.decode(), err=done.stderr.decode())


def holds_to(answer: Any, schema: str) -> None:
    """Hold an answer to its schema in the docs."""
    text = (SCHEMAS / schema).read_text(encoding="utf-8")
    Draft202012Validator(json.loads(text)).validate(answer)
