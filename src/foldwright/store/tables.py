"""The tables of the book of jobs. What is kept is what was typed; results are computed again."""

from __future__ import annotations

from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    DateTime,
    ForeignKey,
    Integer,
    MetaData,
    String,
    Table,
    Text,
    UniqueConstraint,
)

metadata = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_name)s",
        "ck": "ck_%(table_name)s_%(constraint_name)s",
        "ix": "ix_%(table_name)s_%(column_0_name)s",
    }
)

jobs = Table(
    "jobs",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("begun_at", DateTime(timezone=True), nullable=False),
    Column("put_away", Boolean, nullable=False, default=False),
)

saves = Table(
    "saves",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("job_id", Integer, ForeignKey("jobs.id"), nullable=False, index=True),
    Column("number", Integer, nullable=False),
    Column("follows", Integer, nullable=False),  # the save it was made from; 0 for the first
    Column("aside", Boolean, nullable=False),  # kept, but another save came first
    Column("document", Text, nullable=False),
    Column("saved_at", DateTime(timezone=True), nullable=False),
    Column("program_version", String(40), nullable=False),
    UniqueConstraint("job_id", "number"),
    CheckConstraint("number > 0", name="number_counts_from_one"),
    CheckConstraint("follows < number", name="follows_an_earlier_save"),
)

bench_sessions = Table(
    "bench_sessions",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("job_id", Integer, ForeignKey("jobs.id"), index=True),  # none for a spring on its own
    Column("kind", String(20), nullable=False),  # of a test: a shade's, a visit's, a spring's
    Column("subject", Text, nullable=False),  # the shade's tag, or the spring's name
    Column("version", Integer, nullable=False),  # the save that stood when it began; 0 without one
    Column("begun_at", DateTime(timezone=True), nullable=False),
)

bench_entries = Table(
    "bench_entries",
    metadata,
    Column("id", Integer, primary_key=True),
    Column("session_id", Integer, ForeignKey("bench_sessions.id"), nullable=False, index=True),
    Column("number", Integer, nullable=False),
    Column("key", String(64), nullable=False),  # made where it was noted: kept once, sent often
    Column("step", String(40), nullable=False),
    Column("typed", Text, nullable=False),
    Column("undoes", String(64)),  # the key of the entry that it takes back; that one stays
    Column("noted_by", Text, nullable=False),
    Column("noted_at", DateTime(timezone=True), nullable=False),  # by the tablet's clock
    Column("kept_at", DateTime(timezone=True), nullable=False),
    UniqueConstraint("session_id", "number"),
    UniqueConstraint("key"),
    CheckConstraint("number > 0", name="number_counts_from_one"),
)
