"""Photos of packs and of loose grains. Nothing of a photo is kept."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, File, Form, UploadFile
from fastapi.concurrency import run_in_threadpool
from pydantic import BaseModel
from sqlmodel import Session

from ...errors import BadInput
from ...grain import Traits, identify
from ...photo import Seen, measure, opened, words
from ...store import repository
from .. import records, shapes
from ..dependencies import SessionDep, SettingsDep, ShelfDep
from .grains import Ranking

router = APIRouter(tags=["photos"])
Photo = Annotated[UploadFile, File(description="JPEG, PNG or WebP")]


class WordOut(BaseModel):
    """A word and its box in the picture: left, top, right, bottom."""

    text: str
    box: tuple[int, int, int, int]
    sure: float


class PhotoReading(BaseModel):
    """What a pack says: its text, the reading of it, its words, and remembered packs by their barcodes."""

    edition: str
    text: str
    scripts: list[str]
    words: list[WordOut]
    codes: list[str]
    packs: dict[str, str]
    reading: shapes.ReadingShape | None


class GrainPhoto(Ranking):
    """What loose grains measure, and which pulses they may be.

    `split` are those that show the outline of a half; a half lying on its cut face counts as `whole`.
    """

    count: int
    whole: int
    split: int
    length_mm: float
    width_mm: float | None
    colour: str


@router.post("/photo-readings", response_model=PhotoReading)
async def photo_readings(
    photo: Photo, shelf: ShelfDep, settings: SettingsDep, session: SessionDep,
    scripts: Annotated[str, Form(max_length=100, description="ISO 15924 codes, parted by commas")] = "",
    place: Annotated[str, Form(max_length=2)] = "",
) -> dict[str, Any]:  # fmt: skip
    """The words on a pack read by machine, then as a label; typing the words always works as well."""
    picture = await _picture(photo, settings.largest_photo)

    def understood(text: str) -> float:
        found = shelf.reader.read(text, (), place) if text.strip() else None
        return found.readings[0].probability if found and found.readings and found.verdict != "none" else 0.0

    asked = [one.strip() for one in scripts.split(",") if one.strip()]
    seen = await run_in_threadpool(words, picture, asked, understood)
    reading = shelf.reader.read(seen.text, (), place) if seen.text.strip() else None
    return {
        "edition": shelf.glossary.edition,
        "text": seen.text,
        "scripts": seen.scripts,
        "words": [{"text": one.text, "box": one.box, "sure": one.sure} for one in seen.words],
        "codes": [code for code in seen.codes if _proved(code)],
        "packs": _packs(session, seen),
        "reading": records.reading_record(reading, shelf.glossary) if reading else None,
    }


@router.post("/grain-photos", response_model=GrainPhoto)
async def grain_photos(
    photo: Photo, shelf: ShelfDep, settings: SettingsDep,
    coin_mm: Annotated[float | None, Form(
        ge=10, le=40, description="diameter of the coin beside the grains; left out where a ruler lies there")] = None,
) -> dict[str, Any]:  # fmt: skip
    """Loose grains beside a coin or a ruler: measured, and ranked; never a word that they are safe."""
    picture = await _picture(photo, settings.largest_photo)
    found = await run_in_threadpool(measure, picture, coin_mm)
    seen = identify(
        shelf.glossary,
        Traits(found.length_mm, found.width_mm, outside=found.colour, halves=found.split / found.count),
    )
    return {
        "edition": shelf.glossary.edition,
        "count": found.count,
        "whole": found.whole,
        "split": found.split,
        "length_mm": found.length_mm,
        "width_mm": found.width_mm,
        "colour": found.colour,
        **records.grains_record(seen, shelf.glossary),
    }


async def _picture(photo: UploadFile, most: int) -> Any:
    data = await photo.read(most + 1)
    if not data:
        raise BadInput("photo", "", "is empty")
    return await run_in_threadpool(opened, data)


def _proved(code: str) -> bool:
    """Whether the check digit is right."""
    try:
        repository.gtin14(code)
    except BadInput:
        return False
    return True


def _packs(session: Session, seen: Seen) -> dict[str, str]:
    """Pulse keys of the packs remembered under these barcodes; others are not guessed."""
    found = {code: repository.recall_pack(session, code) for code in seen.codes if _proved(code)}
    return {code: pack.pulse for code, pack in found.items() if pack}
