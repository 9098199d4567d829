"""Jobs, and every save of them."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables of jobs and saves."""
    _make_jobs()
    _make_saves()


def _make_jobs() -> None:
    op.create_table(
        "jobs",
        sa.Column("id", sa.Integer),
        sa.Column("begun_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("put_away", sa.Boolean, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_jobs"),
    )


def _make_saves() -> None:
    op.create_table(
        "saves",
        sa.Column("id", sa.Integer),
        sa.Column("job_id", sa.Integer, nullable=False),
        sa.Column("number", sa.Integer, nullable=False),
        sa.Column("follows", sa.Integer, nullable=False),
        sa.Column("aside", sa.Boolean, nullable=False),
        sa.Column("document", sa.Text, nullable=False),
        sa.Column("saved_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("program_version", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_saves"),
        sa.ForeignKeyConstraint(["job_id"], ["jobs.id"], name="fk_saves_job_id"),
        sa.UniqueConstraint("job_id", "number", name="uq_saves_job_id"),
        sa.CheckConstraint("number > 0", name="ck_saves_number_counts_from_one"),
        sa.CheckConstraint("follows < number", name="ck_saves_follows_an_earlier_save"),
    )
    op.create_index("ix_saves_job_id", "saves", ["job_id"])
