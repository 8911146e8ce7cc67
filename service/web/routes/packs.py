"""Remembered packs: what is in the bag with this number."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Path

from ...errors import Unknown
from ...glossary import find
from ...store import repository
from .. import records, shapes
from ..dependencies import SessionDep, ShelfDep

router = APIRouter(tags=["packs"])
Gtin = Annotated[str, Path(min_length=8, max_length=14, pattern="^[0-9]+$")]


@router.put("/packs/{gtin}", response_model=shapes.PackOut)
def remember(gtin: Gtin, pack: shapes.PackIn, shelf: ShelfDep, session: SessionDep) -> dict[str, Any]:
    """Remember what a pack holds; raises a problem where the check digit is wrong."""
    pulse = find.by_key(shelf.glossary, pack.pulse)
    one = repository.remember_pack(session, gtin, pulse.key, pack.label)
    return {
        "gtin": one.gtin,
        "pulse": records.pulse_record(pulse, shelf.glossary),
        "label": one.label,
        "status": one.status,
    }


@router.get("/packs/{gtin}", response_model=shapes.PackOut)
def recall(gtin: Gtin, shelf: ShelfDep, session: SessionDep) -> dict[str, Any]:
    """What a remembered pack holds."""
    one = repository.recall_pack(session, gtin)
    if one is None:
        raise Unknown("pack", gtin)
    pulse = find.by_key(shelf.glossary, one.pulse)
    return {
        "gtin": one.gtin,
        "pulse": records.pulse_record(pulse, shelf.glossary),
        "label": one.label,
        "status": one.status,
    }
