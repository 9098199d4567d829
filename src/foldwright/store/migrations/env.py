"""Run the steps on the connection that is handed over, one transaction for each step."""

from __future__ import annotations

from alembic import context

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    transactional_ddl=True,
    transaction_per_migration=True,
)
with context.begin_transaction():
    context.run_migrations()
