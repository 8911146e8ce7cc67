"""Menus, charts and shopping cards, in the format the caller accepts."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from fastapi import APIRouter, Header
from fastapi.concurrency import run_in_threadpool
from fastapi.responses import Response
from pydantic import Field

from ...errors import BadInput
from ...glossary import find
from ...paper import Sheet, cards, chart, menu
from ...paper.charts import default_pulses
from ...press import FORMATS, accepted, pressed
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
    kind: Literal["species", "form", "shop", "look-alikes"] = "species"
    title: str = Field("", max_length=200)
    paper: Paper = "a4"


class CardsIn(shapes.Strict):
    """Shopping cards, one for each pulse and language."""

    pulses: list[Key] = Field(max_length=120)
    languages: list[shapes.Tag] = Field(max_length=60, examples=[["hi"]])
    paper: Paper = "a4"


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
    sheet = await run_in_threadpool(cards, glossary, pulses, asked.languages)
    return await _printed(sheet, accept, asked.paper)


async def _printed(sheet: Sheet, accept: str, paper: str) -> Response:
    ending = accepted(accept)
    data = await run_in_threadpool(pressed, sheet, ending, paper)
    return Response(data, media_type=FORMATS[ending][0])
