"""Readings of labels."""

from __future__ import annotations

import json

from fastapi import APIRouter, Request, Response

from ...errors import BadInput
from .. import records, shapes
from ..dependencies import ShelfDep

router = APIRouter(tags=["readings"])


@router.post("/readings", response_model=shapes.ReadingsAnswer)
async def readings(asked: shapes.ReadingsRequest, shelf: ShelfDep, request: Request) -> Response:
    """What one or many labels say, each with the words it rests on."""
    texts = asked.texts if asked.texts is not None else [asked.text] if asked.text is not None else []
    if not texts or (asked.text is not None and asked.texts is not None):
        raise BadInput("text", None, "give text, or texts, not both and not neither")
    reader = shelf.reader
    answers = []
    for text in texts:
        found = (
            reader.read_each(text, asked.languages, asked.place)
            if asked.each
            else (reader.read(text, asked.languages, asked.place),)
        )
        answers.append([records.reading_record(one, shelf.glossary) for one in found])
    metrics = request.app.state.metrics
    if metrics is not None:
        for group in answers:
            for one in group:
                metrics.readings.labels(one["verdict"]).inc()
                metrics.unread.inc(len(one["unread"]))
    body = {"edition": shelf.glossary.edition, "answers": answers}
    # Built by us in the documented shape: validating it again would halve the rate.
    return Response(
        json.dumps(body, ensure_ascii=False).encode("utf-8", "replace"), media_type="application/json"
    )
