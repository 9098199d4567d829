"""Papers from the pages: one page each on both papers, and marked when they are superseded."""

from __future__ import annotations

import io
import re
import zipfile

import pdfplumber
import pytest
from starlette.testclient import TestClient
from tests.web.test_pages import form_of, words

from foldwright.web.printing import standing_of
from foldwright.work.book import Book

STAIR, DINING, LIBRARY = 1, 2, 9
MILLIMETRES_TO_POINT = 25.4 / 72
SHEETS = ("table-layout", "headrail")


def printed(client: TestClient, address: str) -> tuple[list[tuple[float, float]], str]:
    """Give the sizes of the pages in millimetres, and the words on them."""
    answer = client.get(address)
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "application/pdf"
    with pdfplumber.open(io.BytesIO(answer.content)) as pdf:
        sizes = [
            (page.width * MILLIMETRES_TO_POINT, page.height * MILLIMETRES_TO_POINT)
            for page in pdf.pages
        ]
        return sizes, "\n".join(page.extract_text() for page in pdf.pages)


def change_room(client: TestClient, book: Book, number: int, room: str) -> None:
    form = form_of(book, number) | {"room": room}
    assert client.post(f"/jobs/1/shades/{number}", data=form).status_code == 303


@pytest.mark.usefixtures("job")
@pytest.mark.parametrize("sheet", SHEETS)
@pytest.mark.parametrize(("size", "mm"), [("a4", (210, 297)), ("letter", (215.9, 279.4))])
def test_a_sheet_is_one_page_of_the_paper_asked_for(
    client: TestClient, sheet: str, size: str, mm: tuple[float, float]
) -> None:
    pages, text = printed(client, f"/jobs/1/shades/{STAIR}/papers/{sheet}.pdf?size={size}")
    assert [tuple(round(side, 1) for side in page) for page in pages] == [mm]
    assert "Stair" in text
    assert "18 in" in text


@pytest.mark.usefixtures("job")
def test_paper_speaks_in_the_units_of_the_job_whatever_the_reader_sees(client: TestClient) -> None:
    client.cookies.set("units", "metric")
    _, text = printed(client, f"/jobs/1/shades/{STAIR}/papers/table-layout.pdf")
    assert "18 in" in text


@pytest.mark.usefixtures("job")
def test_a_sheet_of_an_older_version_says_what_superseded_it(
    client: TestClient, book: Book
) -> None:
    change_room(client, book, STAIR, "Hall")
    address = f"/jobs/1/shades/{STAIR}/papers/table-layout.pdf"
    _, old = printed(client, f"{address}?version=1")
    _, new = printed(client, f"{address}?version=2")
    assert "superseded by 2" in old
    assert "superseded" not in new
    assert re.search(r"replaces version 1\b", new, re.IGNORECASE)


@pytest.mark.usefixtures("job")
def test_the_page_says_which_prints_are_superseded(client: TestClient, book: Book) -> None:
    assert "No print of this shade is superseded" in shade_words(client, STAIR)
    change_room(client, book, STAIR, "Hall")
    assert "Prints of version 1 are superseded" in shade_words(client, STAIR)
    assert "No print of this shade is superseded" in shade_words(client, DINING)
    change_room(client, book, DINING, "Hall")
    assert "They carry version 3. Prints of version 1 are superseded" in shade_words(client, STAIR)
    assert "Prints of version 2 and earlier" in shade_words(client, DINING)


def shade_words(client: TestClient, number: int) -> str:
    return words(client.get(f"/jobs/1/shades/{number}").text)


@pytest.mark.usefixtures("job")
def test_a_version_that_comes_back_is_not_called_superseded_by_itself(book: Book) -> None:
    document = book.open(1).document
    changed = {**document, "shades": [{**document["shades"][0], "room": "Hall"}]}
    book.save(1, changed, follows=1)
    book.restore(1, 1)
    history = book.history(1)
    assert standing_of(history, 1, STAIR).superseded_by == 2
    assert standing_of(history, 3, STAIR).superseded_by is None
    assert standing_of(history, 3, STAIR).since == 3


@pytest.mark.usefixtures("job")
def test_all_papers_come_in_one_archive(client: TestClient) -> None:
    answer = client.get("/jobs/1/papers.zip?size=letter")
    with zipfile.ZipFile(io.BytesIO(answer.content)) as archive:
        names = archive.namelist()
        assert all(archive.read(name).startswith(b"%PDF") for name in names)
    assert "01-Stair-table-layout.pdf" in names
    assert "01-Stair-headrail.pdf" in names
    assert "cloth-01-Harbour-linen-flax.pdf" in names
    assert len(names) == len(set(names)) >= 16


def test_a_shade_that_has_not_come_far_enough_says_so(client: TestClient, book: Book) -> None:
    book.begin({"job": {"name": "A", "system": "inch"}, "shades": [{"tag": "1"}]})
    assert "nothing to print" in words(client.get("/jobs/1/shades/1").text)
    answer = client.get("/jobs/1/shades/1/papers/headrail.pdf")
    assert answer.status_code == 409
    assert "what is missing" in words(answer.text)


def test_a_tag_of_strange_letters_makes_a_plain_file_name(client: TestClient, book: Book) -> None:
    asked = {"width": "30", "drop": "60"}
    tag = 'Küche "1"/X: y'
    book.begin({"job": {"name": "A", "system": "inch"}, "shades": [{"tag": tag, "asked": asked}]})
    answer = client.get("/jobs/1/shades/1/papers/table-layout.pdf")
    named = answer.headers["Content-Disposition"]
    assert re.fullmatch(r'inline; filename="[\w-]+\.pdf"', named, re.ASCII)
