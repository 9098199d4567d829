"""What is typed comes back as typed, through files and through the book."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from hypothesis import HealthCheck, given, settings
from tests.work.documents import documents

from foldwright.work.book import Book
from foldwright.work.document import read_document
from foldwright.work.files import parse_toml
from foldwright.work.jobfile import DEMO_JOB, job_text, load_job, save_job_file


@given(documents())
def test_a_document_written_and_read_back_is_equal(document: dict[str, Any]) -> None:
    back = parse_toml(job_text(document), "job.toml")
    assert back == document
    assert read_document(document).faults == ()
    assert read_document(back).job == read_document(document).job


@given(documents())
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_a_document_kept_in_the_book_is_equal(tmp_path: Path, document: dict[str, Any]) -> None:
    book = Book(tmp_path / "jobs.book", lambda: datetime(2026, 5, 4, tzinfo=UTC))
    entry = book.begin(document)
    kept = book.open(entry.job_id).document
    book.close()
    assert kept == document
    assert list(kept) == list(document)


def test_the_demo_file_survives_being_saved(tmp_path: Path) -> None:
    before = load_job(DEMO_JOB)
    save_job_file(before.document, tmp_path / "job.toml")
    after = load_job(tmp_path / "job.toml")
    assert after.document == before.document
    assert after.job == before.job
    text = (tmp_path / "job.toml").read_text(encoding="utf-8")
    for typed in ('"894 mm"', '"89.3 cm"', '"1.378 m"', '"35-3/16"', '"35.1875"'):
        assert typed in text
