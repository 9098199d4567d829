"""What is cut from stock lengths, on its page."""

from __future__ import annotations

import re
from html import unescape

import pytest
from starlette.testclient import TestClient

from foldwright.work.book import Book


def words(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", html)))


@pytest.mark.usefixtures("job")
def test_each_material_says_what_to_buy_where_to_cut_and_what_is_proven(client: TestClient) -> None:
    said = words(client.get("/jobs/1/stock").text)
    assert "Steel flat 20 \u00d7 3: 4 pieces" in said
    assert "Buy 1 of “Steel flat 20 \u00d7 3, 6 m”." in said
    assert "Rack C, from the rack Kitchen bar: 38 7/16 in, from" in said
    assert "it is proven that no plan costs less. Bar" in said
    assert 'href="/jobs/1/stock"' in client.get("/jobs/1").text


@pytest.mark.usefixtures("job")
def test_marks_on_a_bar_are_cumulative(client: TestClient) -> None:
    client.cookies.set("units", "metric")
    page = words(client.get("/jobs/1/stock").text)
    bar = page[page.index("Steel flat 20 \u00d7 3, 6 m, new") :]
    pairs = re.findall(r"from (\d+) mm to (\d+) mm", bar)[:3]
    marks = [int(mark) for pair in pairs for mark in pair]
    assert len(marks) == 6
    assert marks == sorted(marks)


def test_a_job_that_knows_too_little_says_what_it_lacks(client: TestClient, book: Book) -> None:
    book.begin({"job": {"name": "A", "system": "inch"}, "shades": [{"tag": "1"}]})
    assert "known well enough" in words(client.get("/jobs/1/stock").text)
