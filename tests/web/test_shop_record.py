"""The shop's record shows, spring by spring, what was reckoned and what the bench found."""

from __future__ import annotations

import html
import re

import pytest
from starlette.testclient import TestClient

pytestmark = pytest.mark.usefixtures("job")


def note(client: TestClient, shade: int, key: str, step: str, **typed: str) -> None:
    at = f"/jobs/1/shades/{shade}/bench"
    answer = client.post(at, data={"key": key, "step": step, **typed})
    assert answer.status_code == 303, answer.text


def words(client: TestClient) -> str:
    page = client.get("/shop").text
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())


def test_an_empty_record_says_how_to_begin_it(client: TestClient) -> None:
    assert "no bench test so far tells of a spring" in words(client)
    assert 'href="/shop"' in client.get("/").text


def test_what_tells_of_no_spring_is_not_in_it(client: TestClient) -> None:
    note(client, 4, "a", "hang", hung="yes")
    note(client, 4, "b", "stall", ended="free", turns="12", **{"raise": "30"})
    assert "no bench test so far tells of a spring" in words(client)


def test_found_stands_beside_reckoned_for_each_spring(client: TestClient) -> None:
    note(
        client, 4, "a", "scale", low_down="5", low_up="3", high_down="2.5", high_up="1", turns="12"
    )
    note(client, 1, "b", "stall", ended="rose", turns="12")
    page = words(client)
    assert page.index("Alder 26") < page.index("Willow 21")
    assert "Garden" in page
    assert "Stair" in page
    links = [
        html.unescape(one) for one in re.findall(r'"(/shop/why[^"]+)"', client.get("/shop").text)
    ]
    assert len(links) == 6
    for link in links:
        assert client.get(link).status_code == 200


def test_the_shade_is_read_as_it_stood_when_it_was_tested(client: TestClient) -> None:
    note(client, 4, "a", "stall", ended="rose", turns="14.5")
    client.post("/jobs/1/shades/4/take-out")
    assert "Garden" in words(client)


def test_a_figure_that_is_not_there_is_told(client: TestClient) -> None:
    assert client.get("/shop/why?figure=9.9.found").status_code == 404
