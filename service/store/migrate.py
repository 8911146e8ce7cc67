"""Brings a database to the shape the code wants, forward or back, one process at a time."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Engine, text
from sqlmodel import SQLModel

FOLDER = Path(__file__).resolve().parent / "migrations"
# Any number; every process that migrates takes the same advisory lock on PostgreSQL.
LOCK = 713_713


def config(connection: Connection | None = None) -> Config:
    """Alembic's configuration, without a file."""
    made = Config()
    made.set_main_option("script_location", str(FOLDER))
    made.attributes["connection"] = connection
    return made


def head() -> str:
    """The newest revision."""
    return str(ScriptDirectory.from_config(config()).get_current_head())


def upgrade(engine: Engine, to: str = "head") -> None:
    """Forward to a revision; a step that fails leaves the database as it was."""
    _run(engine, lambda connection: command.upgrade(config(connection), to))


def downgrade(engine: Engine, to: str) -> None:
    """Back to a revision, or to `base`."""
    _run(engine, lambda connection: command.downgrade(config(connection), to))


def current(engine: Engine) -> str:
    """The revision the database is at; empty where it has none."""
    with engine.connect() as connection:
        return MigrationContext.configure(connection).get_current_revision() or ""


def differences(engine: Engine) -> list[Any]:
    """What still differs between the database and the tables of the code."""
    with engine.connect() as connection:
        return list(compare_metadata(MigrationContext.configure(connection), SQLModel.metadata))


def _run(engine: Engine, work: Any) -> None:
    with engine.begin() as connection:
        if connection.dialect.name == "postgresql":
            connection.execute(text("SELECT pg_advisory_xact_lock(:lock)"), {"lock": LOCK})
        else:
            # The driver would otherwise commit each statement that changes the shape by itself.
            connection.exec_driver_sql("BEGIN IMMEDIATE")
        work(connection)
