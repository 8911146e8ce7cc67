"""How far the glossary and three published sources agree on what a pulse name means.

Run `python -m tests.evidence.agreement <folder>` on a folder that `tests/evidence/fetch.sh` filled. Every
name a source gives is read as a label in its language; what is expected of each food, emoji or headword
was typed by hand below. Prints agreement per source and language, then the exceptions.
"""

from __future__ import annotations

import argparse
import csv
import gzip
import json
import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from service.errors import PulseError
from service.glossary.model import Glossary
from service.label import Reader
from service.store import files

NOTHING = "-"  # expected where the thing is not a pulse

# Indian Food Composition Tables 2017: food code -> the species its names stand for. The two groups whose
# printed Latin name is doubtful (field beans B007-B009, given as Phaseolus vulgaris) are left out.
FOODS = {
    "B001": "cicer-arietinum",
    "B002": "cicer-arietinum",
    "B003": "vigna-mungo",
    "B004": "vigna-mungo",
    "B005": "vigna-unguiculata",
    "B006": "vigna-unguiculata",
    "B010": "vigna-radiata",
    "B011": "vigna-radiata",
    "B012": "macrotyloma-uniflorum",
    "B013": "lens-culinaris",
    "B014": "lens-culinaris",
    "B015": "lens-culinaris",
    "B016": "vigna-aconitifolia",
    "B017": "pisum-sativum",
    "B018": "phaseolus-vulgaris",
    "B019": "phaseolus-vulgaris",
    "B020": "phaseolus-vulgaris",
    "B021": "cajanus-cajan",
    "B022": "cajanus-cajan",
    "B023": "vigna-umbellata",
    "B024": "glycine-max",
    "B025": "glycine-max",
    "H012": "arachis-hypogaea",
}
# The tables' abbreviations of languages -> BCP 47.
SPOKEN = {
    "A": "as",
    "B": "bn",
    "G": "gu",
    "H": "hi",
    "Kan": "kn",
    "Mal": "ml",
    "Mar": "mr",
    "N": "ne",
    "O": "or",
    "P": "pa",
    "Tam": "ta",
    "Tel": "te",
    "U": "ur",
}
# Emoji -> what their name in any language must read as.
EMOJI = {
    "\U0001f95c": "arachis-hypogaea",
    "\U0001fad8": "phaseolus-vulgaris",
    "\U0001f35a": NOTHING,
    "\U0001f35e": NOTHING,
    "\U0001f330": NOTHING,
    "\U0001f36b": NOTHING,
}
# English headwords of the bilingual dictionaries -> species.
HEADWORDS = {
    "lentil": "lens-culinaris",
    "chickpea": "cicer-arietinum",
    "pea": "pisum-sativum",
    "mung bean": "vigna-radiata",
    "broad bean": "vicia-faba",
    "peanut": "arachis-hypogaea",
    "soybean": "glycine-max",
    "kidney bean": "phaseolus-vulgaris",
    "lima bean": "phaseolus-lunatus",
    "cowpea": "vigna-unguiculata",
    "pigeon pea": "cajanus-cajan",
    "adzuki bean": "vigna-angularis",
    "lupin": "lupinus-albus",
    "runner bean": "phaseolus-coccineus",
    "rice": NOTHING,
    "wheat": NOTHING,
    "almond": NOTHING,
    "tofu": NOTHING,
}
TONGUES = {
    "afr": "af",
    "ara": "ar",
    "bul": "bg",
    "ces": "cs",
    "dan": "da",
    "deu": "de",
    "ell": "el",
    "fin": "fi",
    "fra": "fr",
    "hin": "hi",
    "hrv": "hr",
    "hun": "hu",
    "ind": "id",
    "ita": "it",
    "jpn": "ja",
    "lit": "lt",
    "nld": "nl",
    "nor": "nb",
    "pol": "pl",
    "por": "pt",
    "rus": "ru",
    "spa": "es",
    "srp": "sr",
    "swe": "sv",
    "swh": "sw",
    "tur": "tr",
}


@dataclass(frozen=True, slots=True)
class Name:
    """A name that a source gives to a thing."""

    source: str
    lang: str
    text: str
    expected: str


def foods(folder: Path) -> Iterator[Name]:
    """Local names of the pulses of the Indian tables, in their Latin spelling."""
    for path in folder.rglob("index.csv"):
        with path.open(encoding="utf-8", newline="") as lines:
            for row in csv.DictReader(lines):
                expected = FOODS.get(row.get("code", ""))
                if expected:
                    yield from _spoken(row["desc"], expected)


def _spoken(described: str, expected: str) -> Iterator[Name]:
    for part in described.rstrip(".").split(";"):
        found = re.match(r"\s*((?:[A-Z][a-z]{0,3}\.,? ?)+)\s*(.*)", part)
        if not found:
            continue
        names = re.sub(r"\([^)]*\)", "", found[2])
        for short in re.findall(r"[A-Z][a-z]*", found[1]):
            for text in re.split("[,/]", names):
                if short in SPOKEN and text.strip():
                    yield Name("ifct", SPOKEN[short], text.strip(), expected)


def emoji(folder: Path) -> Iterator[Name]:
    """Names of emoji in every locale of a CLDR annotations package."""
    for path in sorted(folder.rglob("annotations.json")):
        tag = path.parent.name
        if "-" in tag or path.parent.parent.name != "annotations":
            continue
        known = json.loads(path.read_text(encoding="utf-8"))["annotations"].get("annotations", {})
        for sign, expected in EMOJI.items():
            for text in known.get(sign, {}).get("tts", ()):
                yield Name("cldr", tag, text, expected)


def headwords(folder: Path) -> Iterator[Name]:
    """First translations of the English headwords in the bilingual dictionaries."""
    for path in sorted(folder.rglob("freedict-eng-*.index")):
        lang = TONGUES.get(path.stem.rsplit("-", 1)[1])
        packed = path.with_suffix(".dict.dz")
        if lang and packed.exists():
            yield from _translated(path, gzip.decompress(packed.read_bytes()), lang)


DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"


def _number(digits: str) -> int:
    value = 0
    for digit in digits:
        value = value * 64 + DIGITS.index(digit)
    return value


def _translated(path: Path, data: bytes, lang: str) -> Iterator[Name]:
    for line in path.read_text(encoding="utf-8").splitlines():
        head, *place = line.split("\t")
        expected = HEADWORDS.get(head.lower())
        if expected is None or len(place) < 2:
            continue
        start, length = _number(place[0]), _number(place[1])
        body = data[start : start + length].decode("utf-8", "replace").splitlines()[1:]
        text = re.sub(r"\([^)]*\)|\[[^\]]*\]|\{[^}]*\}|<[^>]*>|^\s*1\.\s*", "", body[0] if body else "")
        first = re.split(r"[,;]| 2\.", text)[0].strip(" .")
        if first:
            yield Name("freedict", lang, first, expected)


def judge(reader: Reader, name: Name) -> str:
    """`same`, `among` (one of several readings), `other` or `unread`."""
    try:
        reading = reader.read(name.text, [name.lang], "IN" if name.source == "ifct" else "")
    except PulseError:
        return "unread"
    species = [one.pulse.species for one in reading.readings if one.probability >= 0.02]
    if name.expected == NOTHING:
        return "same" if reading.verdict == "none" else "other"
    if reading.verdict == "none" or not species:
        return "unread"
    if set(species) == {name.expected} or (reading.verdict == "one" and species[0] == name.expected):
        return "same"
    return "among" if name.expected in species else "other"


def covered(glossary: Glossary) -> set[str]:
    """Language subtags that have a names file."""
    return {tag.split("-")[0] for tag in glossary.rows}


def report(names: Iterator[Name], reader: Reader) -> list[str]:
    """The lines printed: a table per source and language, then every exception."""
    tally: dict[tuple[str, str], dict[str, int]] = defaultdict(lambda: defaultdict(int))
    exceptions = []
    spoken = covered(reader.glossary)
    for name in dict.fromkeys(names):
        if name.lang not in spoken:
            continue
        verdict = judge(reader, name)
        for key in ((name.source, name.lang), (name.source, "all")):
            tally[key][verdict] += 1
        if verdict in ("other", "unread"):
            exceptions.append(f"{name.source}\t{name.lang}\t{verdict}\t{name.text}\t{name.expected}")
    lines = ["source\tlang\tnames\tsame\tamong\tother\tunread\tagreement"]
    for (source, lang), counts in sorted(tally.items()):
        total = sum(counts.values())
        agreed = (counts["same"] + counts["among"]) / total
        cells = "\t".join(str(counts[one]) for one in ("same", "among", "other", "unread"))
        lines.append(f"{source}\t{lang}\t{total}\t{cells}\t{agreed:.0%}")
    return [*lines, "", *exceptions]


def main() -> None:
    """Read the folder, print the report; exit 2 where nothing was found in it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    folder = parser.parse_args().folder
    names = [*foods(folder), *emoji(folder), *headwords(folder)]
    if not names:
        print(f"no names found under {folder}; run tests/evidence/fetch.sh first", file=sys.stderr)
        sys.exit(2)
    print("\n".join(report(iter(names), Reader(files.load()))))


if __name__ == "__main__":
    main()
