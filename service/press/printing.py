"""A sheet typeset; the template reads plain values, so that no text of a sheet is ever taken for markup."""

from __future__ import annotations

import io
import json
import tempfile
from pathlib import Path
from typing import Any, Literal

from ..errors import BadInput, Missing
from ..paper.render import defused, to_data, to_rows
from ..paper.sheet import Sheet

TEMPLATE = Path(__file__).with_name("sheet.typ")
# ISO 15924 script -> families, the first that is there is taken. Serif faces where the sans one sets marks so far from
# their letters that the text of the PDF holds them twice.
FAMILIES = {
    "Arab": ["Noto Naskh Arabic"], "Armn": ["Noto Sans Armenian"], "Beng": ["Noto Sans Bengali"], "Deva": ["Noto Sans Devanagari"],
    "Ethi": ["Noto Sans Ethiopic"], "Geor": ["Noto Sans Georgian"], "Gujr": ["Noto Sans Gujarati"], "Guru": ["Noto Sans Gurmukhi"],
    "Hans": ["Noto Sans CJK SC"], "Hant": ["Noto Sans CJK TC"], "Hebr": ["Noto Sans Hebrew"], "Jpan": ["Noto Sans CJK JP"],
    "Khmr": ["Noto Sans Khmer"], "Knda": ["Noto Sans Kannada"], "Kore": ["Noto Sans CJK KR"], "Laoo": ["Noto Serif Lao"],
    "Mlym": ["Noto Sans Malayalam"], "Mtei": ["Noto Sans Meetei Mayek"], "Mymr": ["Noto Serif Myanmar"], "Orya": ["Noto Sans Oriya"],
    "Sinh": ["Noto Sans Sinhala"], "Taml": ["Noto Sans Tamil"], "Telu": ["Noto Sans Telugu"], "Thai": ["Loma", "Noto Serif Thai"],
}  # fmt: skip
BASE = "Noto Sans"
PAPERS = ("a4", "a5", "us-letter")


def to_pdf(sheet: Sheet, paper: str = "a4") -> bytes:
    """The sheet as a tagged PDF; raises Missing where the typesetter is not installed."""
    return _typeset(sheet, "pdf", paper)


def to_png(sheet: Sheet, paper: str = "a5", ppi: float = 144.0) -> bytes:
    """The first page as a PNG picture."""
    return _typeset(sheet, "png", paper, ppi)


def to_xlsx(sheet: Sheet) -> bytes:
    """The tables of a sheet as a workbook; every cell is text, so nothing is run."""
    try:
        import xlsxwriter
    except ImportError:
        raise Missing("xlsxwriter", "pip install xlsxwriter") from None
    out = io.BytesIO()
    with xlsxwriter.Workbook(out, {"in_memory": True, "strings_to_formulas": False}) as book:
        page = book.add_worksheet("chart")
        head = book.add_format({"bold": True, "text_wrap": True, "valign": "top"})
        plain = book.add_format({"text_wrap": True, "valign": "top"})
        for at, row in enumerate(to_rows(sheet)):
            for place, cell in enumerate(row):
                page.write_string(at, place, defused(cell), head if at == 0 else plain)
        page.freeze_panes(1, 0)
        page.set_column(0, 40, 24)
    return out.getvalue()


def _typeset(sheet: Sheet, kind: Literal["pdf", "png"], paper: str, ppi: float = 144.0) -> bytes:
    if paper not in PAPERS:
        raise BadInput("paper", paper, f"use one of {', '.join(PAPERS)}")
    try:
        import typst
    except ImportError:
        raise Missing("typst", "pip install typst") from None
    data = to_data(sheet)
    with tempfile.TemporaryDirectory(prefix="pulse-") as folder:
        room = Path(folder)
        for at, svg in enumerate(data.pop("pictures")):
            (room / f"{at}.svg").write_text(svg, "utf-8")
        settings: dict[str, Any] = {"paper": paper, "fonts": FAMILIES, "base": BASE, "picture": kind == "png"}
        (room / "sheet.json").write_text(json.dumps({**data, **settings}, ensure_ascii=False), "utf-8")
        (room / "sheet.typ").write_bytes(TEMPLATE.read_bytes())
        found = typst.compile(str(room / "sheet.typ"), root=folder, format=kind, ppi=ppi)
    pages = found if isinstance(found, list) else [found]
    first = pages[0]
    assert isinstance(first, bytes)
    return first
