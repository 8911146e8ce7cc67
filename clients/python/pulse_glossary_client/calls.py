"""Every call of the service as a value: method, path, query, body. Shared by both clients."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Call:
    """One request."""

    method: str
    path: str
    query: dict[str, Any] = field(default_factory=dict)
    body: Any = None
    headers: dict[str, str] = field(default_factory=dict)


def _filled(**words: Any) -> dict[str, Any]:
    return {name: value for name, value in words.items() if value not in (None, "", (), [])}


def pulses() -> Call:
    return Call("GET", "/v1/pulses")


def pulse(species: str) -> Call:
    return Call("GET", f"/v1/pulses/{species}")


def languages() -> Call:
    return Call("GET", "/v1/languages")


def names(
    species: str,
    language: str | Sequence[str] = (),
    market_class: str = "",
    form: str = "",
    colour: str = "",
    script: str = "",
) -> Call:
    tags = [language] if isinstance(language, str) else list(language)
    return Call(
        "GET",
        "/v1/names",
        _filled(
            species=species, language=tags, market_class=market_class, form=form, colour=colour, script=script
        ),
    )


def readings(
    text: str | Sequence[str], languages: Sequence[str] = (), place: str = "", each: bool = False
) -> Call:
    body: dict[str, Any] = {"text": text} if isinstance(text, str) else {"texts": list(text)}
    return Call(
        "POST", "/v1/readings", body={**body, **_filled(languages=list(languages), place=place), "each": each}
    )


def guidance(species: str, **kitchen: Any) -> Call:
    return Call("POST", "/v1/guidance", body={"species": species, **kitchen})


def swaps(species: str, **kitchen: Any) -> Call:
    return Call("POST", "/v1/swaps", body={"species": species, **kitchen})


def recipe(text: str, target: str = "", **kitchen: Any) -> Call:
    return Call("POST", "/v1/recipes", body={"text": text, "target": target, **kitchen})


def chat(text: str, state: dict[str, Any] | None = None, language: str = "") -> Call:
    return Call("POST", "/v1/chat-turns", body={"text": text, "state": state or {}, "language": language})


def printed(noun: str, body: dict[str, Any], media: str) -> Call:
    return Call("POST", f"/v1/{noun}", body=body, headers={"Accept": media})


def remember_pack(gtin: str, pulse: str, label: str = "") -> Call:
    return Call("PUT", f"/v1/packs/{gtin}", body={"gtin": gtin, "pulse": pulse, **_filled(label=label)})


def recall_pack(gtin: str) -> Call:
    return Call("GET", f"/v1/packs/{gtin}")


def any_post(noun: str, body: dict[str, Any]) -> Call:
    return Call("POST", f"/v1/{noun}", body=body)
