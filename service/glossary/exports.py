"""The glossary written for other programs: CSV, JSON, SKOS in Turtle, TBX. Pure: text out."""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import asdict
from itertools import chain
from xml.sax.saxutils import escape, quoteattr

from .model import COLUMNS, RECALLED, Glossary, Pulse, Row
from .rows import cells_of, write_rows

SCHEME = "urn:pulse-glossary:"
PREFIXES = (
    "@prefix skos: <http://www.w3.org/2004/02/skos/core#> .\n"
    "@prefix skosxl: <http://www.w3.org/2008/05/skos-xl#> .\n"
    "@prefix dct: <http://purl.org/dc/terms/> .\n"
    f"@prefix pg: <{SCHEME}> .\n"
)
# ISO 30042 administrative statuses: preferred, admitted, and spellings that are read but never written.
TBX_STATUS = {
    "preferred": "preferredTerm-admn-sts",
    "also": "admittedTerm-admn-sts",
    "decode": "deprecatedTerm-admn-sts",
}


def to_csv(glossary: Glossary) -> str:
    """Every row of every language under one head."""
    return write_rows(list(glossary.all_rows)).decode("utf-8")


def to_json(glossary: Glossary) -> str:
    """Species with their figures, rows, vocabulary and sources in one document."""
    species = {}
    for slug, one in glossary.species.items():
        species[slug] = {
            "latin": one.latin, "authority": one.authority, "family": one.family, "english": one.english,
            "standing": one.standing, "synonyms": one.synonyms, "codes": dict(one.codes), "source": one.source,
            "market_classes": [asdict(each) for each in one.market_classes],
            "sold": [{"key": each.pulse.key, "share": each.share, "source": each.source} for each in one.sold],
            "grains": [{**asdict(each), "pulse": each.pulse.key} for each in one.grains],
            "hazards": [asdict(each) for each in one.hazards],
            "look_alikes": [asdict(each) for each in one.look_alikes],
            "adulterants": [asdict(each) for each in one.adulterants],
        }  # fmt: skip
    document = {
        "edition": glossary.edition,
        "species": species,
        "columns": COLUMNS,
        "rows": [cells_of(row) for row in glossary.all_rows],
        "vocabulary": {table: dict(words) for table, words in glossary.vocabulary.items()},
        "sources": {key: dict(facts) for key, facts in glossary.sources.items()},
    }
    return json.dumps(document, ensure_ascii=False, indent=1)


def tag_of(row: Row, own: str) -> str:
    """The BCP 47 tag of a row's text: with its script where that is not the language's own."""
    if row.script in (own, "Zyyy"):
        return row.lang
    parts = row.lang.split("-")
    region = [part for part in parts[1:] if len(part) != 4]
    return "-".join([parts[0], row.script, *region])


def own_script(rows: tuple[Row, ...]) -> str:
    """The script a language's nouns are first written in."""
    return next((row.script for row in rows if row.kind in ("base", "fixed")), "Latn")


def to_skos(glossary: Glossary) -> Iterator[str]:
    """SKOS in Turtle, in pieces: species, market classes and trade pulses as concepts.

    Preferred rows are skos:prefLabel, alternatives skos:altLabel, spellings only read
    skos:hiddenLabel; every label also stands as a SKOS-XL label with its source and status.
    """
    yield PREFIXES
    yield f'\n<{SCHEME}glossary> a skos:ConceptScheme ; dct:title "Dried pulses"@en ; dct:identifier "{glossary.edition}" .\n'
    named = _labels(glossary)
    for key in sorted(set(named) | set(_keys(glossary))):
        yield _concept(glossary, key, named.get(key, []))


def _keys(glossary: Glossary) -> Iterator[str]:
    for slug, one in glossary.species.items():
        yield slug
        yield from (f"{slug}/{each.id}" for each in one.market_classes)


def _labels(glossary: Glossary) -> dict[str, list[tuple[str, Row]]]:
    """Rows by concept with their tags, preferred ones first."""
    found: dict[str, list[tuple[str, Row]]] = defaultdict(list)
    for rows in glossary.rows.values():
        own = own_script(rows)
        for row in rows:
            if row.kind in ("base", "fixed") and row.status != "retired":
                found[row.ref].append((tag_of(row, own), row))
    order = {"preferred": 0, "also": 1, "decode": 2}
    return {key: sorted(rows, key=lambda one: order.get(one[1].use, 3)) for key, rows in found.items()}


def _concept(glossary: Glossary, key: str, labels: list[tuple[str, Row]]) -> str:
    pulse = Pulse.of(key)
    species = glossary.species[pulse.species]
    lines = [f"\n<{SCHEME}{key}> a skos:Concept ; skos:inScheme pg:glossary ; skos:notation {_text(key)}"]
    if "/" not in key:
        lines.append(f"skos:topConceptOf pg:glossary ; skos:prefLabel {_text(species.latin)}@la")
        lines.append(
            f"skos:definition {_text(f'{species.english}, {species.latin} {species.authority}'.strip())}@en"
        )
        lines.append(f"dct:source {_text(_said(glossary, species.source))}")
    else:
        upper = (
            f"{pulse.species}/{pulse.market_class}"
            if pulse.market_class and key.count("/") > 1
            else pulse.species
        )
        lines.append(f"skos:broader <{SCHEME}{upper}>")
    written: dict[tuple[str, str], str] = {}
    preferred: set[str] = {"la"} if "/" not in key else set()
    notes = []
    for tag, row in labels:
        if (tag, row.text) in written:
            continue
        kind = {"preferred": "prefLabel", "also": "altLabel"}.get(row.use, "hiddenLabel")
        if kind == "prefLabel" and tag in preferred:
            kind = "altLabel"
        if kind == "prefLabel":
            preferred.add(tag)
        written[tag, row.text] = kind
        lines.append(f"skos:{kind} {_text(row.text)}@{tag}")
        lines.append(f"skosxl:{kind} {_xl(glossary, tag, row)}")
        if row.note:
            notes.append(f"skos:note {_text(f'{row.text}: {row.note}')}@en")
    return " ;\n  ".join(chain(lines, dict.fromkeys(notes))) + " .\n"


def _xl(glossary: Glossary, tag: str, row: Row) -> str:
    source = _said(glossary, row.source)
    return (
        f"[ a skosxl:Label ; skosxl:literalForm {_text(row.text)}@{tag} ; "
        f"dct:source {_text(source)} ; skos:editorialNote {_text(row.status)}@en ]"
    )


def _said(glossary: Glossary, source: str) -> str:
    if source in RECALLED:
        return source
    facts = glossary.sources[source]
    return f"{facts.get('title', source)} ({facts.get('publisher', '')}, {facts.get('year', '')})"


def _text(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'


def to_tbx(glossary: Glossary) -> Iterator[str]:
    """TBX-Basic in DCA style (ISO 30042:2019), in pieces: one conceptEntry for each named thing."""
    yield (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        '<tbx type="TBX-Basic" style="dca" xml:lang="en" xmlns="urn:iso:std:iso:30042:ed-2">\n'
        "<tbxHeader><fileDesc><titleStmt><title>Dried pulses</title></titleStmt>"
        f"<sourceDesc><p>pulse-glossary, edition {glossary.edition}</p></sourceDesc></fileDesc></tbxHeader>\n<text><body>\n"
    )
    for key, labels in sorted(_labels(glossary).items()):
        yield _entry(glossary, key, labels)
    yield "</body></text>\n</tbx>\n"


def _entry(glossary: Glossary, key: str, labels: list[tuple[str, Row]]) -> str:
    species = glossary.species[Pulse.of(key).species]
    by_tag: dict[str, list[Row]] = defaultdict(list)
    for tag, row in labels:
        by_tag[tag].append(row)
    sections = "".join(
        f"<langSec xml:lang={quoteattr(tag)}>{''.join(_term(glossary, row) for row in rows)}</langSec>\n"
        for tag, rows in by_tag.items()
    )
    name = "c-" + key.replace("/", ".")
    subject = escape(f"{species.latin}: {key}")
    return f'<conceptEntry id={quoteattr(name)}><descrip type="subjectField">{subject}</descrip>\n{sections}</conceptEntry>\n'


def _term(glossary: Glossary, row: Row) -> str:
    note = f"<note>{escape(row.note)}</note>" if row.note else ""
    return (
        f"<termSec><term>{escape(row.text)}</term>"
        f'<termNote type="administrativeStatus">{TBX_STATUS.get(row.use, TBX_STATUS["decode"])}</termNote>'
        f'<admin type="source">{escape(_said(glossary, row.source))}</admin>{note}</termSec>'
    )
