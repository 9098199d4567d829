"""The habits of a job, typed on its page: they go for its shades, and nothing typed is lost."""

from __future__ import annotations

import re
from dataclasses import fields
from html import unescape

import pytest
from starlette.testclient import TestClient

from foldwright.core.facts.habits import Habits
from foldwright.core.facts.house import house_habits
from foldwright.core.quantity.rounding import System
from foldwright.web.habits import habit_groups
from foldwright.work.book import Book
from foldwright.work.document import read_document


@pytest.mark.parametrize("system", System)
def test_every_habit_has_its_field_once(system: System) -> None:
    paths = [one.path for group in habit_groups(system) for one in group.every()]
    assert sorted(paths) == sorted(f"habits.{slot.name}" for slot in fields(Habits))


@pytest.mark.parametrize("system", System)
def test_what_stands_in_an_empty_field_may_be_typed_there(system: System) -> None:
    every = [one for group in habit_groups(system) for one in group.every()]
    typed = {one.path.removeprefix("habits."): one.placeholder for one in every}
    job = read_document({"job": {"name": "Mill", "system": system.value}, "habits": typed}).job
    assert job is not None
    for name, own in vars_of(job.habits).items():
        house = vars_of(house_habits())[name]
        assert float(own) == pytest.approx(float(house), rel=0.05), name


def vars_of(habits: Habits) -> dict[str, float]:
    values = {slot.name: getattr(habits, slot.name).value for slot in fields(habits)}
    return {name: getattr(value, "nanometres", value) for name, value in values.items()}


def test_an_empty_field_shows_the_house_habit_and_its_status(client: TestClient, job: int) -> None:
    page = unescape(client.get(f"/jobs/{job}").text)
    assert re.search(r'name="habits.side_turn" value=""[^>]* placeholder="1 1/2 in"', page)
    assert "House: 1 1/2 in, common practice." in page
    assert "all as the house has them" in page


def test_a_habit_typed_goes_for_every_shade_and_is_kept_as_typed(
    client: TestClient, book: Book, job: int
) -> None:
    form = {"version": "1", "habits.skirt": "2 1/4", "habits.side_turn": ""}
    assert client.post(f"/jobs/{job}/habits", data=form).headers["Location"] == f"/jobs/{job}"
    assert book.open(job).document["habits"] == {"skirt": "2 1/4"}
    shade = unescape(client.get(f"/jobs/{job}/shades/2").text)
    assert "2 1/4 in" in shade
    assert "1 of its own" in client.get(f"/jobs/{job}").text


def test_an_emptied_habit_is_left_to_the_house_again(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/habits", data={"version": "1", "habits.skirt": "2"})
    client.post(f"/jobs/{job}/habits", data={"version": "2", "habits.skirt": ""})
    assert "habits" not in book.open(job).document


def test_a_habit_that_cannot_be_read_keeps_the_form_and_saves_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    form = {"version": "1", "habits.skirt": "2 1/3 feet <b>", "habits.load_margin": "0.12"}
    answer = client.post(f"/jobs/{job}/habits", data=form)
    assert answer.status_code == 422
    assert 'value="2 1/3 feet &lt;b&gt;"' in answer.text
    assert 'name="habits.load_margin" value="0.12"' in answer.text
    assert answer.text.count("aria-invalid") == 1
    assert book.open(job).number == 1


def test_a_shade_saved_meanwhile_stays_and_so_do_the_habits(
    client: TestClient, book: Book, job: int
) -> None:
    document = book.open(job).document
    document["shades"][0]["room"] = "Hall"
    book.save(job, document, follows=1)
    client.post(f"/jobs/{job}/habits", data={"version": "1", "habits.skirt": "2"})
    standing = book.open(job).document
    assert (standing["shades"][0]["room"], standing["habits"]) == ("Hall", {"skirt": "2"})


def test_two_people_who_change_the_habits_lose_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/habits", data={"version": "1", "habits.skirt": "2"})
    answer = client.post(f"/jobs/{job}/habits", data={"version": "1", "habits.tuck": "1"})
    assert answer.status_code == 409
    assert book.open(job).document["habits"] == {"skirt": "2"}
    assert book.history(job)[0].document["habits"] == {"tuck": "1"}


def test_a_form_without_its_fields_changes_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    assert client.post(f"/jobs/{job}/habits", json={"a": 1}).status_code == 400
    assert book.open(job).number == 1
