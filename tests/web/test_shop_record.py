"""The shop's record shows, spring by spring, what was reckoned and what the bench found."""

from __future__ import annotations

import html
import re

import pytest
from starlette.testclient import TestClient

from foldwright.work.bench import Kind
from foldwright.work.book import Book

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
    assert len(links) > 10
    for link in links:
        assert client.get(link).status_code == 200


def test_the_shade_is_read_as_it_stood_when_it_was_tested(client: TestClient) -> None:
    note(client, 4, "a", "stall", ended="rose", turns="14.5")
    client.post("/jobs/1/shades/4/take-out")
    assert "Garden" in words(client)


def test_a_figure_that_is_not_there_is_told(client: TestClient) -> None:
    assert client.get("/shop/why?figure=9.9.found").status_code == 404


SPRING = {
    "key": "s1",
    "spring": "Alder 26",
    "weight": "2 lb",
    "turns_1": "8",
    "winding_1": "1 1/2",
    "back_1": "1 3/8",
    "turns_2": "16",
    "winding_2": "3",
    "back_2": "2 3/4",
    "by": "AB",
}


def test_a_spring_is_measured_with_a_bar_a_weight_and_a_tape(client: TestClient) -> None:
    assert client.post("/shop/springs", data=SPRING).status_code == 303
    page = words(client)
    assert "Measured by itself" in page
    assert "For the shop's list: rate_n_m_turn =" in page
    rate = float(re.findall(r"rate_n_m_turn = ([\d.]+)", page)[0])
    expected = 2 * 0.45359237 * 9.80665 * 0.0254 * (3 + 2.75) / 2 / 16  # weight, arm, turns
    assert rate == pytest.approx(expected, rel=0.02)


def test_a_spring_sent_twice_is_kept_once_and_in_the_units_it_was_typed_in(
    client: TestClient,
) -> None:
    for _ in range(2):
        client.post("/shop/springs", data=SPRING)
    client.post("/units", data={"system": "metric", "back": "/shop"})
    assert words(client).count("Measured by itself") == 1
    assert "0.03" in words(client)


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"weight": "heavy"}, "one plain number"),
        ({"weight": ""}, "It is missing"),
        ({"spring": " "}, "It has no name"),
        ({"back_2": ""}, "lacks its turns or one of its two distances"),
        ({"winding_1": "35 3/15"}, "3/15"),
    ],
)
def test_a_spring_that_cannot_be_read_is_told_and_stays_typed(
    client: TestClient, change: dict[str, str], told: str
) -> None:
    answer = client.post("/shop/springs", data={**SPRING, **change})
    assert answer.status_code == 422
    assert told in " ".join(re.sub(r"<[^>]+>", " ", answer.text).split())
    assert 'value="16"' in answer.text
    assert "Measured by itself" not in words(client)


def test_readings_that_cannot_be_are_questioned_and_kept(client: TestClient) -> None:
    client.post("/shop/springs", data={**SPRING, "back_1": "5"})
    page = words(client)
    assert "the weight further out than winding" in page
    assert "Measured by itself" in page
    assert "rate_n_m_turn" not in page


def test_a_form_without_its_key_is_not_taken(client: TestClient) -> None:
    assert client.post("/shop/springs", data={"spring": "Alder 26"}).status_code == 400


def test_what_the_bench_found_moves_what_is_expected_of_the_next(
    client: TestClient, book: Book
) -> None:
    def least() -> str:
        return re.findall(r"At least ([\d.]+) turns", said(client, "/jobs/1/shades/10/bench"))[0]

    client.post("/jobs/1/shades/4/copy", data={"tag": "Garden two"})
    before = least()
    for test in range(4):
        if test:
            book.bench.begin(1, "Garden", Kind.BENCH, 1)
        typed = {"low_down": "9", "low_up": "7", "high_down": "5.5", "high_up": "4", "turns": "12"}
        note(client, 4, f"t{test}", "scale", **typed)
        note(client, 4, f"h{test}", "confirm", entry=f"t{test}")
    assert float(least()) != float(before)


def said(client: TestClient, address: str) -> str:
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", client.get(address).text)).split())
