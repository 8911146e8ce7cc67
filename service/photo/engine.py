"""Tesseract, one script at a time: what it reads in a grey picture, word by word."""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from enum import IntEnum
from pathlib import Path
from typing import Any

from ..errors import Missing
from .sheet import Box

# ISO 15924 script -> Tesseract's trained script data, and how Unicode begins the names of its letters.
DATA = {
    "Latn": ("Latin", "LATIN"), "Deva": ("Devanagari", "DEVANAGARI"), "Beng": ("Bengali", "BENGALI"),
    "Guru": ("Gurmukhi", "GURMUKHI"), "Gujr": ("Gujarati", "GUJARATI"), "Orya": ("Oriya", "ORIYA"),
    "Taml": ("Tamil", "TAMIL"), "Telu": ("Telugu", "TELUGU"), "Knda": ("Kannada", "KANNADA"),
    "Mlym": ("Malayalam", "MALAYALAM"), "Sinh": ("Sinhala", "SINHALA"), "Arab": ("Arabic", "ARABIC"),
    "Hebr": ("Hebrew", "HEBREW"), "Cyrl": ("Cyrillic", "CYRILLIC"), "Grek": ("Greek", "GREEK"),
    "Ethi": ("Ethiopic", "ETHIOPIC"), "Geor": ("Georgian", "GEORGIAN"), "Armn": ("Armenian", "ARMENIAN"),
    "Thai": ("Thai", "THAI"), "Laoo": ("Lao", "LAO"), "Khmr": ("Khmer", "KHMER"), "Mymr": ("Myanmar", "MYANMAR"),
    "Hans": ("HanS", "CJK"), "Hant": ("HanT", "CJK"), "Jpan": ("Japanese", "CJK HIRAGANA KATAKANA"), "Kore": ("Hangul", "HANGUL"),
}  # fmt: skip
FOLDERS = (
    "/usr/share/tesseract-ocr/5/tessdata",
    "/usr/share/tesseract-ocr/4.00/tessdata",
    "/usr/share/tessdata",
)
HOW = (
    "install tesseract-ocr with its script data (tesseract-ocr-script-latn, -deva, -arab ...), and pip install tesserocr; "
    "typing the words works without"
)
# A word less sure than this is a smudge, not a word.
SMUDGE = 0.3
# Letters of scripts written without spaces, between which the engine puts some.
UNSPACED = "[\u0e00-\u0eff\u1000-\u109f\u1780-\u17ff\u3040-\u30ff\u3400-\u9fff]"
SPACED = re.compile(rf"(?<={UNSPACED}) +(?={UNSPACED})")
# How sure the engine must be, on its own scale, that print is turned by quarters.
UPRIGHT = 1.0
# Tesseract's number for a word written from the right; it hands the letters of one over in the order of the page.
RIGHT_TO_LEFT = 2


@dataclass(frozen=True, slots=True)
class Word:
    """A word with its box in the picture (left, top, right, bottom) and how sure the engine is, 0 to 1."""

    text: str
    box: Box
    sure: float

    @property
    def area(self) -> int:
        """Square pixels of its box."""
        return (self.box[2] - self.box[0]) * (self.box[3] - self.box[1])


class Layout(IntEnum):
    """How words may lie, by Tesseract's numbers: as a page of blocks, as one block, or anywhere."""

    PAGE = 3
    BLOCK = 6
    SCATTERED = 11


@dataclass(frozen=True, slots=True)
class Pass:
    """One reading of one sheet in one script; `sure` is weighted by the size of the print, the name being the largest."""

    script: str
    text: str
    words: tuple[Word, ...]
    sure: float

    @property
    def own(self) -> bool:
        """Whether it holds a letter of its own script, more than what every script's data reads of Latin."""
        begins = tuple(DATA[self.script][1].split())
        return any(unicodedata.name(sign, "").startswith(begins) for sign in self.text)


def data_folder() -> Path:
    """Where Tesseract keeps its data; raises Missing where there is none."""
    for place in (os.environ.get("TESSDATA_PREFIX", ""), *FOLDERS):
        if place and list(Path(place).glob("**/*.traineddata")):
            return Path(place)
    raise Missing("Tesseract", HOW)


def trained(folder: Path, script: str) -> str:
    """The name Tesseract knows a script's data by here, empty where it is not installed."""
    if script not in DATA:
        return ""
    for name in (f"script/{DATA[script][0]}", DATA[script][0]):
        if (folder / f"{name}.traineddata").is_file():
            return name
    return ""


@contextmanager
def reading(folder: Path, script: str) -> Iterator[Engine]:
    """Tesseract with one script's data, let go at the end; raises Missing without tesserocr."""
    try:
        import tesserocr
    except ImportError:
        raise Missing("tesserocr", HOW) from None
    with tesserocr.PyTessBaseAPI(path=os.fspath(folder), lang=trained(folder, script)) as engine:
        yield Engine(engine, script)


@dataclass(frozen=True, slots=True)
class Engine:
    """An opened engine."""

    api: Any
    script: str

    def read(self, picture: Any, scale: float = 1.0, layout: Layout = Layout.SCATTERED) -> Pass:
        """The words of a grey picture, its sides times `scale`."""
        import tesserocr

        self.api.SetPageSegMode(layout)
        self.api.SetImage(
            picture.resize((max(1, round(picture.width * scale)), max(1, round(picture.height * scale))), 1)
        )
        self.api.Recognize()
        level, line = tesserocr.RIL.WORD, tesserocr.RIL.TEXTLINE
        found, lines = [], []
        for part in self._parts(level):
            said = (part.GetUTF8Text(level) or "").strip()
            if part.WordDirection() == RIGHT_TO_LEFT:
                said = said[::-1]
            box = part.BoundingBox(level)
            word = Word(
                said, tuple(round(side / scale) for side in box), round(part.Confidence(level) / 100, 3)
            )
            if part.IsAtBeginningOf(line):
                lines.append("")
            found.append(word)
            if word.sure >= SMUDGE:
                lines[-1] += f" {said}"
        text = "\n".join(SPACED.sub("", line.strip()) for line in lines if line.strip())
        whole = sum(word.area for word in found)
        sure = sum(word.area * word.sure for word in found) / whole if whole else 0.0
        return Pass(self.script, text, tuple(word for word in found if word.sure >= SMUDGE), sure)

    def _parts(self, level: int) -> Iterator[Any]:
        import tesserocr

        found = self.api.GetIterator()
        if not found:
            return
        for part in tesserocr.iterate_level(found, level):
            if not part.Empty(level) and part.BoundingBox(level):
                yield part


def turns(picture: Any, folder: Path) -> tuple[int, ...]:
    """Quarter turns, in degrees against the clock, that may set the print upright, the likelier first."""
    import tesserocr

    if not (folder / "osd.traineddata").is_file():
        return (0,)
    with tesserocr.PyTessBaseAPI(path=os.fspath(folder), lang="osd", psm=tesserocr.PSM.OSD_ONLY) as engine:
        engine.SetVariable("min_characters_to_try", "8")
        engine.SetImage(picture)
        found = engine.DetectOrientationScript()
    if not found or not found["orient_deg"]:
        return (0,)
    turn = int(found["orient_deg"])
    return (turn,) if found["orient_conf"] >= UPRIGHT else (0, turn)
