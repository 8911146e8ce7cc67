"""People's data copied out to JSON lines and back in, the same on every database."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from datetime import UTC, datetime
from typing import Any

from sqlalchemy import Connection, DateTime, Engine, func, insert, select, text
from sqlalchemy.exc import IntegrityError, StatementError
from sqlmodel import SQLModel

from ..errors import BadInput, Conflict
from . import migrate

HEAD = "pulse-glossary backup"


def backup(engine: Engine) -> Iterator[str]:
    """One line with the shape's revision, then one line for each row; all from one moment."""
    with engine.connect() as connection:
        if connection.dialect.name == "postgresql":
            connection.exec_driver_sql("SET TRANSACTION ISOLATION LEVEL REPEATABLE READ")
        else:
            connection.exec_driver_sql("BEGIN")
        yield json.dumps({"what": HEAD, "revision": migrate.current(engine)}) + "\n"
        for table in SQLModel.metadata.sorted_tables:
            order = list(table.primary_key.columns)
            for row in connection.execute(select(table).order_by(*order)).mappings():
                values = {name: _plain(value) for name, value in row.items()}
                yield json.dumps({"table": table.name, "row": values}, ensure_ascii=False) + "\n"


def restore(engine: Engine, lines: Iterable[str]) -> int:
    """Rows of a backup into an empty database, all or nothing; how many. Raises BadInput or Conflict."""
    tables = {table.name: table for table in SQLModel.metadata.sorted_tables}
    kept = iter(lines)
    head = _line(next(kept, ""), 1)
    if head.get("what") != HEAD or head.get("revision") != migrate.head():
        raise BadInput("backup", head, f"must open with a line of {HEAD!r} at revision {migrate.head()}")
    count = 0
    with engine.begin() as connection:
        _must_be_empty(connection)
        for number, line in enumerate(kept, 2):
            one = _line(line, number)
            table = tables.get(one.get("table", ""))
            if table is None or not isinstance(one.get("row"), dict):
                raise BadInput(f"line {number}", line[:60], "names no table of this backup")
            values = dict(one["row"])
            for column in table.columns:
                if isinstance(column.type, DateTime) and isinstance(values.get(column.name), str):
                    values[column.name] = datetime.fromisoformat(values[column.name])
            try:
                connection.execute(insert(table).values(**values))
            except (IntegrityError, StatementError) as error:
                raise BadInput(f"line {number}", line[:60], f"does not fit {table.name}") from error
            count += 1
        _advance(connection)
    return count


def _plain(value: Any) -> Any:
    """Moments in UTC as ISO 8601; SQLite gives them without a zone, though they were stored in UTC."""
    if not isinstance(value, datetime):
        return value
    return (value if value.tzinfo else value.replace(tzinfo=UTC)).astimezone(UTC).isoformat()


def _line(line: str, number: int) -> dict[str, Any]:
    try:
        found = json.loads(line)
    except ValueError:
        found = None
    if not isinstance(found, dict):
        raise BadInput(f"line {number}", line[:60], "is no line of a backup")
    return found


def _must_be_empty(connection: Connection) -> None:
    for table in reversed(SQLModel.metadata.sorted_tables):
        if table.name == "version":
            connection.execute(table.delete())
        elif connection.execute(select(func.count()).select_from(table)).scalar():
            raise Conflict(f"the database already holds rows of {table.name}; restore into an empty one")


def _advance(connection: Connection) -> None:
    """PostgreSQL's counters go on after the highest number restored."""
    if connection.dialect.name != "postgresql":
        return
    for table in SQLModel.metadata.sorted_tables:
        if "id" in table.columns and table.name != "version":
            sequence = f"pg_get_serial_sequence('\"{table.name}\"', 'id')"
            connection.execute(
                text(
                    f'SELECT setval({sequence}, COALESCE((SELECT max(id) FROM "{table.name}"), 0) + 1, false)'
                )
            )
