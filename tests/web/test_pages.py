"""The pages without a browser: what they say, what they save, and what they refuse."""

from __future__ import annotations

import re
import tomllib
from html import unescape

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from foldwright.web.fields import every_field
from foldwright.web.forms import text_at
from foldwright.work.book import Book

STAIR, LIBRARY = 1, 9


def form_of(book: Book, number: int) -> dict[str, str]:
    """Give the form of a shade as its page shows it."""
    entry = book.open(1)
    shade = entry.document["shades"][number - 1]
    return {one.path: text_at(shade, one) for one in every_field()} | {"version": str(entry.number)}


def words(html: str) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", "", html)))


# the jobs


def test_an_empty_book_says_how_to_begin(client: TestClient) -> None:
    assert "No job is in the book yet" in client.get("/").text


def test_a_job_is_begun(client: TestClient, book: Book) -> None:
    form = {"name": "Mill", "units": "metric", "client": "A", "markets": ["Canada", "Australia"]}
    answer = client.post("/jobs", data=form)
    assert answer.headers["Location"] == "/jobs/1"
    assert book.open(1).document == {
        "job": {
            "system": "metric",
            "name": "Mill",
            "client": "A",
            "markets": ["Canada", "Australia"],
        }
    }


def test_a_job_without_a_name_keeps_the_form(client: TestClient, book: Book) -> None:
    answer = client.post("/jobs", data={"name": " ", "units": "inch", "client": "Ada & Co"})
    assert answer.status_code == 422
    assert 'value="Ada &amp; Co"' in answer.text
    assert book.jobs() == []


def test_a_job_file_goes_out_and_comes_in_as_it_was(
    client: TestClient, book: Book, job: int
) -> None:
    file = client.get(f"/jobs/{job}/file")
    assert "guesthouse-at-the-weir.toml" in file.headers["Content-Disposition"]
    assert tomllib.loads(file.text) == book.open(job).document
    sent = client.post("/files", files={"file": ("weir.toml", file.content)})
    assert sent.headers["Location"] == "/jobs/2"
    assert book.open(2).document == book.open(1).document


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b"[job\n", "weir.toml"),
        (b"\xff\xfe\x00", "plain text"),
        (b"", "job"),
        (b"[job]\nname='A'\nsystem='inch'\ncolour='red'", "colour"),
        (b"shades = 3", "shades"),
        (b"a = [" * 3000, "weir.toml"),
    ],
)
def test_a_bad_file_is_refused_in_sentences(
    client: TestClient, book: Book, content: bytes, told: str
) -> None:
    answer = client.post("/files", files={"file": ("weir.toml", content)})
    assert answer.status_code == 422
    assert told in words(answer.text)
    assert "Traceback" not in answer.text
    assert book.jobs() == []


def test_no_file_at_all_is_told(client: TestClient) -> None:
    assert "No file was chosen" in client.post("/files", data={"file": "text"}).text


# a job


def test_a_job_shows_sizes_verdicts_and_what_stands_open(client: TestClient, job: int) -> None:
    text = words(client.get(f"/jobs/{job}").text)
    assert re.search("83 11/16 in . 58 1/8 in", text)
    assert "does not work as asked" in text
    assert "stop" in text


def test_a_shade_is_added_by_its_tag(client: TestClient, book: Book, job: int) -> None:
    answer = client.post(f"/jobs/{job}/shades", data={"tag": "Attic"})
    assert answer.headers["Location"] == f"/jobs/{job}/shades/10"
    assert book.open(job).document["shades"][9] == {"tag": "Attic"}


@pytest.mark.parametrize("tag", ["", "Stair"])
def test_a_tag_that_will_not_do_is_told(client: TestClient, book: Book, job: int, tag: str) -> None:
    answer = client.post(f"/jobs/{job}/shades", data={"tag": tag})
    assert answer.status_code == 422
    assert "fault" in answer.text
    assert book.open(job).number == 1


def test_a_shade_is_copied_under_a_new_tag(client: TestClient, book: Book, job: int) -> None:
    client.post(f"/jobs/{job}/shades/{STAIR}/copy", data={"tag": "Stair, upper"})
    shades = book.open(job).document["shades"]
    assert shades[9] == shades[0] | {"tag": "Stair, upper"}


def test_a_shade_is_taken_out_and_the_version_before_holds_it(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/shades/{STAIR}/take-out")
    assert len(book.open(job).document["shades"]) == 8
    client.post(f"/jobs/{job}/restore", data={"number": "1"})
    assert len(book.open(job).document["shades"]) == 9


def test_the_head_of_a_job_changes_and_its_units_stay(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}", data={"name": "Weir", "units": "metric", "markets": "Australia"})
    head = book.open(job).document["job"]
    assert head["name"] == "Weir"
    assert head["system"] == "inch"
    assert head["markets"] == ["Australia"]


def test_a_job_put_away_is_off_the_list(client: TestClient, job: int) -> None:
    client.post(f"/jobs/{job}/put-away")
    listed = client.get("/").text.partition("Jobs put away")[0]
    assert "Guesthouse" not in listed


# a shade


def test_a_shade_says_its_two_sizes_and_the_other_units(client: TestClient, job: int) -> None:
    text = words(client.get(f"/jobs/{job}/shades/{STAIR}").text)
    assert "Finished width 18 in 457 mm" in text


def test_saving_keeps_what_was_typed_as_typed(client: TestClient, book: Book, job: int) -> None:
    form = form_of(book, STAIR) | {"opening.width_middle": "17-3/4"}
    answer = client.post(f"/jobs/{job}/shades/{STAIR}", data=form)
    assert answer.headers["Location"].startswith(f"/jobs/{job}/shades/{STAIR}?since=1")
    assert book.open(job).document["shades"][0]["opening"]["width_middle"] == "17-3/4"


def test_a_fault_keeps_the_form_as_typed_and_saves_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    typed = {"opening.width_top": "18 3/15", "room": "Hall <1>"}
    answer = client.post(f"/jobs/{job}/shades/{STAIR}", data=form_of(book, STAIR) | typed)
    assert answer.status_code == 422
    assert 'value="18 3/15"' in answer.text
    assert 'value="Hall &lt;1&gt;"' in answer.text
    assert "3/15” in “18 3/15” is on no tape" in words(answer.text)
    assert book.open(job).number == 1


def test_saving_an_untouched_form_makes_no_new_version(
    client: TestClient, book: Book, job: int
) -> None:
    client.post(f"/jobs/{job}/shades/{STAIR}", data=form_of(book, STAIR))
    assert book.open(job).number == 1


def test_a_preview_saves_nothing(client: TestClient, book: Book, job: int) -> None:
    form = form_of(book, STAIR) | {"opening.width_middle": "17", "parts": "all"}
    answer = client.post(f"/jobs/{job}/shades/{STAIR}/preview", data=form)
    assert "16 3/4 in" in words(answer.text)
    assert "If you save this" in answer.text
    assert book.open(job).number == 1


def test_a_preview_with_faults_tells_them_all(client: TestClient, book: Book, job: int) -> None:
    wrong = {"opening.width_top": "1/0", "opening.width_middle": "NaN", "design.row_count": "-3"}
    form = form_of(book, STAIR) | wrong | {"parts": "all"}
    answer = client.post(f"/jobs/{job}/shades/{STAIR}/preview", data=form)
    assert answer.text.count('class="fault"') == 3
    assert "3 fields" in words(answer.text)


def test_two_people_may_save_two_shades_of_one_job(
    client: TestClient, book: Book, job: int
) -> None:
    stair, library = form_of(book, STAIR), form_of(book, LIBRARY)
    client.post(f"/jobs/{job}/shades/{STAIR}", data=stair | {"room": "Hall"})
    client.post(f"/jobs/{job}/shades/{LIBRARY}", data=library | {"room": "Reading room"})
    shades = book.open(job).document["shades"]
    assert (shades[0]["room"], shades[8]["room"]) == ("Hall", "Reading room")


def test_two_people_who_save_one_shade_lose_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    form = form_of(book, STAIR)
    client.post(f"/jobs/{job}/shades/{STAIR}", data=form | {"room": "Hall"})
    answer = client.post(f"/jobs/{job}/shades/{STAIR}", data=form | {"room": "Landing"})
    assert answer.status_code == 409
    assert "kept beside it" in words(answer.text)
    assert book.open(job).document["shades"][0]["room"] == "Hall"
    kept = book.history(job)[0]
    assert kept.aside
    assert kept.document["shades"][0]["room"] == "Landing"


def test_a_remedy_of_findings_that_have_changed_is_not_applied(
    client: TestClient, book: Book, job: int
) -> None:
    offered = re.search(r'value="([\w.-]+)/(\d+)/(\d+)"', client.get(f"/jobs/{job}/shades/9").text)
    assert offered is not None
    name, place, which = offered.groups()
    for remedy in ("", f"x/{place}/{which}", f"{name}/99/0", f"{name}/{place}/99", "a/b/c"):
        form = form_of(book, LIBRARY) | {"remedy": remedy}
        answer = client.post(f"/jobs/{job}/shades/{LIBRARY}/remedy", data=form)
        assert answer.status_code == 409
    assert book.open(job).number == 1


def test_a_form_that_did_not_arrive_empties_nothing(
    client: TestClient, book: Book, job: int
) -> None:
    for address in ("", "/preview", "/remedy", "/layout"):
        answer = client.post(f"/jobs/{job}/shades/{STAIR}{address}", json={"tag": "A"})
        assert answer.status_code == 400
    assert book.open(job).number == 1


PATHS = sorted(one.path for one in every_field())


@settings(
    max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(typed=st.dictionaries(st.sampled_from(PATHS), st.text(max_size=40), max_size=6))
@pytest.mark.usefixtures("job")
def test_nothing_that_is_typed_breaks_a_page(
    client: TestClient, book: Book, typed: dict[str, str]
) -> None:
    form = form_of(book, STAIR) | typed
    assert client.post(f"/jobs/1/shades/{STAIR}", data=form).status_code in (303, 422)
    form["parts"] = "all"
    assert client.post(f"/jobs/1/shades/{STAIR}/preview", data=form).status_code == 200


@pytest.mark.parametrize("share", ["nan", "-1", "7", "x", "1e999", "0.5"])
def test_any_raise_can_be_asked_for(client: TestClient, job: int, share: str) -> None:
    answer = client.get(f"/jobs/{job}/shades/{STAIR}/drawing?raise={share}")
    assert answer.status_code == 200
    assert "data-grip" in answer.text


def test_every_figure_of_a_page_has_its_why(client: TestClient, job: int) -> None:
    for number in (STAIR, LIBRARY):
        page = client.get(f"/jobs/{job}/shades/{number}?raise=0.4").text
        asked = {unescape(one) for one in re.findall(r'href="([^"]*/why\?figure=[^"]+)"', page)}
        assert len(asked) > 50
        assert any("figure=findings." in one for one in asked)
        for address in asked:
            answer = client.get(f"{address}&part=why")
            assert answer.status_code == 200, address
            assert "<ol>" in answer.text


def test_a_figure_that_is_not_there_is_told(client: TestClient, job: int) -> None:
    for figure in ("", "size", "size.colour", "spec.tag", "__class__", "size.width.value"):
        answer = client.get(f"/jobs/{job}/shades/{STAIR}/why", params={"figure": figure})
        assert answer.status_code == 404
        assert "no such figure" in words(answer.text)


# units, addresses, versions


def test_units_stay_with_the_reader(client: TestClient, job: int) -> None:
    answer = client.post("/units", data={"system": "metric", "back": f"/jobs/{job}"})
    assert answer.headers["Location"] == f"/jobs/{job}"
    assert re.search("457 mm . 1884 mm", words(client.get(f"/jobs/{job}").text))


@pytest.mark.parametrize("back", ["//elsewhere.example", "https://elsewhere.example", "/\\x"])
def test_the_way_back_never_leads_elsewhere(client: TestClient, back: str) -> None:
    answer = client.post("/units", data={"system": "metric", "back": back})
    assert answer.headers["Location"] == "/"


@pytest.mark.parametrize(
    "address",
    [
        "/jobs/2",
        "/jobs/99999999999999999999999",
        "/jobs/1/shades/0",
        "/jobs/1/shades/10",
        "/jobs/1/shades/99999999999999999999999",
        "/jobs/x",
        "/static/none.js",
        "/static/../app.py",
        "/jobs/1/shades/1/papers/none.pdf",
        "/jobs/1/shades/1/papers/headrail.pdf?size=a3",
        "/jobs/1/shades/1/papers/headrail.pdf?version=8",
        "/jobs/1/shades/1/papers/headrail.pdf?version=99999999999999999999999",
    ],
)
@pytest.mark.usefixtures("job")
def test_what_is_not_there_is_told_in_a_sentence(client: TestClient, address: str) -> None:
    answer = client.get(address)
    assert answer.status_code == 404
    assert "lead" in answer.text


def test_a_version_that_never_was_is_not_restored(client: TestClient, book: Book, job: int) -> None:
    for number in ("7", "x", "", "99999999999999999999999"):
        assert client.post(f"/jobs/{job}/restore", data={"number": number}).status_code == 404
    assert book.open(job).number == 1


def test_a_save_named_in_an_address_need_not_exist(client: TestClient, job: int) -> None:
    for since in ("9", "x", "99999999999999999999999"):
        assert client.get(f"/jobs/{job}/shades/{STAIR}?since={since}").status_code == 200
