"""What a glossary must satisfy: a list of small functions, each yielding its findings; all run."""

from __future__ import annotations

import re
import unicodedata
from collections import defaultdict
from collections.abc import Callable, Iterator

from .cooking import sources_of
from .model import FORMS, RECALLED, Glossary, Pulse, Row, Species
from .rows import Finding, cells_of
from .tags import TAG

USES = ("preferred", "also", "decode")
KINDS = ("base", "form", "colour", "fixed", "pattern", "noise", "other")
SLOT = re.compile(r"\{([^{}]*)\}")
# Joiners that Persian, Sinhala, Malayalam and Khmer spelling needs; every other invisible is a fault.
JOINERS = {"\u200c", "\u200d"}
# ISO 15924 code -> the words that open Unicode character names of its letters.
LETTERS = {
    "Arab": ("ARABIC",), "Armn": ("ARMENIAN",), "Beng": ("BENGALI",), "Cyrl": ("CYRILLIC",),
    "Deva": ("DEVANAGARI",), "Ethi": ("ETHIOPIC",), "Geor": ("GEORGIAN",), "Grek": ("GREEK",),
    "Gujr": ("GUJARATI",), "Guru": ("GURMUKHI",), "Hans": ("CJK",), "Hant": ("CJK",),
    "Hebr": ("HEBREW",), "Jpan": ("CJK", "HIRAGANA", "KATAKANA", "KATAKANA-HIRAGANA"),
    "Khmr": ("KHMER",), "Knda": ("KANNADA",), "Kore": ("HANGUL", "CJK"), "Laoo": ("LAO",),
    "Latn": ("LATIN",), "Mlym": ("MALAYALAM",), "Mtei": ("MEETEI",), "Mymr": ("MYANMAR",),
    "Olck": ("OL",), "Orya": ("ORIYA",), "Sinh": ("SINHALA",), "Taml": ("TAMIL",),
    "Telu": ("TELUGU",), "Thaa": ("THAANA",), "Thai": ("THAI",), "Tibt": ("TIBETAN",),
}  # fmt: skip

Check = Callable[[Glossary], Iterator[Finding]]


def at(row: Row, column: int, what: str) -> Finding:
    """A finding at one cell of a row; `column` counts cells from 0, the place counts characters from 1."""
    before = cells_of(row)[:column]
    return Finding(row.file, row.line, 1 + sum(len(cell) + 1 for cell in before), what)


def words_are_known(glossary: Glossary) -> Iterator[Finding]:
    """Every controlled word of a row is defined in vocabulary.toml."""
    agreement = set(glossary.vocabulary.get("agreement", {}))
    statuses = set(glossary.vocabulary.get("status", {}))
    for row in glossary.all_rows:
        tag = row.file.removeprefix("names/").removesuffix(".csv")
        if not TAG.match(row.lang) or not (row.lang == tag or row.lang.startswith(tag + "-")):
            yield at(row, 0, f"lang {row.lang!r}; write {tag} or {tag} with a region")
        if row.script not in LETTERS and row.script != "Zyyy":
            yield at(row, 1, f"script {row.script!r} is no ISO 15924 code known here")
        if row.kind not in KINDS:
            yield at(row, 2, f"kind {row.kind!r}; use one of {', '.join(KINDS)}")
        if row.use not in USES:
            yield at(row, 5, f"use {row.use!r}; use one of {', '.join(USES)}")
        if row.status not in statuses:
            yield at(row, 7, f"status {row.status!r}; use one of {', '.join(sorted(statuses))}")
        for feature in sorted(row.agrees - agreement):
            yield at(row, 6, f"agreement {feature!r} is not in vocabulary.toml; define it or use one that is")


def refs_resolve(glossary: Glossary) -> Iterator[Finding]:
    """Every ref names something that exists."""
    topics = set(glossary.vocabulary.get("topic", {}))
    for row in glossary.all_rows:
        why = _ref_fault(glossary, row, topics)
        if why:
            yield at(row, 3, f"ref {row.ref!r}: {why}")


def _ref_fault(glossary: Glossary, row: Row, topics: set[str]) -> str:
    if row.kind in ("base", "fixed"):
        return key_fault(glossary, row.ref)
    if row.kind == "form":
        return "" if row.ref in FORMS else "no such form; see vocabulary.toml"
    if row.kind == "colour":
        return "" if row.ref in glossary.vocabulary["colour"] else "no such colour; see vocabulary.toml"
    if row.kind in ("noise", "other"):
        return "" if row.ref in topics else "no such topic; see vocabulary.toml"
    if row.kind == "pattern" and row.ref not in ("default", "sandhi", *FORMS):
        return key_fault(glossary, row.ref)
    return ""


def key_fault(glossary: Glossary, key: str) -> str:
    """Why a pulse key names nothing, or the empty text."""
    try:
        pulse = Pulse.of(key)
    except ValueError as error:
        return str(error)
    species = glossary.species.get(pulse.species)
    if species is None:
        instead = glossary.retired.get(pulse.species)
        return (
            f"retired; write {instead}"
            if instead
            else "no such species; add pulses/<slug>.toml or mend the slug"
        )
    if pulse.market_class and pulse.market_class not in {one.id for one in species.market_classes}:
        return f"{species.file} has no market class {pulse.market_class!r}; add it there or mend the id"
    if pulse.form and pulse.form not in FORMS:
        return "no such form; see vocabulary.toml"
    if pulse.colour and pulse.colour not in glossary.vocabulary["colour"]:
        return "no such colour; see vocabulary.toml"
    return ""


def sources_exist(glossary: Glossary) -> Iterator[Finding]:
    """Every source key is in sources.toml, and `checked` rests on a published one."""
    for row in glossary.all_rows:
        if row.source not in glossary.sources and row.source not in RECALLED:
            yield at(
                row, 8, f"source {row.source!r} is not in sources.toml; add it with title, publisher and year"
            )
        if row.status == "checked" and row.source in RECALLED:
            yield at(row, 7, "checked needs a published source; name it, or write draft")
    for species in glossary.species.values():
        for source in sorted(_species_sources(species)):
            if source not in glossary.sources and source not in RECALLED:
                yield Finding(species.file, 1, 1, f"source {source!r} is not in sources.toml; add it there")


def _species_sources(species: Species) -> set[str]:
    lists = ("market_classes", "sold", "grains", "hazards", "look_alikes", "adulterants")
    found = {one.source for name in lists for one in getattr(species, name)}
    return found | {species.source} | (sources_of(species.cooking) if species.cooking else set())


def text_is_clean(glossary: Glossary) -> Iterator[Finding]:
    """NFC, no control or invisible characters, no stray spaces, every letter of the row's script."""
    for row in glossary.all_rows:
        seam = row.kind == "pattern"
        if row.text != unicodedata.normalize("NFC", row.text):
            yield at(row, 4, "not in Unicode normal form C; `tidy` mends it")
        if not row.text.strip() or (not seam and row.text != " ".join(row.text.split())):
            yield at(row, 4, "empty text or stray spaces; `tidy` mends spaces")
        for char in row.text:
            if unicodedata.category(char) in ("Cc", "Cf", "Co", "Cn", "Zl", "Zp") and char not in JOINERS:
                yield at(row, 4, f"invisible character U+{ord(char):04X}; remove it")
        if not seam:
            wrong = next((char for char in row.text if not _belongs(char, row.script)), "")
            if wrong:
                yield at(
                    row, 4, f"{wrong!r} is no letter of script {row.script}; move the row or mend the letter"
                )


def _belongs(char: str, script: str) -> bool:
    if script == "Zyyy" or not unicodedata.category(char).startswith(("L", "M")):
        return True
    name = unicodedata.name(char, "")
    if name.startswith(("COMBINING", "MODIFIER LETTER")):
        return True
    return name.split()[0].split("-")[0] in LETTERS.get(script, ()) or name.split()[0] in LETTERS.get(
        script, ()
    )


def one_preferred(glossary: Glossary) -> Iterator[Finding]:
    """At most one preferred row for each thing, script and agreement."""
    seen: dict[tuple[object, ...], Row] = {}
    for row in glossary.all_rows:
        if row.use != "preferred" or row.kind in ("noise", "other") or row.ref == "sandhi":
            continue
        slot = (row.file, row.lang, row.script, row.kind, row.ref, row.agrees)
        first = seen.setdefault(slot, row)
        if first is not row:
            yield at(
                row,
                5,
                f"a second preferred {row.kind} for {row.ref}, after line {first.line}; make one `also`",
            )


def no_twins(glossary: Glossary) -> Iterator[Finding]:
    """No row stands twice."""
    seen: dict[tuple[object, ...], Row] = {}
    for row in glossary.all_rows:
        slot = (row.file, row.lang, row.script, row.kind, row.ref, row.text, row.agrees)
        first = seen.setdefault(slot, row)
        if first is not row:
            yield at(row, 4, f"the same row as line {first.line}; remove one")


def patterns_parse(glossary: Glossary) -> Iterator[Finding]:
    """Slots of a pattern are base, colour, form, with a known shape; a replacement has its arrow."""
    agreement = set(glossary.vocabulary.get("agreement", {}))
    for row in glossary.all_rows:
        if row.kind != "pattern":
            continue
        if row.ref == "sandhi":
            if row.text.count(" -> ") != 1:
                yield at(row, 4, "a sandhi row reads `left -> right`")
            continue
        for slot in SLOT.findall(row.text):
            name, _, shape = slot.partition(".")
            if name not in ("base", "colour", "form") or not set(shape.split(".")) <= agreement | {""}:
                yield at(
                    row, 4, f"slot {{{slot}}}; use base, colour or form, with a shape of vocabulary.toml"
                )
        if "base" not in row.text and not row.ref.count("/"):
            yield at(row, 4, "a pattern needs {base}")


def homonyms_noted(glossary: Glossary) -> Iterator[Finding]:
    """A word of several species says so in the note of each of its rows."""
    meaning: dict[tuple[str, str, str], list[Row]] = defaultdict(list)
    for row in glossary.all_rows:
        if row.kind in ("base", "fixed"):
            meaning[row.file, row.script, row.text.casefold()].append(row)
    for rows in meaning.values():
        if len({Pulse.of(row.ref).species for row in rows}) > 1:
            for row in rows:
                if not row.note:
                    yield at(
                        row, 9, f"{row.text!r} names several species; say in the note which others, or where"
                    )


def species_are_whole(glossary: Glossary) -> Iterator[Finding]:
    """Classes, forms and colours used in a species file are defined, and nothing is sold twice."""
    for species in glossary.species.values():
        seen: set[str] = set()
        for sold in species.sold:
            why = key_fault(glossary, sold.pulse.key)
            if why:
                yield Finding(species.file, 1, 1, f"sold {sold.pulse.key}: {why}")
            if sold.pulse.key in seen:
                yield Finding(species.file, 1, 1, f"sold {sold.pulse.key} stands twice; remove one")
            seen.add(sold.pulse.key)
        for grain in species.grains:
            for table in ("shape", "surface", "eye"):
                word = getattr(grain, table)
                if word and word not in glossary.vocabulary.get(table, {}):
                    yield Finding(
                        species.file, 1, 1, f"grain {table} {word!r}; see [{table}] in vocabulary.toml"
                    )
        if species.standing not in glossary.vocabulary["standing"]:
            yield Finding(species.file, 1, 1, f"standing {species.standing!r}; see vocabulary.toml")
        for look in species.look_alikes:
            why = key_fault(glossary, look.key)
            if why:
                yield Finding(species.file, 1, 1, f"look-alike {look.key}: {why}")


def markets_add_up(glossary: Glossary) -> Iterator[Finding]:
    """Each market has its languages and known species, whose parts leave something for the rest."""
    spoken, sold = glossary.vocabulary.get("spoken-in", {}), glossary.vocabulary.get("sold-in", {})
    for market in sorted({*spoken} ^ {*sold}):
        yield _of_vocabulary(
            f"market {market!r} stands in one of [spoken-in] and [sold-in]; write it in both"
        )
    tongues = [tag for tags in spoken.values() for tag in tags.split()]
    for tag in sorted({tag for tag in tongues if tongues.count(tag) > 1}):
        yield _of_vocabulary(f"language {tag!r} stands in two markets; leave it in one")
    for market, eaten in sold.items():
        total = 0.0
        for part in eaten.split(", "):
            slug, _, percent = part.partition(" ")
            if slug not in glossary.species or not percent.replace(".", "", 1).isdigit():
                yield _of_vocabulary(f"market {market!r}: {part!r}; write a species and its percentage")
            else:
                total += float(percent)
        if total >= 100:
            yield _of_vocabulary(
                f"market {market!r}: {total:g} percent; leave something for what is not named"
            )


def _of_vocabulary(what: str) -> Finding:
    return Finding("vocabulary.toml", 1, 1, what)


CHECKS: tuple[Check, ...] = (
    words_are_known, refs_resolve, sources_exist, text_is_clean,
    one_preferred, no_twins, patterns_parse, homonyms_noted, species_are_whole, markets_add_up,
)  # fmt: skip


def check(glossary: Glossary) -> list[Finding]:
    """Every finding of every check, in the order of the files."""
    return sorted({finding for one in CHECKS for finding in one(glossary)})
