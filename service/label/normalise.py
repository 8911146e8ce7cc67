"""Text in, comparable text out, every character of it pointing back to where it stood.

Never `rapidfuzz.utils.default_process` here: it erases the vowel signs of Indic scripts and Thai.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

# Letters that one hand writes for another; the Arabic script is typed with Arabic, Persian and Urdu keys.
ALIKE = {
    "ي": "ی", "ى": "ی", "ئ": "ی", "ې": "ی", "ۍ": "ی", "ێ": "ی", "ك": "ک", "ڪ": "ک", "ة": "ه", "ۀ": "ه",
    "ہ": "ه", "ھ": "ه", "ۃ": "ه", "ە": "ه", "أ": "ا", "إ": "ا", "آ": "ا", "ٱ": "ا", "ؤ": "و", "ۆ": "و",
    "ς": "σ", "ё": "е", "ß": "ss", "ı": "i", "ø": "o", "đ": "d", "ł": "l", "æ": "ae", "œ": "oe",
    "’": "'", "‘": "'", "ʼ": "'", "`": "'", "´": "'",
}  # fmt: skip
CHILLU = {"ണ്\u200d": "ൺ", "ന്\u200d": "ൻ", "ര്\u200d": "ർ", "ല്\u200d": "ൽ", "ള്\u200d": "ൾ", "ക്\u200d": "ൿ"}
# Points, vowel marks and stretchers that labels leave out or put in at will.
DROPPED = {"\u0640", "\u200c", "\u200d", "\u00ad", "\ufeff", "\u2060"}
BIDI = {
    chr(code) for code in (*range(0x200E, 0x2010), *range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x061C)
}
# Scripts whose combining marks are ornaments of a letter rather than vowels of their own.
PLAIN = ("LATIN", "GREEK", "CYRILLIC")


@dataclass(frozen=True, slots=True)
class Normal:
    """Comparable text with, for each of its characters, the place in the original it came from.

    `starts[i]` and `ends[i]` are half-open offsets into the original.
    """

    original: str
    text: str
    starts: tuple[int, ...]
    ends: tuple[int, ...]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """The original offsets of a stretch of the comparable text."""
        return self.starts[start], self.ends[end - 1]


def normalise(text: str) -> Normal:
    """Compatibility-composed, case-folded text without bidirectional marks, points or accents.

    Vowel signs of Indic, Thai, Lao, Khmer and Burmese stay. Length may change; offsets tell.
    """
    if text.isascii():
        places = tuple(range(len(text) + 1))
        return Normal(text, text.lower(), places[:-1], places[1:])
    out: list[str] = []
    starts: list[int] = []
    ends: list[int] = []
    at = 0
    for cluster in CLUSTER.findall(text):
        folded = _fold(cluster)
        out.append(folded)
        starts.extend([at] * len(folded))
        at += len(cluster)
        ends.extend([at] * len(folded))
    return Normal(text, "".join(out), tuple(starts), tuple(ends))


def plain(text: str) -> str:
    """The comparable text alone, as names are indexed: the same folding, without the places."""
    return text.lower() if text.isascii() else "".join(map(_fold, CLUSTER.findall(text)))


def _marks() -> str:
    """Every mark and joiner that belongs to the letter before it, as ranges of a pattern."""
    ranges: list[list[int]] = []
    for code in range(0x0300, 0x10000):
        if unicodedata.category(chr(code))[0] == "M" or code == 0x200D:
            if ranges and ranges[-1][1] == code - 1:
                ranges[-1][1] = code
            else:
                ranges.append([code, code])
    return "".join(f"{chr(low)}-{chr(high)}" for low, high in ranges)


# A letter with the marks and joiners that follow it.
CLUSTER = re.compile(f".[{_marks()}]*", re.DOTALL)


@lru_cache(maxsize=16384)
def _fold(cluster: str) -> str:
    for written, one in CHILLU.items():
        cluster = cluster.replace(written, one)
    composed = unicodedata.normalize("NFKC", cluster).casefold()
    out: list[str] = []
    for char in unicodedata.normalize("NFKC", composed):
        if char in DROPPED or char in BIDI or (unicodedata.category(char) == "Cc" and char not in "\n\t"):
            continue
        out.append(ALIKE.get(char) or _bare(char))
    return "".join(out)


def _bare(char: str) -> str:
    """A letter without its accent where accents are ornament; Arabic and Hebrew points vanish."""
    name = unicodedata.name(char, "")
    if name.startswith(("ARABIC FATHA", "ARABIC DAMMA", "ARABIC KASRA", "ARABIC SHADDA", "ARABIC SUKUN")):
        return ""
    if name.startswith(
        ("ARABIC FATHATAN", "ARABIC LETTER SUPERSCRIPT", "ARABIC HAMZA ABOVE", "HEBREW POINT")
    ):
        return ""
    if name.startswith(PLAIN):
        parts = unicodedata.normalize("NFD", char)
        return "".join(ALIKE.get(part, part) for part in parts if not unicodedata.combining(part))
    if name.startswith("COMBINING"):
        return ""
    digit = unicodedata.decimal(char, None)
    return str(digit) if digit is not None else char
