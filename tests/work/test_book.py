"""The book keeps every save, whole, and refuses nothing without keeping it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from tests.work.documents import small, with_field

from foldwright import __version__
from foldwright.work.book import Book, BookTrouble, NotInBook, SavedMeanwhile
from foldwright.work.files import read_toml
from foldwright.work.jobfile import DEMO_JOB

NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


class Clock:
    """A clock that a test sets."""

    def __init__(self) -> None:
        self.now = NOON

    def __call__(self) -> datetime:
        return self.now


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def book(tmp_path: Path, clock: Clock) -> Iterator[Book]:
    book = Book(tmp_path / "jobs.book", clock)
    yield book
    book.close()


def test_a_new_job_is_its_first_save(book: Book) -> None:
    entry = book.begin(small())
    assert (entry.number, entry.follows, entry.aside) == (1, 0, False)
    assert entry.name == "Mill house"
    assert entry.saved_at == NOON
    assert entry.program_version == __version__
    assert book.open(entry.job_id) == entry


def test_every_save_is_kept_in_order(book: Book, clock: Clock) -> None:
    job = book.begin(small()).job_id
    clock.now += timedelta(hours=1)
    second = with_field("note", "second")
    book.save(job, second, follows=1)
    assert [(each.number, each.saved_at) for each in book.history(job)] == [
        (2, NOON + timedelta(hours=1)),
        (1, NOON),
    ]
    assert book.open(job).document == second
    assert book.history(job)[1].document == small()


def test_a_save_without_a_change_is_not_another_save(book: Book) -> None:
    job = book.begin(small()).job_id
    assert book.save(job, small(), follows=1).number == 1
    assert len(book.history(job)) == 1


def test_when_another_save_came_first_both_are_kept(book: Book) -> None:
    job = book.begin(small()).job_id
    theirs, mine = with_field("note", "theirs"), with_field("note", "mine")
    book.save(job, theirs, follows=1)
    with pytest.raises(SavedMeanwhile, match=r"number 2\) came first.*number 3") as refusal:
        book.save(job, mine, follows=1)
    assert (refusal.value.standing, refusal.value.kept_aside) == (2, 3)
    assert book.open(job).document == theirs
    kept = {each.number: each for each in book.history(job)}
    assert kept[3].document == mine
    assert kept[3].aside
    assert not kept[2].aside


def test_what_was_kept_aside_can_be_made_to_stand(book: Book) -> None:
    job = book.begin(small()).job_id
    book.save(job, with_field("note", "theirs"), follows=1)
    with pytest.raises(SavedMeanwhile):
        book.save(job, with_field("note", "mine"), follows=1)
    restored = book.restore(job, 3)
    assert (restored.number, restored.follows) == (4, 2)
    assert book.open(job).document == with_field("note", "mine")
    assert len(book.history(job)) == 4


def test_jobs_are_listed_by_their_standing_saves_the_latest_first(book: Book, clock: Clock) -> None:
    first = book.begin(small()).job_id
    clock.now += timedelta(hours=1)
    second = book.begin(with_field("note", "other")).job_id
    assert [each.job_id for each in book.jobs()] == [second, first]
    clock.now += timedelta(hours=1)
    book.save(first, with_field("note", "later"), follows=1)
    assert [(each.job_id, each.number) for each in book.jobs()] == [(first, 2), (second, 1)]


def test_a_job_put_away_is_off_the_list_and_not_lost(book: Book) -> None:
    job = book.begin(small()).job_id
    book.put_away(job)
    assert book.jobs() == []
    assert [each.job_id for each in book.jobs(put_away=True)] == [job]
    assert book.open(job).document == small()
    book.put_away(job, away=False)
    assert [each.job_id for each in book.jobs()] == [job]


def test_the_demo_job_is_entered_once_and_only_in_an_empty_book(book: Book) -> None:
    entry = book.enter_demo_job()
    assert entry is not None
    assert entry.document == read_toml(DEMO_JOB)
    assert book.enter_demo_job() is None
    book.put_away(entry.job_id)
    assert book.enter_demo_job() is None


def test_a_second_book_on_the_same_file_sees_the_saves(book: Book, tmp_path: Path) -> None:
    job = book.begin(small()).job_id
    other = Book(tmp_path / "jobs.book", lambda: NOON)
    assert other.open(job).document == small()
    assert other.save(job, with_field("note", "other"), follows=1).number == 2
    other.close()
    assert book.open(job).number == 2


def test_what_is_not_in_the_book_is_told(book: Book) -> None:
    job = book.begin(small()).job_id
    for ask in (
        lambda: book.open(99),
        lambda: book.history(99),
        lambda: book.save(99, small(), follows=1),
        lambda: book.restore(job, 99),
        lambda: book.put_away(99),
    ):
        with pytest.raises(NotInBook, match="no such job"):
            ask()


@pytest.mark.parametrize("odd", [float("nan"), float("inf"), "half a letter \ud800"])
def test_what_cannot_be_kept_is_refused_and_nothing_changed(book: Book, odd: object) -> None:
    job = book.begin(small()).job_id
    with pytest.raises(BookTrouble, match="cannot be kept"):
        book.save(job, with_field("note", odd), follows=1)
    assert [each.number for each in book.history(job)] == [1]


def test_a_file_that_is_no_book_is_told(tmp_path: Path) -> None:
    file = tmp_path / "jobs.book"
    file.write_text("a shopping list, long enough to be read as a header of some kind " * 20)
    with pytest.raises(BookTrouble, match="not a book of jobs"):
        Book(file, lambda: NOON)


def test_a_folder_in_the_way_is_told(tmp_path: Path) -> None:
    with pytest.raises(BookTrouble, match="cannot be opened"):
        Book(tmp_path, lambda: NOON)
    (tmp_path / "file").write_text("x")
    with pytest.raises(BookTrouble):
        Book(tmp_path / "file" / "jobs.book", lambda: NOON)
