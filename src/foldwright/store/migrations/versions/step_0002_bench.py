"""Sessions at the bench, and every entry noted in them."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make the tables of bench sessions and their entries."""
    _make_sessions()
    _make_entries()


def _make_sessions() -> None:
    op.create_table(
        "bench_sessions",
        sa.Column("id", sa.Integer),
        sa.Column("job_id", sa.Integer),
        sa.Column("kind", sa.String(20), nullable=False),
        sa.Column("subject", sa.Text, nullable=False),
        sa.Column("version", sa.Integer, nullable=False),
        sa.Column("begun_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_bench_sessions"),
        sa.ForeignKeyConstraint(["job_id"], ["jobs.id"], name="fk_bench_sessions_job_id"),
    )
    op.create_index("ix_bench_sessions_job_id", "bench_sessions", ["job_id"])


def _make_entries() -> None:
    op.create_table(
        "bench_entries",
        sa.Column("id", sa.Integer),
        sa.Column("session_id", sa.Integer, nullable=False),
        sa.Column("number", sa.Integer, nullable=False),
        sa.Column("key", sa.String(64), nullable=False),
        sa.Column("step", sa.String(40), nullable=False),
        sa.Column("typed", sa.Text, nullable=False),
        sa.Column("undoes", sa.String(64)),
        sa.Column("noted_by", sa.Text, nullable=False),
        sa.Column("noted_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kept_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_bench_entries"),
        sa.ForeignKeyConstraint(
            ["session_id"], ["bench_sessions.id"], name="fk_bench_entries_session_id"
        ),
        sa.UniqueConstraint("session_id", "number", name="uq_bench_entries_session_id"),
        sa.UniqueConstraint("key", name="uq_bench_entries_key"),
        sa.CheckConstraint("number > 0", name="ck_bench_entries_number_counts_from_one"),
    )
    op.create_index("ix_bench_entries_session_id", "bench_entries", ["session_id"])
