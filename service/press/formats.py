"""One sheet in every format it can take: media types for HTTP, endings for files."""

from __future__ import annotations

import json
from collections.abc import Callable

from ..errors import BadInput
from ..paper.render import to_csv, to_data, to_html, to_markdown
from ..paper.sheet import Sheet
from .printing import to_pdf, to_png, to_xlsx

XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
Press = Callable[[Sheet, str], bytes]
# ending -> (media type, press)
FORMATS: dict[str, tuple[str, Press]] = {
    "html": ("text/html", lambda sheet, paper: to_html(sheet).encode()),
    "pdf": ("application/pdf", to_pdf),
    "png": ("image/png", to_png),
    "md": ("text/markdown", lambda sheet, paper: to_markdown(sheet).encode()),
    "csv": ("text/csv", lambda sheet, paper: to_csv(sheet).encode()),
    "xlsx": (XLSX, lambda sheet, paper: to_xlsx(sheet)),
    "json": (
        "application/json",
        lambda sheet, paper: json.dumps(to_data(sheet), ensure_ascii=False).encode(),
    ),
}


def accepted(header: str) -> str:
    """The ending wanted by an Accept header, HTML where anything will do; raises BadInput where none fits."""
    weighed: list[tuple[float, int, str]] = []
    for at, part in enumerate(header.split(",") if header.strip() else ["*/*"]):
        media, *facts = (one.strip() for one in part.split(";"))
        quality = next((fact[2:] for fact in facts if fact.startswith("q=")), "1")
        try:
            weighed.append((-float(quality), at, media.lower()))
        except ValueError:
            raise BadInput("Accept", header[:100], "has a q that is no number") from None
    for worth, _, media in sorted(weighed):
        for ending, (kind, _) in FORMATS.items():
            if worth < 0 and media in (kind, "*/*", kind.split("/")[0] + "/*"):
                return ending
    kinds = ", ".join(kind for kind, _ in FORMATS.values())
    raise BadInput("Accept", header[:100], f"names no format a sheet can take; use one of {kinds}")


def pressed(sheet: Sheet, ending: str, paper: str = "a4") -> bytes:
    """The bytes of a sheet in a format named by its ending; raises BadInput for another."""
    if ending not in FORMATS:
        raise BadInput("format", ending, f"use one of {', '.join(FORMATS)}")
    return FORMATS[ending][1](sheet, paper)
