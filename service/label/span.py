"""A stretch of a label and what it may mean; a reading of tokens and how much it explains."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from .index import Meaning


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of the comparable text, what it may mean, and how far to trust that (0 to 1).

    `otherwise`: the words in it that are known as they stand, which hold where it was not the name it was taken for.
    """

    start: int
    end: int
    key: str
    meanings: tuple[Meaning, ...]
    trust: float
    how: str
    shared: frozenset[str] = frozenset()
    otherwise: tuple[Span, ...] = ()


@dataclass(frozen=True, slots=True)
class Hypothesis:
    """One reading of the tokens `first` to `last` (half-open); `gain` says how much it explains."""

    first: int
    last: int
    spans: tuple[Span, ...]
    gain: float


def names(one: Meaning) -> bool:
    """Whether a meaning names a pulse."""
    return one.kind in ("base", "fixed")


def named(span: Span) -> str:
    """Whether all, some or none of what a span may mean, noise apart, names a pulse."""
    naming = [names(one) for one in span.meanings if one.kind != "noise"]
    return "none" if not any(naming) else "all" if all(naming) else "some"


def species(span: Span) -> set[str]:
    """The species a span may name."""
    return {one.ref.partition("/")[0] for one in span.meanings if names(one)}


def gain(span: Span) -> float:
    """How much a span explains: its letters, weighed by what a letter of its script says."""
    letters = min(
        _letters(span.key), 1.3 * max(1, span.end - span.start) * (2.2 if ord(span.key[0]) > 0x2E80 else 1.2)
    )
    weight = 1.0 if any(names(one) or one.kind == "other" for one in span.meanings) else 0.95
    return letters * span.trust * weight - 1.2


@lru_cache(maxsize=65536)
def _letters(key: str) -> float:
    return sum(1.0 if char.isascii() else 2.2 if ord(char) > 0x2E80 else 1.2 for char in key)
