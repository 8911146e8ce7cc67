"""Pulses with probabilities in, the one question that settles most out: things a shopper can see or ask."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ..glossary.model import Glossary, Grain, Pulse

# A grain of long rice is the ruler everyone has: about 7 mm.
RICE_MM = 7.0


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer, and the keys of the pulses it leaves."""

    text: str
    pulses: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Question:
    """`id` names the trait asked for; `bits` is the information expected of the answer."""

    id: str
    text: str
    answers: tuple[Answer, ...]
    bits: float


# How easily a shopper can answer: the state of the grains shows through the bag, an eye or an inside does not.
EASE = {"form": 1.0, "outside": 0.95, "size": 0.9, "flat": 0.9, "inside": 0.7, "eye": 0.6}


def question(glossary: Glossary, weighed: Sequence[tuple[Pulse, float]]) -> Question | None:
    """The question with the largest expected gain, or None where none parts the pulses."""
    total = sum(weight for _, weight in weighed)
    if len(weighed) < 2 or not total:
        return None
    best: Question | None = None
    most = 0.0
    for name, text, trait in TRAITS:
        groups: dict[str, list[tuple[str, float]]] = defaultdict(list)
        for pulse, weight in weighed:
            groups[trait(glossary, pulse)].append((pulse.key, weight / total))
        if len(groups) < 2 or "" in groups:
            continue
        masses = [sum(weight for _, weight in group) for group in groups.values()]
        bits = -sum(mass * math.log2(mass) for mass in masses if mass > 0)
        if bits * EASE.get(name, 0.8) > most + 1e-9:
            most = bits * EASE.get(name, 0.8)
            answers = tuple(Answer(said, tuple(key for key, _ in group)) for said, group in groups.items())
            best = Question(name, text, answers, round(bits, 4))
    return best


def _grain(glossary: Glossary, pulse: Pulse) -> Grain | None:
    grains = glossary.species[pulse.species].grains
    fitting = [one for one in grains if one.pulse.form in ("", pulse.form)]
    same = [one for one in fitting if one.pulse.market_class == pulse.market_class]
    return (same or fitting or [None])[0]  # type: ignore[list-item]


def _form(glossary: Glossary, pulse: Pulse) -> str:
    del glossary
    return {
        "whole": "whole seeds with their skin",
        "whole-dehulled": "whole seeds without skin",
        "split-with-skin": "halves that still have skin",
        "split-dehulled": "halves without skin",
        "flour": "a fine flour",
        "grits": "coarse broken pieces",
    }.get(pulse.form, pulse.form)


def _size(glossary: Glossary, pulse: Pulse) -> str:
    grain = _grain(glossary, pulse)
    if grain is None or grain.length_mm is None:
        return ""
    middle = sum(grain.length_mm) / 2
    return (
        "shorter than it"
        if middle < 0.85 * RICE_MM
        else "longer than it"
        if middle > 1.25 * RICE_MM
        else "about the same"
    )


def _flat(glossary: Glossary, pulse: Pulse) -> str:
    grain = _grain(glossary, pulse)
    if grain is None or not grain.shape:
        return ""
    return grain.shape.replace("-", " ")


def _inside(glossary: Glossary, pulse: Pulse) -> str:
    grain = _grain(glossary, pulse)
    return grain.inside if grain else ""


def _eye(glossary: Glossary, pulse: Pulse) -> str:
    grain = _grain(glossary, pulse)
    return (grain.eye.replace("-", " ") or "none") if grain else ""


def _outside(glossary: Glossary, pulse: Pulse) -> str:
    colours = {
        one.pulse.colour
        for one in glossary.species[pulse.species].sold
        if one.pulse.form == pulse.form and pulse.market_class in ("", one.pulse.market_class)
    }
    return pulse.colour or " or ".join(sorted(colours - {""}))


def _english(glossary: Glossary, pulse: Pulse) -> str:
    return glossary.species[pulse.species].english


Trait = Callable[[Glossary, Pulse], str]
TRAITS: tuple[tuple[str, str, Trait], ...] = (
    ("form", "Look into the bag: what is in it?", _form),
    ("colour", "What colour is the thing in the bag?", _outside),
    ("size", "Lay one beside a grain of long rice (about 7 mm): how long is it?", _size),
    ("shape", "What is its shape?", _flat),
    ("inside", "Cut or bite one in two (do not swallow): what colour is it inside?", _inside),
    ("eye", "Is there a coloured eye where it was attached?", _eye),
    ("name", "Ask the grocer which of these it is.", _english),
)
