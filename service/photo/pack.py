"""Words and barcodes on a pack: Tesseract reads the words in the right script, ZXing the codes."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from typing import Any

from ..errors import Missing
from .engine import DATA, HOW, Layout, Pass, Word, data_folder, reading, trained, turns
from .sheet import Sheet, evened, level

# Letters this high in pixels, marks and all, are read best; some further passes take them smaller.
HIGH = 32
SMALLER = 0.8
# Latin read as surely as this is Latin; another script read so surely is looked no further for.
CLEAR = 0.86
UNDERSTOOD = 0.5
# Print read less surely than this, or of fewer signs than are enough, may lie another way.
LEGIBLE, ENOUGH = 0.75, 8
# Passes this near to the surest one are put to the judge.
NEAR = 0.12
# ISO/IEC 15424 symbology identifiers of codes that carry article numbers: EAN and UPC, ITF-14, and what GS1 rules.
CARRIERS = ("]E", "]I", "]e", "]C1", "]d2", "]Q3")
ARTICLE = re.compile(r"(?:\(01\))?(\d{14}|\d{12,13}|\d{8})(?!\d)")
# Photos read at the same time: each takes a core and some 100 MB.
TOGETHER = threading.BoundedSemaphore(2)
# How surely a text is understood, 0 to 1.
Judge = Callable[[str], float]


@dataclass(frozen=True, slots=True)
class Seen:
    """The text of a pack, its words, and the digits of its barcodes."""

    text: str
    words: tuple[Word, ...]
    codes: tuple[str, ...]
    scripts: tuple[str, ...]


def words(picture: Any, scripts: Sequence[str] = (), judge: Judge = lambda text: 0.0) -> Seen:
    """What is printed on a pack.

    `scripts` are ISO 15924 codes, all that are installed where none is given. `judge` says how
    surely a text is understood, 0 to 1; among passes about as sure, the best understood is taken.
    Raises Missing where Tesseract, or the data of every script asked for, is not installed.
    """
    folder = data_folder()
    asked = tuple(scripts) or tuple(DATA)
    have = [one for one in asked if trained(folder, one)]
    if not have:
        raise Missing(f"Tesseract data for {', '.join(asked)}", HOW)
    with TOGETHER:
        even = evened(picture)
        tried: list[tuple[float, Sheet, Pass]] = []
        for turn in turns(even, folder):
            flat = level(even, turn)
            best = _best(flat, folder, have, judge)
            legible = best.sure * min(1.0, len(best.text) / ENOUGH)
            tried.append((legible * (1 + judge(best.text)), flat, best))
            if legible >= LEGIBLE:
                break
    _, flat, best = max(tried, key=lambda one: one[0])
    found = tuple(Word(word.text, flat.back(word.box), word.sure) for word in best.words)
    return Seen(best.text, found, codes(picture), (best.script,))


def _best(flat: Sheet, folder: Path, scripts: Sequence[str], judge: Judge) -> Pass:
    """The scripts whose data read the largest print most surely, then the pass best understood."""
    scale = 1.0
    firsts: list[Pass] = []
    for script in scripts:
        with reading(folder, script) as engine:
            first = engine.read(flat.picture, scale)
            if not firsts:
                scale = HIGH / _height(first)
                first = engine.read(flat.picture, scale)
        firsts.append(first)
        if first.own and first.sure >= CLEAR and (script != "Latn" or judge(first.text) >= UNDERSTOOD):
            break
    most = max(one.sure for one in firsts)
    near = [one for one in firsts if one.sure >= most - NEAR and (one.own or one.script == "Latn")] or firsts
    near = sorted(near, key=lambda one: -one.sure)[:3]
    passes = (one for first in near for one in (first, *_more(flat, folder, first.script, scale)))
    return max(passes, key=lambda one: one.sure * (1 + judge(one.text)))


def _more(flat: Sheet, folder: Path, script: str, scale: float) -> Iterator[Pass]:
    """Passes that see what the first one may not: bold print thinned, and words in blocks."""
    from PIL import ImageFilter

    with reading(folder, script) as engine:
        yield engine.read(flat.picture.filter(ImageFilter.MaxFilter(3)), scale * SMALLER)
        yield engine.read(flat.picture, scale * SMALLER, Layout.PAGE)
        yield engine.read(flat.picture, scale, Layout.BLOCK)


def _height(first: Pass) -> float:
    """Pixels from top to bottom of the largest words."""
    largest = sorted(first.words, key=lambda word: -word.area)[:3]
    return median(word.box[3] - word.box[1] for word in largest) if largest else HIGH


def codes(picture: Any) -> tuple[str, ...]:
    """Article numbers (GTIN) in the codes of a picture, check digits not yet proved; none without the reader."""
    try:
        import zxingcpp
    except ImportError:
        return ()
    found = (
        ARTICLE.match(one.text)
        for one in zxingcpp.read_barcodes(picture)
        if one.symbology_identifier.startswith(CARRIERS)
    )
    return tuple(dict.fromkeys(one[1] for one in found if one))
