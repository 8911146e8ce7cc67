"""A picture of print made fit to read: light evened, dark on light, upright and level."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]
Box = tuple[int, int, int, int]
# Long side in pixels at which light and slope are judged.
SMALL = 640
STEEPEST = 16.0
STEP = 0.5


@dataclass(frozen=True, slots=True)
class Sheet:
    """Print in grey, turned by `angle` degrees against the clock from a picture of `size` pixels."""

    picture: Any
    angle: float
    size: tuple[int, int]

    def back(self, box: Box) -> Box:
        """A box of the sheet as the box about it in the picture it came from."""
        angle = math.radians(self.angle)
        middle_x, middle_y = (side / 2 for side in self.picture.size)
        corners = [
            (x - middle_x, y - middle_y)
            for x, y in ((box[0], box[1]), (box[2], box[1]), (box[0], box[3]), (box[2], box[3]))
        ]
        across = [math.cos(angle) * x - math.sin(angle) * y + self.size[0] / 2 for x, y in corners]
        down = [math.sin(angle) * x + math.cos(angle) * y + self.size[1] / 2 for x, y in corners]
        left, top = max(0, round(min(across))), max(0, round(min(down)))
        return left, top, min(self.size[0], round(max(across))), min(self.size[1], round(max(down)))


def level(even: Any, quarter: int = 0) -> Sheet:
    """An evened picture turned by `quarter` (0, 90, 180 or 270 degrees) and then until its lines lie level."""
    turned = even.rotate(quarter, expand=True) if quarter else even
    angle = quarter + _slope(turned)
    return Sheet(even.rotate(angle, 3, True, fillcolor=255), angle, even.size)


def evened(picture: Any) -> Any:
    """Grey, dark on light, with the light of the ground divided out, in the colour in which the print stands out most."""
    from PIL import Image

    grey = picture.convert("L")
    best = max((*picture.split(), grey), key=_contrast)
    pixels = np.asarray(best, dtype=np.float32) + 8
    ground = _ground(best) + 8
    ratio = np.minimum(pixels / ground, 4)
    dark, light = 1 - np.percentile(ratio, 2), np.percentile(ratio, 98) - 1
    if light > dark:
        ratio = 1 / np.maximum(ratio, 0.1)
    low = min(float(np.percentile(ratio, 1)), 0.97)
    return Image.fromarray(np.uint8(np.clip((ratio - low) / (0.98 - low), 0, 1) * 255))


def _contrast(channel: Any) -> float:
    small = channel.copy()
    small.thumbnail((SMALL, SMALL))
    pixels = np.asarray(small, dtype=np.float32)
    away = np.abs(pixels - _ground(small))
    return float(np.percentile(away, 97))


def _ground(channel: Any) -> Array:
    """The ground behind the print, smoothly: the middle grey about each place."""
    from PIL import Image, ImageFilter

    small = channel.copy()
    small.thumbnail((SMALL // 4, SMALL // 4))
    small = small.filter(ImageFilter.MedianFilter(21)).filter(ImageFilter.GaussianBlur(2))
    return np.asarray(small.resize(channel.size, Image.Resampling.BILINEAR), dtype=np.float32)


def _slope(even: Any) -> float:
    """Degrees to turn against the clock until the lines of print lie level: where their rows part most sharply."""
    small = even.copy()
    small.thumbnail((SMALL, SMALL))

    def sharp(angle: float) -> float:
        rows = 255 - np.asarray(small.rotate(angle, fillcolor=255), dtype=np.float32)
        return float((np.diff(rows.sum(axis=1)) ** 2).sum())

    steps = np.arange(-STEEPEST, STEEPEST + STEP, STEP)
    best = max(steps, key=sharp)
    return float(best) if sharp(float(best)) > 1.1 * sharp(0.0) else 0.0
