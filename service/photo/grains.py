"""Loose grains on a plain ground beside a coin: how long, how wide, of what colour."""

from __future__ import annotations

import colorsys
import math
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..errors import BadInput, Missing

Array = np.ndarray[Any, np.dtype[Any]]
LEAST_SHARE = 0.00005
MOST_GRAINS = 400
# How round a coin is: area against that of the circle about it.
ROUND = 0.9


@dataclass(frozen=True, slots=True)
class Grains:
    """The grains of a picture: how many, middle length and width in mm, the commonest colour, mm in a pixel."""

    count: int
    length_mm: float
    width_mm: float
    colour: str
    mm_per_pixel: float


def measure(picture: Any, coin_mm: float) -> Grains:
    """Measured against a coin of `coin_mm` millimetres across, the roundest large thing in the picture.

    Raises BadInput where no coin or no grains stand out from the ground, Missing without scipy.
    """
    if not 10 <= coin_mm <= 40:
        raise BadInput("coin_mm", coin_mm, "must be 10 to 40 mm, the diameter of the coin")
    try:
        from scipy import ndimage
    except ImportError:
        raise Missing("scipy", "pip install scipy") from None
    pixels = np.asarray(picture, dtype=np.float64)
    labels, count = ndimage.label(_standing_out(pixels))
    least = LEAST_SHARE * labels.size
    things = [_Thing.of(labels, at) for at in range(1, min(count, 4 * MOST_GRAINS) + 1)]
    things = [one for one in things if one.area >= least]
    coins = [one for one in things if one.roundness >= ROUND]
    if not coins:
        raise BadInput(
            "photo", "", "shows no coin standing clear of the grains; lay it on the same plain ground"
        )
    coin = max(coins, key=lambda one: one.area)
    scale = coin_mm / (2 * math.sqrt(coin.area / math.pi))
    grains = [one for one in things if one is not coin and one.area < coin.area * 4][:MOST_GRAINS]
    if not grains:
        raise BadInput(
            "photo", "", "shows no grains standing clear of each other; spread them on a plain ground"
        )
    chosen = _middling(grains)
    colour = _colour(np.array([pixels[labels == one.label].mean(axis=0) for one in chosen[:60]]).mean(axis=0))
    lengths, widths = (
        float(np.median([getattr(one, side) for one in chosen])) * scale for side in ("long", "short")
    )
    return Grains(len(grains), round(lengths, 1), round(widths, 1), colour, scale)


@dataclass(frozen=True, slots=True)
class _Thing:
    label: int
    area: int
    long: float
    short: float

    @staticmethod
    def of(labels: Array, label: int) -> _Thing:
        """Length and width from the second moments, as of an ellipse with the same."""
        rows, columns = np.nonzero(labels == label)
        if len(rows) < 5:
            return _Thing(label, len(rows), 0.0, 0.0)
        spread = np.cov(np.stack((rows, columns)))
        small, large = np.sqrt(np.maximum(np.linalg.eigvalsh(spread), 0.0))
        return _Thing(label, len(rows), 4 * float(large), 4 * float(small))

    @property
    def roundness(self) -> float:
        """1 for a disc: how far its two sides are equal and it fills the circle they make."""
        if self.long <= 0:
            return 0.0
        fills = self.area / (math.pi * self.long * self.short / 4) if self.short > 0 else 0.0
        return (self.short / self.long) * min(fills, 1 / max(fills, 1e-9))


def _standing_out(pixels: Array) -> Array:
    """What differs from the ground, whose colour is that of the rim of the picture."""
    rim = np.concatenate(
        [pixels[:8].reshape(-1, 3), pixels[-8:].reshape(-1, 3), pixels[:, :8].reshape(-1, 3)]
    )
    ground = np.median(rim, axis=0)
    distance = np.sqrt(((pixels - ground) ** 2).sum(axis=2))
    noise = float(np.sqrt(((rim - ground) ** 2).sum(axis=1)).mean())
    found: Array = distance > max(28.0, 4 * noise)
    return found


def _middling(things: list[_Thing]) -> list[_Thing]:
    """Those near the middle size: touching grains and crumbs fall away."""
    middle = float(np.median([one.area for one in things]))
    kept = [one for one in things if 0.5 * middle <= one.area <= 1.7 * middle]
    return kept or things


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
