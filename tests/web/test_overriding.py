"""A stop is overridden by name and reason on its page, and the override is taken back."""

from __future__ import annotations

from html import unescape

import pytest
from starlette.testclient import TestClient

from foldwright.work.book import Book

LIBRARY, STOP = 9, "lift.nothing-fits"


@pytest.fixture
def library(job: int) -> str:
    return f"/jobs/{job}/shades/{LIBRARY}"


def answered(client: TestClient, library: str, name: str, reason: str) -> int:
    typed = {"finding": STOP, "name": name, "reason": reason}
    return client.post(f"{library}/override", data=typed).status_code


def test_a_stop_is_struck_with_who_answers_for_it_and_why_and_comes_back(
    client: TestClient, library: str
) -> None:
    assert "Override this stop" in client.get(library).text
    assert answered(client, library, "The maker", "Wanted in writing.") == 303
    page = unescape(client.get(library).text)
    assert "The maker answers for it: Wanted in writing." in page
    assert "finding stop overridden" in page
    assert "<s>" in page.partition("finding stop overridden")[2]
    assert "1 overridden" in page
    assert "Override this stop" not in page
    assert client.post(f"{library}/take-back", data={"finding": STOP}).status_code == 303
    page = client.get(library).text
    assert "overridden" not in page.partition('id="findings"')[2].partition("</section>")[0]
    assert "Override this stop" in page


@pytest.mark.parametrize("typed", [("", "Wanted."), ("The maker", " "), ("", "")])
def test_without_a_name_or_a_reason_nothing_is_saved_and_one_sentence_says_why(
    client: TestClient, book: Book, library: str, typed: tuple[str, str]
) -> None:
    before = [entry.number for entry in book.jobs()]
    assert answered(client, library, *typed) == 422
    asked = {"finding": STOP, "name": typed[0], "reason": typed[1]}
    told = client.post(f"{library}/override", data=asked).text
    assert "Who answers for it, and for what reason?" in told
    assert [entry.number for entry in book.jobs()] == before


def test_an_override_that_meets_no_stop_is_told_and_taken_back_there(
    client: TestClient, library: str
) -> None:
    idle = {"finding": "check.no-screw", "name": "A", "reason": "B"}
    client.post(f"{library}/override", data=idle)
    page = unescape(client.get(library).text)
    told = page.partition("nothing stops the shade there now")[2]
    assert 'name="finding" value="check.no-screw">Take the override back' in told
    client.post(f"{library}/take-back", data={"finding": "check.no-screw"})
    assert "nothing stops the shade there now" not in unescape(client.get(library).text)
