"""Every call of the service as a value: method, path, query, body, and what of its answer is wanted."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import Any
from urllib.parse import quote


def _all(answer: Any) -> Any:
    return answer


@dataclass(frozen=True, slots=True)
class Call:
    """One request. `files` and `form` are sent as a form of parts; `pick` takes what is wanted out of the answer."""

    method: str
    path: str
    query: dict[str, Any] = field(default_factory=dict)
    body: Any = None
    headers: dict[str, str] = field(default_factory=dict)
    files: dict[str, bytes] = field(default_factory=dict)
    form: dict[str, Any] = field(default_factory=dict)
    pick: Callable[[Any], Any] = _all


def _filled(**words: Any) -> dict[str, Any]:
    return {name: value for name, value in words.items() if value not in (None, "", (), [])}


def _once(key: str) -> dict[str, str]:
    return {"Idempotency-Key": key} if key else {}


def pulses() -> Call:
    return Call("GET", "/v1/pulses")


def pulse(species: str) -> Call:
    return Call("GET", f"/v1/pulses/{quote(species, safe='')}")


def drawing(species: str, **words: Any) -> Call:
    return Call("GET", f"/v1/pulses/{quote(species, safe='')}/drawing", _filled(**words))


def languages() -> Call:
    return Call("GET", "/v1/languages")


def glossary(format: str = "json") -> Call:
    return Call("GET", "/v1/glossary", {"format": format})


def names(species: str, language: str | Sequence[str] = (), **parts: str) -> Call:
    tags = [language] if isinstance(language, str) else list(language)
    return Call("GET", "/v1/names", _filled(species=species, language=tags, **parts))


def readings(
    texts: Sequence[str], languages: Sequence[str] = (), place: str = "", each: bool = False
) -> Call:
    """Readings of labels in order: of each label a list, one for each product it names where `each` is set."""
    body = {"texts": list(texts), **_filled(languages=list(languages), place=place), "each": each}
    pick = (
        (lambda answer: answer["answers"]) if each else lambda answer: [one[0] for one in answer["answers"]]
    )
    return Call("POST", "/v1/readings", body=body, pick=pick)


def reading(text: str, languages: Sequence[str] = (), place: str = "") -> Call:
    many = readings([text], languages, place)
    return Call(many.method, many.path, body=many.body, pick=lambda answer: answer["answers"][0][0])


def photo_reading(photo: bytes, scripts: Sequence[str] = (), place: str = "") -> Call:
    form = _filled(scripts=",".join(scripts), place=place)
    return Call("POST", "/v1/photo-readings", files={"photo": photo}, form=form)


def grain_reading(**traits: Any) -> Call:
    return Call("POST", "/v1/grain-readings", body=traits)


def grain_photo(photo: bytes, coin_mm: float | None = None) -> Call:
    return Call("POST", "/v1/grain-photos", files={"photo": photo}, form=_filled(coin_mm=coin_mm))


def guidance(species: str, **kitchen: Any) -> Call:
    return Call("POST", "/v1/guidance", body={"species": species, **kitchen})


def swaps(species: str, **kitchen: Any) -> Call:
    return Call("POST", "/v1/swaps", body={"species": species, **kitchen})


def pot(members: dict[str, float], **kitchen: Any) -> Call:
    """`members` are keys of pulses and their grams dry."""
    each = [{"pulse": key, "dry_g": grams} for key, grams in members.items()]
    return Call("POST", "/v1/pots", body={"members": each, **kitchen})


def schedule(
    species: str, ready: str, zone: str = "", media: str = "application/json", **kitchen: Any
) -> Call:
    body = {"species": species, "ready": ready, "zone": zone, **kitchen}
    return Call("POST", "/v1/schedules", body=body, headers={"Accept": media})


def recipe(text: str, target: str = "", **kitchen: Any) -> Call:
    return Call("POST", "/v1/recipes", body={"text": text, "target": target, **kitchen})


def chat(text: str, state: dict[str, Any] | None = None, language: str = "") -> Call:
    return Call("POST", "/v1/chat-turns", body={"text": text, "state": state or {}, "language": language})


def printed(noun: str, body: dict[str, Any], media: str = "application/pdf") -> Call:
    return Call("POST", f"/v1/{noun}", body=body, headers={"Accept": media})


def atlas(languages: Sequence[str] = (), pulses: Sequence[str] = ()) -> Call:
    """A sheet of names for every few languages; the answer is a line of JSON for each."""
    return Call("POST", "/v1/atlases", body={"languages": list(languages), "pulses": list(pulses)})


def remember_pack(gtin: str, pulse: str, label: str = "") -> Call:
    return Call("PUT", f"/v1/packs/{gtin}", body={"gtin": gtin, "pulse": pulse, **_filled(label=label)})


def recall_pack(gtin: str) -> Call:
    return Call("GET", f"/v1/packs/{gtin}")


def suggest(once: str = "", **suggestion: Any) -> Call:
    """`once` is an idempotency key: the same one again gives the same answer and stores nothing new."""
    return Call("POST", "/v1/suggestions", body=suggestion, headers=_once(once))


def suggestions(status: str = "open", after: int = 0, most: int = 50) -> Call:
    return Call("GET", "/v1/suggestions", {"status": status, "after": after, "most": most})


def decide(number: int, verdict: str, reason: str, once: str = "") -> Call:
    body = {"verdict": verdict, "reason": reason}
    return Call("POST", f"/v1/suggestions/{number}/decisions", body=body, headers=_once(once))


def decisions(number: int) -> Call:
    return Call("GET", f"/v1/suggestions/{number}/decisions")


def accepted_diff() -> Call:
    return Call("GET", "/v1/suggestions.diff")


def ready() -> Call:
    return Call("GET", "/readyz")
