"""How well labels are read: top-1, right sets, rejection, false certainty, calibration; on either half of the corpora."""

from __future__ import annotations

import csv
import hashlib
import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

CORPUS = Path(__file__).resolve().parent / "corpus"
HAND = (
    "packs",
    "packs-south-asia",
    "packs-west-asia-africa",
    "packs-europe-americas",
    "packs-east-asia",
    "packs-ambiguous",
)
SURE = 0.9
BINS = 10


@dataclass(frozen=True, slots=True)
class Label:
    """One label: `meant` holds species//form keys, none of them for what is no pulse."""

    text: str
    meant: frozenset[str]
    language: str
    script: str
    noise: str

    @property
    def kind(self) -> str:
        """`none`, `one` or `several`."""
        return ("none", "one")[len(self.meant)] if len(self.meant) < 2 else "several"


@dataclass(frozen=True, slots=True)
class Said:
    """What a reader made of a label: verdict, species//form keys with probabilities, mass of none."""

    verdict: str
    odds: tuple[tuple[str, float], ...]
    none: float


@dataclass(slots=True)
class Score:
    """Counts over labels; shares are properties."""

    counts: dict[str, int] = field(default_factory=lambda: defaultdict(int))
    right: dict[str, int] = field(default_factory=lambda: defaultdict(int))
    falsely_sure: int = 0
    bins: list[list[float]] = field(default_factory=lambda: [[0.0, 0.0, 0.0] for _ in range(BINS)])

    def add(self, label: Label, said: Said) -> bool:
        """Counts one label; True where it was read right."""
        kind = label.kind
        top, chance = said.odds[0] if said.odds else ("", 0.0)
        if kind == "none":
            good = said.verdict == "none"
        elif kind == "one":
            good = said.verdict != "none" and top in label.meant
        else:
            good = said.verdict == "several" and label.meant <= {
                key for key, odds in said.odds if odds >= 0.02
            }
        self.counts[kind] += 1
        self.right[kind] += good
        hit = top in label.meant
        self.falsely_sure += chance >= SURE and not hit
        sure, true = (said.none, kind == "none") if said.none > chance else (chance, hit)
        place = self.bins[min(BINS - 1, int(sure * BINS))]
        place[0] += 1
        place[1] += sure
        place[2] += true
        return good

    def share(self, kind: str) -> float:
        """Read right, of this kind."""
        return self.right[kind] / self.counts[kind] if self.counts[kind] else 1.0

    @property
    def total(self) -> int:
        """Labels counted."""
        return sum(self.counts.values())

    @property
    def calibration_error(self) -> float:
        """Expected calibration error over ten bins."""
        return sum(abs(sure - true) for _, sure, true in self.bins) / max(1, self.total)


def labels(name: str = "packs", half: str = "test") -> Iterator[Label]:
    """The labels of a corpus in one half: `train`, `test`, or `both`; the half hangs on the text alone.

    `hand` is all that were written by hand.
    """
    if name == "hand":
        for one in HAND:
            yield from labels(one, half)
        return
    with (CORPUS / f"{name}.csv").open(encoding="utf-8", newline="") as lines:
        for row in csv.DictReader(lines):
            odd = int(hashlib.sha256(row["text"].encode()).hexdigest(), 16) % 2
            if half != "both" and ("train", "test")[odd] != half:
                continue
            meant = frozenset() if row["expected"] == "none" else frozenset(row["expected"].split())
            yield Label(
                row["text"], meant, row.get("language", ""), row.get("script", ""), row.get("noise", "hand")
            )


def score(said: Callable[[str], Said], wanted: Iterable[Label]) -> tuple[Score, list[Label]]:
    """The score of a reader, and the labels it got wrong."""
    found, wrong = Score(), []
    for label in wanted:
        if not found.add(label, said(label.text)):
            wrong.append(label)
    return found, wrong


def loss(said: Callable[[str], Said], wanted: Sequence[Label]) -> float:
    """Mean negative logarithm of the probability given to what was meant: what weights are fitted on."""
    total = 0.0
    for label in wanted:
        one = said(label.text)
        odds = dict(one.odds)
        if label.kind == "none":
            chance = one.none
        elif label.kind == "one":
            chance = sum(odds.get(key, 0.0) for key in label.meant)
        else:
            # An even share for each is best: the mean of the logarithms, lifted by how many there are.
            chance = math.exp(
                sum(math.log(odds.get(key, 0.0) + 1e-4) for key in label.meant) / len(label.meant)
            )
            chance = min(1.0, chance * len(label.meant))
        total -= math.log(max(chance, 1e-3))
    return total / max(1, len(wanted))
