"""What is missing: the coverage of pulses by languages."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from .model import RECALLED, Glossary, Pulse

# A language is full where every pulse sold has a name in its own script.
FULL = 1.0


@dataclass(frozen=True, slots=True)
class Coverage:
    """Of one language: its scripts, rows, share of rows checked, share of what is sold that has a name."""

    lang: str
    scripts: tuple[str, ...]
    rows: int
    checked: float
    species: int
    named: float
    missing: tuple[str, ...]

    @property
    def full(self) -> bool:
        """True where everything sold composes."""
        return self.named >= FULL


def gaps(glossary: Glossary, names: Callable[[Pulse, str], bool]) -> tuple[Coverage, ...]:
    """The coverage of every language; `names` says whether a pulse has a name in a language."""
    sold = [one.pulse for one in glossary.sold if glossary.species[one.pulse.species].standing == "pulse"]
    return tuple(_coverage(glossary, lang, sold, names) for lang in glossary.rows)


def _coverage(
    glossary: Glossary, lang: str, sold: list[Pulse], names: Callable[[Pulse, str], bool]
) -> Coverage:
    rows = glossary.rows[lang]
    checked = sum(row.status == "checked" and row.source not in RECALLED for row in rows)
    missing = [pulse.key for pulse in sold if not names(pulse, lang)]
    scripts = dict.fromkeys(row.script for row in rows if row.script != "Zyyy")
    return Coverage(
        lang=lang,
        scripts=tuple(scripts),
        rows=len(rows),
        checked=checked / len(rows) if rows else 0.0,
        species=len({row.ref.split("/")[0] for row in rows if row.kind in ("base", "fixed")}),
        named=1 - len(missing) / len(sold) if sold else 0.0,
        missing=tuple(missing),
    )
