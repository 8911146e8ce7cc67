"""Loose grains on a plain ground beside a coin or a ruler: how long, how wide, of what colour, whole or split."""

from __future__ import annotations

import colorsys
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..errors import BadInput, Missing
from .outline import Outline, outlines, rim, standing_out
from .ruler import mm_per_pixel

Array = np.ndarray[Any, np.dtype[Any]]
# How round a coin is: its width against its length, and how far it fills the disc they make.
ROUND = 0.9
# A coin is this much larger than the grains, or of another colour (of 441, black against white), or they are less round.
ROUNDISH = 0.8
COIN_TIMES = 1.8
COIN_COLOUR = 40.0
# A ruler is this many times as long as wide.
RULER_TIMES = 4.0
# A thing so much smaller than the middle one is a crumb; two grains that could not be parted are so much larger.
CRUMB, CLUMP = 0.35, 1.7
# A half seen from the side has one straight side, nearly as long as itself.
STRAIGHT = 0.72
# Light and dark within one grain this far apart (of 255, from tenth to ninetieth part of a hundred) are spots.
SPOTTED = 90.0


@dataclass(frozen=True, slots=True)
class Grains:
    """The grains of a picture.

    How many, how many of them show a whole and how many a half outline (a half lying on its cut face looks whole),
    middle length and width in mm (no width where halves prevail), the commonest colour, mm in a pixel.
    """

    count: int
    whole: int
    split: int
    length_mm: float
    width_mm: float | None
    colour: str
    mm_per_pixel: float


def measure(picture: Any, coin_mm: float | None = None) -> Grains:
    """Measured against a coin of `coin_mm` millimetres across, or against the millimetres of a ruler where it is None.

    Raises BadInput where no coin, ruler or grains stand out from the ground, Missing without scipy.
    """
    if coin_mm is not None and not 10 <= coin_mm <= 40:
        raise BadInput("coin_mm", coin_mm, "must be 10 to 40 mm, the diameter of the coin")
    try:
        import scipy  # noqa: F401
    except ImportError:
        raise Missing("scipy", "pip install scipy") from None
    pixels = np.asarray(picture, dtype=np.float32)
    seen = standing_out(pixels)
    things = outlines(seen)
    if coin_mm is None:
        ruler = _ruler(things)
        things = [one for one in things if one is not ruler]
        scale = mm_per_pixel(pixels, ruler)
    else:
        coin = _coin(things, pixels)
        things = [one for one in things if one is not coin]
        scale = coin_mm / (2 * rim(seen, coin))
    return _measured(_grains(things, scale), pixels, scale)


def _measured(grains: list[Outline], pixels: Array, scale: float) -> Grains:
    middle = float(np.median([one.area for one in grains]))
    single = [one for one in grains if one.area <= CLUMP * middle]
    split = sum(one.straight >= STRAIGHT for one in single)
    clumped = sum(round(one.area / middle) for one in grains if one.area > CLUMP * middle)
    rounded = [one for one in single if one.straight < STRAIGHT]
    halves = split > len(single) / 2
    wide = None if halves else round(float(np.median([one.short for one in rounded])) * scale, 1)
    long = float(np.median([one.long for one in (single if halves else rounded)])) * scale
    return Grains(
        len(single) + clumped, len(single) - split + clumped, split,
        round(long, 1), wide, _colour_of(single, pixels), scale,
    )  # fmt: skip


def _coin(things: list[Outline], pixels: Array) -> Outline:
    """The largest round thing, if it is none of the grains."""
    round_ = [one for one in things if one.roundness >= ROUND]
    coin = max(round_, key=lambda one: one.area, default=None)
    others = [one for one in things if one is not coin]
    if coin and others:
        middle = sorted(others, key=lambda one: one.area)[len(others) // 2]
        apart = np.linalg.norm(coin.tint(pixels) - middle.tint(pixels))
        if coin.area < COIN_TIMES * middle.area and apart < COIN_COLOUR and middle.roundness > ROUNDISH:
            coin = None
    if coin is None:
        raise BadInput(
            "photo", "", "shows no coin standing clear of the grains; lay it on the same plain ground"
        )
    return coin


def _ruler(things: list[Outline]) -> Outline:
    """The longest thing, if it is a strip."""
    longest = max(things, key=lambda one: one.long, default=None)
    if longest is None or longest.long < RULER_TIMES * longest.short:
        raise BadInput(
            "photo", "", "shows neither a coin nor a ruler; lay a ruler clear of the grains, or say coin_mm"
        )
    return longest


def _grains(things: list[Outline], scale: float) -> list[Outline]:
    """What is as large as a grain may be, without crumbs."""
    sized = [one for one in things if 1.0 <= one.long * scale <= 60 and not one.at_rim]
    if sized:
        middle = float(np.median([one.area for one in sized]))
        sized = [one for one in sized if one.area >= CRUMB * middle]
    if not sized:
        raise BadInput(
            "photo", "", "shows no grains standing clear of each other; spread them on a plain ground"
        )
    return sized


def _colour_of(grains: list[Outline], pixels: Array) -> str:
    """The colour id of the middle of most grains."""
    spread = np.median([one.contrast(pixels) for one in grains[:60]])
    if spread > SPOTTED:
        return "mottled"
    return _colour(np.median([one.tint(pixels) for one in grains[:60]], axis=0))


def _colour(rgb: Array) -> str:
    """The colour id nearest to a mean colour."""
    hue, saturation, value = colorsys.rgb_to_hsv(*(float(one) / 255 for one in rgb))
    hue *= 360
    if value < 0.25:
        return "black"
    if saturation < 0.14:
        return "white" if value > 0.8 else "grey"
    if saturation < 0.35 and value > 0.7 and 20 <= hue < 70:
        return "cream"
    if hue < 14 or hue >= 340:
        return "red" if saturation > 0.35 else "pink"
    if hue < 42:
        return "brown" if value < 0.62 else "orange"
    if hue < 68:
        return "yellow"
    return "green" if hue < 170 else "purple"
