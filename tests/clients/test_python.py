"""The Python client: every operation of the service can be called, both ways, and refusals are exceptions."""

from __future__ import annotations

import io
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import anyio
import httpx
import pytest
from fastapi.testclient import TestClient
from sqlmodel import Session

from service.glossary.model import Glossary
from service.store import files, repository
from service.web import Settings, create_app

sys.path.insert(0, str(Path(__file__).resolve().parents[2] / "clients" / "python"))
from pulse_glossary_client import AsyncClient, BadInput, Client, NotAllowed, Problem, Unknown

# Answers for machines beside the service, and what a bridge sends with its own signature.
NOT_CALLED = {("GET", "/healthz"), ("GET", "/metrics"), ("POST", "/v1/chat-webhook")}
# An invented word.
WORD = {"kind": "name", "text": "कखगउरद", "lang": "hi", "script": "Deva", "row_kind": "base", "ref": "vigna-mungo"}  # fmt: skip


@pytest.fixture
def served(glossary: Glossary) -> Iterator[tuple[Any, str]]:
    """An application of its own, and a reviewer's key."""
    app = create_app(Settings(database="sqlite://", rate=0), glossary, files.read(files.folder()))
    with Session(app.state.engine) as session:
        key = repository.make_key(session, "ana", ["review"])
    yield app, key
    app.state.engine.dispose()


@pytest.fixture
def client(served: tuple[Any, str], monkeypatch: pytest.MonkeyPatch) -> Client:
    """A waiting client that reaches the application without a network."""
    app, key = served
    one = Client("http://test", key=key)
    inside = TestClient(app, base_url="http://test", headers=one._http.headers, raise_server_exceptions=False)
    monkeypatch.setattr(one, "_http", inside)
    return one


def _everything(client: Client) -> dict[str, Any]:
    """One call of each kind; answers by name."""
    sent = client.suggest(once="a", **WORD)
    again = client.suggest(once="a", **WORD)
    assert sent == again
    return {
        "pulses": client.pulses(),
        "pulse": client.pulse("Vigna mungo"),
        "drawing": client.drawing("Vigna mungo", form="whole", colour="black"),
        "languages": client.languages(),
        "glossary": client.glossary("csv"),
        "names": client.names("Vigna mungo", ["ta", "hi"], form="split-dehulled"),
        "read": client.read("Urad Dal Dhuli 1 kg"),
        "read_many": client.read_many(["toor dal", "basmati rice"]),
        "each": client.read_many(["toor dal\nmasoor dal"], each=True),
        "identify": client.identify(length_mm=12.0, shape="kidney", outside="red"),
        "guidance": client.guidance("Cajanus cajan", form="split-dehulled", vessel="open"),
        "swaps": client.swaps("Cajanus cajan", form="split-dehulled"),
        "pot": client.pot({"cajanus-cajan//split-dehulled": 100, "lens-culinaris/red/split-dehulled": 100}),
        "schedule": client.schedule("Cicer arietinum", "2026-11-28T19:00", "Asia/Kolkata", "text/calendar", form="whole"),
        "recipe": client.recipe("200 g toor dal\nCook 40 minutes."),
        "chat": client.chat("toor dal"),
        "menu": client.printed("menus", {"title": "Supper", "languages": ["en"], "sections": [{"name": "Dals", "dishes": [
            {"name": "Dal", "pulses": ["toor dal"]}]}]}, "text/markdown"),
        "chart": client.printed("charts", {"languages": ["en"]}, "text/csv"),
        "card": client.printed("cards", {"languages": ["hi"], "pulses": ["vigna-mungo//whole/black"]}, "text/html"),
        "atlas": list(client.atlas(["en", "hi"], ["vigna-mungo//whole/black"])),
        "pack": client.remember_pack("4006381333931", "vigna-mungo//whole/black"),
        "recalled": client.recall_pack("4006381333931"),
        "suggestion": sent,
        "suggestions": client.suggestions(),
        "decided": client.decide(sent["id"], "accepted", "seen on a pack"),
        "decisions": client.decisions(sent["id"]),
        "diff": client.accepted_diff(),
        "ready": client.ready(),
    }  # fmt: skip


def test_every_operation_is_there(client: Client, served: tuple[Any, str]) -> None:
    app, _ = served
    called: set[tuple[str, str]] = set()

    def note(request: httpx.Request) -> None:
        called.add((request.method, request.url.path))

    client._http.event_hooks = {"request": [note]}
    found = _everything(client)
    for photo in (client.read_photo, client.grain_photo):
        with pytest.raises(Problem):
            photo(b"not a picture")
    paths = {
        (method.upper(), path)
        for path, methods in app.openapi()["paths"].items()
        for method in methods
        if (method.upper(), path) not in NOT_CALLED
    }
    missed = {
        (method, path)
        for method, path in paths
        if not any(
            method == one and re.fullmatch(re.sub(r"\{\w+\}", "[^/]+", path), seen) for one, seen in called
        )
    }
    assert missed == set()
    assert found["read"]["readings"][0]["species"] == "Vigna mungo"
    assert [one["verdict"] for one in found["read_many"]] == ["one", "none"] and len(found["each"][0]) == 2
    assert (
        found["drawing"].startswith(b"<svg")
        and b"Vigna mungo" in found["glossary"][:200_000] + found["chart"]
    )
    assert found["atlas"][-1]["done"] == found["atlas"][-1]["of"] and found["menu"].startswith(b"# Supper")
    assert (
        found["recalled"]["pulse"]["species"] == "Vigna mungo" and found["decisions"][0]["reviewer"] == "ana"
    )
    assert found["pot"]["together"] and found["schedule"].startswith(b"BEGIN:VCALENDAR")
    assert "कखगउरद".encode() in found["diff"] and found["decided"]["status"] == "accepted"


def test_a_refusal_is_an_exception_with_its_facts(client: Client) -> None:
    with pytest.raises(Unknown) as unknown:
        client.pulse("Vigna mango")
    assert unknown.value.status == 404 and "vigna-mungo" in unknown.value.facts["near"]
    with pytest.raises(BadInput):
        client.read("")
    client._http.headers.pop("authorization")
    with pytest.raises(NotAllowed):
        client.suggestions()


def test_the_awaiting_client_says_the_same(served: tuple[Any, str], client: Client) -> None:
    app, key = served

    async def play() -> list[Any]:
        transport = httpx.ASGITransport(app=app)
        async with AsyncClient("http://test", transport=transport, key=key) as other:
            sheets = [one async for one in other.atlas(["en"], ["vigna-mungo//whole/black"])]
            with pytest.raises(Unknown):
                await other.pulse("Vigna mango")
            return [await other.read("kandi pappu"), await other.names("Cajanus cajan", "te"), sheets]

    assert anyio.run(play) == [
        client.read("kandi pappu"),
        client.names("Cajanus cajan", "te"),
        list(client.atlas(["en"], ["vigna-mungo//whole/black"])),
    ]


def test_the_picture_formats_are_bytes(client: Client) -> None:
    pil = pytest.importorskip("PIL.Image", reason="pip install pillow")
    out = io.BytesIO()
    pil.new("RGB", (40, 40), "white").save(out, "PNG")
    with pytest.raises(Problem) as caught:
        client.grain_photo(out.getvalue(), coin_mm=23.0)
    assert caught.value.status in (415, 422, 501, 503)
