"""Phrases typed by hand, language by language, by someone who did not write the language's file."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from service.glossary.model import Glossary, Pulse
from service.naming import compose

SAMPLES = sorted((Path(__file__).parent / "samples").glob("*.csv"))


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_phrases_people_use_are_composed(path: Path, glossary: Glossary) -> None:
    with path.open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    assert len(rows) >= 12
    missing = []
    for row in rows:
        names = [name.text for name in compose(glossary, Pulse.of(row["pulse"]), path.stem)]
        if row["text"] not in names:
            missing.append(f"{row['pulse']}: {row['text']!r} is not among {names[:4]}")
    assert not missing, "\n".join(missing)
