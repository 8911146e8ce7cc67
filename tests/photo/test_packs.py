"""Packs in 26 scripts through the whole photo path: drawn, damaged, read by machine, understood as a label."""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from multiprocessing import get_context

import pytest

pytest.importorskip("PIL", reason="pip install '.[photo]'")

from service.label import Reader
from service.label.reading import Reading
from service.photo import opened, words
from service.store import files
from tests.needs import reading_scripts, typesetting

from .packs import DAMAGES, SCRIPTS, Pack, packs

GLOSSARY = files.load()
READER = Reader(GLOSSARY)
OUTCOMES = ("right", "wrong", "unsure")


def outcome(pack: Pack, reading: Reading | None) -> str:
    """`right`: its species and form come first; `wrong`: one other pulse is claimed; else `unsure`."""
    first = reading.readings[0].pulse if reading and reading.readings else None
    if first and reading and reading.verdict != "none":
        if (first.species, first.form) == (pack.pulse.species, pack.pulse.form):
            return "right"
        if reading.verdict == "one":
            return "wrong"
    return "unsure"


def _read(text: str) -> Reading | None:
    return READER.read(text) if text.strip() else None


def _understood(text: str) -> float:
    found = _read(text)
    return found.readings[0].probability if found and found.readings and found.verdict != "none" else 0.0


def read(pack: Pack) -> tuple[str, str, str, str]:
    """Script, damage, and what came of the pack typed and photographed."""
    seen = words(opened(pack.photo), judge=_understood)
    return pack.script, pack.damage, outcome(pack, _read(pack.text)), outcome(pack, _read(seen.text))


def table(rows: list[tuple[str, str, str, str]]) -> Iterator[str]:
    """The figures, by script and by damage."""
    for name, at in (("script", 0), ("damage", 1)):
        yield f"{name:9} packs  right  wrong  unsure"
        for kind in SCRIPTS if at == 0 else DAMAGES:
            found = Counter(row[3] for row in rows if row[at] == kind)
            yield f"{kind:9} {found.total():5}  {found['right']:5}  {found['wrong']:5}  {found['unsure']:6}"
    for name, at in (("typed", 2), ("read", 3)):
        found = Counter(row[at] for row in rows)
        yield f"{name:9} {found.total():5}  {found['right']:5}  {found['wrong']:5}  {found['unsure']:6}"


def test_packs_in_many_scripts_are_read(capsys: pytest.CaptureFixture[str]) -> None:
    reading_scripts(SCRIPTS)
    typesetting()
    with ProcessPoolExecutor(os.cpu_count(), mp_context=get_context("spawn")) as pool:
        rows = list(pool.map(read, packs(GLOSSARY)))
    with capsys.disabled():
        print("", *table(rows), sep="\n")
    right, wrong = (sum(row[3] == kind for row in rows) / len(rows) for kind in ("right", "wrong"))
    assert len(rows) >= 60 and len({row[0] for row in rows}) >= 15
    assert right >= 0.75 and wrong <= 0.08
