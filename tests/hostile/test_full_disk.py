"""A full disk is told in one sentence, and what was there still stands."""

from __future__ import annotations

import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import event
from tests.work.documents import small

from foldwright.work.book import Book, BookTrouble
from foldwright.work.files import CannotUse
from foldwright.work.jobfile import save_job_file

LIMITED = """
import resource, sys
from pathlib import Path
resource.setrlimit(resource.RLIMIT_FSIZE, ({limit}, {limit}))
"""
SAVE_TO_BOOK = (
    LIMITED
    + """
from datetime import UTC, datetime
from foldwright.work.book import Book, BookTrouble
book = Book(Path(sys.argv[1]), lambda: datetime.now(UTC))
try:
    book.save(1, {{"padding": "x" * 1_000_000}}, follows=1)
except BookTrouble as trouble:
    print(trouble)
"""
)
SAVE_TO_FILE = (
    LIMITED
    + """
from foldwright.work.files import CannotUse
from foldwright.work.jobfile import save_job_file
try:
    save_job_file({{"padding": "x" * 1_000_000}}, Path(sys.argv[1]))
except CannotUse as trouble:
    print(trouble)
"""
)


def said_with_room_for(size: int, script: str, path: Path) -> str:
    """Run a script that may write so many bytes to a file."""
    done = subprocess.run(  # noqa: S603 - our own program
        [sys.executable, "-c", script.format(limit=size), str(path)],
        capture_output=True,
        text=True,
        check=True,
        timeout=60,
    )
    assert done.stderr == ""
    return done.stdout


def now() -> datetime:
    return datetime(2026, 5, 4, tzinfo=UTC)


def test_a_book_that_cannot_grow_keeps_what_it_has(tmp_path: Path) -> None:
    path = tmp_path / "jobs.book"
    book = Book(path, now)
    book.begin(small())
    said = said_with_room_for(path.stat().st_size + 20_000, SAVE_TO_BOOK, path)
    assert said.count("\n") == 1
    assert "full" in said
    assert "Nothing in it was changed." in said
    assert [each.number for each in book.history(1)] == [1]
    assert book.save(1, {"now": "there is room"}, follows=1).number == 2
    book.close()


def test_a_full_disk_is_named(tmp_path: Path) -> None:
    book = Book(tmp_path / "jobs.book", now)
    book.begin(small())
    book._engine.dispose()

    def fill(connection: object, _record: object) -> None:
        connection.execute("PRAGMA max_page_count = 1")  # type: ignore[attr-defined]

    event.listen(book._engine, "connect", fill)
    with pytest.raises(BookTrouble, match=r"The disk is full\..*Nothing in it was changed"):
        book.save(1, {"padding": "x" * 1_000_000}, follows=1)
    assert book.open(1).document == small()
    book.close()


def test_a_job_file_that_does_not_fit_leaves_the_old_one(tmp_path: Path) -> None:
    path = tmp_path / "job.toml"
    save_job_file(small(), path)
    before = path.read_bytes()
    said = said_with_room_for(10_000, SAVE_TO_FILE, path)
    assert said.count("\n") == 1
    assert "could not be written" in said
    assert path.read_bytes() == before
    assert [file.name for file in tmp_path.iterdir()] == ["job.toml"]


def test_a_folder_that_may_not_be_written_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    with pytest.raises(CannotUse, match="could not be written"):
        save_job_file(small(), tmp_path / "file" / "job.toml")
