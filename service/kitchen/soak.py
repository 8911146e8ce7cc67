"""Soaking: how much water goes in, how long it takes, what it saves, and when it is pointless or demanded."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..glossary.cooking import Soaking, Times
from ..glossary.model import Range
from .kitchen import Kitchen
from .physics import GAS, ZERO_C

ROOM_C = 20.0
FRIDGE_C = 4.0
DAY_S = 86_400.0
# Hours each way of soaking takes, as published: hot soak 1 to 2 h, overnight 8 to 12, in a fridge or brine up to a day.
HOURS = {
    "none": (0.0, 0.0),
    "hot": (1.0, 2.0),
    "overnight": (8.0, 12.0),
    "fridge": (8.0, 24.0),
    "brine": (8.0, 24.0),
}
# A soak that reaches three quarters of what a day would give does all that soaking does for cooking.
ENOUGH = 0.75
# Hot soak: boiled two minutes, left off the heat; tables put it from a little below to above a cold soak.
HOT_BENEFIT = (0.75, 1.0)


@dataclass(frozen=True, slots=True)
class Soak:
    """What a soak did. `uptake` g water per 100 g dry; `benefit` 0 (as if dry) to 1, a range."""

    hours: Range
    uptake: Range
    benefit: Range
    hours_to_90: Range
    pointless: bool
    missing: bool
    warm: bool


def peleg_k1(soaking: Soaking, celsius: float) -> float:
    """k1 in s/% at a temperature, by Arrhenius on either side of the break."""
    inverse = [1 / (t + ZERO_C) for t in (soaking.at_c, soaking.break_c, celsius)]
    start, turn, end = inverse
    if celsius <= soaking.break_c:
        return soaking.k1_s * math.exp(soaking.ea_low / GAS * (end - start))
    below = soaking.ea_low / GAS * (turn - start)
    return soaking.k1_s * math.exp(below + soaking.ea_high / GAS * (end - turn))


def gain(soaking: Soaking, seconds: float, celsius: float) -> float:
    """Water gained, in % of dry matter, after Peleg."""
    return seconds / (peleg_k1(soaking, celsius) + soaking.k2 * seconds) if seconds > 0 else 0.0


def capacity(soaking: Soaking) -> float:
    """What a day in water at 20 degrees gives, in % of dry matter; Peleg's own limit is never reached."""
    return gain(soaking, DAY_S, ROOM_C)


def hours_to(soaking: Soaking, share: float, celsius: float) -> float:
    """Hours to a share of the capacity; infinite where that temperature cannot give it."""
    wanted = share * capacity(soaking)
    left = 1 - soaking.k2 * wanted
    return wanted * peleg_k1(soaking, celsius) / left / 3600 if left > 0 else math.inf


def soak(kitchen: Kitchen, times: Times, soaking: Soaking, water_raw: float) -> Soak:
    """The soak this kitchen gives this pulse. `water_raw` % water in the dry seed."""
    pointless = times.soak == "none" and kitchen.soak != "none"
    hours = (0.0, 0.0) if pointless else _hours(kitchen)
    celsius = _celsius(kitchen)
    dry_share = 1 - water_raw / 100
    if hours[1] <= 0:
        uptake = benefit = (0.0, 0.0)
    elif kitchen.soak == "hot":
        uptake = (0.55 * capacity(soaking) * dry_share, capacity(soaking) * dry_share)
        benefit = HOT_BENEFIT
    else:
        gained = [gain(soaking, one * 3600, celsius) for one in hours]
        uptake = (gained[0] * dry_share, gained[1] * dry_share)
        benefit = (_benefit(soaking, gained[0]), _benefit(soaking, gained[1]))
    return Soak(
        hours=hours,
        uptake=uptake,
        benefit=benefit,
        hours_to_90=(hours_to(soaking, 0.9, 25.0), hours_to(soaking, 0.9, 15.0)),
        pointless=pointless,
        missing=times.soak == "demanded" and hours[1] < 5 and kitchen.soak != "hot",
        warm=celsius > 25 and kitchen.soak not in ("none", "hot", "fridge") and hours[1] > 4,
    )


def _hours(kitchen: Kitchen) -> Range:
    if kitchen.soak == "none":
        return 0.0, 0.0
    if kitchen.soak_hours is not None:
        return float(kitchen.soak_hours), float(kitchen.soak_hours)
    return HOURS[kitchen.soak]


def _celsius(kitchen: Kitchen) -> float:
    if kitchen.soak_c is not None:
        return float(kitchen.soak_c)
    return FRIDGE_C if kitchen.soak == "fridge" else ROOM_C


def _benefit(soaking: Soaking, gained: float) -> float:
    return min(1.0, gained / capacity(soaking) / ENOUGH)
