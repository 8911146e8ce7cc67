"""Words and barcodes on a pack: Tesseract reads the words in the right scripts, ZXing the codes."""

from __future__ import annotations

import os
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ..errors import Missing

# ISO 15924 script -> Tesseract's trained script data.
DATA = {
    "Latn": "Latin", "Deva": "Devanagari", "Beng": "Bengali", "Guru": "Gurmukhi", "Gujr": "Gujarati", "Orya": "Oriya",
    "Taml": "Tamil", "Telu": "Telugu", "Knda": "Kannada", "Mlym": "Malayalam", "Sinh": "Sinhala", "Arab": "Arabic",
    "Hebr": "Hebrew", "Cyrl": "Cyrillic", "Grek": "Greek", "Ethi": "Ethiopic", "Geor": "Georgian", "Armn": "Armenian",
    "Thai": "Thai", "Laoo": "Lao", "Khmr": "Khmer", "Mymr": "Myanmar", "Hans": "HanS", "Hant": "HanT", "Jpan": "Japanese",
    "Kore": "Hangul",
}  # fmt: skip
FOLDERS = (
    "/usr/share/tesseract-ocr/5/tessdata",
    "/usr/share/tesseract-ocr/4.00/tessdata",
    "/usr/share/tessdata",
)
HOW = "install tesseract-ocr with its script data (tesseract-ocr-script-latn, -deva, -arab ...), and pip install tesserocr"


@dataclass(frozen=True, slots=True)
class Word:
    """A word with its box in the picture (left, top, right, bottom) and how sure the engine is, 0 to 1."""

    text: str
    box: tuple[int, int, int, int]
    sure: float


@dataclass(frozen=True, slots=True)
class Seen:
    """The text of a pack, its words, and the digits of its barcodes."""

    text: str
    words: tuple[Word, ...]
    codes: tuple[str, ...]
    scripts: tuple[str, ...]


def words(picture: Any, scripts: Sequence[str] = ()) -> Seen:
    """What is printed on a pack. `scripts` are ISO 15924 codes; without them Latin and what is installed of India.

    Raises Missing where Tesseract, or the data of every script asked for, is not installed.
    """
    folder = data_folder()
    asked = list(scripts) or ["Latn", "Deva"]
    have = [one for one in asked if one in DATA and _trained(folder, one)]
    if not have:
        raise Missing(f"Tesseract data for {', '.join(asked)}", HOW)
    text, found = _read(picture, folder, have)
    return Seen(text, found, codes(picture), tuple(have))


def data_folder() -> Path:
    """Where Tesseract keeps its data; raises Missing where there is none."""
    for place in (os.environ.get("TESSDATA_PREFIX", ""), *FOLDERS):
        if place and list(Path(place).glob("**/*.traineddata")):
            return Path(place)
    raise Missing("Tesseract", HOW)


def _trained(folder: Path, script: str) -> str:
    """The name Tesseract knows a script's data by here, empty where it is not installed."""
    for name in (f"script/{DATA[script]}", DATA[script]):
        if (folder / f"{name}.traineddata").is_file():
            return name
    return ""


def _read(picture: Any, folder: Path, scripts: Sequence[str]) -> tuple[str, tuple[Word, ...]]:
    try:
        import tesserocr
    except ImportError:
        raise Missing("tesserocr", HOW) from None
    lang = "+".join(_trained(folder, one) for one in scripts)
    out = []
    with tesserocr.PyTessBaseAPI(path=os.fspath(folder), lang=lang, psm=tesserocr.PSM.SPARSE_TEXT) as engine:
        engine.SetImage(picture)
        engine.Recognize()
        text = engine.GetUTF8Text()
        if not text.strip():
            return "", ()
        level = tesserocr.RIL.WORD
        found = engine.GetIterator()
        for part in tesserocr.iterate_level(found, level) if found else ():
            box = part.BoundingBox(level)
            said = (part.GetUTF8Text(level) or "").strip()
            if box and said:
                out.append(Word(said, tuple(box), round(part.Confidence(level) / 100, 3)))
    lines = [" ".join(line.split()) for line in text.splitlines()]
    return "\n".join(line for line in lines if line), tuple(out)


def codes(picture: Any) -> tuple[str, ...]:
    """Digits of EAN and UPC codes in the picture; none where the reader is not installed."""
    try:
        import zxingcpp
    except ImportError:
        return ()
    found = zxingcpp.read_barcodes(picture)
    return tuple(dict.fromkeys(one.text for one in found if one.text.isdigit() and 8 <= len(one.text) <= 14))
