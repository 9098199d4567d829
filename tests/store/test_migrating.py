"""A book is brought up to date step by step, each whole or not at all, a copy first."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path
from shutil import copytree

import pytest
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from sqlalchemy import text

from foldwright.store.engine import open_engine
from foldwright.store.migrating import NEWEST, STEPS, TooNew, bring_up_to_date, version
from foldwright.store.tables import metadata

NEXT_STEP = """
import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"


def upgrade():
    op.add_column("jobs", sa.Column("colour", sa.String(10)))
    op.execute("UPDATE jobs SET colour = 'red'")
    op.execute("{last}")
"""


def steps_with_another(folder: Path, last: str) -> Path:
    copytree(STEPS, folder / "migrations")
    step = folder / "migrations" / "versions" / "step_0003_colour.py"
    step.write_text(NEXT_STEP.format(last=last), encoding="utf-8")
    return folder / "migrations"


def book_with_a_job(path: Path) -> Path:
    engine = open_engine(path)
    bring_up_to_date(engine)
    with engine.begin() as connection:
        connection.execute(text("INSERT INTO jobs VALUES (1, '2026-05-04', 0)"))
    engine.dispose()
    return path


def columns(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        return [row[1] for row in connection.execute("PRAGMA table_info(jobs)")]


def test_a_new_book_gets_the_newest_tables_and_no_copy(tmp_path: Path) -> None:
    engine = open_engine(tmp_path / "a.book")
    assert bring_up_to_date(engine) is None
    assert version(engine) == NEWEST
    assert [file.name for file in tmp_path.iterdir()] == ["a.book"]
    engine.dispose()


def test_the_steps_make_the_tables_of_the_program(tmp_path: Path) -> None:
    engine = open_engine(tmp_path / "a.book")
    bring_up_to_date(engine)
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, metadata) == []
    engine.dispose()


def test_an_older_book_is_copied_before_it_is_changed(tmp_path: Path) -> None:
    path = book_with_a_job(tmp_path / "a.book")
    engine = open_engine(path)
    steps = steps_with_another(tmp_path, last="SELECT 1")
    copy = bring_up_to_date(engine, steps, "0003")
    engine.dispose()
    assert copy is not None
    assert "colour" in columns(path)
    assert "colour" not in columns(copy)
    with closing(sqlite3.connect(copy)) as connection:
        assert connection.execute("SELECT count(*) FROM jobs").fetchone() == (1,)


def test_a_step_that_fails_leaves_the_book_as_it_was(tmp_path: Path) -> None:
    path = book_with_a_job(tmp_path / "a.book")
    engine = open_engine(path)
    steps = steps_with_another(tmp_path, last="INSERT INTO nowhere VALUES (1)")
    with pytest.raises(Exception, match="nowhere"):
        bring_up_to_date(engine, steps, "0003")
    assert version(engine) == NEWEST
    engine.dispose()
    assert "colour" not in columns(path)


def test_a_book_of_a_newer_program_is_left_alone(tmp_path: Path) -> None:
    path = book_with_a_job(tmp_path / "a.book")
    with closing(sqlite3.connect(path)) as connection:
        connection.execute("UPDATE alembic_version SET version_num = '0099'")
        connection.commit()
    engine = open_engine(path)
    with pytest.raises(TooNew):
        bring_up_to_date(engine)
    assert version(engine) == "0099"
    engine.dispose()


def test_a_book_from_before_the_bench_keeps_its_jobs(tmp_path: Path) -> None:
    copytree(STEPS, tmp_path / "migrations")
    (tmp_path / "migrations" / "versions" / "step_0002_bench.py").unlink()
    engine = open_engine(tmp_path / "a.book")
    bring_up_to_date(engine, tmp_path / "migrations", "0001")
    with engine.begin() as connection:
        connection.execute(text("INSERT INTO jobs VALUES (1, '2026-05-04', 0)"))
    assert bring_up_to_date(engine) is not None
    with engine.connect() as connection:
        assert connection.execute(text("SELECT count(*) FROM jobs")).scalar() == 1
        assert connection.execute(text("SELECT count(*) FROM bench_entries")).scalar() == 0
    engine.dispose()
