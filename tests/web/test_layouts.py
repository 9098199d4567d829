"""The layouts offered on a shade's page: shown, applied, and refused when they are stale."""

from __future__ import annotations

import re
from html import unescape

from starlette.testclient import TestClient

from foldwright.web.fields import every_field
from foldwright.web.forms import text_at
from foldwright.work.book import Book

GARDEN = 4
OFFER = re.compile(r'name="layout" value="([^"]+)"')


def form_of(book: Book, **typed: str) -> dict[str, str]:
    """Give the form of the garden's shade as its page shows it, with more typed in."""
    entry = book.open(1)
    shade = entry.document["shades"][GARDEN - 1]
    form = {one.path: text_at(shade, one) for one in every_field()}
    return (
        form
        | {path.replace("__", "."): text for path, text in typed.items()}
        | {"version": str(entry.number)}
    )


def offers(html: str) -> list[str]:
    return [unescape(value) for value in OFFER.findall(html)]


def test_the_page_offers_the_best_and_two_others(client: TestClient, job: int) -> None:
    page = client.get(f"/jobs/{job}/shades/{GARDEN}").text
    assert offers(page) == ["0/Best", "2/Shorter stack"]
    assert "By the house&#39;s habits, as it stands" in page
    assert "1 column fewer saves" in page


def test_an_offered_layout_is_applied_and_saved(client: TestClient, book: Book, job: int) -> None:
    form = form_of(book) | {"layout": "0/Best"}
    answer = client.post(f"/jobs/{job}/shades/{GARDEN}/layout", data=form)
    assert answer.status_code == 303
    design = book.open(job).document["shades"][GARDEN - 1]["design"]
    assert (design["column_count"], design["edge_distance"]) == ("4", "2 1/4 in")
    page = client.get(answer.headers["location"]).text
    assert "Best, as it stands" in page


def test_what_is_typed_is_searched_before_it_is_saved(
    client: TestClient, book: Book, job: int
) -> None:
    form = form_of(book, design__column_count="6", design__edge_distance="2")
    page = client.post(f"/jobs/{job}/shades/{GARDEN}/preview", data=form).text
    assert "0/Best" not in offers(page)
    assert "Best, as it stands" in page


def test_while_somebody_types_the_search_waits_to_be_asked_for(
    client: TestClient, book: Book, job: int
) -> None:
    form = form_of(book, design__column_count="6") | {"parts": "all"}
    page = client.post(f"/jobs/{job}/shades/{GARDEN}/preview", data=form).text
    assert offers(page) == []
    assert "Search the layouts anew" in page


def test_a_typed_value_in_the_way_is_cleared_by_its_button(
    client: TestClient, book: Book, job: int
) -> None:
    form = form_of(book, design__edge_distance="1")
    page = client.post(f"/jobs/{job}/shades/{GARDEN}/preview", data=form).text
    assert "way-0/design.edge_distance" in offers(page)
    form |= {"layout": "way-0/design.edge_distance"}
    assert client.post(f"/jobs/{job}/shades/{GARDEN}/layout", data=form).status_code == 303
    saved = book.open(job).document["shades"][GARDEN - 1].get("design", {})
    assert "edge_distance" not in saved


def test_a_layout_that_is_offered_no_more_is_not_applied(
    client: TestClient, book: Book, job: int
) -> None:
    for layout in ("", "0/Worst", "7/Best", "1/By the house's habits", "way-0/design.skirt", "x"):
        form = form_of(book) | {"layout": layout}
        answer = client.post(f"/jobs/{job}/shades/{GARDEN}/layout", data=form)
        assert answer.status_code == 409
    assert book.open(job).number == 1


def test_a_form_with_a_fault_is_not_laid_out(client: TestClient, book: Book, job: int) -> None:
    form = form_of(book, design__skirt="35 3/15") | {"layout": "0/Best"}
    assert client.post(f"/jobs/{job}/shades/{GARDEN}/layout", data=form).status_code == 422
    assert book.open(job).number == 1
