"""Traits of loose grains in; ranked pulses, the next best question and, where due, a warning out."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..glossary.kept import kept
from ..glossary.model import Glossary, Pulse
from .traits import AGREE, STATES, Kind, Traits, likelihood, size_fit, word_fit

ENOUGH = 0.9
# Below this expected gain a further question is not worth a shopper's time.
LEAST_BITS = 0.05
# A poisonous seed is spoken of from this probability on.
ALARM = 0.01
# From this probability on nothing more is asked: the grains are to be left alone.
HALT = 0.2
# How rarely poisonous seeds lie among bought pulses, against an ordinary kind.
POISON_WEIGHT = 0.05
SIZE_STEPS = (2.5, 3.5, 4.5, 5.5, 6.5, 7.5, 9.0, 11.0, 13.5, 17.0, 22.0, 30.0)
# How easily a shopper answers, against asking what state the grains are in: an eye or a sheen takes a second look.
EASE = {
    "state": 1.0,
    "outside": 1.0,
    "length_mm": 0.9,
    "shape": 0.85,
    "inside": 0.75,
    "eye": 0.65,
    "surface": 0.6,
}
QUESTIONS = {
    "length_mm": "How long is one grain against a ruler, in mm? A grain of long rice is about 7.",
    "state": "Is it whole with skin, whole without skin, split with skin, or split without skin?",
    "outside": "What colour is it outside?",
    "shape": "What is its shape?",
    "inside": "Cut or bite one in two (do not swallow): what colour is it inside?",
    "eye": "Is there a mark where it was attached, and of what colour?",
    "surface": "Is it smooth, wrinkled, glossy or dull?",
}


@dataclass(frozen=True, slots=True)
class Ranked:
    """A pulse it may be."""

    pulse: Pulse
    probability: float
    poison: bool


@dataclass(frozen=True, slots=True)
class Ask:
    """The next question, its answers (values of the trait), and the bits expected of it."""

    trait: str
    text: str
    answers: tuple[str, ...]
    bits: float


@dataclass(frozen=True, slots=True)
class Identification:
    """What it may be; `warnings` are said before all else.

    `stop` says why nothing more is asked: `certain` (one pulse at 90 %), `poison` (poison is likely), `alike` (looking
    tells no more); empty while there is a question.
    """

    ranked: tuple[Ranked, ...]
    ask: Ask | None
    stop: str
    warnings: tuple[str, ...]

    @property
    def settled(self) -> bool:
        """Whether one pulse reaches 90 %."""
        return self.stop == "certain"


@kept
def kinds(glossary: Glossary) -> tuple[Kind, ...]:
    """Every kind of grain with a size, once for each colour it is sold in."""
    found: list[Kind] = []
    for species in glossary.species.values():
        poison = species.standing == "poison"
        for grain in species.grains:
            if grain.pulse.form not in STATES or (grain.pulse.form != "whole" and poison):
                continue
            same = [
                sold
                for sold in species.sold
                if sold.pulse.form == grain.pulse.form and sold.pulse.market_class == grain.pulse.market_class
            ]
            colours: dict[str, float] = defaultdict(float)
            for sold in same:
                if grain.pulse.colour in ("", sold.pulse.colour):
                    colours[sold.pulse.colour] += sold.share
            for colour, share in (colours or {grain.pulse.colour: 0.2}).items():
                pulse = Pulse(species.id, grain.pulse.market_class, grain.pulse.form, colour)
                weight = POISON_WEIGHT if poison else 0.15 + min(share, 3.0) ** 0.5
                found.append(Kind(pulse.key, grain, colour, weight, poison))
    return tuple(found)


def identify(glossary: Glossary, traits: Traits) -> Identification:
    """The posterior over kinds, the question that gains most, and warnings of poisonous look-alikes."""
    known = kinds(glossary)
    weights = [kind.weight * likelihood(kind, traits) for kind in known]
    total = sum(weights) or 1.0
    odds = [weight / total for weight in weights]
    merged: dict[str, float] = defaultdict(float)
    for kind, chance in zip(known, odds, strict=True):
        merged[kind.key] += chance
    poison = {kind.key for kind in known if kind.poison}
    ranked = tuple(
        Ranked(Pulse.of(key), round(chance, 4), key in poison)
        for key, chance in sorted(merged.items(), key=lambda one: -one[1])[:12]
        if chance >= 0.002
    )
    poisonous: dict[str, float] = defaultdict(float)
    for kind, chance in zip(known, odds, strict=True):
        if kind.poison:
            poisonous[kind.grain.pulse.species] += chance
    stop = ""
    if sum(poisonous.values()) >= HALT:
        stop = "poison"
    elif ranked and _by_species_form(ranked)[0] >= ENOUGH:
        stop = "certain"
    ask = None if stop else _ask(known, odds, traits)
    return Identification(ranked, ask, stop if stop or ask else "alike", _warnings(glossary, poisonous))


def _by_species_form(ranked: Sequence[Ranked]) -> list[float]:
    """Mass by species and form, the most first: what decides how it is cooked."""
    mass: dict[tuple[str, str], float] = defaultdict(float)
    for one in ranked:
        mass[one.pulse.species, one.pulse.form] += one.probability
    return sorted(mass.values(), reverse=True)


def _ask(known: Sequence[Kind], odds: Sequence[float], traits: Traits) -> Ask | None:
    seen = set(traits.seen())
    live = [(kind, chance) for kind, chance in zip(known, odds, strict=True) if chance > 1e-3]
    live = sorted(live, key=lambda one: -one[1])[:80]
    best: Ask | None = None
    most = 0.0
    for trait, text in QUESTIONS.items():
        if trait in seen:
            continue
        answers, bits = _gain(trait, live)
        if len(answers) > 1 and bits >= LEAST_BITS and bits * EASE[trait] > most:
            best, most = Ask(trait, text, answers, round(bits, 4)), bits * EASE[trait]
    return best


def _gain(trait: str, live: Sequence[tuple[Kind, float]]) -> tuple[tuple[str, ...], float]:
    """The likely answers to a question and the mutual information between answer and pulse."""
    if trait == "length_mm":
        answers = tuple(str(step) for step in SIZE_STEPS)
        fits = [[size_fit(kind.grain.length_mm, step) for step in SIZE_STEPS] for kind, _ in live]
    else:
        answers = tuple(dict.fromkeys(kind.value(trait) for kind, _ in live if kind.value(trait)))
        fits = [[word_fit(trait, kind.value(trait), answer) for answer in answers] for kind, _ in live]
    if len(answers) < 2 or (trait in AGREE and all(not kind.value(trait) for kind, _ in live)):
        return (), 0.0
    groups: dict[tuple[str, str], list[float]] = {}
    for (kind, chance), row in zip(live, fits, strict=True):
        scale = chance / (sum(row) or 1.0)
        group = groups.setdefault((kind.grain.pulse.species, kind.grain.pulse.form), [0.0] * len(answers))
        for at, fit in enumerate(row):
            group[at] += scale * fit
    total = sum(map(sum, groups.values()))
    columns = [sum(group[at] for group in groups.values()) / total for at in range(len(answers))]
    bits = 0.0
    for group in groups.values():
        own = sum(group) / total
        for at, joint in enumerate(group):
            if joint > 0:
                bits += joint / total * math.log2(joint / total / (own * columns[at]))
    return answers, bits


def _warnings(glossary: Glossary, poisonous: Mapping[str, float]) -> tuple[str, ...]:
    """One for each poisonous species that is not quite unlikely, the likeliest first."""
    out = []
    for slug in sorted(poisonous, key=lambda one: -poisonous[one]):
        if poisonous[slug] < ALARM:
            continue
        species = glossary.species[slug]
        what = "; ".join(hazard.text for hazard in species.hazards) or "It is poisonous."
        out.append(
            f"This may be {species.english} ({species.latin}), which is never food. {what} "
            "Do not taste or cook it; keep it from children, and ask a poison centre if any was eaten."
        )
    return tuple(out)
