"""How fast labels are read, beside the closest whole name by WRatio: `python -m tests.benchmarks.speed`.

Each label of the training half once: half and 99th percentile with an empty memory and again; long texts of 10 kB,
known and random; a batch over two processes.
"""

from __future__ import annotations

import gc
import random
import statistics
import time
from collections.abc import Callable, Sequence
from multiprocessing import get_context
from typing import Any

from service.label import Reader
from service.store import files
from tests.benchmarks.labels import by_ratio, known
from tests.label.score import labels

LONG = 10_000
_reader: list[Reader] = []


def main() -> None:
    """Print everything."""
    glossary = files.load()
    reader = Reader(glossary)
    reader.finder.warm()
    gc.collect()
    gc.freeze()
    texts = [one.text for name in ("hand", "made") for one in labels(name, "train")]
    for said in ("first met", "met before"):
        spent = sorted(_spent(reader.read, texts))
        print(f"{len(texts)} labels {said}: {_figures(spent)}")
    few = texts[:: len(texts) // 40]
    slow = statistics.median(_spent(by_ratio(known(glossary)), few)) / statistics.median(spent)
    print(f"closest whole name by WRatio: {slow:.0f} times as long")
    dice = random.Random(10)
    for said, text in (
        ("known words", _long(lambda: dice.choice(texts) + "\n")),
        ("strange words", _long(lambda: "".join(dice.choices("abdegiklmnoprstu", k=7)) + " ")),
        ("strange letters", _long(lambda: chr(dice.choice((0x0915, 0x0E01, 0x4E00)) + dice.randrange(40)))),
    ):
        print(
            f"10 kB of {said}: {_figures(sorted(_spent(reader.read, [text])))} first, "
            f"{_figures(sorted(_spent(reader.read, [text] * 5)))} again"
        )
    _reader.append(reader)
    many = texts * 4
    with get_context("fork").Pool(2) as pool:
        pool.map(_read, texts[:100], chunksize=50)
        start = time.perf_counter()
        pool.map(_read, many, chunksize=200)
        print(f"{len(many) / (time.perf_counter() - start):,.0f} labels a second over two processes")


def _read(text: str) -> str:
    return _reader[0].read(text).verdict


def _spent(read: Callable[[str], Any], texts: Sequence[str]) -> list[float]:
    found = []
    for text in texts:
        start = time.perf_counter()
        read(text)
        found.append((time.perf_counter() - start) * 1000)
    return found


def _long(piece: Callable[[], str]) -> str:
    text = ""
    while len(text.encode()) < LONG:
        text += piece()
    return text.encode()[:LONG].decode("utf-8", "ignore")


def _figures(spent: Sequence[float]) -> str:
    if len(spent) == 1:
        return f"{spent[0]:.0f} ms"
    middle, late = spent[len(spent) // 2], spent[int(len(spent) * 0.99)]
    return f"half within {middle:.2f} ms, 99 % within {late:.2f} ms, all within {spent[-1]:.0f} ms"


if __name__ == "__main__":
    main()
