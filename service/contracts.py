"""The batch contracts: a record in, a record out, as plain values. Pure; the same for commands and programs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from .errors import BadInput
from .glossary import find
from .glossary.model import Glossary, Pulse
from .kitchen import Guidance, Kitchen, Member, Plan, as_line, guide, kitchen_of, mixed
from .label import Reader, Reading
from .naming import Name, compose

Record = Mapping[str, Any]


def read_line(record: Record, reader: Reader) -> dict[str, Any]:
    """`{"id","text","place"?,"languages"?}` to `{"id","verdict","readings","none","question"}`."""
    text = wanted(record, "text")
    languages = record.get("languages") or ()
    if isinstance(languages, str) or not all(isinstance(one, str) for one in languages):
        raise BadInput("languages", languages, "must be a list of BCP 47 tags")
    reading = reader.read(text, tuple(languages), wanted(record, "place", ""))
    return {"id": record.get("id"), **reading_record(reading, reader.glossary)}


def reading_record(reading: Reading, glossary: Glossary) -> dict[str, Any]:
    """The part of a reading that the batch contract fixes."""
    return {
        "verdict": reading.verdict,
        "readings": [
            {**pulse_record(one.pulse, glossary), "probability": round(one.probability, 4)}
            for one in reading.readings
        ],
        "none": round(reading.none, 4),
        "question": question_record(reading),
    }


def question_record(reading: Reading) -> dict[str, Any] | None:
    """The settling question as plain values, or None."""
    asked = reading.question
    if asked is None:
        return None
    return {
        "id": asked.id,
        "text": asked.text,
        "answers": [{"text": one.text, "pulses": list(one.pulses)} for one in asked.answers],
    }


def pulse_record(pulse: Pulse, glossary: Glossary) -> dict[str, str]:
    """A pulse with its Latin name written out."""
    return {
        "species": glossary.species[pulse.species].latin,
        "market_class": pulse.market_class,
        "form": pulse.form,
        "colour": pulse.colour,
    }


def name_line(record: Record, glossary: Glossary) -> dict[str, Any]:
    """`{"id","species","market_class"?,"form","colour"?,"language","script"?}` to `{"id","names"}`."""
    pulse = pulse_of(record, glossary)
    tag = find.language(glossary, wanted(record, "language"))
    names = compose(glossary, pulse, tag, wanted(record, "script", ""))
    return {"id": record.get("id"), "names": [name_record(one) for one in names]}


def name_record(name: Name) -> dict[str, str]:
    """One name as the batch contract has it."""
    return {
        "text": name.text,
        "script": name.script,
        "romanised": name.romanised,
        "use": name.use,
        "status": name.status,
    }


def cook_line(record: Record, glossary: Glossary) -> dict[str, Any]:
    """`{"id","species","market_class"?,"form", kitchen...}` to `{"id","minutes",...,"cautions","sources"}`."""
    guidance = guidance_for(glossary, pulse_of(record, glossary), kitchen_of(record))
    return {"id": record.get("id"), **as_line(guidance)}


def guidance_for(glossary: Glossary, pulse: Pulse, kitchen: Kitchen) -> Guidance:
    """Guidance with the figures and hazards the glossary has of the species."""
    species = glossary.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def plan_for(glossary: Glossary, members: Iterable[tuple[str, float]], kitchen: Kitchen) -> Plan:
    """One pot of several pulses, each a key and its grams dry."""
    found = [(find.by_key(glossary, key), grams) for key, grams in members]
    species = glossary.species
    return mixed(
        [
            Member(pulse, species[pulse.species].cooking, grams, species[pulse.species].hazards)
            for pulse, grams in found
        ],
        kitchen,
    )


def pulse_of(record: Record, glossary: Glossary) -> Pulse:
    """The pulse a record speaks of."""
    return find.pulse(
        glossary,
        wanted(record, "species"),
        wanted(record, "market_class", ""),
        wanted(record, "form", ""),
        wanted(record, "colour", ""),
    )


def wanted(record: Record, field: str, default: str | None = None) -> str:
    """A text field of a record; null counts as left out."""
    value = record.get(field)
    if value is None:
        if default is None:
            raise BadInput(field, None, "is missing")
        return default
    if not isinstance(value, str):
        raise BadInput(field, value, "must be text")
    return value
