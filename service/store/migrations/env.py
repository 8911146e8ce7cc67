"""Runs the steps over the connection it is given."""

from __future__ import annotations

from alembic import context
from sqlmodel import SQLModel

from service.store import tables

assert tables.Pack.metadata is SQLModel.metadata
connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=SQLModel.metadata,
    render_as_batch=True,
    transactional_ddl=True,
)
with context.begin_transaction():
    context.run_migrations()
