"""Every word of the glossary, arranged for reading: normalised text -> what it may mean."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property, lru_cache

from ..glossary.model import Glossary, Pulse, Row
from .normalise import plain
from .segment import UNSPACED, segment, spaced_script
from .skeleton import skeleton

LITERAL = re.compile(r"\{[^{}]*\}")
PLACES = re.compile(r"^((?:[A-Z]{2} )*[A-Z]{2}):")
# Latin-script families share letters, so one family; the others each their own.
FAMILY = {"HIRAGANA": "CJK", "KATAKANA": "CJK", "HANGUL": "HANGUL"}


@dataclass(frozen=True, slots=True)
class Meaning:
    """What a word may mean, in one language; `places` are ISO 3166 codes, empty for everywhere."""

    kind: str
    ref: str
    lang: str
    use: str
    places: frozenset[str] = frozenset()


@dataclass(slots=True)
class Entry:
    """One indexed word or phrase without its spaces; `words` holds the token counts it is written in.

    `shared`: species whose longer names hold this word of another species, as mung bean holds bean.
    """

    key: str
    words: frozenset[int]
    family: str
    meanings: tuple[Meaning, ...] = ()
    shared: frozenset[str] = frozenset()


@dataclass
class Index:
    """Entries by text; `longest` counts tokens of the longest phrase."""

    entries: dict[str, Entry] = field(default_factory=dict)
    longest: int = 1
    longest_unspaced: int = 1

    @cached_property
    def skeletons(self) -> dict[str, tuple[str, ...]]:
        """Keys by skeleton, for words not met exactly: arranged when the first of them comes."""
        out: dict[str, tuple[str, ...]] = {}
        for key, entry in self.entries.items():
            if entry.family not in UNSPACED:
                bones = skeleton(key)
                if len(bones) > 1:
                    out[bones] = (*out.get(bones, ()), key)
        return out

    @cached_property
    def families(self) -> dict[str, tuple[str, ...]]:
        """Keys by family of scripts, for those that are a letter off."""
        out: dict[str, list[str]] = defaultdict(list)
        for key, entry in self.entries.items():
            out[entry.family].append(key)
        return {family: tuple(keys) for family, keys in out.items()}


def index(glossary: Glossary) -> Index:
    """The index of a glossary. Names pass the same normalisation as labels."""
    found: dict[str, list[Meaning]] = defaultdict(list)
    counts: dict[str, int] = defaultdict(int)
    script: dict[str, str] = {}
    inside: dict[str, set[str]] = defaultdict(set)
    split = lru_cache(maxsize=4096)(_split)
    for text, meaning in _all_meanings(glossary):
        key, parts, first = split(text)
        if not key:
            continue
        found[key].append(meaning)
        counts[key] |= 1 << len(parts)
        script[key] = first
        if 1 < len(parts) < 5 and meaning.kind in ("base", "fixed") and first not in UNSPACED:
            for part in parts:
                inside[part].add(meaning.ref.partition("/")[0])
    for species in glossary.species.values():
        for code in species.codes.get("hs", ()):
            key = "hs" + re.sub(r"[^0-9]", "", code)
            found[key].append(Meaning("base", species.id, "", "preferred"))
    built = _arranged(found, counts, script)
    for part, holders in inside.items():
        entry = built.entries.get(part)
        own = {one.ref.partition("/")[0] for one in entry.meanings if one.kind == "base"} if entry else set()
        if entry and own and holders - own:
            entry.shared = frozenset(holders - own)
    return built


def _split(text: str) -> tuple[str, tuple[str, ...], str]:
    """A comparable text without its spaces, its words, and the script of the first."""
    simple = spaced_script(text)
    if simple:
        words = tuple(text.split())
        return "".join(words), words, simple
    tokens = segment(text)
    words = tuple(token.text for token in tokens)
    return "".join(words), words, tokens[0].script if tokens else ""


def _all_meanings(glossary: Glossary) -> Iterator[tuple[str, Meaning]]:
    for row in glossary.all_rows:
        yield from _meanings(row)
    for species in glossary.species.values():
        for latin in (species.latin, *species.synonyms):
            yield plain(latin), Meaning("base", species.id, "la", "preferred")


def _meanings(row: Row) -> list[tuple[str, Meaning]]:
    if row.status == "retired" or row.ref == "sandhi":
        return []
    places = PLACES.match(row.note)
    where = frozenset(places[1].split()) if places else frozenset()
    if "-" in row.lang and len(row.lang.split("-")[-1]) == 2:
        where = where or frozenset({row.lang.split("-")[-1]})
    if row.kind == "pattern":
        return [(text, _meaning(kind, ref, row.lang, "also")) for text, kind, ref in _literals(row)]
    return [(plain(row.text), _meaning(row.kind, row.ref, row.lang, row.use, where))]


@lru_cache(maxsize=65536)
def _meaning(kind: str, ref: str, lang: str, use: str, places: frozenset[str] = frozenset()) -> Meaning:
    """One value for each meaning: tens of thousands of words share a few thousand."""
    return Meaning(kind, ref, lang, use, places)


@lru_cache(maxsize=256)
def _counts(mask: int) -> frozenset[int]:
    """The numbers whose bits are set."""
    return frozenset(at for at in range(mask.bit_length()) if mask >> at & 1)


def _literals(row: Row) -> list[tuple[str, str, str]]:
    """Words a pattern puts between its slots: they tell the form the pattern is for."""
    form = row.ref if "/" not in row.ref else Pulse.of(row.ref).form
    words = [word.strip(" '’-") for word in LITERAL.split(row.text)]
    long_enough = [plain(word) for word in words if len(word) > 2 or (word and ord(word[0]) > 0x2E80)]
    if form in ("", "default"):
        return [(word, "noise", "connector") for word in long_enough]
    return [(word, "form", form) for word in long_enough]


def _arranged(found: dict[str, list[Meaning]], counts: dict[str, int], script: dict[str, str]) -> Index:
    """Entries from what was found; the lists are used up on the way, which halves the memory at the peak."""
    built = Index(longest=5)
    longest = 1
    for key in list(found):
        family = family_of(script.get(key, "LATIN"))
        words = _counts(counts.get(key, 2))
        built.entries[key] = Entry(key, words, family, _merged(found.pop(key)))
        if family in UNSPACED:
            longest = max(longest, *words)
    built.longest_unspaced = min(longest, 14)
    return built


def _merged(meanings: list[Meaning]) -> tuple[Meaning, ...]:
    """One meaning for each thing and language: the strongest use, the widest places."""
    if len(meanings) == 1:
        return tuple(meanings)
    rank = {"preferred": 0, "also": 1, "decode": 2}
    best: dict[tuple[str, str, str], Meaning] = {}
    for one in sorted(meanings, key=lambda one: rank.get(one.use, 3)):
        best.setdefault((one.kind, one.ref, one.lang), one)
    return tuple(best.values())


def family_of(script: str) -> str:
    """Scripts that mix within one word count as one."""
    return FAMILY.get(script, script)
