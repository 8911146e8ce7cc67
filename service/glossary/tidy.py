"""Rows in, the same rows in the standard order and spelling out."""

from __future__ import annotations

import unicodedata

from .checks import KINDS, USES
from .model import COLOURS, FORMS, Row

_ORDER = {ref: at for at, ref in enumerate((*FORMS, *COLOURS))}


def tidy(rows: tuple[Row, ...]) -> list[Row]:
    """Rows by kind, ref, script and use; order within equals, and of patterns, is kept: it has meaning.

    Text is brought to Unicode normal form C without stray spaces; exact twins go.
    """
    clean = [row._replace(text=_clean(row)) for row in rows]
    ordered = sorted(clean, key=_place)
    seen: set[tuple[object, ...]] = set()
    kept = []
    for row in ordered:
        slot = (row.lang, row.script, row.kind, row.ref, row.text, row.agrees)
        if slot not in seen:
            seen.add(slot)
            kept.append(row)
    return kept


def _clean(row: Row) -> str:
    text = unicodedata.normalize("NFC", row.text)
    return text if row.kind == "pattern" else " ".join(text.split())


def _place(row: Row) -> tuple[object, ...]:
    kind = KINDS.index(row.kind) if row.kind in KINDS else len(KINDS)
    if row.kind == "pattern":
        return (kind, 0, "", "", "", 0)
    use = USES.index(row.use) if row.use in USES else len(USES)
    return (kind, _ORDER.get(row.ref, -1), row.ref, row.lang, row.script == "Latn", use)
