"""Recipes in free text, changed for another pulse or another kitchen."""

from __future__ import annotations

from typing import Any

from fastapi import APIRouter
from fastapi.concurrency import run_in_threadpool
from pydantic import BaseModel, Field

from ...glossary import find
from ...kitchen import kitchen_of
from ...recipe import rewrite
from .. import records, shapes
from ..dependencies import ShelfDep
from .kitchen import CautionOut, KitchenIn, Pair

router = APIRouter(tags=["recipes"])


class RecipeIn(KitchenIn):
    """A recipe and what to change: `target` in place of `source`, or only the kitchen."""

    text: str = Field(
        min_length=1, max_length=12_000, examples=["1 cup toor dal\nPressure cook the dal for 15 minutes."]
    )
    target: str = Field("", max_length=120, examples=["lens-culinaris/red/split-dehulled/red"])
    source: str = Field("", max_length=120)
    languages: list[shapes.Tag] = Field(default=[], max_length=20)


class LineOut(BaseModel):
    """A line before and after, and what was changed in it."""

    before: str
    after: str
    why: list[str]


class RecipeOut(BaseModel):
    """The changed recipe."""

    edition: str
    text: str
    lines: list[LineOut]
    source: shapes.PulseShape
    target: shapes.PulseShape
    grams: Pair | None
    minutes: Pair | None
    soak_hours: Pair
    differences: list[str]
    warnings: list[str]
    cautions: list[CautionOut]
    others: list[shapes.PulseShape]


@router.post("/recipes", response_model=RecipeOut)
async def recipes(asked: RecipeIn, shelf: ShelfDep) -> dict[str, Any]:
    """The recipe with another pulse in it, amounts, soak and times changed to fit; nothing else is touched."""
    glossary = shelf.glossary
    target = find.by_key(glossary, asked.target) if asked.target else None
    source = find.by_key(glossary, asked.source) if asked.source else None
    kitchen = kitchen_of(asked.model_dump(exclude={"text", "target", "source", "languages"}))
    found = await run_in_threadpool(
        rewrite, asked.text, shelf.reader, kitchen, target, source, tuple(asked.languages)
    )
    return {
        "edition": glossary.edition,
        "text": found.text,
        "lines": [{"before": one.before, "after": one.after, "why": one.why} for one in found.lines],
        "source": records.pulse_record(found.source, glossary),
        "target": records.pulse_record(found.target, glossary),
        "grams": found.grams,
        "minutes": found.after.minutes,
        "soak_hours": found.after.soak_hours,
        "differences": found.differences,
        "warnings": found.warnings,
        "cautions": [
            {"id": one.id, "severity": one.severity, "text": one.text, "source": one.source}
            for one in found.cautions
        ],
        "others": [records.pulse_record(one.pulse, glossary) for one in found.others],
    }
