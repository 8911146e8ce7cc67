"""A pulse's grains as SVG, drawn at true size from its measured length, width, shape, colours and eye. Pure."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..glossary.model import Glossary, Grain, Pulse

# Our own palette: what the seed coat or cotyledon looks like in daylight, with a darker edge.
PAINT = {
    "black": ("#2b2724", "#0f0d0c"), "brown": ("#8b5d39", "#5c3a20"), "red": ("#a2402f", "#6d241a"),
    "green": ("#76853f", "#4b5726"), "yellow": ("#dcae45", "#a47a1f"), "white": ("#f4eedf", "#b9ad93"),
    "cream": ("#e6d3aa", "#a98f5d"), "pink": ("#cf948b", "#93584f"), "orange": ("#db8146", "#9c5220"),
    "purple": ("#5d3553", "#3a1d33"), "grey": ("#928f86", "#5f5c55"), "mottled": ("#c09a73", "#7a4b32"),
}  # fmt: skip
PLAIN_MM = (6.0, 5.0)
COUNTS = 5
FLOURS = ("flour", "grits", "flakes")
# Where the five grains lie: offsets in grain lengths, and how each is turned.
LIES = ((0.0, 0.0, -12), (1.25, 0.18, 24), (0.45, 1.05, 75), (-0.8, 0.85, -40), (1.6, 1.2, 8))


@dataclass(frozen=True, slots=True)
class Look:
    """What the drawing needs: sizes in mm, a shape, colours by id."""

    length: float
    width: float
    shape: str
    outside: str
    inside: str
    eye: str
    form: str
    wrinkled: bool


def look(glossary: Glossary, pulse: Pulse) -> Look:
    """How a pulse looks, from its own grain row, else from the nearest of its species."""
    species = glossary.species[pulse.species]
    grain = _grain(species.grains, pulse)
    length = _middle(grain.length_mm if grain else None, PLAIN_MM[0])
    width = _middle(grain.width_mm if grain else None, length * PLAIN_MM[1] / PLAIN_MM[0])
    sold = [one.pulse.colour for one in species.sold if pulse.covers(one.pulse) and one.pulse.colour]
    outside = pulse.colour or next(iter(sold), "") or "brown"
    inside = (grain.inside if grain else "") or "yellow"
    return Look(
        length=max(length, width),
        width=min(length, width),
        shape=(grain.shape if grain else "") or "oval",
        outside=outside,
        inside=inside,
        eye=(grain.eye if grain else "") or "none",
        form=pulse.form or "whole",
        wrinkled=bool(grain and grain.surface == "wrinkled"),
    )


def draw(glossary: Glossary, pulse: Pulse, count: int = COUNTS, scale: float = 1.0) -> str:
    """An SVG picture with its size in millimetres; `scale` 1 is true size."""
    seen = look(glossary, pulse)
    title = f"{glossary.species[pulse.species].english}, {seen.form}, {seen.outside}"
    if seen.form in FLOURS:
        return _wrap(_heap(seen), 24.0, 12.0, scale, title)
    count = max(1, min(count, len(LIES)))
    parts, right, bottom = [], 0.0, 0.0
    pad = seen.length * 0.65
    lies = LIES[:count]
    left = min(x for x, _, _ in lies) * seen.length
    for at, (x, y, turn) in enumerate(lies):
        cx, cy = x * seen.length - left + pad, y * seen.length + pad
        parts.append(f'<g transform="translate({cx:.2f} {cy:.2f}) rotate({turn})">{_one(seen, at)}</g>')
        right, bottom = max(right, cx + pad), max(bottom, cy + pad)
    return _wrap("".join(parts), right, bottom, scale, title)


def _wrap(body: str, width: float, height: float, scale: float, title: str) -> str:
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width * scale:.1f}mm" height="{height * scale:.1f}mm" '
        f'viewBox="0 0 {width:.2f} {height:.2f}" role="img"><title>{title}</title>{body}</svg>'
    )


def _middle(range_: tuple[float, float] | None, otherwise: float) -> float:
    return sum(range_) / 2 if range_ else otherwise


def _grain(grains: tuple[Grain, ...], pulse: Pulse) -> Grain | None:
    def far(one: Grain) -> tuple[bool, bool, bool]:
        return (
            one.pulse.market_class != pulse.market_class,
            one.pulse.form != (pulse.form or "whole"),
            one.pulse.form != "whole",
        )

    return min(grains, key=far, default=None)


def _one(seen: Look, at: int) -> str:
    halved = seen.form.startswith("split")
    outer = seen.inside if seen.form in ("split-dehulled", "whole-dehulled") else seen.outside
    if seen.form == "split-dehulled" and seen.outside:
        outer = seen.outside
    fill, edge = PAINT.get(outer, PAINT["brown"])
    line = max(0.12, seen.length * 0.025)
    path = _outline(seen)
    out = [f'<path d="{path}" fill="{fill}" stroke="{edge}" stroke-width="{line:.2f}"/>']
    if halved and at % 2 == 0:
        out.append(_face(seen, line))
    else:
        out.append(_shine(seen))
        if seen.outside == "mottled" and not halved:
            out.append(_spots(seen, at))
        if seen.eye not in ("none", "") and seen.form in ("whole", "canned", "fresh", "roasted", "sprouted"):
            out.append(_eye(seen))
        if seen.wrinkled:
            out.append(_wrinkles(seen, edge))
    if seen.form == "sprouted":
        out.append(_sprout(seen))
    return "".join(out)


def _outline(seen: Look) -> str:
    """A closed path about the middle: kidney where the shape says so, else a superellipse."""
    a, b = seen.length / 2, seen.width / 2
    if "kidney" in seen.shape:
        return (
            f"M {-a:.2f} {-0.1 * b:.2f} C {-a:.2f} {-1.3 * b:.2f} {a:.2f} {-1.3 * b:.2f} {a:.2f} {-0.1 * b:.2f} "
            f"C {a:.2f} {1.1 * b:.2f} {0.55 * a:.2f} {1.25 * b:.2f} {0.3 * a:.2f} {0.75 * b:.2f} "
            f"C {0.1 * a:.2f} {0.45 * b:.2f} {-0.1 * a:.2f} {0.45 * b:.2f} {-0.3 * a:.2f} {0.75 * b:.2f} "
            f"C {-0.55 * a:.2f} {1.25 * b:.2f} {-a:.2f} {1.1 * b:.2f} {-a:.2f} {-0.1 * b:.2f} Z"
        )
    power = 2.0
    if any(word in seen.shape for word in ("cylin", "drum", "barrel", "block", "angular", "wedge")):
        power = 3.0
    beak = 0.22 if any(word in seen.shape for word in ("beak", "angular", "ram")) else 0.0
    points = []
    for step in range(48):
        angle = step * math.tau / 48
        cos, sin = math.cos(angle), math.sin(angle)
        x = a * math.copysign(abs(cos) ** (2 / power), cos)
        y = b * math.copysign(abs(sin) ** (2 / power), sin)
        near = max(0.0, math.cos(angle)) ** 12
        points.append(f"{x * (1 + beak * near):.2f} {y:.2f}")
    return "M " + " L ".join(points) + " Z"


def _face(seen: Look, line: float) -> str:
    """The flat inside of a half, with its rim of skin where there is skin."""
    fill, edge = PAINT.get(seen.inside if seen.form == "split-with-skin" else seen.outside, PAINT["yellow"])
    a, b = seen.length / 2, seen.width / 2
    inset = 0.84 if seen.form == "split-with-skin" else 0.9
    return (
        f'<ellipse rx="{a * inset:.2f}" ry="{b * inset:.2f}" fill="{fill}" stroke="{edge}" stroke-width="{line * 0.7:.2f}"/>'
        f'<path d="M {-a * 0.5:.2f} 0 L {a * 0.5:.2f} 0" stroke="{edge}" stroke-width="{line * 0.8:.2f}" opacity="0.5"/>'
    )


def _shine(seen: Look) -> str:
    a, b = seen.length / 2, seen.width / 2
    return (
        f'<ellipse cx="{-0.2 * a:.2f}" cy="{-0.35 * b:.2f}" rx="{0.38 * a:.2f}" ry="{0.2 * b:.2f}" '
        'fill="#ffffff" opacity="0.22"/>'
    )


def _spots(seen: Look, at: int) -> str:
    a, b = seen.length / 2, seen.width / 2
    out = []
    for step in range(11):
        angle = step * 2.39996 + at
        reach = 0.8 * math.sqrt((step + 0.5) / 11)
        x, y = a * reach * math.cos(angle), b * reach * math.sin(angle)
        rx = seen.length * (0.035 + 0.02 * (step % 3))
        turn = (step * 47) % 180
        out.append(
            f'<ellipse cx="{x:.2f}" cy="{y:.2f}" rx="{rx:.2f}" ry="{rx * 0.6:.2f}" '
            f'transform="rotate({turn} {x:.2f} {y:.2f})" fill="#6b2f24"/>'
        )
    return "".join(out)


def _eye(seen: Look) -> str:
    a, b = seen.length / 2, seen.width / 2
    colour = next((name for name in PAINT if name in seen.eye), "white")
    fill = PAINT[colour][0]
    long_eye = "long" in seen.eye
    ring = (
        ""
        if colour == "white"
        else f'<ellipse cx="0" cy="{0.72 * b:.2f}" rx="{0.3 * a:.2f}" ry="{0.3 * b:.2f}" fill="{fill}"/>'
    )
    rx = (0.45 if long_eye else 0.16) * a
    return ring + f'<ellipse cx="0" cy="{0.78 * b:.2f}" rx="{rx:.2f}" ry="{0.1 * b:.2f}" fill="#f4eedf"/>'


def _wrinkles(seen: Look, edge: str) -> str:
    a, b = seen.length / 2, seen.width / 2
    lines = "".join(
        f'<path d="M {-0.6 * a:.2f} {y * b:.2f} Q 0 {(y + 0.25) * b:.2f} {0.6 * a:.2f} {y * b:.2f}"/>'
        for y in (-0.4, 0.0, 0.4)
    )
    return f'<g fill="none" stroke="{edge}" stroke-width="{seen.length * 0.02:.2f}" opacity="0.6">{lines}</g>'


def _sprout(seen: Look) -> str:
    a = seen.length / 2
    return (
        f'<path d="M {0.7 * a:.2f} 0 q {0.8 * a:.2f} {-0.2 * a:.2f} {1.1 * a:.2f} {0.9 * a:.2f}" fill="none" '
        f'stroke="#f4eedf" stroke-width="{0.22 * a:.2f}" stroke-linecap="round"/>'
    )


def _heap(seen: Look) -> str:
    fill, edge = PAINT.get(seen.outside, PAINT["cream"])
    out = [f'<path d="M 1 11 Q 12 -4 23 11 Z" fill="{fill}" stroke="{edge}" stroke-width="0.2"/>']
    size = {"flour": 0.1, "grits": 0.4, "flakes": 0.7}[seen.form]
    for step in range(60):
        angle, reach = step * 2.39996, math.sqrt((step + 0.5) / 60)
        x, y = 12 + 8.5 * reach * math.cos(angle), 7.6 + 2.8 * reach * math.sin(angle)
        out.append(f'<circle cx="{x:.2f}" cy="{y:.2f}" r="{size / 2:.2f}" fill="{edge}" opacity="0.45"/>')
    return "".join(out)
