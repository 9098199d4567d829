"""The bench card of a shade: every entry kept as typed and once, and wrong input told plainly."""

from __future__ import annotations

import html
import re

import pytest
from starlette.testclient import TestClient

from foldwright.work.bench import Kind, Record
from foldwright.work.book import Book

pytestmark = pytest.mark.usefixtures("job")
GARDEN = "/jobs/1/shades/4"
KITCHEN = "/jobs/1/shades/5"  # lifted by a clutch
BENCH = f"{GARDEN}/bench"


def note(client: TestClient, key: str, step: str, at: str = BENCH, **typed: str) -> str:
    """Note something as a plain form does, and give the page that it leads to."""
    answer = client.post(at, data={"key": key, "step": step, **typed})
    assert answer.status_code == 303, answer.text
    return words(client.get(answer.headers["location"]).text)


def refused(client: TestClient, step: str, **typed: str) -> str:
    answer = client.post(BENCH, data={"key": "k", "step": step, **typed})
    assert answer.status_code == 422
    return answer.text


def words(page: str) -> str:
    plain = " ".join(html.unescape(re.sub(r"<[^>]+>", " ", page)).split())
    return re.sub(r" ([.,;:)])", r"\1", plain)


def record(book: Book) -> Record:
    return book.bench.of_shade(1, "Garden")[0]


def test_looking_at_the_card_begins_no_record(client: TestClient, book: Book) -> None:
    page = client.get(BENCH)
    assert page.status_code == 200
    assert "Weigh the finished panel" in page.text
    assert book.bench.of_shade(1, "Garden") == []


def test_an_entry_is_kept_as_typed_with_who_and_what_it_came_to(
    client: TestClient, book: Book
) -> None:
    page = note(client, "a", "weigh", mass="2.35 lb", by="AB")
    (entry,) = record(book).entries
    assert (entry.typed, entry.by) == ({"mass": "2.35 lb"}, "AB")
    assert "pass Weigh the finished panel. 2.35 lb, expected 2.36 lb" in page
    assert "1 of 17 done: 1 pass" in page


def test_the_name_is_asked_once(client: TestClient) -> None:
    note(client, "a", "weigh", mass="2.35 lb", by="AB")
    assert 'value="AB" data-by' in client.get(BENCH).text


def test_the_card_is_resumed_at_the_step_after_the_last(client: TestClient) -> None:
    note(client, "a", "weigh", mass="2.35")
    assert re.search(
        r'data-step="width"[^>]*aria-labelledby="title-width">', client.get(BENCH).text
    )


def test_a_step_that_stops_is_stayed_with(client: TestClient) -> None:
    answer = client.post(BENCH, data={"key": "a", "step": "width", "top": "35"})
    assert "step=width" in answer.headers["location"]
    assert "9/16 in wider than 34 7/16 in" in words(client.get(answer.headers["location"]).text)


def test_sent_twice_it_is_kept_once(client: TestClient, book: Book) -> None:
    for _ in range(2):
        note(client, "a", "weigh", mass="2.35")
    assert len(record(book).entries) == 1


@pytest.mark.parametrize(
    ("step", "typed", "told"),
    [
        ("width", {"top": "34 7/15"}, "7/15"),
        ("weigh", {"mass": "heavy"}, "does not begin with one plain number"),
        ("weigh", {"mass": "-2"}, "negative"),
        ("wind", {"turns": "nan"}, "not a plain number"),
        ("wind", {"turns": "9 1/0"}, "not a plain number"),
        ("stall", {"ended": "flew"}, "not among the answers"),
        ("stall", {"ended": "stalled"}, "not said how far up"),
        ("stall", {"raise": "38"}, "not said how it ended"),
        ("scale", {"low_raise": "11 in", "turns": "9"}, "Nothing was typed"),
        ("level", {}, "Nothing was typed"),
        ("cycles", {"cycles": "ten"}, "not a plain number"),
        ("cycles", {"cycles": "9" * 50}, "longer than 40 characters"),
    ],
)
def test_what_cannot_be_read_is_told_in_a_sentence_and_not_noted(
    client: TestClient, book: Book, step: str, typed: dict[str, str], told: str
) -> None:
    assert told in words(refused(client, step, **typed))
    assert book.bench.of_shade(1, "Garden") == []


def test_all_that_was_typed_stays_beside_the_fault(client: TestClient) -> None:
    page = refused(client, "width", top="34 7/15", middle="34 3/8", bottom="wide")
    for text in ("34 7/15", "34 3/8", "wide"):
        assert f'value="{text}"' in page
    assert page.count('class="fault"') == 2


def test_a_bare_number_is_in_the_units_of_the_job(client: TestClient) -> None:
    page = note(client, "a", "scale", low_down="5", low_up="3.5", turns="12")
    assert "5 lbf down, at most 11.2 lbf" in page


def test_pounds_and_ounces_are_added(client: TestClient) -> None:
    assert "2.38 lb, expected" in note(client, "a", "weigh", mass="2 lb 6 oz")


def test_one_undo_takes_the_last_back_and_leaves_it_in_the_record(
    client: TestClient, book: Book
) -> None:
    note(client, "a", "weigh", mass="2.35")
    note(client, "b", "weigh", mass="23.5")
    page = note(client, "undo-b", "undo", undoes="b")
    assert "Take back the last: weigh the finished panel" in page
    assert record(book).typed_at("weigh") == {"mass": "2.35"}
    assert "23.5 taken back" in page
    for _ in range(2):
        note(client, "undo-b again", "undo", undoes="b")
    assert len(record(book).entries) == 3


def test_nothing_is_taken_back_that_is_not_there(client: TestClient, book: Book) -> None:
    note(client, "undo-z", "undo", undoes="z")
    assert book.bench.of_shade(1, "Garden") == []


def test_a_script_is_answered_with_the_parts_alone(client: TestClient) -> None:
    typed = {"key": "a", "step": "weigh", "mass": "2.35", "parts": "bench"}
    answer = client.post(BENCH, data=typed)
    assert answer.status_code == 200
    assert "<html" not in answer.text
    assert 'data-go="width"' in answer.text
    assert 'data-part="bench step weigh"' in answer.text


def test_two_tablets_write_into_one_record(client: TestClient, book: Book) -> None:
    note(client, "one", "weigh", mass="2.35", by="AB")
    other = record(book).id
    note(client, "two", "hang", hung="yes", by="CD", session=str(other))
    note(client, "three", "hang", hung="yes", by="AB", session="")
    assert [entry.by for entry in record(book).entries] == ["AB", "CD", "AB"]


def test_a_new_test_begins_a_record_of_its_own(client: TestClient, book: Book) -> None:
    note(client, "a", "weigh", mass="2.35")
    client.post(f"{BENCH}/begin", data={"kind": "visit"})
    newest, oldest = book.bench.of_shade(1, "Garden")
    assert (newest.kind, newest.entries) == (Kind.VISIT, ())
    assert "Visit, 0 of 9 done" in words(client.get(BENCH).text)
    assert "Bench test, 1 of 17 done" in words(client.get(f"{BENCH}?session={oldest.id}").text)


def test_a_shade_that_is_renamed_keeps_its_record(client: TestClient, book: Book) -> None:
    note(client, "a", "weigh", mass="2.35")
    document = book.open(1).document
    document["shades"][3]["tag"] = "Orchard"
    book.save(1, document, follows=1)
    page = words(client.get(BENCH).text)
    assert "Orchard" in page
    assert "1 of 17 done" in page
    note(client, "b", "hang", hung="yes", session=str(record(book).id))
    assert [entry.key for entry in record(book).entries] == ["a", "b"]


def test_what_was_noted_on_a_shade_goes_to_it_though_its_number_has_changed(
    client: TestClient, book: Book
) -> None:
    client.post("/jobs/1/shades/1/take-out")
    note(client, "late", "weigh", mass="2.35", tag="Garden")
    assert [entry.key for entry in record(book).entries] == ["late"]


def test_a_visit_goes_by_the_turns_that_were_counted_years_before(client: TestClient) -> None:
    note(client, "a", "wind", turns="13")
    client.post(f"{BENCH}/begin", data={"kind": "visit"})
    page = client.get(BENCH).text
    assert "Nobody knows what the spring still holds" in page
    assert re.search(r'id="stall-turns"[^>]*value="13"', page)


def test_one_standstill_at_a_visit_tells_what_is_left_of_the_spring(client: TestClient) -> None:
    note(client, "a", "stall", ended="rose", turns="14.5")
    client.post(f"{BENCH}/begin", data={"kind": "visit"})
    assert "Note one guided standstill" in words(client.get(BENCH).text)
    page = note(client, "v", "stall", ended="stalled", turns="14.5", **{"raise": "43"})
    assert re.search(r"Of the spring's torque [\d.]+ %.* is left", page)
    assert "Wind in" in page


def test_a_guided_stall_says_what_to_turn_which_way_and_how_sure(client: TestClient) -> None:
    note(client, "a", "wind", turns="12")
    page = note(client, "b", "stall", ended="stalled", turns="12", **{"raise": "38"})
    assert "Wind in 2.5 turns, the fixed shaft clockwise as seen at the right end" in page
    assert re.search(r"Then 14.5 turns lift it within every limit in (9\d|100)", page)
    assert "crank" in page[page.index("Wind in 2.5 turns") :]
    assert "Done: 14.5 turns are in the spring now" in page


def test_a_free_release_is_refused_as_evidence_with_the_reason(client: TestClient) -> None:
    note(client, "a", "wind", turns="12")
    page = note(client, "b", "stall", ended="free", turns="12", **{"raise": "38"})
    assert "runs past its balance" in page
    assert "Nothing noted yet tells of spring, weight or friction" in page


def test_four_hundred_turns_are_questioned_and_stay_in_the_record(
    client: TestClient, book: Book
) -> None:
    page = note(client, "a", "wind", turns="400")
    assert "400 turns were counted" in page
    assert "It is right as noted" in page
    assert record(book).typed_at("wind") == {"turns": "400"}
    assert "385" not in page


def test_what_is_held_to_is_marked_so(client: TestClient) -> None:
    note(client, "a", "weigh", mass="1 lb")
    page = note(client, "hold-a", "confirm", entry="a")
    assert "held to as noted" in page
    assert "It is right as noted" not in page


def test_two_that_contradict_each_other_stand_side_by_side(client: TestClient) -> None:
    note(client, "a", "stall", ended="stalled", turns="12", **{"raise": "38"})
    page = note(client, "b", "scale", low_raise="11", low_down="6", low_up="5", turns="12")
    side_by_side = page[page.index("with the first the second should be") :]
    assert "Raised by, where it stood still: 38" in side_by_side
    assert "let slowly up: 5" in side_by_side


def test_what_may_be_wrong_and_what_to_observe_next_are_told(client: TestClient) -> None:
    before = words(client.get(BENCH).text)
    assert "let it rise guided by hand" in before[before.index("What to observe next") :]
    note(client, "a", "wind", turns="12")
    page = note(client, "b", "stall", ended="stalled", turns="12", **{"raise": "20"})
    causes = page[page.index("What may be wrong") :]
    assert "To tell:" in causes
    assert "afterwards within" in page[page.index("What to observe next") :]


def test_every_figure_of_the_card_says_why(client: TestClient) -> None:
    note(client, "a", "wind", turns="12")
    note(client, "b", "stall", ended="stalled", turns="12", **{"raise": "38"})
    page = client.get(BENCH).text
    addresses = {html.unescape(one) for one in re.findall(r'href="([^"]+/why\?[^"]+)"', page)}
    assert len(addresses) > 30
    for address in addresses:
        assert client.get(address).status_code == 200, address


def test_a_clutch_has_nothing_to_turn(client: TestClient) -> None:
    page = words(client.get(f"{KITCHEN}/bench").text)
    assert "there is nothing to wind or let out" in page
    assert "Wind the spring" not in page


def test_the_light_test_is_for_blackout(client: TestClient) -> None:
    has = {n: "Look for light" in client.get(f"/jobs/1/shades/{n}/bench").text for n in (4, 8)}
    assert has[4] is False


@pytest.mark.parametrize(
    ("data", "status"),
    [
        ({}, 400),
        ({"key": "a"}, 400),
        ({"key": "a" * 65, "step": "weigh", "mass": "2"}, 400),
        ({"key": "a", "step": "fly"}, 409),
        ({"key": "a", "step": "weigh", "mass": "2", "session": "nine"}, 303),
        ({"key": "a", "step": "weigh", "mass": "2", "noted_at": "yesterday"}, 303),
    ],
)
def test_a_form_that_is_not_the_cards_own_harms_nothing(
    client: TestClient, data: dict[str, str], status: int
) -> None:
    assert client.post(BENCH, data=data).status_code == status


def test_a_shade_that_has_not_come_far_enough_says_so(client: TestClient) -> None:
    client.post("/jobs", data={"name": "Mill house", "units": "inch"})
    client.post("/jobs/2/shades", data={"tag": "Stair"})
    answer = client.get("/jobs/2/shades/1/bench")
    assert answer.status_code == 409
    assert "not come far enough for the bench" in answer.text


@pytest.mark.parametrize("size", ["a4", "letter"])
def test_the_card_is_printed_with_what_was_noted(client: TestClient, size: str) -> None:
    note(client, "a", "weigh", mass="2.35", by="AB")
    answer = client.get(f"{BENCH}/card.pdf?size={size}")
    assert answer.status_code == 200
    assert answer.content.startswith(b"%PDF")
    assert "04-Garden-bench-card.pdf" in answer.headers["content-disposition"]
    assert client.get(f"{BENCH}/card.pdf?size=a0").status_code == 404


def test_the_rise_is_told_drawn_and_explained(client: TestClient) -> None:
    note(client, "a", "wind", turns="12")
    page = client.get(f"{BENCH}/rise?raise=0.5")
    said = words(page.text)
    assert "Reckoned with 12 turns in the spring" in said
    for symptom in ("Rises too fast", "Sinks", "Stalls", "Will not release", "Hem crooked"):
        assert symptom in said
    assert page.text.count("<svg") == 2
    start, end = (client.get(f"{BENCH}/rise/drawing?raise={at}").text for at in (0, 1))
    assert start != end
    addresses = {html.unescape(one) for one in re.findall(r'href="([^"]+/why\?[^"]+)"', page.text)}
    assert len(addresses) > 20
    for address in addresses:
        assert client.get(address).status_code == 200, address


def test_what_no_spring_lifts_does_not_rise_by_itself(client: TestClient) -> None:
    answer = client.get(f"{KITCHEN}/bench/rise")
    assert answer.status_code == 409
    assert "does not rise by itself" in answer.text
