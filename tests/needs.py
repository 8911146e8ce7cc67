"""What a test needs of the machine: skipped with a reason where it is missing, failed where it must be there."""

from __future__ import annotations

import importlib.util
import os
import shutil
import subprocess
from collections.abc import Iterable

import pytest


def need(what: str, there: bool, how: str) -> None:
    """Skip unless `there`; fail instead where PULSE_REQUIRE names `what`."""
    if there:
        return
    reason = f"{what} is missing: {how}"
    if what in os.environ.get("PULSE_REQUIRE", "").split():
        pytest.fail(reason)
    pytest.skip(reason)


def typesetting() -> None:
    """typst and the fonts of every script."""
    need("typesetting", importlib.util.find_spec("typst") is not None, "pip install typst")
    fonts = shutil.which("fc-list")
    listed = subprocess.run([fonts], capture_output=True, text=True, check=False).stdout if fonts else ""
    need(
        "typesetting",
        "Noto Sans Devanagari" in listed and "CJK" in listed,
        "install fonts-noto-core and fonts-noto-cjk",
    )


def browser() -> str:
    """The path of Chromium."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    need("browser", found is not None, "install chromium")
    return str(found)


def reading_photos() -> None:
    """Pillow, tesserocr and the data of two scripts."""
    reading_scripts(("Latn", "Deva"))


def reading_scripts(scripts: Iterable[str]) -> None:
    """Pillow, tesserocr and the data of these scripts."""
    from service.errors import Missing
    from service.photo.engine import data_folder, trained

    there = all(importlib.util.find_spec(name) for name in ("PIL", "tesserocr", "zxingcpp"))
    need("photos", there, "pip install '.[photo]'")
    try:
        wanting = [script for script in scripts if not trained(data_folder(), script)]
    except Missing:
        wanting = list(scripts)
    need("photos", not wanting, f"install tesseract-ocr and its script data for {', '.join(wanting)}")
