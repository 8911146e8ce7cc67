"""Readings of labels."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass

from fastapi import APIRouter, Request, Response

from ...errors import BadInput
from .. import records, shapes
from ..dependencies import Shelf, ShelfDep

router = APIRouter(tags=["readings"])


@dataclass(frozen=True, slots=True)
class Answered:
    """What one label says, as it is sent; with what is counted of it."""

    sent: str
    verdicts: tuple[str, ...]
    unread: int


@router.post("/readings", response_model=shapes.ReadingsAnswer)
async def readings(asked: shapes.ReadingsRequest, shelf: ShelfDep, request: Request) -> Response:
    """What one or many labels say, each with the words it rests on."""
    texts = asked.texts if asked.texts is not None else [asked.text] if asked.text is not None else []
    if not texts or (asked.text is not None and asked.texts is not None):
        raise BadInput("text", None, "give text, or texts, not both and not neither")
    answers = [_answered(shelf, text, asked.languages, asked.place, asked.each) for text in texts]
    metrics = request.app.state.metrics
    if metrics is not None:
        for answer in answers:
            for verdict in answer.verdicts:
                metrics.readings.labels(verdict).inc()
            metrics.unread.inc(answer.unread)
    # Built by us in the documented shape: validating it again would halve the rate.
    body = f'{{"edition": {json.dumps(shelf.glossary.edition)}, "answers": [{", ".join(one.sent for one in answers)}]}}'
    return Response(body.encode("utf-8", "replace"), media_type="application/json")


def _answered(shelf: Shelf, text: str, languages: Sequence[str], place: str, each: bool) -> Answered:
    """The answer to one label; that of a label met lately is there already."""
    key = (text, tuple(languages), place, each)
    known: Answered | None = shelf.answers.get(key)
    if known is None:
        reader = shelf.reader
        found = reader.read_each(text, languages, place) if each else (reader.read(text, languages, place),)
        group = [records.reading_record(one, shelf.glossary) for one in found]
        known = Answered(
            json.dumps(group, ensure_ascii=False),
            tuple(one.verdict for one in found),
            sum(len(one.unread) for one in found),
        )
        shelf.answers.put(key, known, len(text))
    return known
