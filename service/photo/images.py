"""Pictures opened with care: known formats, bounded size, turned as the camera held them. Nothing is kept."""

from __future__ import annotations

import io
from typing import Any

from ..errors import BadInput, Missing, TooLarge

FORMATS = ("JPEG", "PNG", "WEBP")
MOST_PIXELS = 40_000_000
MOST_BYTES = 12_582_912
# Long side in pixels that is enough to read a pack or measure a grain.
WORKING = 2400
# What Pillow raises for files that break off, contradict themselves, or unpack to more than they say.
BROKEN = (OSError, ValueError, SyntaxError, EOFError)


def opened(data: bytes) -> Any:
    """The picture as RGB, its long side at most 2,400 pixels.

    Raises BadInput for what is no JPEG, PNG or WebP, TooLarge beyond 12 MB or 40 million pixels (looked up in
    the header, before anything is unpacked), Missing where Pillow is not installed.
    """
    try:
        from PIL import Image, ImageOps, UnidentifiedImageError
    except ImportError:
        raise Missing("Pillow", "pip install pillow") from None
    if len(data) > MOST_BYTES:
        raise TooLarge("photo", "", f"is {len(data)} bytes; at most {MOST_BYTES} are taken")
    try:
        picture = Image.open(io.BytesIO(data), formats=FORMATS)
    except Image.DecompressionBombError:
        raise TooLarge("photo", "", "holds too many pixels") from None
    except UnidentifiedImageError:
        raise BadInput("photo", "", f"is none of {', '.join(FORMATS)}") from None
    except BROKEN:
        raise BadInput("photo", "", "is damaged") from None
    if picture.width * picture.height > MOST_PIXELS:
        raise TooLarge(
            "photo", "", f"has {picture.width} by {picture.height} pixels; at most {MOST_PIXELS} are taken"
        )
    try:
        picture.draft("RGB", (WORKING, WORKING))
        turned = _plain(ImageOps.exif_transpose(picture))
    except BROKEN:
        raise BadInput("photo", "", "is damaged") from None
    turned.thumbnail((WORKING, WORKING))
    return turned


def _plain(picture: Any) -> Any:
    """As RGB, what is see-through laid on white, sixteen bits brought to eight."""
    from PIL import Image

    if picture.mode.startswith("I"):
        return picture.convert("I").point(lambda value: value / 256).convert("L").convert("RGB")
    if not picture.has_transparency_data:
        return picture.convert("RGB")
    clear = picture.convert("RGBA")
    return Image.alpha_composite(Image.new("RGBA", clear.size, "white"), clear).convert("RGB")
