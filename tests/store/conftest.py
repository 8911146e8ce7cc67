"""Each test of people's data runs on SQLite and on PostgreSQL, each time on a database of its own."""

from __future__ import annotations

import importlib.util
import os
import uuid
from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlalchemy import Engine, create_engine, text
from sqlalchemy.exc import OperationalError

from service.store import repository
from tests.needs import need

POSTGRES = os.environ.get("PULSE_TEST_POSTGRES", "postgresql+psycopg://postgres@127.0.0.1:5432/postgres")


def _server() -> Engine:
    need("postgres", importlib.util.find_spec("psycopg") is not None, "pip install '.[postgres]'")
    engine = create_engine(POSTGRES, isolation_level="AUTOCOMMIT", connect_args={"connect_timeout": 3})
    try:
        with engine.connect():
            return engine
    except OperationalError:
        need("postgres", False, "nothing answers on 127.0.0.1:5432; set PULSE_TEST_POSTGRES")
        raise


@pytest.fixture
def postgres_address() -> Iterator[str]:
    """An empty PostgreSQL database."""
    server = _server()
    name = "pulse_" + uuid.uuid4().hex[:12]
    with server.connect() as connection:
        connection.execute(text(f"CREATE DATABASE {name}"))
    yield POSTGRES.rsplit("/", 1)[0] + "/" + name
    with server.connect() as connection:
        connection.execute(text(f"DROP DATABASE {name} WITH (FORCE)"))
    server.dispose()


@pytest.fixture(params=["sqlite", "postgres"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """The address of an empty database of either kind."""
    if request.param == "sqlite":
        return f"sqlite:///{tmp_path / 'people.db'}"
    found: str = request.getfixturevalue("postgres_address")
    return found


@pytest.fixture
def engine(address: str) -> Iterator[Engine]:
    """An engine over it, at today's shape."""
    made = repository.engine(address)
    yield made
    made.dispose()
