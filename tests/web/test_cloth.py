"""The page of a job's cloth: plans at once, the search that goes on, and what if."""

from __future__ import annotations

import io
import re
import time
import tomllib
from dataclasses import replace
from pathlib import Path
from threading import Lock

import pdfplumber
import pytest
from starlette.testclient import TestClient

from foldwright.core.quantity.length import Length
from foldwright.core.quantity.rounding import System
from foldwright.web.cuts import ClothView
from foldwright.web.pages.cloth import read_what_if
from foldwright.work.book import Book
from foldwright.work.cut_search import CutSearch
from foldwright.work.cutting import cloths_of, cut_cloths
from foldwright.work.files import CannotUse
from foldwright.work.jobfile import load_job

ROLLS = Path(__file__).parents[1] / "work" / "rolls.toml"
CLOTH = "/jobs/1/cloth"


@pytest.fixture
def rolls(book: Book) -> int:
    """A job with one printed cloth in hand, entered as job 1."""
    return book.begin(tomllib.loads(ROLLS.read_text(encoding="utf-8"))).job_id


@pytest.mark.usefixtures("rolls")
def test_the_page_draws_each_roll_and_says_what_is_proven(client: TestClient) -> None:
    page = client.get(CLOTH)
    assert page.status_code == 200
    text = page.text
    assert "Meadow print, indigo" in text
    assert "Roll R1, lot A" in text
    assert "proven" in text
    assert text.count("<svg") >= 2
    assert "The cuts in order" in text
    assert "By the trade&#39;s own rule" in text or "By the trade's own rule" in text


@pytest.mark.usefixtures("rolls")
def test_no_id_stands_twice_on_the_page(client: TestClient) -> None:
    ids = re.findall(r'\bid="([^"]+)"', client.get(CLOTH).text)
    assert len(ids) == len(set(ids))


@pytest.mark.usefixtures("rolls")
def test_the_search_can_be_ended_and_begun_again_for_longer(client: TestClient) -> None:
    client.get(CLOTH)
    ended = client.post(f"{CLOTH}/end")
    assert (ended.status_code, ended.headers["Location"]) == (303, CLOTH)
    assert "data-running" not in client.get(CLOTH).text
    assert client.post(f"{CLOTH}/longer").status_code == 303
    client.post(f"{CLOTH}/end")


def test_searches_take_turns_and_one_that_is_ended_waits_for_none() -> None:
    job = load_job(ROLLS).job
    assert job is not None
    turn = Lock()
    search = CutSearch(cloths_of(job), 20.0, time.monotonic, turn)
    with turn:
        search.start()
        search.wait(2.0)
        assert search.running
        assert search.ready
        search.end()
        search.wait(5.0)
    assert not search.running
    assert all(cut and cut.plan for cut in search.cuts)


@pytest.mark.usefixtures("rolls")
def test_what_each_cloth_takes_stands_first(client: TestClient) -> None:
    text = client.get(CLOTH).text
    first = re.search(r'<table class="grid to-order">(.*?)</table>', text, re.DOTALL)
    assert first is not None
    assert "of what is in hand" in first[1]
    assert "to buy" in first[1]
    assert first.end() < text.index("<svg")


@pytest.mark.usefixtures("rolls")
def test_what_if_names_what_moves_and_how_much_more_it_takes(client: TestClient) -> None:
    page = client.get(f"{CLOTH}?repeat_longer=2+mm").text
    assert "Meadow print, indigo, as it would be" in page
    assert "Piece that moves" in page
    assert "Sateen lining, ivory, as it would be" not in page
    size = client.get(f"{CLOTH}?piece=P1+face&piece_width=3000&piece_length=1500").text
    assert "Stop." in size


@pytest.mark.usefixtures("rolls")
def test_what_cannot_be_read_or_is_not_there_is_one_sentence(client: TestClient) -> None:
    for query in ("repeat_longer=wide", "flaw_along=1&flaw_roll=R1", "flaw_along=1+m"):
        page = client.get(f"{CLOTH}?{query}")
        assert page.status_code == 200
        assert 'class="fault"' in page.text
    with pytest.raises(CannotUse, match="piece length"):
        read_what_if({"piece": "P1 face", "piece_width": "900"}, System.METRIC)


@pytest.mark.usefixtures("rolls")
def test_the_cut_sheet_is_a_pdf_with_the_cuts_in_order(client: TestClient) -> None:
    client.get(CLOTH)
    answer = client.get(f"{CLOTH}/1.pdf?size=letter")
    assert answer.headers["Content-Type"] == "application/pdf"
    with pdfplumber.open(io.BytesIO(answer.content)) as pdf:
        text = "\n".join(page.extract_text() for page in pdf.pages)
    assert "Meadow print, indigo" in text
    assert "P2 face middle" in text
    assert client.get(f"{CLOTH}/9.pdf").status_code == 404


@pytest.mark.usefixtures("job")
def test_the_job_page_leads_to_its_cloth(client: TestClient) -> None:
    assert f'href="{CLOTH}"' in client.get("/jobs/1").text


def test_everything_that_is_wrong_in_a_question_is_said_at_once() -> None:
    typed = {"repeat_longer": "x", "piece_width": "35 3/15", "piece": "P1 face"}
    with pytest.raises(CannotUse) as trouble:
        read_what_if(typed, System.INCH)
    assert [fault.where for fault in trouble.value.faults] == [
        "piece width", "piece length", "repeat longer",
    ]  # fmt: skip


def test_a_repeat_may_be_shorter_but_no_size_is_below_zero() -> None:
    assert read_what_if({"repeat_longer": "-2"}, System.METRIC).repeat_longer == Length.mm(-2)
    with pytest.raises(CannotUse, match="negative"):
        read_what_if({"piece_width": "-2", "piece_length": "9"}, System.METRIC)


def test_a_job_without_shades_says_what_it_lacks(client: TestClient, book: Book) -> None:
    book.begin({"job": {"name": "Bare", "system": "metric"}})
    page = client.get(CLOTH)
    assert page.status_code == 409
    assert "No shade of this job" in page.text


def test_a_search_that_goes_on_was_not_ended_early() -> None:
    job = load_job(ROLLS).job
    assert job is not None
    cut = next(iter(cut_cloths(cloths_of(job), time_given_s=0.0, clock=time.monotonic)))
    assert cut.plan is not None
    unproven = replace(cut.plan, cut_short=True, bound=Length.mm(0))
    cut = replace(cut, answer=replace(cut.answer, result=unproven))
    views = (
        ClothView(number=1, cut=cut, system=System.METRIC, searching=on) for on in (True, False)
    )
    assert ["ended early" in view.gap for view in views] == [False, True]
