"""Keep and find bench sessions and their entries; nothing noted is ever changed or removed.

A transaction is begun and ended by the caller.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass, fields
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, func, insert, select

from foldwright.store.tables import bench_entries, bench_sessions


@dataclass(frozen=True, kw_only=True, slots=True)
class SessionRow:
    """One session at the bench: on a shade of a job, or on a spring by itself."""

    id: int
    job_id: int | None
    kind: str
    subject: str
    version: int
    begun_at: datetime


@dataclass(frozen=True, kw_only=True, slots=True)
class EntryRow:
    """One thing noted, as typed."""

    session_id: int
    number: int
    key: str
    step: str
    typed: str
    undoes: str | None
    noted_by: str
    noted_at: datetime
    kept_at: datetime


def add_session(  # noqa: PLR0913 - one for each column
    connection: Connection,
    *,
    job_id: int | None,
    kind: str,
    subject: str,
    version: int,
    begun_at: datetime,
) -> SessionRow:
    """Begin a session."""
    values = {
        "job_id": job_id,
        "kind": kind,
        "subject": subject,
        "version": version,
        "begun_at": begun_at,
    }
    begun = insert(bench_sessions).values(values).returning(bench_sessions)
    return _session(connection.execute(begun).one())


def find_session(connection: Connection, session_id: int) -> SessionRow | None:
    """Give one session by its number."""
    row = connection.execute(_sessions().where(bench_sessions.c.id == session_id)).first()
    return None if row is None else _session(row)


def sessions_of(connection: Connection, job_id: int | None) -> list[SessionRow]:
    """Give the sessions on the shades of one job, or on springs by themselves, newest first."""
    of_job = bench_sessions.c.job_id == job_id if job_id else bench_sessions.c.job_id.is_(None)
    return [_session(row) for row in connection.execute(_sessions().where(of_job))]


def all_sessions(connection: Connection) -> list[SessionRow]:
    """Give every session of the shop, the newest first."""
    return [_session(row) for row in connection.execute(_sessions())]


def add_entry(connection: Connection, entry: EntryRow) -> None:
    """Keep one entry."""
    connection.execute(insert(bench_entries).values(**asdict(entry)))


def find_entry(connection: Connection, key: str) -> EntryRow | None:
    """Give the entry of that key."""
    wanted = select(bench_entries).where(bench_entries.c.key == key)
    row = connection.execute(wanted).first()
    return None if row is None else _entry(row)


def entries_of(connection: Connection, session_id: int) -> list[EntryRow]:
    """Give every entry of a session in the order they came, those taken back among them."""
    wanted = (
        select(bench_entries)
        .where(bench_entries.c.session_id == session_id)
        .order_by(bench_entries.c.number)
    )
    return [_entry(row) for row in connection.execute(wanted)]


def last_entry_number(connection: Connection, session_id: int) -> int:
    """Give the number of the last entry; 0 where there is none."""
    last = select(func.max(bench_entries.c.number)).where(bench_entries.c.session_id == session_id)
    return connection.execute(last).scalar() or 0


def last_entry_id(connection: Connection) -> int:
    """Give a number that grows with every entry noted anywhere; 0 before the first."""
    return connection.execute(select(func.max(bench_entries.c.id))).scalar() or 0


def _sessions() -> Select[Any]:
    return select(bench_sessions).order_by(bench_sessions.c.id.desc())


def _session(row: Row[Any]) -> SessionRow:
    return SessionRow(**dict(_kept(row, SessionRow)))


def _entry(row: Row[Any]) -> EntryRow:
    return EntryRow(**dict(_kept(row, EntryRow)))


def _kept(row: Row[Any], shape: type[Any]) -> Iterator[tuple[str, Any]]:
    """Give the columns of a row; SQLite keeps no time zone, and every moment is written in UTC."""
    for slot in fields(shape):
        value = getattr(row, slot.name)
        naive = isinstance(value, datetime) and value.tzinfo is None
        yield slot.name, value.replace(tzinfo=UTC) if naive else value
