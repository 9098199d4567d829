from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from foldwright.web.app import create_app
from foldwright.work.book import Book
from foldwright.work.shop import house_shop

ADDRESS = "http://127.0.0.1:8137"
NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    opened = Book(tmp_path / "book.sqlite", lambda: NOON)
    yield opened
    opened.close()


@pytest.fixture
def client(book: Book) -> TestClient:
    """A reader who sends what a browser sends with a form of our own."""
    app = create_app(book, house_shop(), lambda: NOON)
    return TestClient(app, base_url=ADDRESS, headers={"Origin": ADDRESS}, follow_redirects=False)


@pytest.fixture
def job(book: Book) -> int:
    """The demo job, entered as job 1."""
    entry = book.enter_demo_job()
    assert entry is not None
    return entry.job_id
