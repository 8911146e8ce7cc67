"""A ruler in a picture: how many millimetres a pixel is, from the distance of its marks."""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from ..errors import BadInput
from .outline import Outline

Array = np.ndarray[Any, np.dtype[Any]]
# Marks of a millimetre lie this many pixels apart, or they are not seen or not meant.
FEWEST, MOST = 3.0, 60.0
# The lanes along the ruler in which marks are looked for, as shares of its width from one edge.
LANES = (0.04, 0.07, 0.1, 0.13, 0.87, 0.9, 0.93, 0.96)
# How far a comb of marks must stand out against no comb.
PLAIN = 0.25


def mm_per_pixel(pixels: Array, ruler: Outline) -> float:
    """Millimetres in a pixel; raises BadInput where no even marks are seen.

    The marks nearest to the edge are those of single millimetres, whatever longer ones stand among them.
    """
    best, period = max(_comb(lane) for lane in _lanes(pixels, ruler))
    if best < PLAIN:
        raise BadInput(
            "photo",
            "",
            "shows a ruler without clear millimetre marks; take it from nearer, or lay a coin there",
        )
    return 1 / period


def _lanes(pixels: Array, ruler: Outline) -> list[Array]:
    """Grey values along the ruler, near to either edge, in steps of half a pixel."""
    from scipy import ndimage

    angle = ruler.slope
    way = np.array((math.cos(angle), math.sin(angle)))
    side = np.array((-way[1], way[0]))
    along, across = ruler.hull @ way, ruler.hull @ side
    steps = np.arange(along.min() + 0.02 * ruler.long, along.max() - 0.02 * ruler.long, 0.5)
    grey = pixels.mean(axis=2)
    lanes = []
    for share in LANES:
        at = across.min() + share * (across.max() - across.min())
        x, y = (way[None, :] * steps[:, None] + side[None, :] * at + np.array((ruler.left, ruler.top))).T
        lanes.append(ndimage.map_coordinates(grey, (y, x), order=1, mode="nearest"))
    return lanes


def _comb(lane: Array) -> tuple[float, float]:
    """How evenly marks follow each other along a lane, 0 to 1, and their distance in pixels."""
    from scipy import ndimage

    flat = lane - ndimage.uniform_filter1d(lane, 161)
    flat = np.clip(flat, *np.percentile(flat, (2, 98)))
    power = np.abs(np.fft.rfft(flat, 1 << (2 * len(flat) - 1).bit_length())) ** 2
    alike = np.fft.irfft(power)[: int(2 * MOST) + 2]
    if alike[0] <= 0:
        return 0.0, 1.0
    alike /= alike[0]
    peaks = [
        at for at in range(int(2 * FEWEST), len(alike) - 1) if alike[at - 1] < alike[at] >= alike[at + 1]
    ]
    highest = max((float(alike[at]) for at in peaks), default=0.0)
    if highest <= 0:
        return 0.0, 1.0
    first = next(at for at in peaks if alike[at] >= 0.7 * highest)
    return float(alike[first]), _refined(flat, first) / 2


def _refined(flat: Array, rough: float) -> float:
    """The distance at which a wave fits the whole lane best, near to a rough one."""
    at = np.arange(len(flat))
    tried = np.linspace(rough - 0.6, rough + 0.6, 241)
    return float(max(tried, key=lambda period: abs(np.dot(flat, np.exp(2j * math.pi * at / period)))))
