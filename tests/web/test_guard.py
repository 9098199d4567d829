"""The door: foreign names, foreign forms and bodies beyond all bounds."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from starlette.testclient import TestClient

from foldwright.web.guard import LARGEST_BODY_BYTES
from foldwright.work.book import Book


def test_every_answer_carries_the_content_policy(client: TestClient) -> None:
    for address in ("/", "/nowhere", "/static/foldwright.css"):
        policy = client.get(address).headers["Content-Security-Policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy


def test_every_answer_forbids_guessing_its_kind(client: TestClient) -> None:
    assert client.get("/").headers["X-Content-Type-Options"] == "nosniff"


def test_a_foreign_host_reaches_nothing(client: TestClient, job: int) -> None:
    answer = client.get(f"/jobs/{job}", headers={"Host": "elsewhere.example:8137"})
    assert answer.status_code == 421
    assert "own address" in answer.text


@pytest.mark.parametrize("host", ["127.0.0.1:8137", "localhost:8137", "localhost", "[::1]:8137"])
def test_this_machine_is_let_in_under_each_of_its_names(client: TestClient, host: str) -> None:
    assert client.get("/", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize(
    "origin", ["http://elsewhere.example", "null", "", "https://127.0.0.1:8137"]
)
def test_a_form_from_elsewhere_changes_nothing(client: TestClient, book: Book, origin: str) -> None:
    form = {"name": "Mill", "units": "inch"}
    answer = client.post("/jobs", data=form, headers={"Origin": origin})
    assert answer.status_code == 403
    assert book.jobs() == []


def test_a_form_without_an_origin_changes_nothing(client: TestClient, book: Book) -> None:
    client.headers.pop("Origin")
    answer = client.post("/jobs", data={"name": "Mill", "units": "inch"})
    assert answer.status_code == 403
    assert book.jobs() == []


def test_a_body_announced_too_large_is_refused(client: TestClient) -> None:
    answer = client.post("/jobs", content=b"x" * (LARGEST_BODY_BYTES + 1))
    assert answer.status_code == 413
    assert "one megabyte" in answer.text


def test_a_body_that_only_turns_out_too_large_is_refused(client: TestClient) -> None:
    def pieces() -> Iterator[bytes]:
        for _ in range(12):
            yield b"name=" + b"x" * 100_000

    headers = {"Content-Type": "application/x-www-form-urlencoded"}
    answer = client.post("/jobs", content=pieces(), headers=headers)
    assert answer.status_code == 413


def test_what_breaks_is_told_without_its_insides(client: TestClient, book: Book) -> None:
    book.close()
    book.jobs = lambda: 1 / 0  # type: ignore[method-assign, assignment, return-value]
    quiet = TestClient(client.app, base_url=str(client.base_url), raise_server_exceptions=False)
    answer = quiet.get("/")
    assert answer.status_code == 500
    assert "ZeroDivisionError" not in answer.text
    assert "nothing was saved" in answer.text
