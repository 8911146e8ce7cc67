"""Packs drawn for the test: names of pulses in 26 scripts among the noise of a pack, photographed badly.

The words come from the glossary, the brands are invented, and every choice hangs on a seed.
"""

from __future__ import annotations

import io
import random
import subprocess
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any

import numpy as np
from PIL import Image, ImageDraw, ImageFilter, ImageFont

from service.glossary.model import Glossary, Pulse
from service.naming import compose

# ISO 15924 script -> a language written in it, and the Noto family of its letters.
SCRIPTS = {
    "Latn": ("es", "Noto Sans"), "Deva": ("hi", "Noto Sans Devanagari"), "Beng": ("bn", "Noto Sans Bengali"),
    "Guru": ("pa", "Noto Sans Gurmukhi"), "Gujr": ("gu", "Noto Sans Gujarati"), "Orya": ("or", "Noto Sans Oriya"),
    "Taml": ("ta", "Noto Sans Tamil"), "Telu": ("te", "Noto Sans Telugu"), "Knda": ("kn", "Noto Sans Kannada"),
    "Mlym": ("ml", "Noto Sans Malayalam"), "Sinh": ("si", "Noto Sans Sinhala"), "Arab": ("ar", "Noto Sans Arabic"),
    "Hebr": ("he", "Noto Sans Hebrew"), "Cyrl": ("ru", "Noto Sans"), "Grek": ("el", "Noto Sans"),
    "Ethi": ("am", "Noto Sans Ethiopic"), "Geor": ("ka", "Noto Sans Georgian"), "Armn": ("hy", "Noto Sans Armenian"),
    "Thai": ("th", "Noto Sans Thai"), "Laoo": ("lo", "Noto Sans Lao"), "Khmr": ("km", "Noto Sans Khmer"),
    "Mymr": ("my", "Noto Sans Myanmar"), "Hans": ("zh-Hans", "Noto Sans CJK SC"), "Hant": ("zh-Hant", "Noto Sans CJK TC"),
    "Jpan": ("ja", "Noto Sans CJK JP"), "Kore": ("ko", "Noto Sans CJK KR"),
}  # fmt: skip
BRANDS = ("VELORA", "Tamburi", "Noor & Oak", "KESTRIN", "Marovale", "OLVANTE", "Sunmere", "PADRELLO")
GROUNDS = ((250, 246, 235), (255, 255, 255), (240, 228, 200))
# Ground and ink of bright packs.
BRIGHT = (
    ((20, 110, 60), (255, 250, 220)), ((190, 30, 40), (255, 235, 90)), ((250, 200, 40), (60, 20, 10)), ((30, 50, 120), (245, 245, 245)),
)  # fmt: skip
SIZE = (1100, 760)


@dataclass(frozen=True, slots=True)
class Pack:
    """A photo of a pack, what was printed on it, and what was done to it."""

    script: str
    damage: str
    pulse: Pulse
    text: str
    photo: bytes


def packs(glossary: Glossary, each: int = 3, seed: int = 0) -> Iterator[Pack]:
    """`each` packs in every script, the damages going round."""
    kinds = list(DAMAGES)
    for row, (script, (lang, family)) in enumerate(SCRIPTS.items()):
        dice = random.Random(f"{script}/{seed}")
        for at, (pulse, name) in enumerate(dice.sample(_named(glossary, lang, script), each)):
            damage = kinds[(row * each + at + seed) % len(kinds)]
            lines = _lines(glossary, lang, script, name, dice)
            ground, ink = dice.choice(BRIGHT) if damage == "bright" else (dice.choice(GROUNDS), (35, 30, 30))
            if damage == "faint":
                ink = tuple(round(0.78 * one) for one in ground)
            picture = DAMAGES[damage](_printed(lines, family, ground, ink), ground, dice)
            out = io.BytesIO()
            picture.save(out, "JPEG", quality=35 if damage == "noise" else 85)
            yield Pack(script, damage, pulse, "\n".join(text for text, _ in lines), out.getvalue())


def _named(glossary: Glossary, lang: str, script: str) -> list[tuple[Pulse, str]]:
    """What is much sold and has a name in this script."""
    sold = [
        one.pulse for one in glossary.sold
        if one.share >= 1 and one.pulse.form in ("whole", "split-dehulled", "split-with-skin")
        and glossary.species[one.pulse.species].standing == "pulse"
    ]  # fmt: skip
    named = ((pulse, compose(glossary, pulse, lang, script)) for pulse in sold)
    return [(pulse, names[0].text) for pulse, names in named if names]


def _lines(
    glossary: Glossary, lang: str, script: str, name: str, dice: random.Random
) -> list[tuple[str, int]]:
    """The lines of a pack with their heights in pixels."""
    noise = [one.text for one in glossary.rows[lang] if one.script == script and one.kind == "noise"]
    return [
        (dice.choice(BRANDS), 54),
        (name, 92),
        *((text, 44) for text in dice.sample(noise, min(2, len(noise)))),
        (f"NET WT {dice.choice((400, 500, 750))} g", 44),
        (f"BEST BEFORE {dice.randint(1, 12):02}/20{dice.randint(27, 29)}", 38),
    ]


@cache
def _font(family: str, size: int) -> Any:
    file, _, index = subprocess.run(
        ["fc-match", "-f", "%{file}|%{index}", f"{family}:bold"], capture_output=True, text=True, check=True
    ).stdout.partition("|")
    return ImageFont.truetype(file, size, index=int(index), layout_engine=ImageFont.Layout.RAQM)


def _printed(lines: list[tuple[str, int]], family: str, ground: Any, ink: Any) -> Any:
    picture = Image.new("RGB", SIZE, ground)
    pen = ImageDraw.Draw(picture)
    top = 60
    for text, height in lines:
        font = _font(family if any(ord(one) > 0x2AF for one in text) else "Noto Sans", height)
        wide = pen.textlength(text, font=font)
        if wide > SIZE[0] - 160:
            height = int(height * (SIZE[0] - 160) / wide)
            font = _font(font_family(text, family), height)
        pen.text((80, top), text, font=font, fill=ink)
        top += round(height * 1.65)
    return picture


def font_family(text: str, family: str) -> str:
    """The family whose letters a line is set in."""
    return family if any(ord(one) > 0x2AF for one in text) else "Noto Sans"


def _turned(picture: Any, ground: Any, dice: random.Random) -> Any:
    return picture.rotate(dice.choice((-1, 1)) * dice.uniform(4, 12), Image.BICUBIC, True, fillcolor=ground)


def _sideways(picture: Any, ground: Any, dice: random.Random) -> Any:
    return picture.rotate(dice.choice((90, 180, 270)), expand=True)


def _blurred(picture: Any, ground: Any, dice: random.Random) -> Any:
    return picture.filter(ImageFilter.GaussianBlur(dice.uniform(2.0, 3.5)))


def _shaded(picture: Any, ground: Any, dice: random.Random) -> Any:
    """Held askew under a lamp: far edge narrower, one side in shadow."""
    wide, high = picture.size
    lean = dice.uniform(0.03, 0.08)
    quad = (-lean * wide, 0, -lean * wide / 2, high, wide * (1 + lean / 2), high, wide * (1 + lean), 0)
    leant = picture.transform(picture.size, Image.QUAD, quad, Image.BICUBIC, fillcolor=ground)
    edge = dice.uniform(0.3, 0.7) * wide
    light = 0.45 + 0.55 / (1 + np.exp((np.arange(wide) - edge) / (0.06 * wide)))
    return Image.fromarray(np.uint8(np.asarray(leant) * light[None, :, None]))


def _noisy(picture: Any, ground: Any, dice: random.Random) -> Any:
    pixels = np.asarray(picture, float)
    grain = np.random.default_rng(dice.randrange(2**32)).normal(0, 26, pixels.shape)
    return Image.fromarray(np.uint8(np.clip(pixels + grain, 0, 255)))


def _same(picture: Any, ground: Any, dice: random.Random) -> Any:
    return picture


DAMAGES: dict[str, Callable[[Any, Any, random.Random], Any]] = {
    "plain": _same, "turned": _turned, "sideways": _sideways, "blur": _blurred, "faint": _same, "bright": _same,
    "shadow": _shaded, "noise": _noisy,
}  # fmt: skip
