"""Menus, charts and shopping cards, in the format the caller accepts."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Annotated, Any, Literal
from urllib.parse import quote

from fastapi import APIRouter, Header
from fastapi.concurrency import run_in_threadpool
from fastapi.responses import Response, StreamingResponse
from pydantic import Field

from ...errors import BadInput
from ...glossary import find
from ...paper import Sheet, atlas, cards, chart, menu
from ...paper.charts import default_pulses
from ...paper.render import to_data
from ...press import FORMATS, accepted, code, pressed
from .. import shapes
from ..dependencies import ShelfDep

router = APIRouter(tags=["paper"])
Paper = Literal["a4", "a5", "us-letter"]
Key = Annotated[str, Field(max_length=120, examples=["vigna-mungo//split-dehulled/white"])]
Accept = Annotated[str, Header(max_length=1000)]
ANSWERS: dict[int | str, dict[str, Any]] = {200: {"content": {kind: {} for kind, _ in FORMATS.values()}}}


class DishIn(shapes.Strict):
    """A dish; its pulses are keys or label text."""

    name: str = Field(max_length=200, examples=["Tuver dal"])
    names: dict[str, str] = Field(default={}, max_length=10)
    pulses: list[Annotated[str, Field(max_length=300)]] = Field(
        default=[], max_length=20, examples=[["tuver dal"]]
    )
    notes: str = Field("", max_length=500)
    price: str = Field("", max_length=40)
    diet: list[Annotated[str, Field(max_length=30)]] = Field(default=[], max_length=8)


class SectionIn(shapes.Strict):
    """A section of a menu."""

    name: str = Field(max_length=200, examples=["Dals"])
    dishes: list[DishIn] = Field(max_length=1000)


class MenuIn(shapes.Strict):
    """A menu in one to three languages."""

    title: str = Field(max_length=200, examples=["An invented supper"])
    languages: list[shapes.Tag] = Field(max_length=10, examples=[["en", "gu"]])
    law: str = Field("eu", max_length=20)
    sections: list[SectionIn] = Field(max_length=100)
    staff: bool = False
    paper: Paper = "a4"


class ChartIn(shapes.Strict):
    """A chart of pulses by languages; without pulses, those met most."""

    languages: list[shapes.Tag] = Field(max_length=60, examples=[["en", "hi", "ta"]])
    pulses: list[Key] = Field(default=[], max_length=400)
    kind: Literal["species", "form", "shop", "look-alikes", "cooking", "drawings"] = "species"
    title: str = Field("", max_length=200)
    paper: Paper = "a4"


class CardsIn(shapes.Strict):
    """Shopping cards, one for each pulse and language."""

    pulses: list[Key] = Field(max_length=120)
    languages: list[shapes.Tag] = Field(max_length=60, examples=[["hi"]])
    address: str = Field(
        "", max_length=400, description="of the page; printed as a QR code that opens the pulse there"
    )
    paper: Paper = "a4"


class AtlasIn(shapes.Strict):
    """Charts of many languages; without languages, of all."""

    languages: list[shapes.Tag] = Field(default=[], max_length=100)
    pulses: list[Key] = Field(default=[], max_length=60)


@router.post("/menus", responses=ANSWERS, response_class=Response)
async def menus(asked: MenuIn, shelf: ShelfDep, accept: Accept = "*/*") -> Response:
    """A menu side by side in its languages, with allergens by the law chosen."""
    given = asked.model_dump(exclude={"paper"})
    sheet = await run_in_threadpool(menu, given, shelf.glossary, shelf.reader.read)
    return await _printed(sheet, accept, asked.paper)


@router.post("/charts", responses=ANSWERS, response_class=Response)
async def charts(asked: ChartIn, shelf: ShelfDep, accept: Accept = "*/*") -> Response:
    """A chart of names with drawings at true size; what has no name stays blank."""
    glossary = shelf.glossary
    pulses = [find.by_key(glossary, key) for key in asked.pulses] or default_pulses(glossary)
    sheet = await run_in_threadpool(chart, glossary, asked.languages, pulses, asked.kind, asked.title)
    return await _printed(sheet, accept, asked.paper)


@router.post("/cards", responses=ANSWERS, response_class=Response)
async def shopping_cards(asked: CardsIn, shelf: ShelfDep, accept: Accept = "*/*") -> Response:
    """Pocket cards to show in the shop."""
    glossary = shelf.glossary
    pulses = [find.by_key(glossary, key) for key in asked.pulses]
    if not pulses:
        raise BadInput("pulses", [], "is empty; name at least one")
    codes = [code(f"{asked.address}#read={quote(pulse.key)}") for pulse in pulses] if asked.address else ()
    sheet = await run_in_threadpool(cards, glossary, pulses, asked.languages, codes)
    return await _printed(sheet, accept, asked.paper)


@router.post(
    "/atlases", response_class=StreamingResponse, responses={200: {"content": {"application/x-ndjson": {}}}}
)
async def atlases(asked: AtlasIn, shelf: ShelfDep) -> StreamingResponse:
    """Charts of all languages, a few at a time: one JSON line for each sheet as it is made, with how many are left."""
    glossary = shelf.glossary
    pulses = [find.by_key(glossary, key) for key in asked.pulses] or default_pulses(glossary, 12)
    tags = [find.language(glossary, tag) for tag in asked.languages] or list(glossary.rows)

    def lines() -> Iterator[bytes]:
        for done, of, sheet in atlas(glossary, tags, pulses):
            line = {"done": done, "of": of, "title": sheet.title, "sheet": to_data(sheet)}
            yield json.dumps(line, ensure_ascii=False).encode() + b"\n"

    return StreamingResponse(lines(), media_type="application/x-ndjson")


async def _printed(sheet: Sheet, accept: str, paper: str) -> Response:
    ending = accepted(accept)
    data = await run_in_threadpool(pressed, sheet, ending, paper)
    return Response(data, media_type=FORMATS[ending][0])
