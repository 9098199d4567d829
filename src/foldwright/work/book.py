"""The book of jobs: every job with every save of it, whole and in order."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError

from foldwright import __version__
from foldwright.store import saves
from foldwright.store.engine import open_engine
from foldwright.store.migrating import bring_up_to_date
from foldwright.store.saves import Save
from foldwright.work.bench import BenchRecords
from foldwright.work.document import Document
from foldwright.work.files import read_toml
from foldwright.work.jobfile import DEMO_JOB

FIRST = 0  # what the first save of a job follows


class BookTrouble(Exception):  # noqa: N818 - it tells a person what to do
    """The book could not be read or written; what stood in it still stands."""


class NotInBook(BookTrouble):
    """There is no such job, or no such save of it."""


class SavedMeanwhile(BookTrouble):
    """Another save came first; both are kept, the other one stands."""

    def __init__(self, standing: int, kept_aside: int) -> None:
        super().__init__(
            f"Another save (number {standing}) came first and stands. Yours is kept beside it"
            f" as number {kept_aside}: look at both, then restore the one you want."
        )
        self.standing = standing
        self.kept_aside = kept_aside


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """One save of a job as a person meets it."""

    job_id: int
    number: int
    document: Document
    saved_at: datetime
    program_version: str
    follows: int
    aside: bool

    @property
    def name(self) -> str:
        """Give the job's name as typed."""
        head = self.document.get("job")
        return str(head.get("name", "")) if isinstance(head, dict) else ""


class Book:
    """The jobs of a shop in one file, or in one database.

    `clock` gives the time of a save, with its zone.
    """

    def __init__(self, address: str | Path, clock: Callable[[], datetime]) -> None:
        self._clock = clock
        with _in_plain_words():
            self._engine = open_engine(address)
            self.copied_to = bring_up_to_date(self._engine)
        self.bench = BenchRecords(self._reading, self._writing, clock)

    def close(self) -> None:
        """Let go of the file."""
        self._engine.dispose()

    def jobs(self, *, put_away: bool = False) -> list[Entry]:
        """List the jobs by their standing saves, the latest saved first."""
        with self._reading() as connection:
            return [_entry(save) for save in saves.current_saves(connection, away=put_away)]

    def begin(self, document: Document) -> Entry:
        """Enter a new job with its first save."""
        with self._writing() as connection:
            job_id = saves.add_job(connection, self._clock())
            return self._add(connection, job_id, document, follows=FIRST)

    def open(self, job_id: int) -> Entry:
        """Give the standing save of a job."""
        with self._reading() as connection:
            return _entry(_found(saves.current_save(connection, job_id)))

    def save(self, job_id: int, document: Document, *, follows: int) -> Entry:
        """Save a job whole.

        Takes: the job; the document; the number of the save it was made from.
        Gives: the new save, or the standing one where nothing was changed.
        Raises: SavedMeanwhile where another save came first; both are then kept.
        """
        with self._writing() as connection:
            standing = _found(saves.current_save(connection, job_id))
            if _text(document) == standing.document:
                return _entry(standing)
            late = standing.number != follows
            entry = self._add(connection, job_id, document, follows=follows, aside=late)
        if late:
            raise SavedMeanwhile(standing.number, entry.number)
        return entry

    def history(self, job_id: int) -> list[Entry]:
        """List every save of a job, the newest first, those kept aside among them."""
        with self._reading() as connection:
            found = [_entry(save) for save in saves.history(connection, job_id)]
        if not found:
            raise NotInBook(_NO_SUCH_JOB)
        return found

    def restore(self, job_id: int, number: int) -> Entry:
        """Make an older save stand again, as a new save; the history stays as it was."""
        with self._writing() as connection:
            wanted = _found(saves.find_save(connection, job_id, number))
            standing = _found(saves.current_save(connection, job_id))
            return self._add(
                connection, job_id, json.loads(wanted.document), follows=standing.number
            )

    def put_away(self, job_id: int, *, away: bool = True) -> None:
        """Take a job off the list, or put it back; nothing is lost."""
        with self._writing() as connection:
            _found(saves.current_save(connection, job_id))
            saves.put_away(connection, job_id, away=away)

    def is_away(self, job_id: int) -> bool:
        """Tell whether a job is taken off the list."""
        return any(entry.job_id == job_id for entry in self.jobs(put_away=True))

    def enter_demo_job(self) -> Entry | None:
        """Enter the demo job into a book that never held a job; else give None."""
        with self._writing() as connection:
            if saves.has_any_job(connection):
                return None
            job_id = saves.add_job(connection, self._clock())
            return self._add(connection, job_id, read_toml(DEMO_JOB), follows=FIRST)

    def _add(
        self,
        connection: Connection,
        job_id: int,
        document: Document,
        *,
        follows: int,
        aside: bool = False,
    ) -> Entry:
        save = Save(
            job_id=job_id,
            number=saves.last_number(connection, job_id) + 1,
            follows=follows,
            aside=aside,
            document=_text(document),
            saved_at=self._clock(),
            program_version=__version__,
        )
        saves.add_save(connection, save)
        return _entry(save)

    @contextmanager
    def _reading(self) -> Iterator[Connection]:
        with _in_plain_words(), self._engine.connect() as connection:
            yield connection.execution_options(only_reads=True)

    @contextmanager
    def _writing(self) -> Iterator[Connection]:
        with _in_plain_words(), self._engine.begin() as connection:
            yield connection


_NO_SUCH_JOB = "There is no such job, or no such save of it, in this book."
_NOT_KEEPABLE = "The job holds a value that cannot be kept. Read it again, and mend what is told."
_KNOWN_TROUBLES = {
    "full": "The disk is full. Make room, then save again.",
    "disk i/o error": "The disk could not be written (it may be full). Make room, then try again.",
    "locked": "The book is in use by another program. Close that one, then try again.",
    "readonly": "The book may be read but not written. Check who owns the file.",
    "unable to open": "The book cannot be opened. Check its folder and who owns it.",
    "not a database": "The file is not a book of jobs. Name another file, or restore a copy.",
    "malformed": "The book is damaged. Restore a copy of it.",
}


@contextmanager
def _in_plain_words() -> Iterator[None]:
    """Tell a trouble of the database in one sentence; what was begun is undone."""
    try:
        yield
    except DBAPIError as trouble:
        raise BookTrouble(_sentence(str(trouble.orig))) from trouble
    except OSError as trouble:
        raise BookTrouble(_sentence(trouble.strerror or str(trouble))) from trouble


def _sentence(words: str) -> str:
    known = (told for key, told in _KNOWN_TROUBLES.items() if key in words.lower())
    told = next(known, f"The book could not be used ({words}).")
    return f"{told} Nothing in it was changed."


def _found(save: Save | None) -> Save:
    if save is None:
        raise NotInBook(_NO_SUCH_JOB)
    return save


def _entry(save: Save) -> Entry:
    return Entry(
        job_id=save.job_id,
        number=save.number,
        document=json.loads(save.document),
        saved_at=save.saved_at,
        program_version=save.program_version,
        follows=save.follows,
        aside=save.aside,
    )


def _text(document: Document) -> str:
    """Give the document as it is kept: its own order, every letter as typed."""
    try:
        text = json.dumps(document, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
        text.encode()
    except (ValueError, TypeError) as trouble:
        raise BookTrouble(_NOT_KEEPABLE) from trouble
    return text
