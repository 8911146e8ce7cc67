"""Loose grains in scenes of known sizes: coins and rulers, shadows, touching grains, halves among wholes."""

from __future__ import annotations

import statistics

import pytest

pytest.importorskip("PIL", reason="pip install '.[photo]'")
pytest.importorskip("scipy", reason="pip install '.[photo]'")

from service.errors import BadInput
from service.photo import measure
from tests.benchmarks.scenes import measured, table

from .scenes import SORTS, Table


def test_sizes_and_counts_are_near(capsys: pytest.CaptureFixture[str]) -> None:
    rows = measured(20)
    with capsys.disabled():
        print("", *table(rows), sep="\n")
    assert {row.ruler for row in rows} == {True, False} and len({row.sort for row in rows}) == len(SORTS)
    for side in ("long", "short"):
        assert statistics.median(abs(getattr(row, side)) for row in rows) <= 0.04
    assert sum(row.near for row in rows) >= 0.95 * len(rows)
    assert sum(abs(row.whole) + abs(row.split) for row in rows) <= 0.04 * sum(row.grains for row in rows)


def test_round_grains_are_not_taken_for_a_coin() -> None:
    table_ = Table((238, 236, 230), 0.09, seed=3)
    pea = next(sort for sort in SORTS if sort.name == "yellow pea")
    for _ in range(20):
        table_.grain(pea, (pea.long, pea.short), half=False, near=False)
    with pytest.raises(BadInput, match="no coin"):
        measure(table_.photo(), 23.25)
    with pytest.raises(BadInput, match="neither a coin nor a ruler"):
        measure(table_.photo())
