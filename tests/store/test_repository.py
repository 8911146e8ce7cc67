"""People's data: nothing lost, nothing applied twice, on both databases."""

from __future__ import annotations

import threading

import pytest
from sqlalchemy import Engine
from sqlmodel import Session

from service.errors import BadInput, Conflict, NotAllowed, Unknown
from service.store import copies, migrate, repository
from service.store.tables import Suggestion


def _name(text: str = "दाल नई") -> Suggestion:
    return Suggestion(
        kind="name", lang="hi", script="Deva", row_kind="base", ref="vigna-mungo", text=text, digest=""
    )


# GS1's own worked example of the check digit: 629104150021 takes 3.
def test_gtin_by_the_published_example() -> None:
    assert repository.gtin14("6291041500213") == "06291041500213"
    with pytest.raises(BadInput, match="check digit"):
        repository.gtin14("6291041500214")


@pytest.mark.parametrize("address", ["people.db", "", "nosuch://host/name"])
def test_what_is_no_address_of_a_database_is_said(address: str) -> None:
    with pytest.raises(BadInput, match="no address of a database"):
        repository.engine(address)


def test_the_same_suggestion_counts_up(engine: Engine) -> None:
    with Session(engine) as session:
        first = repository.suggest(session, _name())
        again = repository.suggest(session, _name(" दाल  नई "))
        assert (again.id, again.times) == (first.id, 2)


def test_a_decision_is_made_once_and_kept(engine: Engine) -> None:
    with Session(engine) as session:
        number = repository.suggest(session, _name()).id
        assert number is not None
        before = repository.version(session)
        repository.decide(session, number, "accepted", "seen on two packs", "ana")
        with pytest.raises(Conflict, match="already accepted"):
            repository.decide(session, number, "rejected", "no", "ben")
        assert [one.reviewer for one in repository.history(session, number)] == ["ana"]
        assert repository.version(session) == before + 1
        assert [row.text for row in repository.accepted_rows(session)] == ["दाल नई"]
        with pytest.raises(Unknown):
            repository.decide(session, 99999, "accepted", "x", "ana")


def test_an_idempotency_key_answers_as_before(engine: Engine) -> None:
    done = []

    def work() -> dict[str, int]:
        done.append(1)
        return {"n": len(done)}

    with Session(engine) as session:
        assert repository.once(session, "k1", "try", "d", work) == {"n": 1}
        assert repository.once(session, "k1", "try", "d", work) == {"n": 1}
        with pytest.raises(Conflict):
            repository.once(session, "k1", "try", "other", work)
    assert len(done) == 1


def test_keys_are_hashed_scoped_and_revocable(engine: Engine) -> None:
    with Session(engine) as session:
        secret = repository.make_key(session, "ana", ["review"])
        assert repository.holder(session, secret, "review") == "ana"
        assert secret not in {one.digest for one in repository.keys(session)}
        with pytest.raises(NotAllowed):
            repository.holder(session, secret, "admin")
        with pytest.raises(Conflict):
            repository.make_key(session, "ana", ["review"])
        repository.revoke_key(session, "ana")
        with pytest.raises(NotAllowed):
            repository.holder(session, secret, "review")


def test_two_hundred_writers_lose_nothing(engine: Engine) -> None:
    failures: list[BaseException] = []

    def write(at: int) -> None:
        try:
            with Session(engine) as session:
                repository.suggest(session, _name(f"नाम {at // 2}"))
        except BaseException as error:
            failures.append(error)

    threads = [threading.Thread(target=write, args=(at,)) for at in range(200)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert not failures
    with Session(engine) as session:
        found = repository.suggestions(session, "open", 0, 500)
    assert len(found) == 100
    assert sum(one.times for one in found) == 200


def test_migrations_run_back_and_forward(engine: Engine) -> None:
    assert migrate.current(engine) == migrate.head()
    assert migrate.differences(engine) == []
    migrate.downgrade(engine, "base")
    assert migrate.current(engine) == ""
    migrate.upgrade(engine)
    assert migrate.differences(engine) == []


def test_backup_comes_back_whole(engine: Engine, tmp_path_factory: pytest.TempPathFactory) -> None:
    with Session(engine) as session:
        number = repository.suggest(session, _name()).id
        assert number is not None
        repository.decide(session, number, "accepted", "seen", "ana")
        repository.remember_pack(session, "6291041500213", "vigna-mungo", "a label")
    lines = list(copies.backup(engine))
    other = repository.engine(f"sqlite:///{tmp_path_factory.mktemp('copy') / 'copy.db'}")
    assert copies.restore(other, lines) == len(lines) - 1
    assert list(copies.backup(other)) == lines
    with pytest.raises(Conflict, match="already holds"):
        copies.restore(other, lines)
    other.dispose()


def test_a_broken_backup_changes_nothing(engine: Engine) -> None:
    lines = list(copies.backup(engine))
    with pytest.raises(BadInput):
        copies.restore(
            engine, [lines[0], '{"table": "pack", "row": {"gtin": "1", "pulse": "x"}}\n', "{broken"]
        )
    with Session(engine) as session:
        assert repository.counts(session) == {}
    assert list(copies.backup(engine)) == lines
