"""What a save is said to have moved: figures that were known before, and no others."""

from __future__ import annotations

import re
from html import unescape

from starlette.testclient import TestClient

from foldwright.work.book import Book

SIZED = {"version": "1", "tag": "Stair", "asked.width": "35 3/16", "asked.drop": "54"}


def moved_part(page: str) -> str:
    part = re.search(r'<section class="moved".*?</section>', page, re.DOTALL)
    assert part is not None
    return unescape(" ".join(re.sub(r"<[^>]+>", " ", part[0]).split()))


def begin_stair(book: Book) -> None:
    document = {"job": {"name": "Mill", "system": "inch"}, "shades": [{"tag": "Stair"}]}
    book.begin(document)


def test_the_first_save_of_a_shade_counts_what_is_new(client: TestClient, book: Book) -> None:
    begin_stair(book)
    saved = client.post("/jobs/1/shades/1", data=SIZED)
    told = moved_part(client.get(saved.headers["Location"]).text)
    assert " none " not in f" {told} "
    assert re.search(r"[1-9]\d+ figures are newly known\.", told)


def test_a_later_save_lists_what_was_known_before(client: TestClient, book: Book) -> None:
    begin_stair(book)
    client.post("/jobs/1/shades/1", data=SIZED)
    saved = client.post("/jobs/1/shades/1", data=SIZED | {"version": "2", "asked.width": "36"})
    told = moved_part(client.get(saved.headers["Location"]).text)
    assert "finished width 35 3/16 in 36 in" in told
    assert "newly known" not in told


def test_the_bar_of_the_form_counts_what_is_new(client: TestClient, book: Book) -> None:
    begin_stair(book)
    page = client.post("/jobs/1/shades/1/preview", data=SIZED | {"parts": "all"}).text
    told = unescape(" ".join(re.sub(r"<[^>]+>", " ", page).split()))
    assert re.search(r"Not saved yet\. \d+ figures are newly known\.", told)
