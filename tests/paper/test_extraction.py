"""What is printed can be copied, searched and read aloud, in every script."""

from __future__ import annotations

import functools
import shutil
from collections import Counter

import pytest

from service.glossary.model import Glossary
from service.press import pressed
from service.store import files
from tests.needs import need, typesetting
from tests.paper.extraction import DOUBLED, lines, lost, names, printed

SCRIPTS = sorted({row.script for rows in files.load().rows.values() for row in rows} - {"Latn"}) + ["Latn"]


@functools.cache
def _names() -> dict[str, list[tuple[str, str]]]:
    return names(files.load(), 40)


@pytest.mark.parametrize("script", SCRIPTS)
def test_names_come_out_of_a_pdf_as_they_went_in(script: str, glossary: Glossary) -> None:
    typesetting()
    need("typesetting", shutil.which("pdftotext") is not None, "install poppler-utils")
    given = _names()[script]
    if script in DOUBLED:
        held = Counter("".join(lines(pressed(printed(script, given), "pdf"))))
        wanted = Counter("".join(text for _, text in given))
        assert not [char for char in wanted if not char.isspace() and held[char] < wanted[char]]
    else:
        gone = lost(script, given)
        assert len(gone) <= 0.05 * len(given), gone
