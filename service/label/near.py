"""A word in, the indexed words nearest to it by sound or by letters out."""

from __future__ import annotations

from collections import Counter, defaultdict
from typing import Any

import numpy as np
from rapidfuzz import process
from rapidfuzz.distance import OSA

from .index import Index
from .letters import Letters
from .skeleton import skeleton

Array = np.ndarray[Any, np.dtype[Any]]
# Skeletons weighed by true distance of those that share trigrams with a strange word.
MOST = 100


class Near:
    """Finds indexed words whose skeleton is a few letters away."""

    def __init__(self, index: Index) -> None:
        self.entries = index.entries
        self.skeletons = index.skeletons
        self.bones = [bones for bones in index.skeletons if len(bones) >= 3]
        self.sizes = np.array([len(bones) for bones in self.bones])
        self.letters = Letters(self.bones)
        postings: dict[str, list[int]] = defaultdict(list)
        for at, bones in enumerate(self.bones):
            for gram in _grams(bones):
                postings[gram].append(at)
        self.postings = {gram: np.array(places, dtype=np.int32) for gram, places in postings.items()}

    def nearest(self, word: str, family: str) -> tuple[list[str], float] | None:
        """The closest keys of the word's own script (else of any), and the trust they deserve."""
        bones = skeleton(word)
        size = len(bones)
        if size < 3 or len(word) < 4 or len(word) > 40:
            return None
        allowed = 1 if size <= 6 else 2 if size <= 10 else 3
        found = self._one_off(bones) if allowed == 1 else self._grams(bones, allowed)
        best: list[tuple[float, str]] = []
        for other, distance in found:
            for key in self.skeletons[other]:
                same = self.entries[key].family == family
                likeness = _likeness(word, bones, key, other, distance)
                best.append((likeness - (0.0 if same else 0.12), key))
        if not best:
            return None
        top = max(likeness for likeness, _ in best)
        trust = min(0.85, max(0.0, (top - 0.6) * 2.3))
        if trust < 0.25:
            return None
        return [key for likeness, key in sorted(best, reverse=True) if likeness > top - 0.05], trust

    def _one_off(self, bones: str) -> list[tuple[str, int]]:
        """Every skeleton that is the same or one letter away: trigrams miss too many short words."""
        same = [(bones, 0)] if bones in self.skeletons else []
        return same + [(other, 1) for other in self.letters.near(bones)]

    def _grams(self, bones: str, allowed: int) -> list[tuple[str, int]]:
        """The best of those that share trigrams, by true distance."""
        lists = [self.postings[gram] for gram in _grams(bones) if gram in self.postings]
        if not lists:
            return []
        counts = np.bincount(np.concatenate(lists), minlength=len(self.bones))
        sharing = np.flatnonzero(counts > 1)
        sharing = sharing[np.abs(self.sizes[sharing] - len(bones)) <= allowed]
        if len(sharing) > MOST:
            sharing = sharing[np.argpartition(counts[sharing], -MOST)[-MOST:]]
        pool = [self.bones[at] for at in sharing]
        if not pool:
            return []
        distances = process.cdist([bones], pool, scorer=OSA.distance, score_cutoff=allowed, dtype=np.uint8)[0]
        return [(pool[at], int(distances[at])) for at in np.flatnonzero(distances <= allowed)]


class NearUnspaced:
    """Finds indexed phrases of unspaced scripts that are a letter or two away; arranged when first asked."""

    def __init__(self, index: Index) -> None:
        self.entries = index.entries
        self.postings: dict[str, dict[str, list[str]]] = {}

    def nearest(self, text: str, family: str) -> tuple[list[str], float] | None:
        """The closest keys of a script and the trust they deserve; texts of 3 to 16 letters only."""
        if not 3 <= len(text) <= 16:
            return None
        if family not in self.postings:
            self.postings[family] = self._arranged(family)
        postings = self.postings[family]
        counts = Counter(key for gram in _pairs(text) for key in postings.get(gram, ()))
        pool = [key for key, _ in counts.most_common(40) if abs(len(key) - len(text)) <= 2]
        allowed = 1 if len(text) <= 6 else 2
        best = [(OSA.distance(text, key, score_cutoff=allowed), key) for key in pool]
        close = min((distance for distance, _ in best), default=allowed + 1)
        if close > allowed:
            return None
        likeness = 1 - close / len(text)
        keys = [key for distance, key in best if distance == close]
        return (keys, min(0.8, (likeness - 0.5) * 2)) if likeness >= 0.65 else None

    def _arranged(self, family: str) -> dict[str, list[str]]:
        out: dict[str, list[str]] = defaultdict(list)
        for key, entry in self.entries.items():
            naming = any(one.kind in ("base", "fixed", "form", "other") for one in entry.meanings)
            if entry.family == family and len(key) >= 3 and naming:
                for gram in _pairs(key):
                    out[gram].append(key)
        return out


def _pairs(text: str) -> set[str]:
    padded = f"^{text}$"
    return {padded[at : at + 2] for at in range(len(padded) - 1)}


def _grams(bones: str) -> list[str]:
    padded = f"^^{bones}$"
    return list(dict.fromkeys(padded[at : at + 3] for at in range(len(padded) - 2)))


def _likeness(word: str, bones: str, key: str, other: str, distance: int) -> float:
    """1 for the same, falling with edits; a common beginning and a mere ending count in favour."""
    likeness = 1 - distance / max(len(bones), len(other))
    if bones[0] == other[0]:
        likeness += 0.03
    longer, shorter = (word, key) if len(word) > len(key) else (key, word)
    if len(shorter) >= 4 and longer.startswith(shorter) and len(longer) - len(shorter) <= 2:
        likeness += 0.05
    written = 1 - OSA.distance(word, key) / max(len(word), len(key)) if word[0] == key[0] else 0.0
    return max(likeness, written)
