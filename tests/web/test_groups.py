"""Groups on the job's page: begun, drawn, matched by one button, and taken apart."""

from __future__ import annotations

import re
from html import unescape

import pytest
from starlette.testclient import TestClient
from tests.core.grouped import BAY, room

from foldwright.web.fields import every_field
from foldwright.web.forms import text_at
from foldwright.work.book import Book


@pytest.fixture
def bay(book: Book) -> int:
    """A room of three windows, not yet a group."""
    document = room(*BAY)
    del document["groups"]
    return book.begin(document).job_id


def words(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html)))


def begin(client: TestClient, job: int, **typed: object) -> None:
    form = {"name": "Front", "shades": ["Left", "Middle", "Right"]} | typed
    assert client.post(f"/jobs/{job}/groups", data=form).status_code == 303


def test_shades_are_named_as_a_group(client: TestClient, book: Book, bay: int) -> None:
    begin(client, bay, rows_from="head", own_hems="yes")
    assert book.open(bay).document["groups"] == [
        {
            "name": "Front",
            "shades": ["Left", "Middle", "Right"],
            "rows_from": "head",
            "own_hems": True,
        }
    ]


def test_the_page_draws_the_room_and_says_what_each_gives_up(client: TestClient, bay: int) -> None:
    begin(client, bay)
    page = client.get(f"/jobs/{bay}").text
    assert page.count("<svg") == 2 + page.count("severity")
    assert "They would match: rows 7 5/8 in apart, level within 0 in." in words(page)
    assert "Left 6 rows at 7 5/8 in over a skirt of 1 1/2 in." in words(page)
    assert "Match all 3" in page


def test_one_button_matches_them_all(client: TestClient, book: Book, bay: int) -> None:
    begin(client, bay)
    versions = book.open(bay).number
    answer = client.post(f"/jobs/{bay}/groups/1/match")
    assert (answer.status_code, answer.headers["location"]) == (303, f"/jobs/{bay}#groups")
    assert book.open(bay).number == versions + 1
    page = words(client.get(f"/jobs/{bay}").text)
    assert "They match as they hang" in page
    assert "Match all" not in page
    drop = book.open(bay).document["shades"][0]["asked"]
    assert drop == {"drop": "57 3/4 in", "given_by": "the group"}


def test_a_drawing_stands_by_itself(client: TestClient, bay: int) -> None:
    begin(client, bay)
    for address in ("1.svg", "1.svg?as=matched"):
        answer = client.get(f"/jobs/{bay}/groups/{address}")
        assert answer.headers["content-type"].startswith("image/svg+xml")
        assert "3 shades seen from the room" in answer.text
    assert client.get(f"/jobs/{bay}/groups/1.svg?as=x").status_code == 404
    assert client.get(f"/jobs/{bay}/groups/7.svg").status_code == 404


def test_a_group_is_taken_apart_and_the_shades_stay(
    client: TestClient, book: Book, bay: int
) -> None:
    begin(client, bay)
    assert client.post(f"/jobs/{bay}/groups/1/take-apart").status_code == 303
    document = book.open(bay).document
    assert (document["groups"], len(document["shades"])) == ([], 3)


def test_a_shade_taken_out_leaves_its_group(client: TestClient, book: Book, bay: int) -> None:
    begin(client, bay)
    client.post(f"/jobs/{bay}/shades/1/take-out")
    assert book.open(bay).document["groups"][0]["shades"] == ["Middle", "Right"]
    client.post(f"/jobs/{bay}/shades/1/take-out")
    assert book.open(bay).document["groups"] == []


def test_a_shade_that_is_renamed_stays_in_its_group(
    client: TestClient, book: Book, bay: int
) -> None:
    begin(client, bay)
    entry = book.open(bay)
    form = {one.path: text_at(entry.document["shades"][0], one) for one in every_field()}
    form |= {"version": str(entry.number), "tag": "West"}
    assert client.post(f"/jobs/{bay}/shades/1", data=form).status_code == 303
    assert book.open(bay).document["groups"][0]["shades"] == ["West", "Middle", "Right"]


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"shades": ["Left"]}, "a group holds two shades at least"),
        ({"shades": ["Left", "Nobody"]}, "no shade has the tag “Nobody”"),
        ({"name": ""}, "groups.1.name"),
    ],
)
def test_a_group_that_will_not_do_is_told_and_kept_as_typed(
    client: TestClient, book: Book, bay: int, typed: dict[str, object], said: str
) -> None:
    form = {"name": "Front", "shades": ["Left", "Right"]} | typed
    answer = client.post(f"/jobs/{bay}/groups", data=form)
    assert answer.status_code == 422
    assert said in words(answer.text)
    assert "groups" not in book.open(bay).document


def test_a_group_that_cannot_be_matched_yet_says_what_is_missing(
    client: TestClient, book: Book
) -> None:
    document = room(BAY[0], {"tag": "Right"})
    job = book.begin(document).job_id
    page = words(client.get(f"/jobs/{job}").text)
    assert "It cannot be matched yet." in page
    assert "“Right” cannot be laid out yet" in page
    assert client.post(f"/jobs/{job}/groups/1/match").status_code == 409
