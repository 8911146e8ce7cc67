"""Conversation turns, and a signed webhook for messaging bridges."""

from __future__ import annotations

import hashlib
import hmac
import json
import time
from collections import OrderedDict
from typing import Annotated, Any

from fastapi import APIRouter, Header, Request
from fastapi.concurrency import run_in_threadpool
from pydantic import BaseModel, Field

from ...errors import BadInput, NotAllowed, TooLarge
from ...talk import State, sms, ssml, turn
from .. import shapes
from ..dependencies import SettingsDep, Shelf, ShelfDep
from ..tongues import tongue

router = APIRouter(tags=["chat"])
# Seconds a signed message stays good: a replay after that is refused, one within it by its signature.
WINDOW = 300
MOST_SEEN = 10_000


class TurnIn(shapes.Strict):
    """A message and what the last turn gave as its state."""

    text: str = Field(min_length=1, max_length=4000, examples=["urad dal dhuli"])
    state: dict[str, Any] = Field(default={}, max_length=8)
    language: str = Field("", max_length=35, description="BCP 47 tag of the reply")
    place: str = Field("", max_length=2)


class SmsOut(BaseModel):
    """The reply cut for SMS."""

    encoding: str
    parts: list[str]
    units: list[int]


class TurnOut(BaseModel):
    """The reply in three sizes, short answers to offer, and the state to send with the next message."""

    text: str
    quick: list[str]
    sms: SmsOut
    ssml: str
    language: str
    state: dict[str, Any]


@router.post("/chat-turns", response_model=TurnOut)
async def chat_turns(
    asked: TurnIn, shelf: ShelfDep, accept_language: Annotated[str, Header(max_length=400)] = ""
) -> dict[str, Any]:
    """One turn; nothing is kept here: the caller keeps the state."""
    return await run_in_threadpool(_turned, asked, shelf, accept_language)


@router.post("/chat-webhook", response_model=TurnOut)
async def chat_webhook(
    request: Request,
    shelf: ShelfDep,
    settings: SettingsDep,
    signature: Annotated[str, Header(alias="x-signature-256", max_length=100)] = "",
    sent: Annotated[str, Header(alias="x-timestamp", max_length=20)] = "",
) -> dict[str, Any]:
    """The same, signed: HMAC-SHA256 in hex over the timestamp, a dot and the body, with the shared secret."""
    body = await request.body()
    _signed(request.app.state, settings.webhook_secret, signature, sent, body)
    try:
        asked = TurnIn.model_validate_json(body)
    except ValueError as error:
        raise BadInput(
            "body", body[:60].decode("utf-8", "replace"), f"is no turn: {str(error)[:200]}"
        ) from None
    return await run_in_threadpool(_turned, asked, shelf, "")


def _turned(asked: TurnIn, shelf: Shelf, accept_language: str) -> dict[str, Any]:
    if len(json.dumps(asked.state)) > 4000:
        raise TooLarge("state", "", "is longer than 4,000 characters")
    speaks = tongue(asked.language, accept_language)
    state, reply = turn(State.of(asked.state), asked.text, shelf.reader, speaks, asked.place)
    cut = sms(reply.text)
    return {
        "text": reply.text,
        "quick": reply.quick,
        "sms": {"encoding": cut.encoding, "parts": cut.parts, "units": cut.units},
        "ssml": ssml(reply.said, speaks.tag),
        "language": speaks.tag,
        "state": state.plain(),
    }


def _signed(kept: Any, secret: str, signature: str, sent: str, body: bytes) -> None:
    """Raises NotAllowed unless the signature is right, recent, and not seen before."""
    if not secret:
        raise NotAllowed("chat webhook: no secret is set")
    wanted = hmac.new(secret.encode(), sent.encode() + b"." + body, hashlib.sha256).hexdigest()
    if not hmac.compare_digest(wanted, signature.removeprefix("sha256=").lower()):
        raise NotAllowed("chat webhook: the signature does not fit")
    if not sent.isdigit() or abs(time.time() - int(sent)) > WINDOW:
        raise NotAllowed("chat webhook: the timestamp is not of these five minutes")
    # Kept by number and not by age: a clock that jumps forward and back would bring old messages back to life.
    seen: OrderedDict[str, None] = kept.seen_signatures
    if wanted in seen:
        raise NotAllowed("chat webhook: this message came before")
    seen[wanted] = None
    if len(seen) > MOST_SEEN:
        seen.popitem(last=False)
