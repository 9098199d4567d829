"""Rolls that have come: measured on a form, kept as typed, and the cuts planned anew on them."""

from __future__ import annotations

import re
import tomllib
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from foldwright.work.book import Book

ROLLS = Path(__file__).parents[1] / "work" / "rolls.toml"
NEW = {
    "name": "R2",
    "cloth": "Sateen lining, ivory",
    "lot": "7",
    "length": "31 m",
    "usable_width": "1372",
    "flaws_at.2.along": "2.4 m",
    "flaws_at.2.across": "100",
    "flaws_at.2.length": "40",
    "flaws_at.2.width": "30",
}


@pytest.fixture
def rolls(book: Book) -> int:
    """A job with one roll in hand."""
    return book.begin(tomllib.loads(ROLLS.read_text(encoding="utf-8"))).job_id


def words(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", html)))


def test_a_roll_that_has_come_is_cut_from(client: TestClient, book: Book, rolls: int) -> None:
    address = f"/jobs/{rolls}/rolls/2"
    assert "A roll that has come" in client.get(address).text
    saved = client.post(address, data=NEW | {"version": "1"})
    assert (saved.status_code, saved.headers["Location"]) == (303, f"/jobs/{rolls}/cloth#rolls")
    flaw = {"along": "2.4 m", "across": "100", "length": "40", "width": "30"}
    assert book.open(rolls).document["rolls"][1]["flaws_at"] == [flaw]
    assert "Roll R2, lot 7" in client.get(f"/jobs/{rolls}/cloth").text


def test_what_was_measured_stands_in_the_form_as_typed(client: TestClient, rolls: int) -> None:
    page = client.get(f"/jobs/{rolls}/rolls/1").text
    for typed in ("24 m", "1368", "495.3", "342.9", "210", "3.2 m"):
        assert f'value="{typed}"' in page
    assert client.post(f"/jobs/{rolls}/rolls/1", data={"version": "1"}).status_code == 303


def test_a_form_sent_back_untouched_changes_nothing(
    client: TestClient, book: Book, rolls: int
) -> None:
    before = book.open(rolls)
    page = client.get(f"/jobs/{rolls}/rolls/1").text
    shown = dict(re.findall(r'<input id="[^"]+" name="([^"]+)" value="([^"]*)"', page))
    shown |= {"cloth": "Meadow print, indigo", "version": str(before.number)}
    assert client.post(f"/jobs/{rolls}/rolls/1", data=shown).status_code == 303
    assert book.open(rolls) == before


def test_all_that_is_wrong_is_said_at_once_and_everything_typed_is_kept(
    client: TestClient, book: Book, rolls: int
) -> None:
    wrong = {"length": "long", "flaws": "many", "flaws_at.1.along": "there", "lot": "L9"}
    page = client.post(
        f"/jobs/{rolls}/rolls/2", data={"version": "1", "cloth": "Meadow print, indigo"} | wrong
    )
    assert page.status_code == 422
    for typed in wrong.values():
        assert f'value="{typed}"' in page.text
    said = words(page.text)
    assert "Not saved yet." in said
    assert "“long” cannot be read as a length." in said
    assert "“many” cannot be used here." in said
    assert "“there” cannot be read as a length." in said
    assert said.count("It is missing.") == 4  # the name, and three sizes of the flaw
    assert book.open(rolls).number == 1


def test_a_roll_is_taken_out_and_the_version_before_holds_it(
    client: TestClient, book: Book, rolls: int
) -> None:
    assert client.post(f"/jobs/{rolls}/rolls/1/take-out").status_code == 303
    assert "rolls" not in book.open(rolls).document
    assert len(book.history(rolls)) == 2
    assert "None yet" in client.get(f"/jobs/{rolls}/cloth").text


def test_two_people_who_measure_two_rolls_lose_nothing(
    client: TestClient, book: Book, rolls: int
) -> None:
    assert client.post(f"/jobs/{rolls}/rolls/2", data=NEW | {"version": "1"}).status_code == 303
    late = client.post(f"/jobs/{rolls}/rolls/2", data=NEW | {"version": "1", "name": "R3"})
    assert late.status_code == 409
    assert [roll["name"] for roll in book.open(rolls).document["rolls"]] == ["R1", "R2"]
    assert any(entry.aside for entry in book.history(rolls))


@pytest.mark.parametrize("number", [0, 3, 99])
def test_a_roll_that_is_not_there_is_told(client: TestClient, rolls: int, number: int) -> None:
    assert client.get(f"/jobs/{rolls}/rolls/{number}").status_code == 404
    assert client.post(f"/jobs/{rolls}/rolls/{number}", data={}).status_code in {400, 404}
