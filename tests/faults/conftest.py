"""What the tests of faults share."""

from __future__ import annotations

from pathlib import Path

import pytest

from service.store import files
from tests.tiny import tiny_files


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small glossary in a folder of its own."""
    files.write(tmp_path / "glossary", tiny_files())
    return tmp_path / "glossary"
