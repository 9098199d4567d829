"""A program killed while it saves leaves the old save or the new one, never a half."""

from __future__ import annotations

import json
import random
import signal
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path

import pytest

from foldwright.work.book import Book
from foldwright.work.files import read_toml

ROUNDS = 12
PADDING = 400_000  # letters; a save of this size takes long enough to be killed in
SAVING_IN_A_LOOP = f"""
import sys
from datetime import UTC, datetime
from hashlib import sha256
from pathlib import Path
from foldwright.work.book import Book

book = Book(Path(sys.argv[1]), lambda: datetime.now(UTC))
jobs = book.jobs()
number = jobs[0].number if jobs else book.begin({{"start": True}}).number
while True:
    padding = str(number) * ({PADDING} // len(str(number)))
    document = {{"padding": padding, "sum": sha256(padding.encode()).hexdigest()}}
    print("begin", number + 1, flush=True)
    number = book.save(1, document, follows=number).number
    print("saved", number, flush=True)
"""
WRITING_IN_A_LOOP = f"""
import sys
from pathlib import Path
from foldwright.work.jobfile import save_job_file

number = 0
while True:
    number += 1
    save_job_file({{"number": number, "padding": str(number) * {PADDING}}}, Path(sys.argv[1]))
    print("saved", number, flush=True)
"""


def killed_in_the_midst(script: str, path: Path, wait_s: float) -> list[str]:
    """Run a script until it has saved, kill it a moment later, and give what it said."""
    with subprocess.Popen(  # noqa: S603 - our own program
        [sys.executable, "-c", script, str(path)], stdout=subprocess.PIPE, text=True
    ) as child:
        assert child.stdout is not None
        said = [child.stdout.readline(), child.stdout.readline()]
        time.sleep(wait_s)
        child.kill()
        said += child.stdout.readlines()
    assert child.returncode == -signal.SIGKILL
    return [line.strip() for line in said if line.endswith("\n")]


@pytest.mark.parametrize("seed", range(ROUNDS))
def test_the_book_holds_every_save_that_was_answered(tmp_path: Path, seed: int) -> None:
    path = tmp_path / "jobs.book"
    wait_s = random.Random(seed).uniform(0, 0.08)  # noqa: S311 - any moment will do
    said = killed_in_the_midst(SAVING_IN_A_LOOP, path, wait_s)
    answered = max(int(line.split()[1]) for line in said if line.startswith("saved"))
    book = Book(path, lambda: datetime.now(UTC))
    history = book.history(1)
    assert book.open(1).number in {answered, answered + 1}
    assert [each.number for each in history] == list(range(len(history), 0, -1))
    for entry in history[:-1]:
        padding = str(entry.document["padding"])
        assert entry.document["sum"] == sha256(padding.encode()).hexdigest()
    book.save(1, {"after": "all"}, follows=history[0].number)
    book.close()
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)


def test_a_job_file_is_the_old_one_or_the_new_one(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    for seed in range(ROUNDS):
        wait_s = random.Random(seed).uniform(0, 0.05)  # noqa: S311 - any moment will do
        said = killed_in_the_midst(WRITING_IN_A_LOOP, path, wait_s)
        kept = read_toml(path)
        number = kept["number"]
        assert f"saved {number}" in said or f"saved {number - 1}" in said
        assert kept["padding"] == str(number) * PADDING
    assert json.dumps(kept)
