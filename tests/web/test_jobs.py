"""The list of jobs: what is put away comes back, and what a file brings in is told."""

from __future__ import annotations

from starlette.testclient import TestClient

from foldwright.work.book import Book


def test_a_job_put_away_is_listed_apart_and_comes_back(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/put-away")
    page = client.get("/").text
    assert "Every job is put away." in page
    assert f'action="/jobs/{job}/bring-back"' in page.partition("Jobs put away")[2]
    answer = client.post(f"/jobs/{job}/bring-back")
    assert answer.headers["Location"] == "/"
    assert [entry.job_id for entry in book.jobs()] == [job]
    assert "Jobs put away" not in client.get("/").text


def test_a_job_that_never_was_cannot_come_back(client: TestClient) -> None:
    assert client.post("/jobs/7/bring-back").status_code == 404
