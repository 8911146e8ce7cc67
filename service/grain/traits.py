"""What a person sees of loose grains, and how likely each kind of grain shows it."""

from __future__ import annotations

import math
from dataclasses import dataclass, fields

from ..errors import BadInput
from ..glossary.model import COLOURS, Grain, Range

# A ruler beside a seed is read to about half a millimetre, and lots differ from year to year.
READING_MM = 0.5
SPREAD = 0.10
# Eyes agree on a shape, a surface or an eye this often; the rest is shared by the other answers.
AGREE = {"outside": 0.86, "inside": 0.82, "shape": 0.78, "eye": 0.88, "surface": 0.75, "state": 0.96}
NEAR = {
    frozenset(pair)
    for pair in (
        ("red", "brown"), ("red", "purple"), ("red", "pink"), ("red", "orange"), ("brown", "mottled"), ("brown", "black"),
        ("brown", "cream"), ("cream", "white"), ("cream", "yellow"), ("yellow", "orange"), ("yellow", "white"),
        ("green", "grey"), ("green", "yellow"), ("purple", "black"), ("grey", "black"), ("grey", "brown"), ("mottled", "red"),
        ("mottled", "black"), ("pink", "cream"), ("green", "brown"), ("mottled", "cream"),
    )
}  # fmt: skip
# Whole grains lie among halves, or are cut by a shadow, no more often than this.
FEW_HALVES = 0.15
STATES = ("whole", "whole-dehulled", "split-with-skin", "split-dehulled")


@dataclass(frozen=True, slots=True)
class Traits:
    """Seen traits; None or empty means not seen. Sizes in mm, colours and shapes by id.

    `halves` is the share of grains that show the outline of a half; a half lying on its cut face shows a whole one.
    """

    length_mm: float | None = None
    width_mm: float | None = None
    thickness_mm: float | None = None
    state: str = ""
    outside: str = ""
    inside: str = ""
    shape: str = ""
    surface: str = ""
    eye: str = ""
    halves: float | None = None

    def __post_init__(self) -> None:
        for name in ("length_mm", "width_mm", "thickness_mm"):
            value = getattr(self, name)
            if value is not None and not 0.3 <= value <= 60:
                raise BadInput(name, value, "must lie between 0.3 and 60 mm")
        for name in ("outside", "inside"):
            if getattr(self, name) and getattr(self, name) not in COLOURS:
                raise BadInput(name, getattr(self, name), f"is no colour; use one of {', '.join(COLOURS)}")
        if self.halves is not None and not 0 <= self.halves <= 1:
            raise BadInput("halves", self.halves, "is a share from 0 to 1")
        if self.state and self.state not in STATES:
            raise BadInput("state", self.state, f"use one of {', '.join(STATES)}")

    def seen(self) -> tuple[str, ...]:
        """Names of the traits that were seen."""
        return tuple(one.name for one in fields(self) if getattr(self, one.name) not in (None, ""))


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of grain that may lie on the table: a grain row with one of its outside colours."""

    key: str
    grain: Grain
    outside: str
    weight: float
    poison: bool

    def value(self, trait: str) -> str:
        """The kind's own value of a named trait."""
        if trait == "state":
            return self.grain.pulse.form
        if trait == "outside":
            return self.outside
        return str(getattr(self.grain, trait))


def likelihood(kind: Kind, traits: Traits) -> float:
    """How likely this kind shows these traits; traits not seen, or not known of the kind, say nothing."""
    found = 1.0
    for trait in traits.seen():
        seen = getattr(traits, trait)
        if trait == "halves":
            found *= halves_fit(kind.grain.pulse.form.startswith("split"), seen)
        elif trait.endswith("_mm"):
            found *= size_fit(getattr(kind.grain, trait), seen)
        else:
            found *= word_fit(trait, kind.value(trait), seen)
    return found


def halves_fit(split: bool, share: float) -> float:
    """How likely split or whole grains show this share of half outlines: splits show any, wholes few."""
    if split:
        return 0.4 if share < FEW_HALVES else 0.6
    return 0.95 if share < FEW_HALVES else 0.05


def size_fit(range_: Range | None, seen: float) -> float:
    """Normal density about the middle of the range, its spread from range, ruler and harvest; 0.2 where unknown."""
    if range_ is None:
        return 0.2
    low, high = range_
    middle = (low + high) / 2
    spread = math.sqrt(((high - low) / 3.3) ** 2 + READING_MM**2 + (SPREAD * middle) ** 2)
    return max(1e-4, math.exp(-(((seen - middle) / spread) ** 2) / 2) / spread)


def word_fit(trait: str, own: str, seen: str) -> float:
    """Agreement of eyes: near colours are taken for each other, the rest seldom."""
    agree = AGREE[trait]
    if not own:
        return 0.25
    if own == seen:
        return agree
    if frozenset((own, seen)) in NEAR and trait in ("outside", "inside"):
        return (1 - agree) * 0.6
    return (1 - agree) * 0.12
