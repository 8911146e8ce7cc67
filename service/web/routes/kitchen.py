"""Guidance for a pulse in a kitchen, and what to use instead."""

from __future__ import annotations

from dataclasses import asdict
from typing import Annotated, Any, Literal

from fastapi import APIRouter
from pydantic import BaseModel, Field

from ...contracts import guidance_for
from ...glossary import find
from ...glossary.model import Pulse
from ...kitchen import Guidance, Kitchen, kitchen_of
from ...kitchen.kitchen import LIMITS
from ...kitchen.words import refused
from ...kitchen.yields import PROTEIN_NOTE
from ...recipe import swaps
from ...talk import Tongue
from .. import records, shapes
from ..dependencies import Shelf, ShelfDep
from ..tongues import spoken

router = APIRouter(tags=["kitchen"])
Pair = Annotated[list[float], Field(min_length=2, max_length=2, description="from, to")]


def _number(name: str, usual: float | None, **more: Any) -> Any:
    """A number within the limits the kitchen sets."""
    low, high, unit = LIMITS[name]
    return Field(usual, ge=low, le=high, description=unit, **more)


class KitchenIn(shapes.Strict):
    """A kitchen; what is left out is taken as usual or as not known."""

    vessel: Literal["open", "simmer", "pressure", "electric", "slow", "oven", "microwave"] = "open"
    setting: Literal["", "high", "low"] = ""
    gauge_kpa: float | None = _number("gauge_kpa", None, examples=[80])
    altitude_m: float = _number("altitude_m", 0.0)
    soak: Literal["none", "hot", "overnight", "fridge", "brine"] = "overnight"
    soak_hours: float | None = _number("soak_hours", None)
    soak_c: float | None = _number("soak_c", None)
    texture: Literal["firm", "tender", "creamy"] = "tender"
    age: Literal["unknown", "new", "year", "old", "badly-stored"] = "unknown"
    hardness_mg_l: float | None = _number("hardness_mg_l", None)
    salt: Literal["unknown", "none", "soak", "water"] = "none"
    acid: Literal["unknown", "none", "water"] = "none"
    soda: Literal["unknown", "none", "water"] = "none"
    dish: Literal["", "drained", "thick", "soupy"] = ""
    release: Literal["natural", "quick"] = "natural"
    dry_g: float = _number("dry_g", 200.0)
    pot_l: float | None = _number("pot_l", None)
    cup_ml: float = _number("cup_ml", 236.588)
    boiled_first: bool = False


class CookIn(KitchenIn):
    """A pulse and a kitchen."""

    species: str = Field(max_length=80, examples=["Cicer arietinum"])
    market_class: str = Field("", max_length=60)
    form: str = Field("", max_length=30, examples=["whole"])
    colour: str = Field("", max_length=20)
    language: str = Field(
        "en", max_length=35, description="BCP 47 tag wanted for the words; English where it is not spoken"
    )


class CautionOut(BaseModel):
    """One warning and who says so."""

    id: str
    severity: str
    text: str
    source: str


class FillOut(BaseModel):
    """How a pressure cooker is filled."""

    limit: float
    batches: int
    batch_g: float


class ServedOut(BaseModel):
    """What `dry_g` come to: weight, cups, portions, the cans it stands for, and what a portion of 70 g dry feeds.

    `portion` is null where no figures are known; `record` is that of its source.
    """

    cooked_g: Pair
    cooked_cups: Pair
    portions: Pair
    cans: Pair
    portion: dict[str, float] | None
    record: str
    note: str
    sources: list[str]


class GuidanceOut(BaseModel):
    """Soak, minutes, water, yield, cautions; `minutes` null and `refused` said where it is not done so."""

    edition: str
    pulse: shapes.PulseShape
    minutes: Pair | None
    soak_hours: Pair
    water_ml_per_100g: Pair
    water_cups_per_cup: Pair
    cooked_g_per_100g: Pair
    temperature_c: Pair | None
    whistles: Pair | None
    fill: FillOut | None
    water_total_ml: Pair | None
    water_total_cups: Pair | None
    served: ServedOut | None
    cautions: list[CautionOut]
    notes: list[str]
    steps: list[str]
    sources: list[str]
    basis: str
    language: str
    refused: str | None = None
    instead: str | None = None


class SwapOut(shapes.PulseShape):
    """A pulse to use instead: how like it is, what it replaces 100 g with, and what changes."""

    likeness: float
    grams_for_100: Pair
    minutes: Pair | None
    reasons: list[str]
    warnings: list[str]


class SwapsAnswer(BaseModel):
    """Swaps, the likest first."""

    edition: str
    pulse: shapes.PulseShape
    swaps: list[SwapOut]


@router.post("/guidance", response_model=GuidanceOut)
async def guidance(asked: CookIn, shelf: ShelfDep) -> dict[str, Any]:
    """How to cook this pulse in this kitchen."""
    pulse, kitchen = _asked(asked, shelf)
    found = guidance_for(shelf.glossary, pulse, kitchen)
    speaks = spoken(asked.language)
    say = speaks.translate
    return {
        "edition": shelf.glossary.edition,
        "pulse": records.pulse_record(pulse, shelf.glossary),
        "minutes": found.minutes,
        "soak_hours": found.soak_hours,
        "water_ml_per_100g": found.water_ml_per_100g,
        "water_cups_per_cup": found.water_cups_per_cup,
        "cooked_g_per_100g": found.cooked_g_per_100g,
        "temperature_c": found.temperature_c,
        "whistles": found.whistles,
        "fill": records.fill_record(found.fill),
        "water_total_ml": found.water.total_ml if found.water else None,
        "water_total_cups": found.water.total_cups if found.water else None,
        "served": _served(found, speaks),
        "cautions": records.caution_records(found.cautions, speaks),
        "notes": [say(one) for one in found.notes],
        "steps": [say(one) for one in found.steps],
        "language": speaks.tag,
        "sources": found.sources,
        "basis": found.basis,
        "refused": say(refused(found.refused)[0]) if found.refused else None,
        "instead": say(found.refused.instead) if found.refused else None,
    }


def _served(found: Guidance, speaks: Tongue) -> dict[str, Any] | None:
    one = found.served
    return None if one is None else {**asdict(one), "note": speaks.translate(PROTEIN_NOTE)}


@router.post("/swaps", response_model=SwapsAnswer)
async def swaps_for(asked: CookIn, shelf: ShelfDep) -> dict[str, Any]:
    """What can stand in for this pulse, in the same kitchen."""
    pulse, kitchen = _asked(asked, shelf)
    return {
        "edition": shelf.glossary.edition,
        "pulse": records.pulse_record(pulse, shelf.glossary),
        "swaps": [
            {
                **records.pulse_record(one.pulse, shelf.glossary),
                "likeness": one.likeness,
                "grams_for_100": one.grams,
                "minutes": one.minutes,
                "reasons": one.reasons,
                "warnings": one.warnings,
            }
            for one in swaps(shelf.glossary, pulse, kitchen)
        ],
    }


def _asked(asked: CookIn, shelf: Shelf) -> tuple[Pulse, Kitchen]:
    pulse = find.pulse(shelf.glossary, asked.species, asked.market_class, asked.form, asked.colour)
    return pulse, kitchen_of(asked.model_dump(exclude_unset=False))
