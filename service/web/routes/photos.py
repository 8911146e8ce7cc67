"""Photos of packs and of loose grains. Nothing of a photo is kept."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, File, Form, UploadFile
from fastapi.concurrency import run_in_threadpool
from pydantic import BaseModel
from sqlmodel import Session

from ...errors import BadInput, Unknown
from ...grain import Traits, identify
from ...photo import Seen, measure, opened, words
from ...store import repository
from .. import records, shapes
from ..dependencies import SessionDep, SettingsDep, ShelfDep
from .grains import AskOut, RankedOut

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


class GrainPhoto(BaseModel):
    """What loose grains measure, and which pulses they may be; warnings are to be said first."""

    edition: str
    count: int
    length_mm: float
    width_mm: float
    colour: str
    warnings: list[str]
    ranked: list[RankedOut]
    ask: AskOut | None


@router.post("/photo-readings", response_model=PhotoReading)
async def photo_readings(
    photo: Photo, shelf: ShelfDep, settings: SettingsDep, session: SessionDep,
    scripts: Annotated[str, Form(max_length=100, description="ISO 15924 codes, parted by commas")] = "",
    place: Annotated[str, Form(max_length=2)] = "",
) -> dict[str, Any]:  # fmt: skip
    """The words on a pack read by machine, then as a label; typing the words always works as well."""
    picture = await _picture(photo, settings.largest_photo)
    seen = await run_in_threadpool(words, picture, [one.strip() for one in scripts.split(",") if one.strip()])
    reading = shelf.reader.read(seen.text, (), place) if seen.text.strip() else None
    return {
        "edition": shelf.glossary.edition,
        "text": seen.text,
        "scripts": seen.scripts,
        "words": [{"text": one.text, "box": one.box, "sure": one.sure} for one in seen.words],
        "codes": seen.codes,
        "packs": _packs(session, seen),
        "reading": records.reading_record(reading, shelf.glossary) if reading else None,
    }


@router.post("/grain-photos", response_model=GrainPhoto)
async def grain_photos(
    photo: Photo, shelf: ShelfDep, settings: SettingsDep,
    coin_mm: Annotated[float, Form(ge=10, le=40, description="diameter of the coin beside the grains")],
) -> dict[str, Any]:  # fmt: skip
    """Loose grains beside a coin: measured, and ranked; never a word that they are safe."""
    picture = await _picture(photo, settings.largest_photo)
    found = await run_in_threadpool(measure, picture, coin_mm)
    seen = identify(shelf.glossary, Traits(found.length_mm, found.width_mm, outside=found.colour))
    return {
        "edition": shelf.glossary.edition,
        "count": found.count,
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


def _packs(session: Session, seen: Seen) -> dict[str, str]:
    """Pulse keys of the packs remembered under these barcodes; others are not guessed."""
    out = {}
    for code in seen.codes:
        try:
            pack = repository.recall_pack(session, repository.gtin14(code))
        except (BadInput, Unknown):
            continue
        if pack:
            out[code] = pack.pulse
    return out
