"""Readings beside two baselines in one run: `python -m tests.benchmarks.labels [train|test] [how many]`.

Baselines know the same names: the closest whole name by rapidfuzz's WRatio, and by shared trigrams then edit
distance. Neither weighs parts together. Prints shares by kind, script, language and noise, and microseconds a label.
"""

from __future__ import annotations

import sys
import time
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable
from dataclasses import replace

from rapidfuzz import fuzz, process
from rapidfuzz.distance import OSA

from service.glossary.model import Glossary, Pulse
from service.label import Reader
from service.label.normalise import plain
from service.label.weights import WEIGHTS
from service.store import files
from tests.label.score import Label, Said, Score, labels, score

ABLATIONS = {
    "no colour": {"colour_miss": 1.0, "colour_near": 1.0, "colour_open": 1.0, "colour_odd": 1.0},
    "no form": {"form_miss": 1.0, "form_miss_loose": 1.0, "split_near": 1.0},
    "no evidence against": {"other_pulse": 0.3, "other_none": 0.3},
    "no shared heads": {"shared_head": 0.0},
    "no language": {"other_language": 1.0, "not_asked": 1.0, "fewer": 0.0},
    "no unread words": {"unread": 1.0},
}


def ours(reader: Reader) -> Callable[[str], Said]:
    """The reader, by species and form."""

    def read(text: str) -> Said:
        found = reader.read(text)
        odds = tuple((f"{one.pulse.species}//{one.pulse.form}", one.probability) for one in found.readings)
        return Said(found.verdict, odds, found.none)

    return read


def known(glossary: Glossary) -> dict[str, str]:
    """Whole names -> species//form; a form left open counts as whole."""
    out = {}
    for row in glossary.all_rows:
        if row.kind in ("base", "fixed") and glossary.species[row.ref.partition("/")[0]].standing == "pulse":
            pulse = Pulse.of(row.ref)
            out[plain(row.text)] = f"{pulse.species}//{pulse.form or 'whole'}"
        elif row.kind == "other":
            out.setdefault(plain(row.text), "none")
    return out


def by_ratio(names: dict[str, str]) -> Callable[[str], Said]:
    """The closest whole name by WRatio."""
    texts = list(names)

    def read(text: str) -> Said:
        found = process.extractOne(plain(text), texts, scorer=fuzz.WRatio, score_cutoff=60)
        return _said(names[found[0]], found[1] / 100) if found else Said("none", (), 1.0)

    return read


def by_trigrams(names: dict[str, str]) -> Callable[[str], Said]:
    """The name that shares most trigrams, then the least edit distance among the best twenty."""
    postings: dict[str, list[str]] = defaultdict(list)
    for text in names:
        for gram in _grams(text):
            postings[gram].append(text)

    def read(text: str) -> Said:
        folded = plain(text)
        shared = Counter(name for gram in _grams(folded) for name in postings.get(gram, ()))
        best = [
            name
            for name, _ in sorted(shared.most_common(60), key=lambda one: -one[1] / (len(one[0]) + 2))[:20]
        ]
        if not best:
            return Said("none", (), 1.0)
        name = min(best, key=lambda one: OSA.normalized_distance(folded, one))
        return _said(names[name], 1 - OSA.normalized_distance(folded, name))

    return read


def _grams(text: str) -> set[str]:
    padded = f"  {text} "
    return {padded[at : at + 3] for at in range(len(padded) - 2)}


def _said(key: str, sure: float) -> Said:
    return Said("none", (), 1.0) if key == "none" else Said("one", ((key, sure),), 1 - sure)


def line(name: str, found: Score, seconds: float) -> str:
    """One line of the table."""
    shares = "  ".join(
        f"{kind} {found.share(kind):6.1%} of {found.counts[kind]}" for kind in ("one", "several", "none")
    )
    return (
        f"{name:22} {shares}  falsely sure {found.falsely_sure / max(1, found.total):.2%}"
        f"  calibration error {found.calibration_error:.3f}  {seconds / max(1, found.total) * 1e6:8.0f} us"
    )


def timed(name: str, read: Callable[[str], Said], wanted: Iterable[Label]) -> list[Label]:
    """Print one reader's line; gives what it got wrong."""
    start = time.perf_counter()
    found, wrong = score(read, wanted)
    print(line(name, found, time.perf_counter() - start), flush=True)
    return wrong


def main(half: str = "test", most: int = 10_000, show: bool = False) -> None:
    """Print everything."""
    glossary = files.load()
    reader = Reader(glossary)
    names = known(glossary)
    for corpus in ("hand", "made"):
        wanted = list(labels(corpus, half))[:most]
        print(
            f"-- {corpus}, {half} half: {len(wanted)} labels, {len(names)} whole names known to the baselines"
        )
        wrong = timed("joint decoding", ours(reader), wanted)
        few = wanted[:: max(1, len(wanted) // 300)]
        timed("  same, on a part", ours(reader), few)
        timed("closest by WRatio", by_ratio(names), few)
        timed("trigrams and edits", by_trigrams(names), few)
        for name, changed in ABLATIONS.items():
            timed(f"  {name}", ours(Reader(glossary, replace(WEIGHTS, **changed))), wanted)
        for slot in ("noise", "script", "language"):
            groups: dict[str, list[Label]] = defaultdict(list)
            for one in wanted:
                groups[getattr(one, slot)].append(one)
            if len(groups) > 1:
                shares = {name: score(ours(reader), group)[0] for name, group in sorted(groups.items())}
                print(
                    f"   {slot}: "
                    + ", ".join(
                        f"{name} {sum(one.right.values()) / one.total:.0%}" for name, one in shares.items()
                    )
                )
        if show:
            for one in wrong:
                print(
                    "   wrong:",
                    one.text,
                    "|",
                    " ".join(sorted(one.meant)) or "none",
                    "|",
                    one.language,
                    one.noise,
                )


if __name__ == "__main__":
    main(*sys.argv[1:2], *(int(one) for one in sys.argv[2:3]), show=len(sys.argv) > 3)
