"""Shared boards on the job's page: begun, marked, their widths typed, and taken apart."""

from __future__ import annotations

import re
from html import unescape

import pytest
from starlette.testclient import TestClient
from tests.core.boarded import board, shade

from foldwright.work.book import Book


def words(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html)))


@pytest.fixture
def pair(book: Book) -> int:
    """Two shades, not yet on one board; nobody has typed the width of the second."""
    right = shade("Right")
    del right["asked"]["width"]
    document = board(shade("Left"), right)
    del document["boards"]
    return book.begin(document).job_id


def begin(client: TestClient, job: int, **typed: object) -> None:
    form = {"name": "Pair", "gap": "1/2", "shades": ["Left", "Right"], "across": "66 1/2"} | typed
    assert client.post(f"/jobs/{job}/boards", data=form).status_code == 303


def test_shades_are_put_on_one_board_and_share_its_width(
    client: TestClient, book: Book, pair: int
) -> None:
    begin(client, pair)
    page = words(client.get(f"/jobs/{pair}").text)
    assert "Right Make it 36 in wide." in page
    assert client.post(f"/jobs/{pair}/boards/1/widths").status_code == 303
    assert book.open(pair).document["shades"][1]["asked"]["width"] == "36 in"
    page = words(client.get(f"/jobs/{pair}").text)
    assert "Board 66 1/4 in. Marks run from its left end, seen from the back." in page
    assert "Right 36 in wide. Cords at 1 7/8 in, 9 7/8 in" in page
    assert "Brackets at" in page
    assert "Type these widths" not in page


def test_one_tube_says_what_it_does(client: TestClient, pair: int) -> None:
    begin(client, pair, lift="one tube")
    client.post(f"/jobs/{pair}/boards/1/widths")
    page = words(client.get(f"/jobs/{pair}").text)
    assert "The one tube, cut to 64 7/8 in:" in page
    assert "They rise and stop together" in page


def test_a_board_is_taken_apart_and_a_shade_taken_out_leaves_it(
    client: TestClient, book: Book, pair: int
) -> None:
    begin(client, pair)
    client.post(f"/jobs/{pair}/boards/1/take-apart")
    assert book.open(pair).document["boards"] == []
    begin(client, pair)
    client.post(f"/jobs/{pair}/shades/1/take-out")
    assert book.open(pair).document["boards"] == []
    assert client.post(f"/jobs/{pair}/boards/1/take-apart").status_code == 404


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shades": ["Left"]}, "a board holds two shades at least"),
        ({"gap": ""}, "boards.1.gap"),
        ({"gap": "35 3/15"}, "boards.1.gap"),
    ],
)
def test_a_board_that_will_not_do_is_told_and_kept_as_typed(
    client: TestClient, book: Book, pair: int, typed: dict[str, object], said: str
) -> None:
    form = {"name": "Pair", "gap": "1/2", "shades": ["Left", "Right"]} | typed
    answer = client.post(f"/jobs/{pair}/boards", data=form)
    assert answer.status_code == 422
    assert said in words(answer.text)
    assert "boards" not in book.open(pair).document
