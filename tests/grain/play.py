"""A shopper played: answers each question with what a kind of grain shows, now and then seen wrongly."""

from __future__ import annotations

import random
from dataclasses import dataclass, replace

from service.glossary.model import Glossary
from service.grain import Identification, Traits, identify
from service.grain.identify import SIZE_STEPS
from service.grain.traits import AGREE, Kind

MOST = 8


@dataclass(frozen=True, slots=True)
class Game:
    """How it ended, after so many answers, and after how many of them poison was first warned of (0: never)."""

    end: Identification
    asked: int
    warned: int

    def names(self, kind: Kind) -> bool:
        """Whether species and form of the kind came first."""
        pulse = kind.grain.pulse
        top = self.end.ranked[0].pulse if self.end.ranked else None
        return bool(top) and (top.species, top.form) == (pulse.species, pulse.form)


def play(glossary: Glossary, kind: Kind, dice: random.Random | None = None) -> Game:
    """Asked and answered to the end; with `dice` eyes err as often as `AGREE` says, and sizes vary within the kind."""
    seen, asked, warned = Traits(), 0, 0
    found = identify(glossary, seen)
    while found.ask and asked < MOST:
        trait = found.ask.trait
        seen = replace(seen, **{trait: _answer(kind, trait, found.ask.answers, dice)})
        asked += 1
        found = identify(glossary, seen)
        warned = warned or (asked if found.warnings else 0)
    return Game(found, asked, warned)


def _answer(kind: Kind, trait: str, answers: tuple[str, ...], dice: random.Random | None) -> float | str:
    if trait == "length_mm":
        low, high = kind.grain.length_mm or (6.0, 6.0)
        size = dice.uniform(low, high) if dice else (low + high) / 2
        return min(SIZE_STEPS, key=lambda step: abs(step - size))
    own = kind.value(trait) or answers[0]
    return dice.choice(answers) if dice and dice.random() > AGREE[trait] else own
