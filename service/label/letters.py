"""Indexed words one letter away from a word: one dropped, doubled, changed, or two that changed places.

A word and another that is one edit away leave the same letters when one letter is taken from each, or from
one of them; the letters left are looked up by their hash, so every such neighbour is found in microseconds.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

import numpy as np
from rapidfuzz.distance import OSA

Hashes = np.ndarray[Any, np.dtype[np.uint64]]
# An odd multiplier: arithmetic modulo two to the 64th keeps every letter's share.
BASE = 0x9E3779B97F4A7C15
MASK = (1 << 64) - 1
INVERSE = pow(BASE, -1, 1 << 64)
SHORTEST, LONGEST = 3, 32


class Letters:
    """Words of one family of scripts by what is left of them without one letter."""

    def __init__(self, words: Iterable[str]) -> None:
        by_length: dict[int, list[str]] = defaultdict(list)
        for word in words:
            if SHORTEST <= len(word) <= LONGEST:
                by_length[len(word)].append(word)
        self.words: list[str] = []
        hashes: list[Hashes] = []
        owners: list[np.ndarray[Any, np.dtype[np.int32]]] = []
        for length, same in by_length.items():
            first = len(self.words)
            self.words += same
            left = np.concatenate(_without_one(_codes(same, length)), axis=1)
            hashes.append(left.ravel())
            owners.append(np.repeat(np.arange(first, len(self.words), dtype=np.int32), left.shape[1]))
        joined = np.concatenate(hashes) if hashes else np.zeros(0, np.uint64)
        order = np.argsort(joined, kind="stable")
        self._hashes: Hashes = joined[order]
        self._owners = (np.concatenate(owners) if owners else np.zeros(0, np.int32))[order]

    def near(self, word: str) -> list[str]:
        """The words one edit away (optimal string alignment), in no order; none for the shortest and longest."""
        if not SHORTEST <= len(word) <= LONGEST:
            return []
        sought = np.array(_left(word), np.uint64)
        low = np.searchsorted(self._hashes, sought, side="left")
        high = np.searchsorted(self._hashes, sought, side="right")
        found = {
            int(owner)
            for start, end in zip(low.tolist(), high.tolist(), strict=True)
            for owner in self._owners[start:end]
        }
        return [
            other
            for other in (self.words[at] for at in found)
            if OSA.distance(word, other, score_cutoff=1) == 1
        ]


def _left(word: str) -> list[int]:
    """As `_without_one`, of one word: a dozen steps are done sooner without arrays."""
    codes = [*map(ord, word)]
    last = len(codes) - 1
    whole = 0
    for code in codes:
        whole = (whole * BASE + code) & MASK
    out = [whole + len(codes) & MASK]
    # Without the last letter, then with it back and the one before gone, and so on to the first.
    before = (whole - codes[last]) * INVERSE & MASK
    after, power = 0, 1
    for at in range(last, -1, -1):
        out.append(before * power + after + last & MASK)
        after = (after + codes[at] * power) & MASK
        power = power * BASE & MASK
        before = (before - codes[at - 1]) * INVERSE & MASK if at else 0
    return out


def _codes(words: list[str], length: int) -> Hashes:
    """Words of one length as rows of code points."""
    joined = "".join(words).encode("utf-32-le")
    return np.frombuffer(joined, dtype=np.uint32).reshape(len(words), length).astype(np.uint64)


def _without_one(codes: Hashes) -> tuple[Hashes, Hashes]:
    """The hash of each whole word, and of it without each of its letters: rows by word."""
    count, length = codes.shape
    with np.errstate(over="ignore"):
        powers = np.cumprod(np.full(length + 1, BASE, np.uint64)) * np.uint64(INVERSE)
        # Before each letter, read from the left; after each letter, read to the right.
        before = np.zeros((count, length + 1), np.uint64)
        after = np.zeros((count, length + 1), np.uint64)
        for at in range(length):
            before[:, at + 1] = before[:, at] * np.uint64(BASE) + codes[:, at]
        for at in range(length - 1, -1, -1):
            after[:, at] = codes[:, at] * powers[length - 1 - at] + after[:, at + 1]
        rest = np.arange(length - 1, -1, -1)
        without = before[:, :-1] * powers[rest] + after[:, 1:]
        return before[:, -1:] + np.uint64(length), without + np.uint64(length - 1)
