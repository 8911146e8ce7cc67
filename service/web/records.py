"""Values of the core in, plain values of the shapes out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict
from typing import Any

from ..glossary.model import Glossary, Pulse, Species
from ..grain import Identification
from ..kitchen import Caution, Fill
from ..label import Reading
from ..naming import Name
from ..talk import Tongue


def pulse_record(pulse: Pulse, glossary: Glossary) -> dict[str, str]:
    """As `PulseShape`."""
    species = glossary.species[pulse.species]
    return {
        "key": pulse.key,
        "species": species.latin,
        "english": species.english,
        "market_class": pulse.market_class,
        "form": pulse.form,
        "colour": pulse.colour,
    }


def caution_records(cautions: Iterable[Caution], speaks: Tongue) -> list[dict[str, str]]:
    """As `CautionOut`, in the language spoken."""
    return [
        {"id": one.id, "severity": one.severity, "text": speaks.translate(one.text), "source": one.source}
        for one in cautions
    ]


def fill_record(fill: Fill | None) -> dict[str, float] | None:
    """As `FillOut`."""
    return {"limit": fill.limit, "batches": fill.batches, "batch_g": fill.batch_g} if fill else None


def grains_record(found: Identification, glossary: Glossary) -> dict[str, Any]:
    """What grains may be and the next question, as in the answers of grain readings and grain photos."""
    ask = found.ask
    return {
        "warnings": list(found.warnings),
        "settled": found.settled,
        "stop": found.stop,
        "ranked": [
            {
                **pulse_record(one.pulse, glossary),
                "probability": one.probability,
                "poison": one.poison,
            }
            for one in found.ranked
        ],
        "ask": {"trait": ask.trait, "text": ask.text, "answers": list(ask.answers), "bits": ask.bits}
        if ask
        else None,
    }


def reading_record(reading: Reading, glossary: Glossary) -> dict[str, Any]:
    """As `ReadingShape`."""
    return {
        "verdict": reading.verdict,
        "readings": [
            {**pulse_record(one.pulse, glossary), "probability": round(one.probability, 4)}
            for one in reading.readings
        ],
        "none": round(reading.none, 4),
        "used": [
            {
                "start": one.start,
                "end": one.end,
                "text": one.text,
                "kind": one.kind,
                "ref": one.ref,
                "language": one.lang,
                "how": one.how,
                "trust": one.trust,
            }
            for one in reading.used
        ],
        "unread": [list(one) for one in reading.unread],
        "look_alikes": [
            {"key": one.key, "tell": one.tell, "source": one.source, "danger": one.danger}
            for one in reading.look_alikes
        ],
        "question": question_record(reading),
        "languages": list(reading.languages),
    }


def question_record(reading: Reading) -> dict[str, Any] | None:
    """As `QuestionShape`."""
    asked = reading.question
    if asked is None:
        return None
    answers = [{"text": one.text, "pulses": list(one.pulses)} for one in asked.answers]
    return {"id": asked.id, "text": asked.text, "answers": answers}


def name_record(name: Name) -> dict[str, Any]:
    """As `NameShape`."""
    return {
        "text": name.text,
        "script": name.script,
        "language": name.lang,
        "romanised": name.romanised,
        "use": name.use,
        "status": name.status,
        "sources": list(name.sources),
    }


def species_record(species: Species, glossary: Glossary) -> dict[str, Any]:
    """As `SpeciesAnswer`, without the edition."""
    return {
        "id": species.id,
        "latin": species.latin,
        "authority": species.authority,
        "family": species.family,
        "english": species.english,
        "standing": species.standing,
        "synonyms": list(species.synonyms),
        "codes": {code: list(values) for code, values in species.codes.items()},
        "source": species.source,
        "market_classes": [asdict(one) for one in species.market_classes],
        "sold": [pulse_record(one.pulse, glossary) for one in species.sold],
        "grains": [{**asdict(one), "pulse": one.pulse.key} for one in species.grains],
        "hazards": [asdict(one) for one in species.hazards],
        "look_alikes": [
            {**asdict(one), "danger": glossary.species[Pulse.of(one.key).species].standing == "poison"}
            for one in species.look_alikes
        ],
        "adulterants": [asdict(one) for one in species.adulterants],
    }
