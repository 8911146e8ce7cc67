"""Loose grains drawn for the test beside a coin or a ruler, of sizes known: shapes, shades, shadows, touching grains."""

from __future__ import annotations

import math
import random
from dataclasses import dataclass
from typing import Any

import numpy as np
from PIL import Image, ImageDraw, ImageFilter


@dataclass(frozen=True, slots=True)
class Sort:
    """A kind of grain as it lies: length and width in mm, outline, colour, how far sizes differ within the lot."""

    name: str
    long: float
    short: float
    outline: str
    rgb: tuple[int, int, int]
    colour: str
    spread: float = 0.06


# Lengths and widths lie within what is published for these kinds; shapes and colours as the eye has them.
SORTS = (
    Sort("brown lentil", 5.0, 4.8, "oval", (130, 85, 50), "brown"),
    Sort("green lentil", 6.7, 6.5, "oval", (120, 130, 70), "green"),
    Sort("mung", 5.2, 3.9, "oval", (75, 110, 40), "green"),
    Sort("urad", 4.9, 3.7, "oval", (35, 32, 30), "black"),
    Sort("yellow pea", 7.2, 6.8, "oval", (215, 180, 95), "orange"),
    Sort("chickpea", 9.0, 7.6, "drop", (225, 195, 150), "cream"),
    Sort("kidney bean", 16.5, 8.0, "kidney", (110, 25, 30), "red"),
    Sort("navy bean", 8.5, 6.2, "kidney", (240, 236, 225), "white"),
    Sort("faba bean", 19.0, 13.5, "blunt", (150, 105, 60), "brown"),
    Sort("adzuki", 6.4, 4.8, "blunt", (140, 25, 35), "red"),
)
COINS = (19.25, 21.25, 23.25, 25.75)
SIZE = (1600, 1200)


@dataclass(frozen=True, slots=True)
class Scene:
    """A picture of grains with what is true of it; `coin_mm` is None where a ruler lies there."""

    sort: Sort
    picture: Any
    coin_mm: float | None
    long: float
    short: float
    whole: int
    split: int
    touching: int


def scene(seed: int) -> Scene:
    """The scene of a seed: its sort goes round, all else is diced."""
    dice = random.Random(seed)
    sort = SORTS[seed % len(SORTS)]
    light = sum(sort.rgb) > 500
    ground = dice.choice(
        ((45, 60, 95), (60, 75, 60)) if light else ((238, 236, 230), (205, 212, 220), (225, 215, 195))
    )
    ruler = dice.random() < 0.4
    scale = dice.uniform(0.085, 0.11) if ruler else dice.uniform(0.07, 0.11)
    table = Table(ground, scale, seed)
    coin = None if ruler else dice.choice(COINS)
    if coin:
        table.coin(coin)
    else:
        table.ruler()
    halves = dice.choice((0.0, 0.0, 0.3)) if sort.outline == "oval" else 0.0
    longs, shorts, split, touching = [], [], 0, 0
    for at in range(dice.randint(18, 34)):
        grow = dice.gauss(1, sort.spread)
        sizes = (sort.long * grow, sort.short * grow * dice.gauss(1, sort.spread / 3))
        half = dice.random() < halves
        near = at > 3 and dice.random() < 0.15
        placed = table.grain(sort, sizes, half, near)
        if not placed:
            continue
        split += half
        touching += near
        longs.append(sizes[0])
        shorts.append(sizes[1])
    return Scene(sort, table.photo(), coin, float(np.median(longs)), float(np.median(shorts)), len(longs) - split, split, touching)  # fmt: skip


class Table:
    """A ground on which things are laid, drawn at twice the size and then made smaller."""

    def __init__(self, ground: tuple[int, int, int], scale: float, seed: int) -> None:
        self.dice, self.scale, self.ground = random.Random(seed), scale / 2, ground
        self.size = (SIZE[0] * 2, SIZE[1] * 2)
        self.paint = Image.new("RGB", self.size, ground)
        self.taken = Image.new("L", (SIZE[0] // 2, SIZE[1] // 2), 0)
        self.shadow = Image.new("L", self.size, 0)
        self.laid: list[tuple[float, float, float]] = []

    def coin(self, across: float) -> None:
        """A coin of so many mm in the upper left."""
        radius = across / 2 / self.scale
        x, y = radius + 150, radius + 150
        self._shade((x, y), radius)
        pen = ImageDraw.Draw(self.paint)
        metal = self.dice.choice(((150, 130, 80), (165, 168, 172), (150, 95, 60)))
        pen.ellipse((x - radius, y - radius, x + radius, y + radius), fill=metal)
        inner = radius * 0.88
        pen.ellipse(
            (x - inner, y - inner, x + inner, y + inner), outline=tuple(one - 40 for one in metal), width=8
        )
        pen.ellipse(
            (x - inner / 2, y - inner / 2, x + inner / 3, y + inner / 2),
            fill=tuple(min(255, one + 25) for one in metal),
        )
        self._take(0, 0, x + radius + 60, y + radius + 60)

    def ruler(self) -> None:
        """A ruler with marks of a millimetre along the upper edge, a little askew."""
        long, wide, one = 150, 26, 1 / self.scale
        strip = Image.new("RGB", (round((long + 10) * one), round(wide * one)), (232, 205, 90))
        pen = ImageDraw.Draw(strip)
        for at in range(long + 1):
            deep = 9 if at % 10 == 0 else 6.5 if at % 5 == 0 else 4.5
            x = (at + 5) * one
            pen.line((x, 0, x, deep * one), fill=(25, 25, 25), width=max(2, round(0.18 * one)))
        for at in range(0, long, 10):
            pen.rectangle(((at + 4.4) * one, 10.5 * one, (at + 5.6) * one, 13 * one), fill=(25, 25, 25))
        room = self.size[0] - 160
        if strip.width > room:
            strip = strip.crop((0, 0, room, strip.height))
        angle = self.dice.uniform(-2, 2)
        mask = Image.new("L", strip.size, 255).rotate(angle, Image.BICUBIC, True)
        self.paint.paste(strip.rotate(angle, Image.BICUBIC, True), (80, 90), mask)
        self._take(0, 0, self.size[0], 90 + mask.height + 60)

    def grain(self, sort: Sort, sizes: tuple[float, float], half: bool, near: bool) -> bool:
        """Lay one grain, apart from all others or touching the last; whether there was room."""
        side = round(max(sizes) / self.scale * 1.25) | 1
        mask = _outline(sort.outline, sizes[0] / self.scale, sizes[1] / self.scale, side, half).rotate(
            self.dice.uniform(0, 360), Image.BICUBIC
        )
        for _ in range(200):
            place = self._beside(mask, sizes) if near else self._anywhere(sizes)
            if place and self._free(place, sizes, near):
                break
        else:
            return False
        x, y = place
        self._shade(place, sizes[1] / 2 / self.scale, mask)
        box = (round(x - side / 2), round(y - side / 2))
        self.paint.paste(self._shaded(sort.rgb, side), box, mask)
        self.laid.append((x, y, max(sizes) / 2 / self.scale))
        return True

    def _anywhere(self, sizes: tuple[float, float]) -> tuple[float, float]:
        edge = max(sizes) / self.scale
        return self.dice.uniform(edge, self.size[0] - edge), self.dice.uniform(edge, self.size[1] - edge)

    def _beside(self, mask: Any, sizes: tuple[float, float]) -> tuple[float, float]:
        x, y, reach = self.dice.choice(self.laid)
        angle = self.dice.uniform(0, 2 * math.pi)
        apart = reach + sizes[1] / 2 / self.scale * 0.96
        return x + math.cos(angle) * apart, y + math.sin(angle) * apart

    def _free(self, place: tuple[float, float], sizes: tuple[float, float], near: bool) -> bool:
        x, y = place
        reach = max(sizes) / 2 / self.scale
        if not (
            reach * 1.3 < x < self.size[0] - reach * 1.3 and reach * 1.3 < y < self.size[1] - reach * 1.3
        ):
            return False
        if self.taken.getpixel((int(x / 4), int((y - reach) / 4))) or self.taken.getpixel(
            (int((x - reach) / 4), int((y - reach) / 4))
        ):
            return False
        apart = sorted(math.hypot(x - a, y - b) - reach - r for a, b, r in self.laid)
        if near:
            return len(apart) < 2 or apart[1] > 12
        return not apart or apart[0] > 12

    def _take(self, *box: float) -> None:
        ImageDraw.Draw(self.taken).rectangle([side / 4 for side in box], fill=255)

    def _shade(self, place: tuple[float, float], radius: float, mask: Any = None) -> None:
        shift = 0.25 * radius
        if mask is None:
            box = [
                place[0] - radius + shift,
                place[1] - radius + shift,
                place[0] + radius + shift,
                place[1] + radius + shift,
            ]
            ImageDraw.Draw(self.shadow).ellipse(box, fill=80)
            return
        corner = (round(place[0] - mask.width / 2 + shift), round(place[1] - mask.height / 2 + shift))
        self.shadow.paste(80, corner, mask)

    def _shaded(self, rgb: tuple[int, int, int], side: int) -> Any:
        """Lighter towards the lamp, a little of every other tint."""
        rows, columns = np.mgrid[-1 : 1 : side * 1j, -1 : 1 : side * 1j]
        light = 1.05 - 0.16 * (rows + columns)
        tint = np.array(rgb) * self.dice.gauss(1, 0.06)
        return Image.fromarray(np.uint8(np.clip(tint * light[..., None], 0, 255)))

    def photo(self) -> Any:
        """The table under an uneven lamp, with shadows, blur and grain of the camera."""
        shade = self.shadow.filter(ImageFilter.GaussianBlur(14))
        things = np.asarray(self.paint, dtype=np.float32)
        bare = np.abs(things - np.array(self.ground)).max(axis=2) < 1
        things[bare] *= (1 - np.asarray(shade, dtype=np.float32)[bare] / 255)[:, None]
        small = Image.fromarray(np.uint8(things)).resize(SIZE, Image.LANCZOS)
        pixels = np.asarray(
            small.filter(ImageFilter.GaussianBlur(self.dice.uniform(0.5, 1.4))), dtype=np.float32
        )
        lean = self.dice.uniform(-0.12, 0.12), self.dice.uniform(-0.12, 0.12)
        rows, columns = np.mgrid[-1 : 1 : SIZE[1] * 1j, -1 : 1 : SIZE[0] * 1j]
        pixels = pixels * (1 + lean[0] * rows + lean[1] * columns - 0.05 * (rows**2 + columns**2))[..., None]
        pixels += np.random.default_rng(self.dice.randrange(2**32)).normal(
            0, self.dice.uniform(2, 7), pixels.shape
        )
        return Image.fromarray(np.uint8(np.clip(pixels, 0, 255)))


def _outline(kind: str, long: float, short: float, side: int, half: bool) -> Any:
    """The mask of a grain: its points kept inside a box of exactly its length and width."""
    turn = np.linspace(0, 2 * math.pi, 240, endpoint=False)
    x, y = np.cos(turn), np.sin(turn)
    if kind == "blunt":
        x, y = np.sign(x) * np.abs(x) ** 0.8, np.sign(y) * np.abs(y) ** 0.8
    if kind == "drop":
        x = x + 0.12 * np.maximum(0, x) ** 6
    if kind == "kidney":
        y = y + 0.28 * x**2 - 0.16 * np.exp(-((x / 0.35) ** 2)) * (y < 0) * -1
    if half:
        y = np.minimum(y, 0)
    x = (x - (x.max() + x.min()) / 2) / (x.max() - x.min()) * long
    y = (y - (y.max() + y.min()) / 2) / (y.max() - y.min()) * short * (0.5 if half else 1)
    mask = Image.new("L", (side, side), 0)
    ImageDraw.Draw(mask).polygon(list(zip(x + side / 2, y + side / 2, strict=True)), fill=255)
    return mask
