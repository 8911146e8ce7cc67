"""Suggestions from anyone, decisions from reviewers, and the exact diff they amount to."""

from __future__ import annotations

import hashlib
from typing import Annotated, Any

from fastapi import APIRouter, Header, Query, Response
from pydantic import BaseModel, Field

from ...errors import BadInput, NotAllowed
from ...glossary.model import Row
from ...glossary.overlay import diff, judged
from ...store import repository
from ...store.tables import Suggestion
from .. import shapes
from ..dependencies import SessionDep, SettingsDep, ShelfDep

router = APIRouter(tags=["suggestions"])
KINDS = ("name", "correction", "unread")
Bearer = Annotated[str, Header(alias="authorization", max_length=200)]
Once = Annotated[str, Header(alias="idempotency-key", max_length=128)]


class SuggestionIn(shapes.Strict):
    """A name (checked like any row), a correction in words, or a label that was not read."""

    kind: str = Field(max_length=20, examples=["name"])
    text: str = Field(min_length=1, max_length=2000, examples=["उड़द"])
    lang: str = Field("", max_length=35, examples=["hi"])
    script: str = Field("", max_length=4, examples=["Deva"])
    row_kind: str = Field("base", max_length=10)
    ref: str = Field("", max_length=120, examples=["vigna-mungo"])
    use: str = Field("also", max_length=10)
    agrees: str = Field("", max_length=40)
    note: str = Field("", max_length=500)
    evidence: str = Field("", max_length=2000, description="where it was seen")


class SuggestionOut(BaseModel):
    """A suggestion as it stands."""

    id: int
    kind: str
    text: str
    lang: str
    script: str
    row_kind: str
    ref: str
    use: str
    note: str
    evidence: str
    status: str
    times: int


class SuggestionsOut(BaseModel):
    """A page of suggestions; `next` is the id to go on after, 0 at the end."""

    suggestions: list[SuggestionOut]
    next: int
    counts: dict[str, int]


class DecisionIn(shapes.Strict):
    """A reviewer's decision."""

    verdict: str = Field(max_length=20, examples=["accepted"])
    reason: str = Field(min_length=1, max_length=500)


class HistoryOut(BaseModel):
    """One step of a suggestion's history."""

    verdict: str
    reason: str
    reviewer: str
    created: str


def _out(one: Suggestion) -> dict[str, Any]:
    fields = SuggestionOut.model_fields
    return {name: getattr(one, name) for name in fields}


def _digest(*parts: object) -> str:
    return hashlib.sha256(repr(parts).encode()).hexdigest()


@router.post("/suggestions", response_model=SuggestionOut, status_code=201)
def suggest(
    given: SuggestionIn,
    shelf: ShelfDep,
    session: SessionDep,
    settings: SettingsDep,
    idempotency_key: Once = "",
) -> dict[str, Any]:
    """Send a suggestion; the same one again counts up, the same idempotency key again answers as before."""
    if not settings.open_suggestions:
        raise NotAllowed("suggestions are closed here")
    if given.kind not in KINDS:
        raise BadInput("kind", given.kind, f"use one of {', '.join(KINDS)}")
    if given.kind == "name":
        _judge(given, shelf.files)
    made = Suggestion(**given.model_dump(), digest="")
    return repository.once(
        session, idempotency_key, "suggest", _digest(given), lambda: _out(repository.suggest(session, made))
    )


def _judge(given: SuggestionIn, files: dict[str, bytes]) -> None:
    row = Row(
        given.lang, given.script, given.row_kind, given.ref, given.text, given.use,
        frozenset(given.agrees.split()), "draft", "memory", given.note,
    )  # fmt: skip
    if f"names/{given.lang.split('-')[0]}.csv" not in files and f"names/{given.lang}.csv" not in files:
        raise BadInput("lang", given.lang, "is no language of the glossary yet")
    _, findings = judged(files, row)
    serious = [one for one in findings if "several species" not in one.what]
    if serious:
        raise BadInput("suggestion", given.text, "; ".join(one.what for one in serious))


@router.get("/suggestions", response_model=SuggestionsOut)
def suggestions(
    session: SessionDep,
    authorization: Bearer = "",
    status: Annotated[str, Query(max_length=20)] = "open",
    after: Annotated[int, Query(ge=0, le=2**53)] = 0,
    most: Annotated[int, Query(ge=1, le=200)] = 50,
) -> dict[str, Any]:
    """For reviewers: suggestions of a status, the oldest first."""
    repository.holder(session, _secret(authorization), "review")
    found = repository.suggestions(session, status, after, most)
    following = found[-1].id if len(found) == most else 0
    return {
        "suggestions": [_out(one) for one in found],
        "next": following or 0,
        "counts": repository.counts(session),
    }


@router.post("/suggestions/{number}/decisions", response_model=SuggestionOut, status_code=201)
def decide(
    number: int,
    given: DecisionIn,
    session: SessionDep,
    authorization: Bearer = "",
    idempotency_key: Once = "",
) -> dict[str, Any]:
    """For reviewers: accept or reject with a reason; nothing is applied twice."""
    reviewer = repository.holder(session, _secret(authorization), "review")
    if not 0 < number < 2**31:
        raise BadInput("number", number, "is no suggestion")
    work = lambda: _out(repository.decide(session, number, given.verdict, given.reason, reviewer))  # noqa: E731
    return repository.once(session, idempotency_key, f"decide {number}", _digest(number, given), work)


@router.get("/suggestions/{number}/decisions", response_model=list[HistoryOut])
def history(number: int, session: SessionDep, authorization: Bearer = "") -> list[dict[str, Any]]:
    """For reviewers: everything decided on a suggestion."""
    repository.holder(session, _secret(authorization), "review")
    if not 0 < number < 2**31:
        raise BadInput("number", number, "is no suggestion")
    return [
        {
            "verdict": one.verdict,
            "reason": one.reason,
            "reviewer": one.reviewer,
            "created": one.created.isoformat(),
        }
        for one in repository.history(session, number)
    ]


@router.get("/suggestions.diff", response_class=Response, responses={200: {"content": {"text/x-diff": {}}}})
def landing(shelf: ShelfDep, session: SessionDep, authorization: Bearer = "") -> Response:
    """For reviewers: every accepted name as one unified diff of glossary_data."""
    repository.holder(session, _secret(authorization), "review")
    return Response(diff(shelf.files, repository.accepted_rows(session)), media_type="text/x-diff")


def _secret(header: str) -> str:
    kind, _, secret = header.partition(" ")
    return secret.strip() if kind.lower() == "bearer" else ""
