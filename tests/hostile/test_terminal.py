"""A terminal that is closed, full, or lacks letters."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

# Python's own buffer is part of the matter: without it half an answer passes for a whole one.
BUFFERED = {name: value for name, value in os.environ.items() if name != "PYTHONUNBUFFERED"}
COMMAND = [sys.executable, "-m", "foldwright.cli.main"]
JOB = str(Path(__file__).parents[1] / "work" / "cottage.toml")


def test_a_reader_who_has_seen_enough_is_not_shouted_at() -> None:
    with subprocess.Popen(  # noqa: S603 - our own program
        [*COMMAND, "plan", "--json"], stdout=subprocess.PIPE, stderr=subprocess.PIPE, env=BUFFERED
    ) as child:
        assert child.stdout is not None
        assert child.stderr is not None
        assert child.stdout.read(10)
        child.stdout.close()
        assert child.stderr.read() == b""
    assert child.returncode == 0


@pytest.mark.parametrize(
    "words",
    [("plan",), ("plan", "--json"), ("why", JOB, "Kitchen", "finished width")],
    ids=["long", "very long", "short"],
)
def test_an_answer_that_finds_no_room_is_told(words: tuple[str, ...]) -> None:
    with Path("/dev/full").open("w") as full:
        done = subprocess.run(  # noqa: S603 - our own program
            [*COMMAND, *words],
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
            env=BUFFERED,
        )
    assert done.returncode == 2
    assert done.stderr == "The answer could not be given: No space left on device.\n"


def test_a_terminal_that_lacks_letters_shows_others() -> None:
    done = subprocess.run(  # noqa: S603 - our own program
        [*COMMAND, "plan"],
        capture_output=True,
        check=False,
        env={**BUFFERED, "PYTHONIOENCODING": "ascii"},
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert b"?Wound wire 1.9?" in done.stdout
