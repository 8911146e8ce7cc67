"""From a suggestion to a diff: two workers over one database, as a reviewer would see it."""

from __future__ import annotations

import time
import weakref
from collections.abc import Iterator
from pathlib import Path

import pytest
from sqlmodel import Session

from service.glossary.build import build
from service.grain import Traits, identify
from service.naming import compose
from service.store import files, repository
from service.web import Settings, create_app
from service.web.dependencies import Shelf
from service.web.watch import Watch, refresh
from tests.conftest import Api
from tests.tiny import tiny_files

NEW = {
    "kind": "name",
    "text": "उरद",
    "lang": "hi",
    "script": "Deva",
    "row_kind": "base",
    "ref": "vigna-mungo",
}


@pytest.fixture
def two(tmp_path: Path) -> Iterator[tuple[Api, Api, str]]:
    """Two applications over one SQLite file, and a reviewer's key."""
    settings = Settings(database=f"sqlite:///{tmp_path / 'people.db'}", rate=0)
    held = tiny_files()
    apps = [create_app(settings, build(held), held) for _ in range(2)]
    with Session(apps[0].state.engine) as session:
        key = repository.make_key(session, "ana", ["review"])
    yield Api(apps[0]), Api(apps[1]), key
    for app in apps:
        app.state.engine.dispose()


def test_suggest_accept_and_see_it_on_both_hosts(two: tuple[Api, Api, str]) -> None:
    one, other, key = two
    bearer = {"Authorization": f"Bearer {key}"}
    asked = {"text": "उरद"}
    before = [api.post("/v1/readings", json=asked).json() for api in (one, one, other)]
    assert before[0] == before[1] == before[2]
    sent = one.post("/v1/suggestions", json=NEW)
    assert sent.status_code == 201
    listed = other.get("/v1/suggestions", headers=bearer).json()
    assert [each["text"] for each in listed["suggestions"]] == ["उरद"]
    number = sent.json()["id"]
    done = other.post(
        f"/v1/suggestions/{number}/decisions", json={"verdict": "accepted", "reason": "seen"}, headers=bearer
    )
    assert done.json()["status"] == "accepted"
    for api in (one, other):
        refresh(api.app)
        names = api.get(
            "/v1/names", params={"species": "Vigna mungo", "form": "whole", "language": "hi"}
        ).json()
        assert any("उरद" in name["text"] for name in names["names"]["hi"])
        after = api.post("/v1/readings", json=asked).json()
        assert after["edition"] != before[0]["edition"] and after["answers"] != before[0]["answers"]
        assert after["answers"][0][0]["readings"][0]["species"] == "Vigna mungo"
    text = one.get("/v1/suggestions.diff", headers=bearer).text
    added = [line for line in text.splitlines() if line.startswith("+") and not line.startswith("+++")]
    assert added == ["+hi,Deva,base,vigna-mungo,उरद,also,,draft,memory,"]


def test_a_watching_host_learns_within_two_seconds(two: tuple[Api, Api, str]) -> None:
    one, other, key = two
    watch = Watch(other.app)
    watch.start()
    try:
        number = one.post("/v1/suggestions", json=NEW).json()["id"]
        answer = {"verdict": "accepted", "reason": "seen"}
        one.post(
            f"/v1/suggestions/{number}/decisions", json=answer, headers={"Authorization": f"Bearer {key}"}
        )
        began = time.monotonic()
        while other.app.state.shelf.version == 0 and time.monotonic() - began < 2.0:
            time.sleep(0.02)
        assert other.app.state.shelf.version == 1
    finally:
        watch.stop()


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"ref": "vigna-mango"}, "no such species"),
        ({"script": "Latn"}, "no letter of script"),
        ({"lang": "xx"}, "no language"),
        ({"kind": "rumour"}, "use one of"),
    ],
)
def test_a_suggestion_is_held_to_the_rules_of_check(
    two: tuple[Api, Api, str], change: dict[str, str], why: str
) -> None:
    answer = two[0].post("/v1/suggestions", json={**NEW, **change})
    assert answer.status_code == 422
    assert why in answer.json()["detail"]


def test_reviewing_takes_a_key(two: tuple[Api, Api, str]) -> None:
    assert two[0].get("/v1/suggestions").status_code == 403
    assert two[0].get("/v1/suggestions", headers={"Authorization": "Bearer wrong"}).status_code == 403


def test_an_idempotency_key_applies_once(two: tuple[Api, Api, str]) -> None:
    words = {"json": NEW, "headers": {"Idempotency-Key": "abc"}}
    first, again = two[0].post("/v1/suggestions", **words), two[1].post("/v1/suggestions", **words)
    assert first.json() == again.json()
    assert again.json()["times"] == 1


def test_a_corrupt_file_is_named_with_its_line(tmp_path: Path) -> None:
    held = tiny_files()
    held["pulses/vigna-mungo.toml"] = b"[species]\nid = \n"
    for name, data in held.items():
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_bytes(data)
    from service.errors import GlossaryFault

    with pytest.raises(GlossaryFault, match=r"pulses/vigna-mungo.toml:2:"):
        files.load(str(tmp_path))


def test_a_glossary_that_was_replaced_is_let_go() -> None:
    """Every accepted suggestion lays a new glossary on: what was worked out from the old one goes with it."""
    shelf = Shelf.of(build(tiny_files()))
    shelf.warm()
    shelf.reader.read("urd dhal")
    old = [weakref.ref(shelf.glossary), weakref.ref(shelf.reader)]
    compose(shelf.glossary, shelf.glossary.sold[0].pulse, "hi")
    identify(shelf.glossary, Traits(length_mm=5.0))
    shelf = Shelf.of(build(tiny_files()))
    shelf.warm()
    assert [one() for one in old] == [None, None]
