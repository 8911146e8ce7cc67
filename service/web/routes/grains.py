"""Readings of loose grains from what a person sees, and drawings of grains."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Query
from fastapi.responses import Response
from pydantic import BaseModel, Field

from ...glossary import find
from ...grain import Traits, identify
from ...paper import draw
from .. import records, shapes
from ..dependencies import ShelfDep

router = APIRouter(tags=["grains"])


class TraitsIn(shapes.Strict):
    """What is seen of one grain; leave out what is not."""

    length_mm: float | None = Field(None, ge=0.3, le=60, examples=[5.5])
    width_mm: float | None = Field(None, ge=0.3, le=60)
    thickness_mm: float | None = Field(None, ge=0.3, le=60)
    state: str = Field("", max_length=20, examples=["whole"])
    outside: str = Field("", max_length=20, examples=["green"])
    inside: str = Field("", max_length=20)
    shape: str = Field("", max_length=30)
    surface: str = Field("", max_length=30)
    eye: str = Field("", max_length=30)


class RankedOut(shapes.ReadShape):
    """A pulse or a poisonous seed it may be."""

    poison: bool


class AskOut(BaseModel):
    """The next best question."""

    trait: str
    text: str
    answers: list[str]
    bits: float


class Ranking(BaseModel):
    """Ranked pulses and the next question; warnings are to be said first.

    `stop` says why there is no further question: `certain`, `poison` (leave the grains alone) or `alike`.
    """

    edition: str
    warnings: list[str]
    settled: bool
    stop: str
    ranked: list[RankedOut]
    ask: AskOut | None


@router.post("/grain-readings", response_model=Ranking)
async def grain_readings(seen: TraitsIn, shelf: ShelfDep) -> dict[str, Any]:
    """Which pulses the grains may be, and what to look at next."""
    glossary = shelf.glossary
    found = identify(glossary, Traits(**seen.model_dump()))
    return {
        "edition": glossary.edition,
        **records.grains_record(found, glossary),
    }


@router.get(
    "/pulses/{species}/drawing", response_class=Response, responses={200: {"content": {"image/svg+xml": {}}}}
)
async def drawing(
    species: str,
    shelf: ShelfDep,
    market_class: Annotated[str, Query(max_length=60)] = "",
    form: Annotated[str, Query(max_length=30)] = "",
    colour: Annotated[str, Query(max_length=20)] = "",
    count: Annotated[int, Query(ge=1, le=5)] = 5,
    scale: Annotated[float, Query(gt=0, le=10)] = 1.0,
) -> Response:
    """Its grains drawn at true size (times `scale`), as SVG."""
    pulse = find.pulse(shelf.glossary, species, market_class, form, colour)
    return Response(draw(shelf.glossary, pulse, count, scale), media_type="image/svg+xml")
