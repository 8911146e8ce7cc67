"""Ranges: put together without claiming more than their sources, and rounded as a cook would read them."""

from __future__ import annotations

import math
from collections.abc import Iterable

from ..glossary.model import Range


def scaled(base: Range, factors: Iterable[Range]) -> Range:
    """A range times uncertain factors; independent spreads add as squares of their logarithms.

    A higher edge of any factor never lowers either edge of the result.
    """
    low, high = base
    if low <= 0:
        low = min(0.1, high or 0.1)
    centre = (math.log(low) + math.log(high)) / 2
    square = ((math.log(high) - math.log(low)) / 2) ** 2
    for f_low, f_high in factors:
        centre += (math.log(f_low) + math.log(f_high)) / 2
        square += ((math.log(f_high) - math.log(f_low)) / 2) ** 2
    half = math.sqrt(square)
    return math.exp(centre - half), math.exp(centre + half)


def interpolated(at_0: Range, at_1: Range, share: float) -> Range:
    """Between (or beyond) two ranges on a logarithmic scale; a pair of zeros stays zero."""
    return _edge(at_0[0], at_1[0], share), _edge(at_0[1], at_1[1], share)


def _edge(at_0: float, at_1: float, share: float) -> float:
    if at_0 <= 0 or at_1 <= 0:
        return max(0.0, at_0 + (at_1 - at_0) * min(1.0, share))
    return float(at_0 * (at_1 / at_0) ** share)


def plus(*ranges: Range) -> Range:
    """The sum, edge by edge."""
    return sum(one[0] for one in ranges), sum(one[1] for one in ranges)


def added(one: Range, other: Range) -> Range:
    """The sum of two ranges that do not depend on each other: spreads add as squares."""
    middle = (sum(one) + sum(other)) / 2
    half = math.hypot((one[1] - one[0]) / 2, (other[1] - other[0]) / 2)
    return middle - half, middle + half


def times(one: Range, factor: float) -> Range:
    """Both edges times a number."""
    return one[0] * factor, one[1] * factor


def width(one: Range) -> float:
    """Breadth as a share of the middle; 0 for a range that is all zero."""
    middle = (one[0] + one[1]) / 2
    return (one[1] - one[0]) / middle if middle else 0.0


def rounded(one: Range, step: float) -> Range:
    """Edges outward to a step: a range never becomes narrower by being rounded."""
    return (
        round(math.floor(one[0] / step + 1e-9) * step, 6),
        round(math.ceil(one[1] / step - 1e-9) * step, 6),
    )


def minutes_rounded(one: Range) -> Range:
    """Minutes as a clock shows them: to halves below 10, wholes below 75, fives below three hours, then tens."""
    return _clock(one[0]), _clock(one[1])


def _clock(minutes: float) -> float:
    step = 0.5 if minutes < 10 else 1 if minutes < 75 else 5 if minutes < 180 else 10
    return math.floor(minutes / step + 0.5) * step
