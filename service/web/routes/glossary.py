"""Pulses, languages and names."""

from __future__ import annotations

from typing import Annotated, Any

from fastapi import APIRouter, Header, Query
from fastapi.responses import Response

from ...errors import BadInput
from ...glossary import find
from ...glossary.exports import to_csv, to_json, to_skos, to_tbx
from ...glossary.model import FORMS
from ...glossary.tags import accepted
from ...naming import compose
from .. import records, shapes
from ..dependencies import ShelfDep

router = APIRouter(tags=["glossary"])


@router.get("/pulses", response_model=shapes.PulsesAnswer)
async def pulses(shelf: ShelfDep) -> dict[str, Any]:
    """Every species, with its market classes and the forms it is sold in."""
    glossary = shelf.glossary
    listed = []
    for one in glossary.species.values():
        forms = {sold.pulse.form for sold in one.sold}
        listed.append(
            {
                "id": one.id,
                "latin": one.latin,
                "english": one.english,
                "standing": one.standing,
                "market_classes": [each.id for each in one.market_classes],
                "forms": [form for form in FORMS if form in forms],
            }
        )
    return {"edition": glossary.edition, "pulses": listed}


@router.get("/pulses/{species}", response_model=shapes.SpeciesAnswer)
async def pulse(species: str, shelf: ShelfDep) -> dict[str, Any]:
    """One species by Latin name, slug or synonym, with sizes, hazards and look-alikes."""
    glossary = shelf.glossary
    one = glossary.species[find.species(glossary, species)]
    return {"edition": glossary.edition, **records.species_record(one, glossary)}


@router.get("/languages", response_model=shapes.LanguagesAnswer)
def languages(shelf: ShelfDep) -> dict[str, Any]:
    """Every language, and how far its names go."""
    listed = [
        {
            "tag": one.lang,
            "scripts": list(one.scripts),
            "rows": one.rows,
            "checked": round(one.checked, 4),
            "full": one.full,
            "named": round(one.named, 4),
        }
        for one in shelf.coverage()
    ]
    return {"edition": shelf.glossary.edition, "languages": listed}


@router.get("/names", response_model=shapes.NamesAnswer)
async def names(
    shelf: ShelfDep,
    species: Annotated[str, Query(max_length=80, examples=["Vigna mungo"])],
    market_class: Annotated[str, Query(max_length=60)] = "",
    form: Annotated[str, Query(max_length=30, examples=["split-dehulled"])] = "",
    colour: Annotated[str, Query(max_length=20)] = "",
    language: Annotated[list[str] | None, Query(max_length=80, examples=[["hi", "ta"]])] = None,
    script: Annotated[str, Query(max_length=4)] = "",
    accept_language: Annotated[str, Header(max_length=400)] = "",
) -> dict[str, Any]:
    """Names of a pulse in the languages asked for, else in those the reader accepts, else in all."""
    glossary = shelf.glossary
    one = find.pulse(glossary, species, market_class, form, colour)
    asked = [find.language(glossary, tag) for tag in language or ()]
    tags = asked or list(accepted(accept_language, glossary.rows)) or list(glossary.rows)
    found = {tag: [records.name_record(name) for name in compose(glossary, one, tag, script)] for tag in tags}
    return {"edition": glossary.edition, "pulse": records.pulse_record(one, glossary), "names": found}


EXPORTS = {
    "text/csv": lambda glossary: to_csv(glossary),
    "application/json": lambda glossary: to_json(glossary),
    "text/turtle": lambda glossary: "".join(to_skos(glossary)),
    "application/x-tbx+xml": lambda glossary: "".join(to_tbx(glossary)),
}
SHORT = {"csv": "text/csv", "json": "application/json", "skos": "text/turtle", "tbx": "application/x-tbx+xml"}


@router.get(
    "/glossary", response_class=Response, responses={200: {"content": {media: {} for media in EXPORTS}}}
)
def whole(
    shelf: ShelfDep,
    format: Annotated[str, Query(max_length=8, examples=["skos"], description="csv, json, skos or tbx")] = "",
    accept: Annotated[str, Header(max_length=200)] = "",
) -> Response:
    """The whole glossary as CSV, JSON, SKOS Turtle or TBX, by `format` or by Accept."""
    if format and format not in SHORT:
        raise BadInput("format", format, f"use one of {', '.join(SHORT)}")
    media = SHORT.get(format) or next((one for one in EXPORTS if one in accept), "application/json")
    kept = shelf.kept.setdefault("exports", {})
    if media not in kept:
        kept[media] = EXPORTS[media](shelf.glossary).encode("utf-8")
    return Response(kept[media], media_type=media)
