"""Questions to 90 % certainty over everything sold, and how poison is told: `python -m tests.benchmarks.grains`.

A shopper is played for every kind of grain, once with sharp eyes and then ten times with eyes that err.
"""

from __future__ import annotations

import random
import statistics

from service.glossary.model import Glossary
from service.grain.identify import kinds
from service.grain.traits import Kind
from service.store import files
from tests.grain.play import Game, play

LOTS = 10


def main() -> None:
    """Print the distributions, what stays alike, and what is warned of."""
    glossary = files.load()
    pulses = [kind for kind in kinds(glossary) if not kind.poison]
    poisons = [kind for kind in kinds(glossary) if kind.poison]
    dice = random.Random(0)
    sharp = [(kind, play(glossary, kind)) for kind in pulses]
    erring = [(kind, play(glossary, kind, dice)) for kind in pulses for _ in range(LOTS)]
    told("sharp eyes", sharp)
    told("erring eyes", erring)
    warned(glossary, poisons, dice)
    false = statistics.mean(game.end.stop == "poison" for _, game in erring)
    print(f"pulses stopped as poison by erring eyes: {false:.1%}")
    print("alike to the end:", ", ".join(kind.key for kind, game in sharp if game.end.stop == "alike"))


def told(name: str, games: list[tuple[Kind, Game]]) -> None:
    """One line of figures; the expected number weighs each kind by how often it is bought."""
    counts = [game.asked for _, game in games]
    weight = sum(kind.weight for kind, _ in games)
    expected = sum(kind.weight * game.asked for kind, game in games) / weight
    certain = [(kind, game) for kind, game in games if game.end.stop == "certain"]
    to = statistics.mean(game.asked for _, game in certain)
    print(
        f"{name}: {len(games)} games, {statistics.mean(counts):.1f} questions on average ({expected:.1f} weighed by sales), "
        f"{statistics.median(counts):g} in the middle, {max(counts)} at most; 90 % certain in {len(certain) / len(games):.0%} "
        f"after {to:.1f}, then right {statistics.mean(game.names(kind) for kind, game in certain):.1%}; "
        f"first of all right {statistics.mean(game.names(kind) for kind, game in games):.1%}"
    )


def warned(glossary: Glossary, poisons: list[Kind], dice: random.Random) -> None:
    """How surely and how soon poison is told."""
    for name, eyes in (("sharp", [None]), ("erring", [dice] * 4 * LOTS)):
        games = [play(glossary, kind, eye) for kind in poisons for eye in eyes]
        share = statistics.mean(bool(game.end.warnings) for game in games)
        soon = [game.warned for game in games if game.warned]
        print(
            f"poison, {name} eyes: warned in {share:.0%} of {len(games)}, first after {statistics.mean(soon):.1f} answers"
        )


if __name__ == "__main__":
    main()
