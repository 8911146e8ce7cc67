"""The wall clock set back and forward by hours while people work."""

from __future__ import annotations

import hashlib
import hmac
import json

import time_machine
from sqlmodel import Session

from service.glossary.build import build
from service.store import repository
from service.web import Settings, create_app
from service.web.watch import refresh
from tests.conftest import Api
from tests.store.conftest import address, postgres_address  # noqa: F401 - fixtures
from tests.tiny import tiny_files

HOUR = 3600
# Where the clock stands at each step, in seconds from the first: wrong by hours, in both directions.
STEPS = (0, -6 * HOUR, 6 * HOUR, -24 * HOUR, HOUR)
START = 1_800_000_000


def test_suggestions_decisions_and_keys_do_not_hang_on_the_clock(address: str) -> None:  # noqa: F811
    """Invariant: whatever the clock says, each suggestion is kept once and in order, a key sent again answers as
    before, a reviewer's key opens, and what is accepted is served."""
    held = tiny_files()
    app = create_app(Settings(database=address, rate=0), build(held), held)
    api = Api(app)
    with time_machine.travel(START), Session(app.state.engine) as session:
        bearer = {"Authorization": f"Bearer {repository.make_key(session, 'ana', ['review'])}"}
    numbers = []
    for at, step in enumerate(STEPS):
        body = {"kind": "name", "text": "उरद" + "ा" * at, "lang": "hi", "script": "Deva"}
        body |= {"row_kind": "base", "ref": "vigna-mungo"}
        again = {"Idempotency-Key": f"key-{at}"}
        with time_machine.travel(START + step):
            first = api.post("/v1/suggestions", json=body, headers=again)
        with time_machine.travel(START - step):
            second = api.post("/v1/suggestions", json=body, headers=again)
        assert first.status_code == 201 and second.json() == first.json()
        numbers.append(first.json()["id"])
    assert numbers == sorted(set(numbers))
    for number, step in zip(numbers, reversed(STEPS), strict=True):
        with time_machine.travel(START + step):
            done = api.post(
                f"/v1/suggestions/{number}/decisions",
                json={"verdict": "accepted", "reason": "seen"},
                headers=bearer,
            )
            assert done.status_code == 201
            assert refresh(app) and not refresh(app)
    asked = {"species": "Vigna mungo", "form": "whole", "language": "hi"}
    names = api.get("/v1/names", params=asked).text
    assert all("उरद" + "ा" * at in names for at in range(len(STEPS)))
    app.state.engine.dispose()


def test_an_old_message_does_not_come_back_to_life() -> None:
    """Invariant: a signed message is taken once, also where the clock runs ahead and is set right again."""
    app = create_app(Settings(database="sqlite://", rate=0, webhook_secret="s3cret"), build(tiny_files()))
    api = Api(app)

    def send(sent: int, text: str) -> int:
        body = json.dumps({"text": text}).encode()
        signed = hmac.new(b"s3cret", f"{sent}.".encode() + body, hashlib.sha256).hexdigest()
        headers = {
            "x-signature-256": f"sha256={signed}",
            "x-timestamp": str(sent),
            "content-type": "application/json",
        }
        return api.post("/v1/chat-webhook", content=body, headers=headers).status_code

    with time_machine.travel(START):
        assert send(START, "urad") == 200
    with time_machine.travel(START + 6 * HOUR):
        assert send(START, "urad") == 403
        assert send(START + 6 * HOUR, "toor") == 200
    with time_machine.travel(START + 10):
        assert send(START, "urad") == 403
        assert send(START + 10, "masoor") == 200
    app.state.engine.dispose()


def test_limits_run_by_a_clock_nobody_sets() -> None:
    """Invariant: setting the clock forward gives nobody more requests, setting it back locks nobody out."""
    app = create_app(Settings(database="sqlite://", rate=3), build(tiny_files()))
    api = Api(app)
    codes = []
    for step in (0, 24 * HOUR, -24 * HOUR, 48 * HOUR, 0, HOUR):
        with time_machine.travel(START + step):
            answer = api.get("/v1/pulses")
            codes.append(answer.status_code)
    assert codes == [200, 200, 200, 429, 429, 429]
    assert int(answer.headers["retry-after"]) <= 60
    app.state.engine.dispose()
