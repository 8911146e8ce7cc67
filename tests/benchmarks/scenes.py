"""Grains measured in drawn scenes of known sizes: `python -m tests.benchmarks.scenes [scenes]` (40 unless told)."""

from __future__ import annotations

import os
import statistics
import sys
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from multiprocessing import get_context

from service.errors import BadInput
from service.photo import measure
from tests.photo.scenes import SORTS, scene


@dataclass(frozen=True, slots=True)
class Off:
    """How far a scene's measures are from the truth: shares of length and width, and whole and split counts."""

    sort: str
    ruler: bool
    long: float
    short: float
    whole: int
    split: int
    grains: int
    colour: bool

    @property
    def near(self) -> bool:
        """Whether both sizes lie within 8 %."""
        return abs(self.long) <= 0.08 and abs(self.short) <= 0.08


def off(seed: int) -> Off:
    """One scene drawn and measured; one that cannot be measured is off by all."""
    drawn = scene(seed)
    true, grains = drawn.sort, drawn.whole + drawn.split
    ruler = drawn.coin_mm is None
    try:
        found = measure(drawn.picture, drawn.coin_mm)
    except BadInput:
        return Off(true.name, ruler, 1.0, 1.0, grains, grains, grains, False)
    wide = found.width_mm / drawn.short - 1 if found.width_mm else 0.0
    return Off(
        true.name, ruler, found.length_mm / drawn.long - 1, wide, found.whole - drawn.whole, found.split - drawn.split,
        grains, found.colour == true.colour,
    )  # fmt: skip


def measured(scenes: int) -> list[Off]:
    """So many scenes, on every core."""
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        return list(pool.map(off, range(scenes)))


def table(rows: list[Off]) -> Iterator[str]:
    """Middle and largest errors by kind of grain, and in all."""
    yield f"{'grains':13} scenes  length mid  max   width mid  max   within 8 %  counts off"
    for name in (*(sort.name for sort in SORTS), "all"):
        mine = [row for row in rows if name in (row.sort, "all")]
        if not mine:
            continue
        long, short = ([abs(getattr(row, side)) for row in mine] for side in ("long", "short"))
        counts = sum(abs(row.whole) + abs(row.split) for row in mine) / sum(row.grains for row in mine)
        yield (
            f"{name:13} {len(mine):6}  {statistics.median(long):9.1%} {max(long):6.1%} {statistics.median(short):9.1%} {max(short):6.1%}"
            f"  {sum(row.near for row in mine):4}/{len(mine):<4}  {counts:9.1%}"
        )


def main() -> None:
    """Print the table."""
    print(*table(measured(int(sys.argv[1]) if sys.argv[1:] else 40)), sep="\n")


if __name__ == "__main__":
    main()
