"""Things standing out from a plain ground: parted from it and from each other, and measured as with calipers."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any

import numpy as np

Array = np.ndarray[Any, np.dtype[Any]]
# Share of the picture that the smallest thing worth measuring takes, and the most things measured.
LEAST_SHARE = 0.00004
MOST = 600
# How far a colour, its brightness aside, or its brightness lies from the ground's to be another thing; shadows are darker
# ground of the same colour, seldom under half as bright.
TINT, DARK, BRIGHT = 0.10, 0.5, 1.12
# Brightness stepping by this share of the ground's from one pixel to the next is an edge; shadows fade more softly.
EDGE = 0.02
# How far beyond an inner ring of a coin its rim may lie.
RIM = 1.35
# Full of its hull to this share, an outline is one grain.
SOLID = 0.93
ANGLES = np.deg2rad(np.arange(0, 180, 2.0))
# Boundary this near to a straight line, against the length of the thing, is on it.
LEEWAY = 0.025


@dataclass(frozen=True)
class Outline:
    """One thing: its mask, the row and column where the mask begins, and whether it is cut by the rim."""

    mask: Array
    top: int
    left: int
    at_rim: bool

    @cached_property
    def area(self) -> int:
        """Pixels."""
        return int(self.mask.sum())

    @cached_property
    def hull(self) -> Array:
        """Corners of the convex hull, as (x, y) in pixels within the mask."""
        from scipy.spatial import ConvexHull, QhullError

        rows, columns = np.nonzero(self.mask)
        points = np.concatenate([
            np.stack((columns + dx, rows + dy), axis=1) for dx in (-0.5, 0.5) for dy in (-0.5, 0.5)
        ])  # fmt: skip
        try:
            return np.asarray(points[ConvexHull(points).vertices])
        except QhullError:
            return points

    @cached_property
    def _widths(self) -> Array:
        """How wide it is across every angle."""
        across = self.hull @ np.stack((np.cos(ANGLES), np.sin(ANGLES)))
        return np.asarray(across.max(axis=0) - across.min(axis=0))

    @property
    def long(self) -> float:
        """Pixels between the jaws of calipers, at most."""
        return float(self._widths.max())

    @property
    def short(self) -> float:
        """Pixels between the jaws of calipers, at least."""
        return float(self._widths.min())

    @property
    def slope(self) -> float:
        """Radians from the x axis to the long side."""
        return float(ANGLES[int(self._widths.argmax())])

    @cached_property
    def solidity(self) -> float:
        """Share of the hull that is filled."""
        x, y = self.hull.T
        hull = abs(float(np.dot(x, np.roll(y, 1)) - np.dot(y, np.roll(x, 1)))) / 2
        return self.area / hull if hull else 0.0

    @property
    def roundness(self) -> float:
        """1 for a disc: how far its two sides are equal and it fills the circle they make."""
        fills = self.area / (math.pi * self.long * self.short / 4)
        return (self.short / self.long) * min(fills, 1 / fills)

    @cached_property
    def straight(self) -> float:
        """The longest straight stretch of its hull, against its length: 0.3 for a disc, 1 for half a disc."""
        angles = np.concatenate((ANGLES, ANGLES + math.pi))
        off = self.hull @ np.stack((np.cos(angles), np.sin(angles)))
        along = self.hull @ np.stack((-np.sin(angles), np.cos(angles)))
        near = off >= off.max(axis=0) - LEEWAY * self.long
        stretch = np.where(near, along, -np.inf).max(axis=0) - np.where(near, along, np.inf).min(axis=0)
        return float(stretch.max()) / self.long

    @cached_property
    def _core(self) -> Array:
        """Its mask without the rim, where light falls off."""
        from scipy import ndimage

        depth = ndimage.distance_transform_edt(np.pad(self.mask, 1))[1:-1, 1:-1]
        return np.asarray(depth > 0.3 * depth.max())

    def _pixels(self, pixels: Array) -> Array:
        high, wide = self.mask.shape
        return np.asarray(pixels[self.top : self.top + high, self.left : self.left + wide][self._core])

    def tint(self, pixels: Array) -> Array:
        """Its middle colour."""
        return np.asarray(np.median(self._pixels(pixels), axis=0))

    def contrast(self, pixels: Array) -> float:
        """How far light and dark within it lie apart, of 255."""
        grey = self._pixels(pixels).mean(axis=1)
        return float(np.percentile(grey, 90) - np.percentile(grey, 10))


@dataclass(frozen=True, slots=True)
class Standing:
    """How far each pixel differs from the ground, 1 and more for another thing, and where brightness steps sharply."""

    away: Array
    edge: Array


def standing_out(pixels: Array) -> Standing:
    """What is not ground. Shadows of the ground are soft and of its colour, and do not count."""
    from scipy import ndimage

    smooth = ndimage.gaussian_filter(pixels, (1, 1, 0)) + 4
    ratio = smooth / (_ground(smooth[::8, ::8], smooth.shape) + 4)
    light = ratio.mean(axis=2)
    tint = np.abs(ratio / light[..., None] - 1).max(axis=2) * np.minimum(1, light + 0.2)
    dark = (1 - light) / (1 - DARK)
    bright = (light - 1) / (BRIGHT - 1)
    steps = ndimage.gaussian_gradient_magnitude(light, 1.0)
    edge = steps > max(EDGE, 4 * float(np.median(steps)))
    return Standing(np.maximum.reduce([tint / TINT, dark, bright]), edge)


def _ground(small: Array, shape: tuple[int, ...]) -> Array:
    """The colour of the ground at each pixel: a plane of second degree through what is most of the picture."""
    rows, columns = np.mgrid[-1 : 1 : small.shape[0] * 1j, -1 : 1 : small.shape[1] * 1j]
    terms = np.stack([np.ones_like(rows), rows, columns, rows * columns, rows**2, columns**2], axis=-1)
    flat, colours = terms.reshape(-1, 6), small.reshape(-1, 3)
    rim = np.maximum(np.abs(rows), np.abs(columns)).ravel() > 0.9
    kept = np.abs(colours - np.median(colours[rim], axis=0)).max(axis=1) < 60
    for leeway in (40, 25, 15):
        fit, *_ = np.linalg.lstsq(flat[kept], colours[kept], rcond=None)
        kept = np.abs(flat @ fit - colours).max(axis=1) < leeway
        if kept.sum() < 50:
            break
    rows, columns = np.ogrid[-1 : 1 : shape[0] * 1j, -1 : 1 : shape[1] * 1j]
    parts = (np.ones((1, 1)), rows, columns, rows * columns, rows**2, columns**2)
    ground = sum(part[..., None] * fit[at] for at, part in enumerate(parts))
    return np.asarray(np.clip(ground, 1, 255), dtype=np.float32)


def rim(seen: Standing, disc: Outline) -> float:
    """Radius in pixels of a coin of which `disc` may be but the inner ring: the farthest circle that is mostly edge."""
    rows, columns = np.nonzero(disc.mask)
    across = np.arange(seen.edge.shape[1]) - (columns.mean() + disc.left)
    down = np.arange(seen.edge.shape[0]) - (rows.mean() + disc.top)
    far = np.sqrt(down[:, None] ** 2 + across[None, :] ** 2)
    radius = math.sqrt(disc.area / math.pi)
    near = far < RIM * radius
    size = int(RIM * radius) + 2
    around = np.bincount(far[near].astype(int), minlength=size)
    edges = np.bincount(far[near & seen.edge].astype(int), minlength=size)
    share = edges / np.maximum(around, 1)
    ringed = [
        at
        for at in range(int(0.95 * radius), len(share) - 1)
        if share[at] > 0.5 and share[at] >= share[at - 1 : at + 2].max()
    ]
    return max(radius, ringed[-1] + 0.5) if ringed else radius


def outlines(seen: Standing) -> list[Outline]:
    """The things of a picture, largest first, touching ones parted where they are narrow."""
    from scipy import ndimage

    apart = ndimage.binary_opening(seen.away > 1, iterations=2)
    ringed = _ringed(seen.edge, apart)
    labels, count = ndimage.label(apart & ~ringed)
    more, _ = ndimage.label(ringed)
    labels = np.where(ringed, more + count, labels)
    least = max(20, LEAST_SHARE * labels.size)
    found: list[Outline] = []
    for at, place in enumerate(ndimage.find_objects(labels), 1):
        mask = ndimage.binary_fill_holes(labels[place] == at)
        if mask.sum() < least:
            continue
        if at <= count:
            mask = _edged(mask, seen.away[place])
        rows, columns = place
        rim = (
            rows.start == 0
            or columns.start == 0
            or rows.stop == labels.shape[0]
            or columns.stop == labels.shape[1]
        )
        found += [one for one in _parted(Outline(mask, rows.start, columns.start, rim)) if one.area >= least]
    return sorted(found, key=lambda one: -one.area)[:MOST]


def _ringed(edge: Array, apart: Array) -> Array:
    """What is ringed by sharp edges without standing out much, as a grey coin on a grey ground."""
    from scipy import ndimage

    filled = ndimage.binary_opening(ndimage.binary_fill_holes(edge | apart), iterations=4)
    labels, count = ndimage.label(filled)
    shares = ndimage.mean(apart, labels, range(1, count + 1)) if count else []
    rings = np.isin(labels, [at for at, share in enumerate(shares, 1) if share < 0.5])
    return np.asarray(ndimage.binary_erosion(rings))


def _edged(mask: Array, away: Array) -> Array:
    """The mask drawn in to where a thing stands out half as far as its middle does: a soft edge belongs half to it."""
    from scipy import ndimage

    inside = np.where(mask, away, 0)
    half = float(np.percentile(away[mask], 25)) / 2
    edged, count = ndimage.label(ndimage.binary_fill_holes(inside > max(1.0, half)))
    if not count:
        return mask
    sizes = np.bincount(edged.ravel())[1:]
    return np.asarray(edged == 1 + int(sizes.argmax()))


def _parted(one: Outline, depth: int = 0) -> Iterator[Outline]:
    """Eaten away from the rim until it falls into pieces, each then given back what is nearest to it."""
    from scipy import ndimage

    if one.solidity >= SOLID or depth > 8:
        yield one
        return
    deep = ndimage.distance_transform_edt(np.pad(one.mask, 1))[1:-1, 1:-1]
    for eaten in np.linspace(0.15, 0.85, 15) * deep.max():
        pieces, count = ndimage.label(deep > eaten)
        sizes = np.bincount(pieces.ravel())[1:]
        real = [at for at in range(count) if sizes[at] > 0.05 * one.area * (1 - eaten / deep.max()) ** 2 + 5]
        if len(real) > 1:
            break
    else:
        yield one
        return
    kept = np.where(np.isin(pieces, [at + 1 for at in real]), pieces, 0)
    nearest = ndimage.distance_transform_edt(kept == 0, return_distances=False, return_indices=True)
    given = np.where(one.mask, kept[tuple(nearest)], 0)
    for at in real:
        place = ndimage.find_objects((given == at + 1).astype(int))[0]
        piece = Outline(
            given[place] == at + 1, one.top + place[0].start, one.left + place[1].start, one.at_rim
        )
        yield from _parted(piece, depth + 1)
