"""An ingredient line in; how much of which pulse, out."""

from __future__ import annotations

from dataclasses import dataclass

from ..glossary.model import Glossary, Pulse, Range
from ..label import Reader, Reading
from .units import UNITS, Amount, amount

SURE = 0.6
# Grams drained in a can of 400 g, and what it weighs dry.
CAN_DRAINED = (230.0, 255.0)
CUP_ML = 236.6


@dataclass(frozen=True, slots=True)
class Ingredient:
    """A pulse in a recipe. `start` to `end` is its name in the line; grams as bought, None where not told."""

    line: str
    pulse: Pulse
    start: int
    end: int
    amount: Amount | None
    grams: Range | None
    probability: float


def ingredient(line: str, reader: Reader, languages: tuple[str, ...] = ()) -> Ingredient | None:
    """The pulse a line asks for; None where it names none, or something made of one."""
    found = amount(line)
    cut = found.end if found and found.unit else 0
    rest = line[cut:]
    if not rest.strip():
        return None
    reading = reader.read(rest, languages)
    if reading.verdict == "none" or not reading.readings:
        return None
    top = reading.readings[0]
    span = name_span(reading, top.pulse)
    if span is None or top.probability < SURE / 2:
        return None
    grams = _grams(found, top.pulse, reader.glossary) if found else None
    return Ingredient(line, top.pulse, cut + span[0], cut + span[1], found, grams, top.probability)


def name_span(reading: Reading, pulse: Pulse) -> tuple[int, int] | None:
    """Where the name of a pulse stands: its noun with the form and colour words that touch it."""
    parts = sorted(
        (used for used in reading.used if used.kind in ("base", "fixed", "form", "colour")),
        key=lambda one: one.start,
    )
    nouns = [one for one in parts if one.kind in ("base", "fixed") and one.ref.split("/")[0] == pulse.species]
    if not nouns:
        return None
    start, end = nouns[0].start, nouns[0].end
    for one in parts:
        if one.start >= start and one.start <= end + 2:
            end = max(end, one.end)
    for one in reversed(parts):
        if one.end <= start and start - one.end <= 2:
            start = one.start
    return start, end


def _grams(found: Amount, pulse: Pulse, glossary: Glossary) -> Range | None:
    if not found.unit:
        return None
    kind, size = UNITS[found.unit]
    low, high = found.value
    if kind == "mass":
        return low * size, high * size
    if kind == "can":
        return low * CAN_DRAINED[0], high * CAN_DRAINED[1]
    balance = glossary.species[pulse.species].cooking.balance_of(pulse)
    cup = (balance.cup_cooked_g if pulse.form == "canned" else balance.cup_dry_g) if balance else 190.0
    return low * size / CUP_ML * cup, high * size / CUP_ML * cup
