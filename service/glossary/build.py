"""Files in, glossary out. Pure: whoever calls has read the files."""

from __future__ import annotations

import csv
import hashlib
import io
import tomllib
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from ..errors import GlossaryFault
from . import cooking
from .model import (
    Adulterant,
    Glossary,
    Grain,
    Hazard,
    LookAlike,
    MarketClass,
    Pulse,
    Range,
    Row,
    Sold,
    Species,
)
from .rows import Finding, read_rows

CODES = ("hs", "fao", "eppo", "usda")


def build(files: Mapping[str, bytes]) -> Glossary:
    """The glossary of these files (path under glossary_data -> bytes).

    Raises GlossaryFault with every finding of shape; what a row says is judged by `checks`.
    """
    findings: list[Finding] = []
    tables = {
        path: _toml(path, data, findings) for path, data in sorted(files.items()) if path.endswith(".toml")
    }
    species: dict[str, Species] = {}
    for path, table in tables.items():
        if path.startswith("pulses/"):
            try:
                one = _species(path, table)
            except (KeyError, TypeError, ValueError) as error:
                findings.append(
                    Finding(path, 1, 1, f"cannot be read ({_said(error)}); see glossary_data/README.md")
                )
                continue
            species[one.id] = one
    rows: dict[str, tuple[Row, ...]] = {}
    for path, data in sorted(files.items()):
        if path.startswith("names/") and path.endswith(".csv"):
            found, faults = read_rows(path, data)
            findings += faults
            rows[path.removeprefix("names/").removesuffix(".csv")] = tuple(found)
    for needed in ("vocabulary.toml", "sources.toml"):
        if needed not in tables:
            findings.append(Finding(needed, 1, 1, "missing; put the file back"))
    if findings:
        raise GlossaryFault(sorted(findings))
    return Glossary(
        edition=_edition(files),
        species=MappingProxyType(species),
        rows=MappingProxyType(rows),
        vocabulary=MappingProxyType(tables["vocabulary.toml"]),
        sources=MappingProxyType(tables["sources.toml"]),
        retired=MappingProxyType(_retired(files.get("retired.csv", b""))),
    )


def _said(error: Exception) -> str:
    return f"no {error.args[0]}" if isinstance(error, KeyError) else str(error)


def _edition(files: Mapping[str, bytes]) -> str:
    digest = hashlib.sha256()
    for path, data in sorted(files.items()):
        digest.update(path.encode() + b"\0" + hashlib.sha256(data).digest())
    return digest.hexdigest()[:16]


def _toml(path: str, data: bytes, findings: list[Finding]) -> dict[str, Any]:
    try:
        return tomllib.loads(data.decode("utf-8"))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError) as error:
        findings.append(Finding(path, _line_of(error), 1, f"not TOML ({error}); mend the line"))
        return {}


def _line_of(error: Exception) -> int:
    words = str(error).replace(",", "").split()
    return next(
        (
            int(words[at + 1])
            for at, word in enumerate(words[:-1])
            if word == "line" and words[at + 1].isdigit()
        ),
        1,
    )


def _retired(data: bytes) -> dict[str, str]:
    lines = list(csv.reader(io.StringIO(data.decode("utf-8"))))
    return {cells[0]: cells[1] for cells in lines[1:] if len(cells) >= 2}


def _species(path: str, table: Mapping[str, Any]) -> Species:
    head = table["species"]
    slug = head["id"]
    return Species(
        id=slug,
        latin=head["latin"],
        authority=head.get("authority", ""),
        family=head["family"],
        english=head["english"],
        standing=head["standing"],
        synonyms=tuple(head.get("synonyms", ())),
        codes=MappingProxyType({code: _strings(head[code]) for code in CODES if head.get(code)}),
        source=head["source"],
        market_classes=tuple(_market_class(one) for one in table.get("market_class", ())),
        sold=tuple(_sold(slug, one) for one in table["sold"]),
        grains=tuple(_grain(slug, one) for one in table.get("grain", ())),
        hazards=tuple(_hazard(one) for one in table.get("hazard", ())),
        look_alikes=tuple(
            LookAlike(one["key"], one["tell"], one["source"]) for one in table.get("look_alike", ())
        ),
        adulterants=tuple(_adulterant(one) for one in table.get("adulterant", ())),
        cooking=cooking.parse(table, path),
        file=path,
    )


def _strings(value: Any) -> tuple[str, ...]:
    return (value,) if isinstance(value, str) else tuple(value)


def _market_class(one: Mapping[str, Any]) -> MarketClass:
    return MarketClass(one["id"], one["english"], _strings(one.get("usda", ())), one["source"])


def _sold(slug: str, one: Mapping[str, Any]) -> Sold:
    pulse = Pulse(slug, one.get("market_class", ""), one["form"], one.get("colour", ""))
    return Sold(pulse, float(one.get("share", 1.0)), one["source"])


def _range(value: Any) -> Range | None:
    if value is None:
        return None
    low, high = (value, value) if isinstance(value, int | float) else value
    if not 0 < low <= high:
        raise ValueError(f"the range {value} must run from a low above 0 to a high")
    return float(low), float(high)


def _grain(slug: str, one: Mapping[str, Any]) -> Grain:
    return Grain(
        pulse=Pulse(slug, one.get("market_class", ""), one["form"], one.get("colour", "")),
        length_mm=_range(one.get("length_mm")),
        width_mm=_range(one.get("width_mm")),
        thickness_mm=_range(one.get("thickness_mm")),
        g_per_1000=_range(one.get("g_per_1000")),
        g_per_cup=_range(one.get("g_per_cup")),
        shape=one.get("shape", ""),
        surface=one.get("surface", ""),
        eye=one.get("eye", ""),
        inside=one.get("inside", ""),
        source=one["source"],
    )


def _hazard(one: Mapping[str, Any]) -> Hazard:
    return Hazard(
        one["id"],
        _strings(one.get("applies", ())),
        one.get("severity", "caution"),
        one["text"],
        one["source"],
    )


def _adulterant(one: Mapping[str, Any]) -> Adulterant:
    return Adulterant(
        one.get("key") or one.get("name", ""), one.get("in_form", ""), one.get("how", ""), one["source"]
    )
