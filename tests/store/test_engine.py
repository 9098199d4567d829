"""The database is opened with the care a paper book would have."""

from __future__ import annotations

from pathlib import Path

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError, OperationalError

from foldwright.store.engine import open_engine
from foldwright.store.migrating import bring_up_to_date

ORPHAN = text(
    "INSERT INTO saves (job_id, number, follows, aside, document, saved_at, program_version)"
    " VALUES (7, 1, 0, 0, '{}', '2026-05-04', '0')"
)


@pytest.mark.parametrize(
    ("pragma", "value"),
    [("journal_mode", "delete"), ("synchronous", 3), ("foreign_keys", 1), ("busy_timeout", 5000)],
)
def test_each_connection_is_set_for_safety(tmp_path: Path, pragma: str, value: object) -> None:
    engine = open_engine(tmp_path / "a.book")
    with engine.connect() as connection:
        assert connection.execute(text(f"PRAGMA {pragma}")).scalar() == value
    engine.dispose()


def test_a_save_of_no_job_is_refused(tmp_path: Path) -> None:
    engine = open_engine(tmp_path / "a.book")
    bring_up_to_date(engine)
    with pytest.raises(IntegrityError), engine.begin() as connection:
        connection.execute(ORPHAN)
    engine.dispose()


def test_a_writer_holds_the_door_from_its_first_moment(tmp_path: Path) -> None:
    engine = open_engine(tmp_path / "a.book")
    bring_up_to_date(engine)
    with engine.begin():
        hasty = open_engine(tmp_path / "a.book")
        with hasty.connect() as second:
            second.connection.driver_connection.execute("PRAGMA busy_timeout = 1")  # type: ignore[union-attr]
            with pytest.raises(OperationalError, match="locked"):
                second.execute(text("SELECT 1"))
            with second.execution_options(only_reads=True) as reader:
                assert reader.execute(text("SELECT count(*) FROM jobs")).scalar() == 0
        hasty.dispose()
    engine.dispose()
