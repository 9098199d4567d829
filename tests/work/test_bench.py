"""The record of the bench keeps every entry, once, whoever sends it and however often."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import pytest
from tests.work.documents import small

from foldwright.work.bench import UNDO, Kind, Note
from foldwright.work.book import Book

NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


@pytest.fixture
def book(tmp_path: Path) -> Iterator[Book]:
    book = Book(tmp_path / "jobs.book", lambda: NOON)
    book.begin(small())
    yield book
    book.close()


def weighed(key: str, mass: str) -> Note:
    return Note(key=key, step="weigh", typed={"mass": mass}, by="AB")


def note(book: Book, note: Note, session: int | None = None) -> int:
    return book.bench.note(1, "Stair", note, session=session, version=1).id


def test_the_first_note_begins_a_session_and_is_kept_as_typed(book: Book) -> None:
    note(book, weighed("a", "  3 lb 2"))
    (record,) = book.bench.of_shade(1, "Stair")
    assert (record.kind, record.version, record.begun_at) == (Kind.BENCH, 1, NOON)
    (entry,) = record.entries
    assert (entry.number, entry.step, entry.typed, entry.by, entry.noted_at) == (
        1,
        "weigh",
        {"mass": "  3 lb 2"},
        "AB",
        NOON,
    )


def test_a_note_sent_twice_is_kept_once(book: Book) -> None:
    for _ in range(3):
        note(book, weighed("a", "3 lb"))
    note(book, weighed("b", "3 lb"))
    (record,) = book.bench.of_shade(1, "Stair")
    assert [entry.key for entry in record.entries] == ["a", "b"]


def test_a_later_reading_stands_and_the_earlier_one_stays(book: Book) -> None:
    note(book, weighed("a", "3 lb"))
    note(book, weighed("b", "3.2 lb"))
    (record,) = book.bench.of_shade(1, "Stair")
    assert record.typed_at("weigh") == {"mass": "3.2 lb"}
    assert [entry.typed["mass"] for entry in record.entries] == ["3 lb", "3.2 lb"]


def test_a_field_left_empty_does_not_wipe_what_stands(book: Book) -> None:
    note(book, Note(key="a", step="level", typed={"quarter": "1/8", "half": ""}))
    note(book, Note(key="b", step="level", typed={"quarter": "", "half": "1/16"}))
    (record,) = book.bench.of_shade(1, "Stair")
    assert record.typed_at("level") == {"quarter": "1/8", "half": "1/16"}


def test_taking_back_marks_and_does_not_remove(book: Book) -> None:
    note(book, weighed("a", "3 lb"))
    note(book, weighed("b", "30 lb"))
    note(book, Note(key="c", step=UNDO, undoes="b"))
    (record,) = book.bench.of_shade(1, "Stair")
    assert len(record.entries) == 3
    assert record.typed_at("weigh") == {"mass": "3 lb"}
    assert record.last is not None
    assert record.last.key == "a"


def test_the_entries_of_two_tablets_are_all_kept_in_the_session_they_were_made_in(
    book: Book,
) -> None:
    first = note(book, weighed("a", "3 lb"))
    second = book.bench.begin(1, "Stair", Kind.VISIT, 1).id
    note(book, weighed("late", "3.1 lb"), first)
    note(book, weighed("new", "3.2 lb"))
    newest, oldest = book.bench.of_shade(1, "Stair")
    assert (newest.id, oldest.id) == (second, first)
    assert [entry.key for entry in oldest.entries] == ["a", "late"]
    assert [entry.key for entry in newest.entries] == ["new"]


def test_a_session_is_found_again_whatever_the_shade_is_called_by_now(book: Book) -> None:
    first = note(book, weighed("a", "3 lb"))
    book.bench.note(1, "Landing", weighed("b", "3.1 lb"), session=first)
    assert [entry.key for entry in book.bench.of_shade(1, "Stair")[0].entries] == ["a", "b"]
    assert book.bench.of_shade(1, "Landing", "Stair")[0].id == first
    assert book.bench.subjects(1) == {"Stair"}


def test_a_session_of_another_job_is_not_written_into(book: Book) -> None:
    book.begin(small())
    other = book.bench.begin(2, "Stair", Kind.BENCH).id
    assert note(book, weighed("a", "3 lb"), other) != other
    assert book.bench.of_shade(2, "Stair")[0].entries == ()


def test_a_tablet_in_another_zone_is_kept_at_the_same_moment(book: Book) -> None:
    there = NOON.astimezone(timezone(timedelta(hours=-7)))
    note(book, Note(key="a", step="hang", noted_at=there))
    assert book.bench.of_shade(1, "Stair")[0].entries[0].noted_at == NOON


def test_springs_have_records_of_their_own(book: Book) -> None:
    book.bench.note(None, "Willow 21", weighed("s", "1 lb"), session=None)
    assert [record.subject for record in book.bench.of_shop()] == ["Willow 21"]
    assert book.bench.of_shade(1, "Willow 21") == []


def test_the_record_outlives_the_program(book: Book, tmp_path: Path) -> None:
    note(book, weighed("a", "3 lb"))
    again = Book(tmp_path / "jobs.book", lambda: NOON)
    assert again.bench.of_shade(1, "Stair")[0].typed_at("weigh") == {"mass": "3 lb"}
    again.close()
