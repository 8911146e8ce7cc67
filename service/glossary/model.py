"""The values of the glossary: frozen, plain, without behaviour that could surprise."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, NamedTuple

Range = tuple[float, float]

FORMS = (
    "whole", "whole-dehulled", "split-with-skin", "split-dehulled", "flour", "grits",
    "roasted", "puffed", "flakes", "sprouted", "fresh", "canned",
)  # fmt: skip
COLOURS = (
    "black", "brown", "red", "green", "yellow", "white",
    "cream", "pink", "orange", "purple", "grey", "mottled",
)  # fmt: skip
COLUMNS = ("lang", "script", "kind", "ref", "text", "use", "agrees", "status", "source", "note")
RECALLED = ("memory", "common-practice")


@dataclass(frozen=True, slots=True)
class Pulse:
    """What one bag holds. An empty slot means any; `species` is a slug."""

    species: str
    market_class: str = ""
    form: str = ""
    colour: str = ""

    @property
    def key(self) -> str:
        """`species[/class[/form[/colour]]]`, without empty tail."""
        return "/".join((self.species, self.market_class, self.form, self.colour)).rstrip("/")

    @staticmethod
    def of(key: str) -> Pulse:
        """The pulse of a key; raises ValueError where it has more than four parts."""
        parts = key.split("/")
        if not 1 <= len(parts) <= 4 or not parts[0]:
            raise ValueError("a pulse key has one to four parts, the first not empty")
        return Pulse(*parts)

    def covers(self, other: Pulse) -> bool:
        """True where every slot filled here is filled alike there."""
        return (
            self.species == other.species
            and self.market_class in ("", other.market_class)
            and self.form in ("", other.form)
            and self.colour in ("", other.colour)
        )


class Row(NamedTuple):
    """One word of one language; see glossary_data/README.md for the meaning of each column."""

    lang: str
    script: str
    kind: str
    ref: str
    text: str
    use: str
    agrees: frozenset[str]
    status: str
    source: str
    note: str
    file: str = ""
    line: int = 0


@dataclass(frozen=True, slots=True)
class MarketClass:
    """What the trade sells within a species."""

    id: str
    english: str
    usda: tuple[str, ...]
    source: str


@dataclass(frozen=True, slots=True)
class Sold:
    """One combination really sold. `share` is a rough weight in trade, 1.0 for an ordinary one."""

    pulse: Pulse
    share: float
    source: str


@dataclass(frozen=True, slots=True)
class Grain:
    """Sizes in mm, weight of 1,000 grains in g, grams in one US cup (236.6 ml), each a range."""

    pulse: Pulse
    length_mm: Range | None
    width_mm: Range | None
    thickness_mm: Range | None
    g_per_1000: Range | None
    g_per_cup: Range | None
    shape: str
    surface: str
    eye: str
    inside: str
    source: str


@dataclass(frozen=True, slots=True)
class Hazard:
    """What can hurt, in which forms (empty: all), and what to do about it."""

    id: str
    applies: tuple[str, ...]
    severity: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class LookAlike:
    """Another pulse or seed that is taken for this one, and how to tell."""

    key: str
    tell: str
    source: str


@dataclass(frozen=True, slots=True)
class Adulterant:
    """What is found mixed into or sold as this pulse."""

    what: str
    in_form: str
    how: str
    source: str


@dataclass(frozen=True, slots=True)
class Species:
    """One botanical species with everything known of it but its names."""

    id: str
    latin: str
    authority: str
    family: str
    english: str
    standing: str
    synonyms: tuple[str, ...]
    codes: Mapping[str, tuple[str, ...]]
    source: str
    market_classes: tuple[MarketClass, ...]
    sold: tuple[Sold, ...]
    grains: tuple[Grain, ...]
    hazards: tuple[Hazard, ...]
    look_alikes: tuple[LookAlike, ...]
    adulterants: tuple[Adulterant, ...]
    cooking: Any = None
    file: str = ""


@dataclass(frozen=True, eq=False)
class Glossary:
    """All that is known, with the digest of the files it was built from."""

    edition: str
    species: Mapping[str, Species]
    rows: Mapping[str, tuple[Row, ...]]
    vocabulary: Mapping[str, Mapping[str, str]]
    sources: Mapping[str, Mapping[str, Any]]
    retired: Mapping[str, str] = field(default_factory=dict)

    @cached_property
    def sold(self) -> tuple[Sold, ...]:
        """Every combination sold, of every species, in the order of the files."""
        return tuple(sold for species in self.species.values() for sold in species.sold)

    @cached_property
    def by_latin(self) -> Mapping[str, str]:
        """Slug by Latin name, slug or synonym, all in small letters."""
        found: dict[str, str] = {}
        for slug, species in self.species.items():
            for name in (*species.synonyms, species.latin, slug):
                found[name.lower()] = slug
        return found

    @cached_property
    def all_rows(self) -> tuple[Row, ...]:
        """The rows of every language, in the order of the files."""
        return tuple(row for rows in self.rows.values() for row in rows)
