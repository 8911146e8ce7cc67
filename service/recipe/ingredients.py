"""An ingredient line in; how much of which pulse, out."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from ..glossary.model import Glossary, Pulse, Range
from ..label import Reader, Reading
from .times import SOAK, TIME
from .units import UNITS, Amount, amount

SURE = 0.6
# Grams drained in a can of 400 g, and what it weighs dry.
CAN_DRAINED = (230.0, 255.0)
CUP_ML = 236.6
# Below this a word was guessed from a likeness too faint for running text.
TRUST = 0.55
# How many words may stand between an amount and the name it belongs to.
WORDS_BETWEEN = 3


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
    rest = line
    if found and found.unit:
        rest = line[: found.start] + " " * (found.end - found.start) + line[found.end :]
    if not rest.strip():
        return None
    reading = reader.read(rest, languages)
    if reading.verdict == "none" or not reading.readings:
        return None
    top = reading.readings[0]
    spans = name_spans(reading, top.pulse)
    if not spans or top.probability < SURE / 2:
        return None
    pulse = top.pulse
    if found and found.unit == "can" and pulse.form in ("", "whole"):
        pulse = replace(pulse, form="canned")
    grams = _grams(found, pulse, reader.glossary) if found else None
    return Ingredient(line, pulse, *spans[0], found, grams, top.probability)


def listed(one: Ingredient) -> bool:
    """Whether a line asks for an amount of the pulse: the two stand by each other, and the amount is no time."""
    found = one.amount
    if found is None or any(time.start() == found.start for time in TIME.finditer(one.line)):
        return False
    if found.start < one.start:
        between = one.line[found.end : one.start]
        near = len(between.split()) <= WORDS_BETWEEN and not re.search(r"[.!?।]\s", between)
        return near and (bool(found.unit) or found.start <= 3)
    between = re.sub(r"\([^)]*\)", "", one.line[one.end : found.start])
    return bool(found.unit) and not any(char.isalpha() for char in between)


def name_spans(reading: Reading, pulse: Pulse) -> list[tuple[int, int]]:
    """Where the name of a pulse stands, each time: its noun with the form and colour words that touch it."""
    parts = sorted(
        (
            one
            for one in reading.used
            if one.kind in ("base", "fixed", "form", "colour") and not _work(one.text)
        ),
        key=lambda one: one.start,
    )
    found: list[tuple[int, int]] = []
    for noun in parts:
        ours = noun.kind in ("base", "fixed") and noun.ref.split("/")[0] == pulse.species
        if not ours or noun.trust < TRUST or (found and noun.start < found[-1][1]):
            continue
        start, end = noun.start, noun.end
        for one in parts:
            if end <= one.start <= end + 2:
                end = max(end, one.end)
        for one in reversed(parts):
            if one.end <= start <= one.end + 2:
                start = one.start
        found.append((start, end))
    return found


def _work(text: str) -> bool:
    """Whether words read as a form are of the kitchen's work: `left to soak` is no form of the pulse."""
    return bool(SOAK.search(text))


def cup_grams(pulse: Pulse, glossary: Glossary) -> float:
    """Grams in one US cup of a pulse as bought."""
    balance = glossary.species[pulse.species].cooking.balance_of(pulse)
    if not balance:
        return 190.0
    return float(balance.cup_cooked_g if pulse.form == "canned" else balance.cup_dry_g)


def _grams(found: Amount, pulse: Pulse, glossary: Glossary) -> Range | None:
    if not found.unit:
        return None
    kind, size = UNITS[found.unit]
    low, high = found.value
    if kind == "mass":
        return low * size, high * size
    if kind == "can":
        return low * CAN_DRAINED[0], high * CAN_DRAINED[1]
    cup = cup_grams(pulse, glossary)
    return low * size / CUP_ML * cup, high * size / CUP_ML * cup
