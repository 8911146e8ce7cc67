"""The words of one language in one script, arranged for composing."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass, field

from ..glossary.kept import kept
from ..glossary.model import Glossary, Pulse, Row
from ..glossary.tags import chain

# Features that make a row another shape of a noun, not its citation form.
SHAPES = frozenset({"gen", "obl", "comb", "adj", "acc", "construct", "def", "sg"})


@dataclass(slots=True)
class Grammar:
    """Rows by what they name; within each list preferred rows first, then in file order."""

    lang: str
    script: str
    bases: dict[str, list[Row]] = field(default_factory=dict)
    shapes: dict[str, list[Row]] = field(default_factory=dict)
    forms: dict[str, list[Row]] = field(default_factory=dict)
    colours: dict[str, list[Row]] = field(default_factory=dict)
    fixed: dict[str, list[tuple[Pulse, Row]]] = field(default_factory=dict)
    patterns: dict[str, list[Row]] = field(default_factory=dict)
    sandhi: list[tuple[str, str]] = field(default_factory=list)


@kept
def grammar(glossary: Glossary, lang: str, script: str) -> Grammar:
    """The grammar of a language (BCP 47 tag, with or without region) in a script.

    Rows of the region come before rows of the language; nothing crosses scripts.
    """
    built = Grammar(lang, script)
    for row in _rows_of(glossary, lang, script):
        _place(built, row)
    return built


@kept
def scripts(glossary: Glossary, lang: str) -> tuple[str, ...]:
    """Scripts the language's names are written in, its own first."""
    found = dict.fromkeys(row.script for row in _own_rows(glossary, lang) if row.kind in ("base", "fixed"))
    found.pop("Zyyy", None)
    return tuple(sorted(found, key=lambda script: script == "Latn"))


def _own_rows(glossary: Glossary, lang: str) -> list[Row]:
    wanted = {tag: place for place, tag in enumerate(chain(lang))}
    tag = next((tag for tag in wanted if tag in glossary.rows), None)
    rows = glossary.rows[tag] if tag else ()
    kept = [row for row in rows if row.lang in wanted and row.status != "retired"]
    return sorted(kept, key=lambda row: wanted[row.lang])


def _rows_of(glossary: Glossary, lang: str, script: str) -> Iterable[Row]:
    rows = [
        row for row in _own_rows(glossary, lang) if row.use != "decode" and row.script in (script, "Zyyy")
    ]
    places = {row.lang: place for place, row in reversed(list(enumerate(rows)))}
    return sorted(rows, key=lambda row: (row.use != "preferred", places[row.lang]))


def _place(built: Grammar, row: Row) -> None:
    if row.kind == "base":
        known = built.bases.get(row.ref)
        # A plural beside a singular is a shape; a noun only ever plural is its own citation form.
        plural_twin = "pl" in row.agrees and known is not None and "pl" not in known[0].agrees
        if row.agrees & SHAPES or plural_twin:
            built.shapes.setdefault(row.ref, []).append(row)
        else:
            built.bases.setdefault(row.ref, []).append(row)
    elif row.kind == "form":
        built.forms.setdefault(row.ref, []).append(row)
    elif row.kind == "colour":
        built.colours.setdefault(row.ref, []).append(row)
    elif row.kind == "fixed":
        pulse = Pulse.of(row.ref)
        built.fixed.setdefault(pulse.species, []).append((pulse, row))
    elif row.kind == "pattern" and row.ref == "sandhi":
        left, _, right = row.text.partition(" -> ")
        built.sandhi.append((left, right))
    elif row.kind == "pattern":
        built.patterns.setdefault(row.ref, []).append(row)


@kept
def combinations(glossary: Glossary) -> dict[str, tuple[tuple[Pulse, float], ...]]:
    """What is sold, by species: (pulse, share)."""
    found: dict[str, list[tuple[Pulse, float]]] = defaultdict(list)
    for sold in glossary.sold:
        found[sold.pulse.species].append((sold.pulse, sold.share))
    return {species: tuple(pulses) for species, pulses in found.items()}
