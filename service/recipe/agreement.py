"""A name put where another stood: the words that lean on it follow its gender and number."""

from __future__ import annotations

import re
from collections.abc import Set
from functools import cache

# Articles before a noun of one and of many, masculine and feminine, alone and run together with a preposition.
ARTICLES: dict[str, tuple[str, ...]] = {
    "es": ("el la los las", "del de+la de+los de+las", "al a+la a+los a+las", "un una unos unas"),
    "pt": ("o a os as", "do da dos das", "ao à aos às", "no na nos nas", "pelo pela pelos pelas", "um uma uns umas"),
    "ca": ("el la els les", "del de+la dels de+les", "al a+la als a+les", "pel per+la pels per+les", "un una uns unes"),
    "it": ("il la i le", "del della dei delle", "al alla ai alle", "nel nella nei nelle", "col colla coi colle"),
    "fr": ("le la les les", "du de+la des des", "au à+la aux aux", "un une des des"),
}  # fmt: skip
KINDS = ("m", "f", "m pl", "f pl")
# A French h of pulses is aspirate (haricot); Catalan and Italian names of pulses have none.
VOWEL = re.compile(r"[aeiouàáâèéêìíòóùúœ]", re.IGNORECASE)
ELIDED = {
    "fr": {"le": "l'", "la": "l'", "du": "de l'", "de la": "de l'", "au": "à l'", "à la": "à l'"},
    "ca": {"el": "l'", "la": "l'", "del": "de l'", "de la": "de l'", "al": "a l'", "a la": "a l'"},
}
ITALIAN = re.compile(r"(|de|a|ne|co)(il|l|la|lla|i)")
# Italian before these: lo and gli for il and i.
HEAVY = re.compile(r"z|gn|ps|x|y|s[^aeiouàèéìòù]", re.IGNORECASE)
# German adjectives end in -n after these.
WEAK = re.compile(r"\b(?:die|der|den|diese|dieser|diesen|alle|aller|allen|meine|keine)\s+$", re.IGNORECASE)
ARABIC = "ال"


def led(before: str, name: str, agrees: Set[str], tag: str) -> tuple[int, str]:
    """How many letters at the end of `before` give way, and what stands there and for the name now.

    `agrees` is what is known of the name (`m`, `f`, `pl`); where that is too little nothing is changed.
    """
    language = tag.split("-")[0].lower()
    if language == "de" and WEAK.search(before):
        return 0, " ".join(
            f"{word}n" if word.islower() and word.endswith("e") else word for word in name.split()
        )
    kind = " ".join(one for one in ("m", "f", "pl") if one in agrees)
    if kind not in KINDS or language not in ARTICLES:
        return 0, name
    for pattern, shapes in _articles(language):
        found = pattern.search(before)
        if found:
            new = _sounding(shapes[KINDS.index(kind)], name, language)
            return len(found[0]), _like(found[1], new) + ("" if new.endswith("'") else " ") + name
    return 0, name


@cache
def _articles(language: str) -> tuple[tuple[re.Pattern[str], tuple[str, ...]], ...]:
    """What to look for before the name, the longest first, and the four shapes it may take."""
    rows = [tuple(one.replace("+", " ") for one in row.split()) for row in ARTICLES[language]]
    found = {
        _sounding(shape, name, language): row
        for row in reversed(rows)
        for shape in row
        for name in ("b", "a", "z")
    }
    return tuple(
        (
            re.compile(
                rf"\b({re.escape(shape)})\s*$" if shape.endswith("'") else rf"\b({re.escape(shape)})\s+$",
                re.I,
            ),
            row,
        )
        for shape, row in sorted(found.items(), key=lambda one: -len(one[0]))
    )


def _sounding(article: str, name: str, language: str) -> str:
    """The article as it is written before this name."""
    open_sound = bool(VOWEL.match(name))
    if language == "it":
        return _italian(article, open_sound, bool(HEAVY.match(name)))
    return ELIDED.get(language, {}).get(article, article) if open_sound else article


def _italian(article: str, open_sound: bool, heavy: bool) -> str:
    found = ITALIAN.fullmatch(article)
    if not found or not (open_sound or heavy):
        return article
    stem, end = found.groups()
    twice = "l" if stem else ""
    if end == "i":
        return f"{stem}gli"
    if open_sound:
        return f"{stem}{twice}l'"
    return article if end.endswith("a") else f"{stem}{twice}lo"


def _like(old: str, new: str) -> str:
    return new[:1].upper() + new[1:] if old[:1].isupper() else new


def defined(old: str, name: str) -> str:
    """In Arabic what was definite stays so: each word of the name takes the article, unless one has it already."""
    if not old.startswith(ARABIC) or any(word.startswith(ARABIC) for word in name.split()):
        return name
    return " ".join(ARABIC + word for word in name.split())
