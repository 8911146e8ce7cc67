"""Pulses with probabilities in, the one question that settles most out: things a shopper can see or ask."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from ..glossary.model import Glossary, Grain, Pulse

# Answer -> how often a pulse gives it; empty where that is not known.
Shares = Mapping[str, float]
Trait = Callable[[Glossary, Pulse], Shares]
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


# How easily a shopper can answer: the state of the grains shows through the bag, an eye or an inside does not;
# and who sells it may know it by the same word as the bag.
EASE = {"form": 1.0, "colour": 0.95, "size": 0.9, "shape": 0.9, "inside": 0.7, "eye": 0.6, "name": 0.3}
# Nobody tells these two apart by eye.
PALE = frozenset({"white", "cream"})


def question(glossary: Glossary, weighed: Sequence[tuple[Pulse, float]]) -> Question | None:
    """The question with the largest expected gain, or None where none parts the pulses.

    A pulse sold in several colours may give several answers; answers that leave the same pulses are one.
    """
    total = sum(weight for _, weight in weighed)
    if len(weighed) < 2 or not total:
        return None
    best: Question | None = None
    most = 0.0
    for name, text, trait in TRAITS:
        shares = {pulse.key: trait(glossary, pulse) for pulse, _ in weighed}
        left = _left(shares)
        if len(left) < 2 or not all(shares.values()):
            continue
        bits = _gain([(shares[pulse.key], weight / total) for pulse, weight in weighed], left)
        if bits * EASE[name] > most + 1e-9:
            most = bits * EASE[name]
            answers = tuple(Answer(" or ".join(said), pulses) for pulses, said in left.items())
            best = Question(name, text, answers, round(bits, 4))
    return best


def _left(shares: Mapping[str, Shares]) -> dict[tuple[str, ...], list[str]]:
    """The pulses left by each answer, and the answers that leave just those."""
    keys: dict[str, list[str]] = defaultdict(list)
    for key, said in shares.items():
        for text in said:
            keys[text].append(key)
    left: dict[tuple[str, ...], list[str]] = defaultdict(list)
    for text, pulses in keys.items():
        left[tuple(pulses)].append(text)
    return left


def _gain(weighed: Sequence[tuple[Shares, float]], left: Mapping[tuple[str, ...], Sequence[str]]) -> float:
    """Bits the answer tells of the pulse: how open the answer is, less what stays open where the pulse is known."""
    apart = [
        ([sum(shares.get(text, 0.0) for text in said) for said in left.values()], weight)
        for shares, weight in weighed
    ]
    overall = [sum(weight * share[at] for share, weight in apart) for at in range(len(left))]
    return _entropy(overall) - sum(weight * _entropy(share) for share, weight in apart)


def _entropy(shares: Sequence[float]) -> float:
    return -sum(share * math.log2(share) for share in shares if share > 0)


def _shared(pairs: Iterable[tuple[str, float]]) -> Shares:
    """Shares of the answers, adding up to 1; nothing where one is not known."""
    out: dict[str, float] = defaultdict(float)
    for text, share in pairs:
        out[text] += share
    total = sum(out.values())
    return {} if "" in out or not total else {text: out[text] / total for text in sorted(out)}


def _by_grain(say: Callable[[Grain], str]) -> Trait:
    """An answer that is read off the grains: of a class that is not known, as each is sold."""

    def trait(glossary: Glossary, pulse: Pulse) -> Shares:
        one = glossary.species[pulse.species]
        fitting = [grain for grain in one.grains if grain.pulse.form in ("", pulse.form)]
        own = [grain for grain in fitting if grain.pulse.market_class == pulse.market_class]
        if pulse.market_class:
            return _shared((say(grain), 1.0) for grain in (own or fitting)[:1])
        sold: dict[str, float] = defaultdict(float)
        for each in one.sold:
            if each.pulse.form == pulse.form:
                sold[each.pulse.market_class] += each.share
        return _shared((say(grain), sold[grain.pulse.market_class]) for grain in fitting)

    return trait


def _form(glossary: Glossary, pulse: Pulse) -> Shares:
    del glossary
    said = {
        "whole": "whole seeds with their skin",
        "whole-dehulled": "whole seeds without skin",
        "split-with-skin": "halves that still have skin",
        "split-dehulled": "halves without skin",
        "flour": "a fine flour",
        "grits": "coarse broken pieces",
    }.get(pulse.form, pulse.form)
    return _shared([(said, 1.0)])


def _size(grain: Grain) -> str:
    if grain.length_mm is None:
        return ""
    middle = sum(grain.length_mm) / 2
    return (
        "shorter than it"
        if middle < 0.85 * RICE_MM
        else "longer than it"
        if middle > 1.25 * RICE_MM
        else "about the same"
    )


def _seen(colour: str) -> str:
    return "white or cream" if colour in PALE else colour


def _outside(glossary: Glossary, pulse: Pulse) -> Shares:
    if pulse.colour:
        return {_seen(pulse.colour): 1.0}
    return _shared(
        (_seen(one.pulse.colour), one.share)
        for one in glossary.species[pulse.species].sold
        if one.pulse.colour
        and one.pulse.form == pulse.form
        and pulse.market_class in ("", one.pulse.market_class)
    )


def _english(glossary: Glossary, pulse: Pulse) -> Shares:
    return {glossary.species[pulse.species].english: 1.0}


TRAITS: tuple[tuple[str, str, Trait], ...] = (
    ("form", "Look into the bag: what is in it?", _form),
    ("colour", "What colour is the thing in the bag?", _outside),
    ("size", "Lay one beside a grain of long rice (about 7 mm): how long is it?", _by_grain(_size)),
    ("shape", "What is its shape?", _by_grain(lambda grain: grain.shape.replace("-", " "))),
    (
        "inside",
        "Cut or bite one in two (do not swallow): what colour is it inside?",
        _by_grain(lambda grain: _seen(grain.inside)),
    ),
    (
        "eye",
        "Is there a coloured eye where it was attached?",
        _by_grain(lambda grain: grain.eye.replace("-", " ") or "none"),
    ),
    ("name", "Ask the grocer which of these it is.", _english),
)
