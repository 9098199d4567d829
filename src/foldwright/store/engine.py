"""The door to the database, with the care that a paper book would have.

On SQLite: a rollback journal with synchronous EXTRA, so that a save survives a power
cut; foreign keys on; and every transaction begun in so many words, because the driver's
own habit of beginning late leaves changes of tables outside of it.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event

WAIT_FOR_ANOTHER_WRITER_MS = 5000


def open_engine(address: str | Path) -> Engine:
    """Open a database: a path to an SQLite file, or the address of a PostgreSQL server."""
    if isinstance(address, Path):
        return _open_sqlite(address)
    return create_engine(address, isolation_level="SERIALIZABLE")


def _open_sqlite(path: Path) -> Engine:
    path.parent.mkdir(parents=True, exist_ok=True)
    engine = create_engine(f"sqlite:///{path}")
    event.listen(engine, "connect", _prepare)
    event.listen(engine, "begin", _begin)
    return engine


def _prepare(connection: Any, _record: object) -> None:
    for setting in (
        "journal_mode = DELETE",
        "synchronous = EXTRA",
        "foreign_keys = ON",
        f"busy_timeout = {WAIT_FOR_ANOTHER_WRITER_MS}",
    ):
        connection.execute(f"PRAGMA {setting}")


def _begin(connection: Connection) -> None:
    """Take the writing lock at once, so that no change is built on what another then moves."""
    only_reads = connection.get_execution_options().get("only_reads", False)
    connection.exec_driver_sql("BEGIN" if only_reads else "BEGIN IMMEDIATE")
