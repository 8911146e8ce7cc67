"""Comparable text in, tokens out: words in spaced scripts, single letters where words are not spaced."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache

from .normalise import Normal

# Scripts written without spaces between words.
UNSPACED = ("CJK", "HIRAGANA", "KATAKANA", "THAI", "LAO", "KHMER", "MYANMAR")
BREAKS = "\t.,;:|/\\()[]{}<>=+*•·–—…!?،؛。、，；：（）「」【】।॥"
HS_CODE = re.compile(
    r"(?<![0-9.])(07[ .]?13)(?:[ .]?([1-9][0-9])){0,1}(?:[ .]?[0-9]{2})?(?![0-9])|(?<![0-9.])(12[ .]?0[12])[ .]?([0-9]{2})?(?![0-9.])"
)

# Net weights of cans: EU 400 and 800 g, US 14 to 15.5 and 28 oz, Canada 540 and 796 ml, catering 2.5 kg.
CAN_SIZE = re.compile(
    r"(?<![0-9.,/-])(?:(?:400|410|411|415|420|425|432|439|800|2500|2550) ?(?![0-9.,%k])[^\W\d_]|(?:540|796) ?m|(?:14(?:\.5)?|15(?:\.5)?|28) ?oz)"
)


@dataclass(frozen=True, slots=True)
class Token:
    """A word, or one letter of an unspaced script. Offsets are into the comparable text.

    `part` counts the stretches between punctuation, `line` the lines; `glued` is true where
    nothing stands between this token and the one before, `counted` where a number stands just before.
    """

    text: str
    start: int
    end: int
    script: str
    part: int
    line: int
    glued: bool
    counted: bool = False


def segment(text: str, most: int = 4000) -> tuple[Token, ...]:
    """The tokens of a comparable text, at most `most` of them; digits alone are left out."""
    tokens: list[Token] = []
    part = line = at = 0
    size = len(text)
    last_end = number = -9
    while at < size and len(tokens) < most:
        char = text[at]
        kind = _kind(char)
        if kind == "":
            if char in BREAKS and not (char == "." and text[at + 1 : at + 2].isdigit()):
                part += 1
            line += char == "\n"
            at += 1
            continue
        end = at + 1
        if kind in UNSPACED:
            while end < size and _kind(text[end]) == "mark":
                end += 1
        else:
            end = _word_end(text, at, kind)
        word = text[at:end]
        if word.isdigit():
            number = end
        elif end - at <= 2 and kind not in UNSPACED and at - number <= 1:
            number = -9  # a unit after its number
        else:
            tokens.append(Token(word, at, end, kind, part, line, last_end == at, at - number <= 1))
            last_end = end
        at = end
    return tuple(tokens)


def can_size(normal: Normal) -> tuple[int, int] | None:
    """Where a net weight stands that cans are filled to and bags hardly ever: its offsets."""
    found = CAN_SIZE.search(normal.text)
    return found.span() if found else None


def spaced_script(text: str) -> str:
    """The one script of a text that holds nothing but its letters, their marks and spaces; else empty."""
    script = ""
    for char in set(text):
        kind = _kind(char)
        if kind == "mark" or char == " ":
            continue
        if kind in ("", "DIGIT") or kind in UNSPACED or script not in ("", kind):
            return ""
        script = kind
    return script


def hs_codes(normal: Normal) -> tuple[tuple[str, int, int], ...]:
    """Customs codes of pulses (Harmonized System 0713, 1201, 1202): digits and offsets."""
    found = []
    for match in HS_CODE.finditer(normal.text):
        digits = re.sub(r"[ .]", "", match[0])
        if len(digits) >= 4 and (
            len(digits) > 4 or "." in match[0] or "hs" in normal.text[: match.start()][-8:]
        ):
            found.append((digits, match.start(), match.end()))
    return tuple(found)


def _word_end(text: str, at: int, kind: str) -> int:
    end = at + 1
    while end < len(text):
        other = _kind(text[end])
        if other == kind or other == "mark":
            end += 1
        elif {other, kind} == {"DIGIT", "LATIN"} and _is_typo(text, at, end):
            end += 1
            kind = "LATIN"
        elif text[end] == "'" and kind == "LATIN" and _kind(text[end + 1 : end + 2]) == "LATIN":
            end += 1
        else:
            break
    return end


def _is_typo(text: str, at: int, end: int) -> bool:
    """A digit inside a word is a misread letter; a number with a unit is not."""
    stretch = re.match(r"[0-9a-z]+", text[at:])
    word = stretch[0] if stretch else ""
    digits = sum(map(str.isdigit, word))
    return end < at + len(word) and len(word) >= 4 and 0 < digits <= len(word) // 3 and not word[:2].isdigit()


@lru_cache(maxsize=16384)
def _kind(char: str) -> str:
    """The script of a letter by its Unicode name, `mark`, `DIGIT`, or empty for everything else."""
    if not char:
        return ""
    category = unicodedata.category(char)
    if category.startswith("M"):
        return "mark"
    if category == "Nd":
        return "DIGIT"
    if not category.startswith("L"):
        return ""
    name = unicodedata.name(char, "")
    first = name.split(" ")[0].split("-")[0]
    return {"HALFWIDTH": "KATAKANA", "IDEOGRAPHIC": "CJK", "FULLWIDTH": "LATIN"}.get(first, first)
