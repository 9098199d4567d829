"""Bring the tables of an older book up to date: a copy first, then one transaction a step."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Engine, inspect, text

if TYPE_CHECKING:
    from alembic.config import Config

STEPS = Path(__file__).parent / "migrations"
NEWEST = "0002"


class TooNew(Exception):  # noqa: N818 - it tells a person what to do
    """The book was written by a newer version of the program."""


def bring_up_to_date(engine: Engine, steps: Path = STEPS, newest: str = NEWEST) -> Path | None:
    """Bring a database to the newest tables.

    Takes: the engine; the folder of steps and the name of the last one.
    Gives: the copy made of an older SQLite file before it was changed, or None.
    Raises: TooNew where the database is ahead of this program.
    """
    known = version(engine)
    if known == newest:
        return None
    copy = _copy_of_older_book(engine, known)
    _take_steps(engine, steps)
    return copy


def version(engine: Engine) -> str | None:
    """Give the last step that a database has been through; None for an empty one."""
    with engine.connect().execution_options(only_reads=True) as connection:
        if not inspect(connection).has_table("alembic_version"):
            return None
        found = connection.execute(text("SELECT version_num FROM alembic_version")).scalar()
    return None if found is None else str(found)


def _copy_of_older_book(engine: Engine, known: str | None) -> Path | None:
    """Copy an SQLite file through its own backup, which sees whole transactions only."""
    if known is None or engine.dialect.name != "sqlite" or not engine.url.database:
        return None
    book = Path(engine.url.database)
    copy = book.with_name(f"{book.name}.before-step-after-{known}")
    with closing(sqlite3.connect(book)) as source, closing(sqlite3.connect(copy)) as target:
        source.backup(target)
    return copy


def _take_steps(engine: Engine, steps: Path) -> None:
    from alembic import command  # noqa: PLC0415 - slow to load, and seldom needed
    from alembic.util import CommandError  # noqa: PLC0415 - as above

    config = _config(steps)
    with engine.connect() as connection:
        config.attributes["connection"] = connection
        try:
            command.upgrade(config, "head")
        except CommandError as trouble:
            raise TooNew(str(trouble)) from trouble


def _config(steps: Path) -> Config:
    from alembic.config import Config  # noqa: PLC0415 - slow to load, and seldom needed

    config = Config()
    config.set_main_option("script_location", str(steps))
    return config
