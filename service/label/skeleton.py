"""A word in any script in, the consonant-led Latin key that its many spellings share, out."""

from __future__ import annotations

import re
from functools import lru_cache

from anyascii import anyascii

# Blocks of South Asia run parallel in Unicode: offset in the block -> sound, vowels as the ear hears them.
_CONSONANTS = dict(
    zip(
        range(0x15, 0x3A),
        "k k g g n ch ch j j n t t d d n t t d d n n p p b b m y r r l l l v s s s h".split(),
        strict=True,
    )
)
_VOWELS = {
    0x05: "a", 0x06: "a", 0x07: "i", 0x08: "i", 0x09: "u", 0x0A: "u", 0x0B: "ri", 0x0D: "e", 0x0E: "e",
    0x0F: "e", 0x10: "ai", 0x11: "o", 0x12: "o", 0x13: "o", 0x14: "au",
}  # fmt: skip
_SIGNS = {
    0x3E: "a", 0x3F: "i", 0x40: "i", 0x41: "u", 0x42: "u", 0x43: "ri", 0x45: "e", 0x46: "e", 0x47: "e",
    0x48: "ai", 0x49: "o", 0x4A: "o", 0x4B: "o", 0x4C: "au",
}  # fmt: skip
_OTHER = {0x01: "n", 0x02: "n", 0x03: "", 0x70: "n", 0x71: ""}
_SPECIAL = {
    "ৎ": "t",
    "ൺ": "n",
    "ൻ": "n",
    "ർ": "r",
    "ൽ": "l",
    "ൾ": "l",
    "ৰ": "r",
    "ৱ": "v",
    "ଯ": "j",
    "ୟ": "y",
}

# Latin spellings of one sound, in the order they are folded.
_LITERAL = re.compile(r"[0-9a-z]+")
_OTHERS = re.compile(r"[^0-9a-z]")


def _fold(pattern: str, to: str) -> tuple[str, re.Pattern[str] | None, str]:
    """What must be in a word for the fold to matter (empty: anything), the fold unless literal, what it leaves."""
    if _LITERAL.fullmatch(pattern):
        return pattern, None, to
    lead = pattern[0] if pattern[0].isalpha() and "|" not in pattern.split("(")[0] else ""
    return lead, re.compile(pattern), to


_FOLDS = tuple(
    _fold(pattern, to)
    for pattern, to in (
        ("0", "o"), ("1", "l"), ("5", "s"), ("3", "e"), ("8", "b"), ("vv", "w"), ("rn", "m"),
        ("ck", "k"), ("c(?=[aouklrt]|$)", "k"), ("ch+", "c"), ("sh", "s"), ("zh", "l"), ("ph", "f"), ("gh", "g"), ("kh", "k"), ("jh", "j"), ("bh", "b"),
        ("dh", "d"), ("th", "t"), ("qu", "k"), ("q", "k"), ("x", "ks"), ("w", "v"),
        ("y(?=[^aeiou]|$)", "i"), ("z", "s"),
        ("a{2,}", "a"), ("ee|ii|ea|ie", "i"), ("oo|uu|ou", "u"), (r"(.)\1+", r"\1"), ("h(?=[^aeiou]|$)", ""),
        ("e$", "a"),
    )
)  # fmt: skip


@lru_cache(maxsize=4096)
def skeleton(word: str) -> str:
    """The key of one normalised word: small Latin letters, possibly empty."""
    text = word if word.isascii() else _latin(word)
    if not text.isalpha() or not text.islower():
        text = _OTHERS.sub("", text.lower())
    for probe, pattern, to in _FOLDS:
        if probe in text:
            text = pattern.sub(to, text) if pattern else text.replace(probe, to)
    return text


_by_letter = lru_cache(maxsize=4096)(anyascii)


def _latin(word: str) -> str:
    """Brahmic letters by sound with the last inherent vowel unspoken, everything else by letter."""
    out: list[str] = []
    pending = False
    for char in word:
        code = ord(char)
        offset = code & 0x7F
        if char in _SPECIAL:
            out.append(("a" if pending else "") + _SPECIAL[char])
            pending = char in "ৰৱଯୟ"
        elif 0x0900 <= code < 0x0D80 and offset in _CONSONANTS:
            out.append(("a" if pending else "") + _CONSONANTS[offset])
            pending = True
        elif 0x0900 <= code < 0x0D80:
            pending = _mark(offset, out, pending)
        else:
            out.append(("a" if pending else "") + (char if char.isascii() else _by_letter(char)))
            pending = False
    return "".join(out)


def _mark(offset: int, out: list[str], pending: bool) -> bool:
    if offset in _SIGNS:
        out.append(_SIGNS[offset])
        return False
    if offset == 0x4D:
        return False
    if offset == 0x3C:
        return pending
    out.append(("a" if pending else "") + _VOWELS.get(offset, _OTHER.get(offset, "")))
    return False
