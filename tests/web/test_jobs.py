"""The list of jobs: what is put away comes back, and what a file brings in is told."""

from __future__ import annotations

from html import unescape

from starlette.testclient import TestClient

from foldwright.work.book import Book


def test_a_job_put_away_is_listed_apart_and_comes_back(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/put-away")
    page = client.get("/").text
    assert "Every job is put away." in page
    assert f'action="/jobs/{job}/bring-back"' in page.partition("Jobs put away")[2]
    own = client.get(f"/jobs/{job}").text
    assert "Put this job back on the list" in own
    assert "Take this job off the list" not in own
    answer = client.post(f"/jobs/{job}/bring-back")
    assert answer.headers["Location"] == "/"
    assert [entry.job_id for entry in book.jobs()] == [job]
    assert "Jobs put away" not in client.get("/").text


def test_a_job_that_never_was_cannot_come_back(client: TestClient) -> None:
    assert client.post("/jobs/7/bring-back").status_code == 404


def test_a_shop_folder_named_in_a_file_is_told_to_be_left_unread(client: TestClient) -> None:
    head = "[job]\nname = 'Mill'\nsystem = 'inch'\nshop = '../our list'\n"
    told = "names “../our list” as the shop's list; on screen that folder is not read"
    taken = client.post("/files", files={"file": ("mill.toml", head)})
    assert told in unescape(client.get(taken.headers["Location"]).text)
    wrong = f"{head}[[shades]]\ntag = 'Stair'\nmaterials.bar = 'our own bar'\n"
    refused = client.post("/files", files={"file": ("mill.toml", wrong)})
    assert refused.status_code == 422
    assert told in unescape(refused.text)


def test_a_file_without_a_shop_folder_says_nothing_of_one(client: TestClient, job: int) -> None:
    assert "that folder is not read" not in client.get(f"/jobs/{job}").text
