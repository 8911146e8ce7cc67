"""The glossary in other shapes, each read by a general reader of that standard."""

from __future__ import annotations

import csv
import io
import json
from collections import Counter
from dataclasses import replace
from types import MappingProxyType
from xml.etree import ElementTree

import pytest
from pyshacl import validate
from rdflib import Graph
from rdflib.namespace import SKOS

from service.glossary.exports import to_csv, to_json, to_skos, to_tbx
from service.glossary.model import COLUMNS, Glossary
from service.glossary.tags import TAG

TBX = "{urn:iso:std:iso:30042:ed-2}"
XML = "{http://www.w3.org/XML/1998/namespace}"
# SKOS integrity as shapes: concepts stand in a scheme, have a preferred label, and one at most in a language (S14).
SHAPES = """
@prefix sh: <http://www.w3.org/ns/shacl#> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
[] a sh:NodeShape ; sh:targetClass skos:Concept ;
  sh:property [ sh:path skos:prefLabel ; sh:uniqueLang true ] ;
  sh:property [ sh:path skos:inScheme ; sh:minCount 1 ; sh:class skos:ConceptScheme ] ;
  sh:property [ sh:path skos:notation ; sh:minCount 1 ; sh:maxCount 1 ] ;
  sh:property [ sh:path skos:broader ; sh:class skos:Concept ; sh:maxCount 1 ] ;
  sh:property [ sh:path skos:altLabel ; sh:disjoint skos:prefLabel ] ;
  sh:property [ sh:path skos:hiddenLabel ; sh:disjoint skos:prefLabel ] ;
  sh:property [ sh:path skos:hiddenLabel ; sh:disjoint skos:altLabel ] .
"""


@pytest.fixture(scope="module")
def few(glossary: Glossary) -> Glossary:
    """The glossary with some of its languages: general readers take their time."""
    tags = ("hi", "ta", "ar", "es", "ja", "am", "sr")
    return replace(glossary, rows=MappingProxyType({tag: glossary.rows[tag] for tag in tags}))


def test_skos_keeps_the_integrity_conditions(few: Glossary) -> None:
    graph = Graph().parse(data="".join(to_skos(few)), format="turtle")
    conforms, _, report = validate(graph, shacl_graph=Graph().parse(data=SHAPES, format="turtle"))
    assert conforms, report[:2000]
    tags = {label.language for label in graph.objects(None, SKOS.hiddenLabel)}
    assert {"hi", "hi-latn"} <= {str(tag).lower() for tag in tags}
    labels = {str(label) for label in graph.objects(None, SKOS.prefLabel)}
    assert {"Vigna mungo", "उड़द"} <= labels
    assert all(TAG.match(str(tag)) or str(tag).islower() for tag in tags)


def test_every_label_carries_its_source(few: Glossary) -> None:
    graph = Graph().parse(data="".join(to_skos(few)), format="turtle")
    bare = graph.query(
        "PREFIX xl: <http://www.w3.org/2008/05/skos-xl#> PREFIX dct: <http://purl.org/dc/terms/> "
        "SELECT ?l WHERE { ?l a xl:Label . FILTER NOT EXISTS { ?l dct:source ?s } }"
    )
    assert len(list(bare)) == 0
    assert len(set(graph.subjects(None, None))) > 1000


def test_tbx_has_the_core_structure(glossary: Glossary) -> None:
    """ISO 30042:2019: conceptEntry holds langSec holds termSec holds term; ids are names and stand once."""
    root = ElementTree.fromstring("".join(to_tbx(glossary)))
    assert root.tag == TBX + "tbx" and root.get("type") == "TBX-Basic" and root.get(XML + "lang")
    assert [child.tag for child in root] == [TBX + "tbxHeader", TBX + "text"]
    entries = root.findall(f"{TBX}text/{TBX}body/{TBX}conceptEntry")
    ids = Counter(entry.get("id") for entry in entries)
    assert len(entries) > 400 and max(ids.values()) == 1
    for entry in entries:
        tags = [section.get(XML + "lang") or "" for section in entry.findall(TBX + "langSec")]
        assert tags and len(tags) == len(set(tags)) and all(TAG.match(tag) for tag in tags)
        for term in entry.iter(TBX + "termSec"):
            assert [child.tag for child in term][0] == TBX + "term" and (term[0].text or "").strip()
            assert term.find(f"{TBX}admin[@type='source']") is not None


def test_csv_and_json_hold_every_row(glossary: Glossary) -> None:
    rows = list(csv.reader(io.StringIO(to_csv(glossary))))
    assert tuple(rows[0]) == COLUMNS and len(rows) == len(glossary.all_rows) + 1
    document = json.loads(to_json(glossary))
    assert document["edition"] == glossary.edition and len(document["rows"]) == len(glossary.all_rows)
    assert document["species"]["cicer-arietinum"]["codes"]["hs"] == ["0713.20"]
