"""A migration that breaks off half-way."""

from __future__ import annotations

from typing import Any

import pytest
from sqlalchemy import Engine, event, inspect
from sqlmodel import Session

from service.store import migrate, repository
from service.store.tables import Suggestion
from tests.store.conftest import address, engine, postgres_address  # noqa: F401 - fixtures


@pytest.mark.parametrize("survives", [1, 3, 6])
def test_a_migration_cut_off_leaves_the_old_shape(engine: Engine, survives: int) -> None:  # noqa: F811
    """Invariant: after a break at any statement the database is wholly at the old shape, and the next start finishes."""
    migrate.downgrade(engine, "base")
    before = set(inspect(engine).get_table_names())
    shaping = []

    def cut(_: Any, __: Any, statement: str, *___: Any) -> None:
        if statement.lstrip().upper().startswith(("CREATE", "ALTER", "DROP", "INSERT")):
            shaping.append(statement)
            if len(shaping) > survives:
                raise ConnectionError("the machine went off")

    event.listen(engine, "before_cursor_execute", cut)
    with pytest.raises(ConnectionError):
        migrate.upgrade(engine)
    event.remove(engine, "before_cursor_execute", cut)
    assert len(shaping) == survives + 1
    assert migrate.current(engine) == ""
    assert set(inspect(engine).get_table_names()) == before
    migrate.upgrade(engine)
    assert migrate.current(engine) == migrate.head() and migrate.differences(engine) == []
    with Session(engine) as session:
        given = Suggestion(kind="unread", text="word", digest="")
        assert repository.suggest(session, given).id
