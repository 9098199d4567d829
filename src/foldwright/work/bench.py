"""The record of the bench: what was noted on each shade, by whom and when.

Whatever is noted is appended as it was typed. Taking back appends too: the entry stays,
marked. An entry carries a key made where it was noted, so that a tablet that was out of
reach may send it as often as it likes and it is kept once.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from enum import Enum
from functools import cached_property

from sqlalchemy import Connection

from foldwright.store import benches
from foldwright.store.benches import EntryRow, SessionRow

UNDO = "undo"
LONGEST_NAME = 80
LONGEST_TEXT = 200  # letters in one field; no reading is longer
MOST_TYPED = 40  # fields in one entry


class Kind(Enum):
    """What a session at the bench is about."""

    BENCH = "bench"  # a new shade, before it leaves
    VISIT = "visit"  # a shade that hangs, years later
    SPRING = "spring"  # a spring by itself, with a bar, a weight and a tape


@dataclass(frozen=True, kw_only=True, slots=True)
class Note:
    """One thing to note: a step with what was typed, or the taking back of an earlier one."""

    key: str
    step: str
    typed: Mapping[str, str] = field(default_factory=dict)
    by: str = ""
    noted_at: datetime | None = None  # by the tablet's clock; None: as it arrives
    undoes: str | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Entry:
    """One thing noted, as it stands in the record."""

    number: int
    key: str
    step: str
    typed: Mapping[str, str]
    by: str
    noted_at: datetime
    undoes: str | None


@dataclass(frozen=True, kw_only=True)
class Record:
    """One session at the bench with all its entries."""

    id: int
    job_id: int | None
    kind: Kind
    subject: str
    version: int
    begun_at: datetime
    entries: tuple[Entry, ...] = ()

    @cached_property
    def undone(self) -> frozenset[str]:
        """Give the keys of the entries that were taken back."""
        return frozenset(entry.undoes for entry in self.entries if entry.undoes)

    @cached_property
    def standing(self) -> tuple[Entry, ...]:
        """Give the entries that stand, in the order they came."""
        return tuple(
            entry for entry in self.entries if entry.step != UNDO and entry.key not in self.undone
        )

    @property
    def last(self) -> Entry | None:
        """Give the last entry that stands: the one that could be taken back."""
        return self.standing[-1] if self.standing else None

    def typed_at(self, step: str) -> dict[str, str]:
        """Give what stands in the fields of a step: the latest of each."""
        merged: dict[str, str] = {}
        for entry in self.standing:
            if entry.step == step:
                merged |= {name: text for name, text in entry.typed.items() if text}
        return merged


class BenchRecords:
    """The bench records of a book."""

    def __init__(
        self,
        reading: Callable[[], AbstractContextManager[Connection]],
        writing: Callable[[], AbstractContextManager[Connection]],
        clock: Callable[[], datetime],
    ) -> None:
        self._reading, self._writing, self._clock = reading, writing, clock

    def of_shade(self, job_id: int, *tags: str) -> list[Record]:
        """Give the sessions of a shade under any tag that it has had, the newest first."""
        with self._reading() as connection:
            rows = benches.sessions_of(connection, job_id)
            return [_record(connection, row) for row in rows if row.subject in tags]

    def subjects(self, job_id: int) -> set[str]:
        """Give the tags under which anything was noted in a job."""
        with self._reading() as connection:
            return {row.subject for row in benches.sessions_of(connection, job_id)}

    def of_shop(self) -> list[Record]:
        """Give every session of the shop, the newest first."""
        with self._reading() as connection:
            return [_record(connection, row) for row in benches.all_sessions(connection)]

    def state(self) -> int:
        """Give a number that grows with every entry noted anywhere."""
        with self._reading() as connection:
            return benches.last_entry_id(connection)

    def begin(self, job_id: int | None, subject: str, kind: Kind, version: int = 0) -> Record:
        """Begin a session."""
        with self._writing() as connection:
            return _record(connection, self._begin(connection, job_id, subject, kind, version))

    def note(
        self, job_id: int | None, subject: str, note: Note, *, session: int | None, version: int = 0
    ) -> Record:
        """Append a note to a session of a shade, or to a new one where it has none.

        Takes: the job and the shade's tag; the note; the number of the session of that job,
        where it is known, whatever the shade is called by now; the save that stands.
        Gives: the session with the note in it, once, however often it is sent.
        """
        with self._writing() as connection:
            if known := benches.find_entry(connection, note.key):
                return _record(connection, _found(connection, known.session_id))
            row = self._session(connection, job_id, subject, session, version)
            benches.add_entry(connection, self._row(connection, row, note))
            return _record(connection, row)

    def _session(
        self,
        connection: Connection,
        job_id: int | None,
        subject: str,
        session: int | None,
        version: int,
    ) -> SessionRow:
        """Find the session that was meant, or the newest of the shade."""
        rows = benches.sessions_of(connection, job_id)
        own = [row for row in rows if row.subject == subject]
        meant = [row for row in rows if row.id == session] or own[:1]
        kind = Kind.SPRING if job_id is None else Kind.BENCH
        return meant[0] if meant else self._begin(connection, job_id, subject, kind, version)

    def _begin(
        self, connection: Connection, job_id: int | None, subject: str, kind: Kind, version: int
    ) -> SessionRow:
        return benches.add_session(
            connection,
            job_id=job_id,
            kind=kind.value,
            subject=subject,
            version=version,
            begun_at=self._now(),
        )

    def _row(self, connection: Connection, session: SessionRow, note: Note) -> EntryRow:
        now = self._now()
        return EntryRow(
            session_id=session.id,
            number=benches.last_entry_number(connection, session.id) + 1,
            key=note.key,
            step=note.step,
            typed=json.dumps(dict(note.typed), ensure_ascii=False),
            undoes=note.undoes,
            noted_by=note.by[:LONGEST_NAME],
            noted_at=note.noted_at.astimezone(UTC) if note.noted_at else now,
            kept_at=now,
        )

    def _now(self) -> datetime:
        return self._clock().astimezone(UTC)


def _found(connection: Connection, session_id: int) -> SessionRow:
    row = benches.find_session(connection, session_id)
    assert row is not None  # noqa: S101 - an entry always has its session
    return row


def _record(connection: Connection, row: SessionRow) -> Record:
    return Record(
        id=row.id,
        job_id=row.job_id,
        kind=Kind(row.kind),
        subject=row.subject,
        version=row.version,
        begun_at=row.begun_at,
        entries=tuple(_entry(entry) for entry in benches.entries_of(connection, row.id)),
    )


def _entry(row: EntryRow) -> Entry:
    return Entry(
        number=row.number,
        key=row.key,
        step=row.step,
        typed=json.loads(row.typed),
        by=row.noted_by,
        noted_at=row.noted_at,
        undoes=row.undoes,
    )
