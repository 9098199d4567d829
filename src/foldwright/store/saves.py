"""Keep and find jobs and their saves; a transaction is begun and ended by the caller."""

from __future__ import annotations

from dataclasses import asdict, dataclass, fields
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection, Row, Select, func, insert, select, update

from foldwright.store.tables import jobs, saves


@dataclass(frozen=True, kw_only=True, slots=True)
class Save:
    """One save of a job, whole."""

    job_id: int
    number: int
    follows: int
    aside: bool
    document: str
    saved_at: datetime
    program_version: str


def add_job(connection: Connection, begun_at: datetime) -> int:
    """Begin a job without a save; give its number."""
    begun = insert(jobs).values(begun_at=begun_at, put_away=False).returning(jobs.c.id)
    return int(connection.execute(begun).scalar_one())


def has_any_job(connection: Connection) -> bool:
    """Tell whether a job was ever begun here."""
    return connection.execute(select(jobs.c.id).limit(1)).first() is not None


def put_away(connection: Connection, job_id: int, *, away: bool) -> None:
    """Take a job off the list, or put it back; nothing is lost."""
    connection.execute(update(jobs).where(jobs.c.id == job_id).values(put_away=away))


def add_save(connection: Connection, save: Save) -> None:
    """Keep one save."""
    connection.execute(insert(saves).values(**asdict(save)))


def last_number(connection: Connection, job_id: int) -> int:
    """Give the number of the last save kept, aside or not; 0 where there is none."""
    found = select(func.max(saves.c.number)).where(saves.c.job_id == job_id)
    return connection.execute(found).scalar() or 0


def current_save(connection: Connection, job_id: int) -> Save | None:
    """Give the save that stands."""
    return _first(connection, _standing().where(saves.c.job_id == job_id))


def find_save(connection: Connection, job_id: int, number: int) -> Save | None:
    """Give one save by its number."""
    wanted = select(saves).where(saves.c.job_id == job_id, saves.c.number == number)
    return _first(connection, wanted)


def history(connection: Connection, job_id: int) -> list[Save]:
    """Give every save of a job, the newest first."""
    found = select(saves).where(saves.c.job_id == job_id).order_by(saves.c.number.desc())
    return [_save(row) for row in connection.execute(found)]


def current_saves(connection: Connection, *, away: bool) -> list[Save]:
    """Give the standing save of each job on the list, the latest saved first."""
    newest = (
        select(saves.c.job_id, func.max(saves.c.number).label("number"))
        .join(jobs, jobs.c.id == saves.c.job_id)
        .where(saves.c.aside.is_(False), jobs.c.put_away.is_(away))
        .group_by(saves.c.job_id)
        .subquery()
    )
    found = (
        select(saves)
        .join(newest, (saves.c.job_id == newest.c.job_id) & (saves.c.number == newest.c.number))
        .order_by(saves.c.saved_at.desc(), saves.c.job_id.desc())
    )
    return [_save(row) for row in connection.execute(found)]


def _standing() -> Select[Any]:
    return select(saves).where(saves.c.aside.is_(False)).order_by(saves.c.number.desc()).limit(1)


def _first(connection: Connection, wanted: Select[Any]) -> Save | None:
    row = connection.execute(wanted).first()
    return None if row is None else _save(row)


def _save(row: Row[Any]) -> Save:
    kept = {slot.name: getattr(row, slot.name) for slot in fields(Save)}
    return Save(**{**kept, "saved_at": _with_zone(row.saved_at)})


def _with_zone(moment: datetime) -> datetime:
    """SQLite keeps no time zone; every moment is written in UTC."""
    return moment.replace(tzinfo=UTC) if moment.tzinfo is None else moment
