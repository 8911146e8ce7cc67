"""QR codes (ISO/IEC 18004) as pictures of a sheet."""

from __future__ import annotations

import io

import segno

from ..errors import BadInput
from ..paper.sheet import Picture


def code(text: str) -> Picture:
    """A QR code of a text of at most 500 characters, 18 mm wide; raises BadInput for a longer one."""
    if not 0 < len(text) <= 500:
        raise BadInput("address", text[:60], "must hold 1 to 500 characters")
    out = io.BytesIO()
    drawn = segno.make(text, error="m")
    wide = drawn.symbol_size(border=2)[0]
    drawn.save(out, kind="svg", scale=18 / wide, border=2, unit="mm", xmldecl=False, svgns=True)
    return Picture(out.getvalue().decode("utf-8"), f"QR code of {text}")
