"""Where every letter of a PDF stands, measured: against the columns of its table, the rules between rows, the page."""

from __future__ import annotations

import io
import unicodedata
from collections import defaultdict
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Any

import pdfplumber

# Points a letter may lean over the edge of its box: italics and the swash of a vowel sign.
LEAN = 1.2
# The side margins of the template, in points.
MARGIN = 14 / 25.4 * 72
# Lines closer than this share of their size run into each other.
CLOSE = 0.7


def faults(pdf: bytes, widths: Sequence[float] = ()) -> list[str]:
    """What stands where it must not: off the page, over the edge of a column, across a rule, on another line.

    `widths` are the relative widths of the one table of the document.
    """
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        return [fault for page in read.pages for fault in _page(page, widths)]


def _page(page: Any, widths: Sequence[float]) -> Iterator[str]:
    letters = [char for char in page.chars if char["text"].strip() and char["upright"] and not _mark(char)]
    for char in letters:
        if not (
            char["x0"] >= 0
            and char["x1"] <= page.width
            and char["top"] >= 0
            and char["bottom"] <= page.height
        ):
            yield f"page {page.page_number}: {char['text']!r} is off the page"
    # Strokes of the drawings slope; the rules of a table do not.
    rules = sorted({round(one["top"], 1) for one in page.lines if one["bottom"] - one["top"] < 0.1})
    if widths and rules:
        yield from _table(page, letters, rules, widths)
    for fault in _crowded(letters, _columns(page, widths)):
        yield f"page {page.page_number}: {fault}"


def _mark(char: Any) -> bool:
    """A sign set above or below its letter, which has no width of its own."""
    return char["x1"] - char["x0"] < 0.3 or unicodedata.category(char["text"][0]).startswith("M")


def _columns(page: Any, widths: Sequence[float]) -> list[float]:
    if not widths:
        return [0.0, float(page.width)]
    room, at, edges = page.width - 2 * MARGIN, MARGIN, [MARGIN]
    for width in widths:
        at += room * width / sum(widths)
        edges.append(at)
    return edges


def _table(page: Any, letters: list[Any], rules: list[float], widths: Sequence[float]) -> Iterator[str]:
    edges = _columns(page, widths)
    for char in letters:
        if not rules[0] - 40 <= char["top"] <= rules[-1]:
            continue
        middle = (char["x0"] + char["x1"]) / 2
        left = max((edge for edge in edges if edge <= middle), default=0.0)
        right = min((edge for edge in edges if edge > middle), default=float(page.width))
        if char["x0"] < left - LEAN or char["x1"] > right + LEAN:
            yield f"page {page.page_number}: {char['text']!r} of {char['fontname']} stands over the edge of its column"
        base = page.height - char["matrix"][5]
        if any(base - 0.4 * char["size"] < rule < base - LEAN for rule in rules):
            yield f"page {page.page_number}: {char['text']!r} stands on a rule"


def _crowded(letters: list[Any], edges: list[float]) -> Iterator[str]:
    """Lines of one column that overlap."""
    lines: dict[tuple[int, float], float] = defaultdict(float)
    for char in letters:
        middle = (char["x0"] + char["x1"]) / 2
        column = sum(edge <= middle for edge in edges)
        base = round(char["matrix"][5], 1)
        lines[column, base] = max(lines[column, base], char["size"])
    held = sorted(lines.items())
    for ((column, low), _), ((other, high), size) in pairwise(held):
        del size
        if column == other and 2.5 < high - low < CLOSE * lines[column, low]:
            yield f"column {column}: lines at {low} and {high} run into each other"
